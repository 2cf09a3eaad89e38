package shelf

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// Hand-worked: 6 blocks take 12 squares of 5 in of Foam, 8 in a strip of 40 in and 4
// in a second one, 20 in wide. A rectangle of 20 × 5 holds the second strip alone.
func TestAPieceServesAStripThatItHolds(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(rectangles("Foam", 20, 5, 2, "")))
	require.NoError(t, w.enter(rectangles("Kelp", 22, 18, 1, "")))
	w.book(dunes("spit", 6, ""))
	w.book(dunes("dune", 6, ""))
	s := w.fold()
	assert.Equal(t, []Claim{{"spit", "", 1}, {"dune", "", 1}}, s.Items[0].For, "one each, neither twice")
	assert.Equal(t, 5*inch, w.needOf(s, "spit", "Foam", "").Kept)
	assert.Equal(t, 5*inch, w.needOf(s, "spit", "Foam", "").Short)
	assert.Equal(t, []Claim{{"spit", "", 1}}, s.Items[1].For, "as large as a fat quarter, turned")
	assert.Equal(t, planner.Amount(1), w.needOf(s, "dune", "Kelp", "").Short)
}

// A rectangle is taken with its first cut, and promised to nobody from then on; what
// its strip still gives is no longer looked for.
func TestAPieceThatIsBegunIsPromisedToNobody(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(rectangles("Foam", 40, 5, 2, "")))
	job := w.book(dunes("spit", 6, ""))
	require.NoError(t, w.log(job, "cut", "Foam", 3))
	s := w.fold()
	n := w.needOf(s, "spit", "Foam", "")
	// A quarter of 10 in is cut: 2 1/2 in of the first strip, whose other half is begun.
	assert.Equal(t, []planner.Amount{5 * inch / 2, 5 * inch, 0}, []planner.Amount{n.Begun, n.Kept, n.Short})
	assert.Equal(t, []planner.Amount{1, 1, 0}, []planner.Amount{s.Items[0].Used, s.Items[0].Kept, s.Items[0].Free})
	w.book(dunes("dune", 6, ""))
	assert.Equal(t, 10*inch, w.needOf(w.fold(), "dune", "Foam", "").Short)
	require.NoError(t, w.log(job, "cut", "Foam", 9))
	assert.Equal(t, planner.Amount(2), w.fold().Items[0].Used)
}

// Pieces that are free count among what a job finds there; their names say which.
func TestFreePiecesAreAmongWhatIsThere(t *testing.T) {
	w := &world{t: t}
	require.NoError(t, w.enter(rectangles("Foam", 9, 9, 3, "")))
	have := w.fold().Free(planner.Fabric{Name: "Foam", Form: planner.Yardage, Width: 40 * measure.Inch}, nil)
	assert.Equal(t, []planner.HaveSheets{{Size: measure.Size{Width: 9 * measure.Inch, Height: 9 * measure.Inch}, Count: 3}}, have.Sheets)
}
