package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// Published tests of a seam, each for a seam of 1/4 in.
func TestAStandardFirstPieceMeasuresWhatIsPublished(t *testing.T) {
	for _, c := range []struct{ test, want string }{
		{"three-strips", "3 1/2"}, // Quiltcentric, Testing your scant quarter inch seam: 3 strips 1 1/2 x 5
		{"four-strips", "4 1/2"},  // Quilting Board, post 5145607: 4 strips 1 1/2 x 5
		{"two-pieces", "4 1/2"},   // avalanden, Day 2 sewing strips: 2 at 2 1/2
	} {
		piece, err := PieceAt(planOf(t, recutFour), c.test, "")
		require.NoError(t, err)
		assert.Equal(t, inches(t, c.want), piece.Size.Width, c.test)
	}
}

// The seam solved from three strips is (4.5 - width)/4: the published test turned
// round.
func TestTheSeamOfThreeStripsIsAQuarterOfWhatIsMissing(t *testing.T) {
	test := SeamTests(measure.Inches)[0]
	assert.Equal(t, inches(t, "9/32"), test.Seam(inches(t, "3 3/8")), "hand-worked: (4 1/2 - 3 3/8) / 4")
	assert.Equal(t, inches(t, "1/4"), test.Seam(inches(t, "3 1/2")))
}

// Four nine-patches of 2 in squares joined 2 x 2, and a 2 in strip on every
// side: a published block that measured 12 1/8 where it should be 12 1/2
// (nycmetromodquilters.blogspot.com, Feb 2014).
const shrunken = `
job: shrunken
fabrics: {Kelp: {form: yardage, width: 42}}
block:
  print: Kelp
  steps:
    square: {cut: print, size: 2}
    nine: {sew: [[square, square, square], [square, square, square], [square, square, square]]}
    four: {sew: [[nine, nine], [nine, nine]]}
    side: {cut: print, size: 2 x 9 1/2}
    end: {cut: print, size: 12 1/2 x 2}
    sides: {sew: [[side, four, side]]}
    block: {sew: [[end], [sides], [end]]}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
`

func TestABlockTooSmallAfterManySeamsTellsItsSeam(t *testing.T) {
	plan := planOf(t, shrunken)
	piece, err := PieceAt(plan, "sides", "")
	require.NoError(t, err)
	assert.Equal(t, 7.0, piece.SeamsAcross(), "2 in a nine-patch, twice, 1 between them, 2 at the strips")
	first, err := ReadPiece(plan, piece, measure.Size{Width: inches(t, "12 1/8")}, inches(t, "1/8"))
	require.NoError(t, err)
	assert.Equal(t, inches(t, "12 1/2"), first.Ways[0].Should, "published, and exact")
	assert.Equal(t, inches(t, "3/8").Scale(1, 7, measure.Nearest), first.Ways[0].Each, "3/56 in a seam")
	assert.Equal(t, measure.Inch.Scale(31, 112, measure.Nearest), first.Seam, "31/112 in, about 0.277")
	assert.False(t, first.Within())
}
