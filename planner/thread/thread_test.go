package thread

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// Sources: A. K. Das, thread consumption (T 0.01 in, S 10 gives 2.2); Coats
// Standard Stitch Type Classification (1 : 2.5 for type 301, met by two plies
// at 12 an inch: 2.48); quilting through squeezed cotton batting, 3.24 worked
// out from the same formula.
func TestALockstitchTakesWhatTheFormulaSays(t *testing.T) {
	thin := Stitch{PerInch: 10, Thickness: measure.Inch / 100}
	assert.InDelta(t, 2.2, thin.Ratio(), 1e-6)
	assert.InDelta(t, 2.48, Piecing.Ratio(), 1e-6)
	assert.InDelta(t, 2.5, Piecing.Ratio(), 0.03, "the flat ratio for a seam of two plies")
	assert.InDelta(t, 3.24, Quilting.Ratio(), 0.01)
	assert.Greater(t, Binding.Ratio(), Quilting.Ratio())
}

// American & Efird: 6.63 yd with 15 % makes 7.62 yd.
func TestWasteIsAdded(t *testing.T) {
	flat := Stitch{} // two inches of thread to an inch: no thickness
	got := flat.ForSeam(measure.Yard * 663 / 200)
	assert.InDelta(t, 7.62, got.In(measure.Inches)/36, 0.005)
}

// Half of 600 yd comes from bobbins of 60 yd: five. Hand-worked.
func TestBobbinsAreHalfOfTheThreadRoundedUp(t *testing.T) {
	assert.Equal(t, 5, Bobbins(600*measure.Yard))
	assert.Equal(t, 6, Bobbins(601*measure.Yard))
	assert.Equal(t, 1, Bobbins(measure.Inch))
	assert.Equal(t, 0, Bobbins(0))
}

// Parallel lines d apart make 1/d inches in a square inch: geometry; halving
// the spacing doubles the line (mybluprint.com, "How dense should my quilting be").
func TestLinesOverAnAreaHalveWithTheSpacing(t *testing.T) {
	crib := measure.Size{Width: 45 * measure.Inch, Height: 60 * measure.Inch}
	assert.Equal(t, 1800*measure.Inch, LinesOver(crib, measure.Inch*3/2))
	assert.Equal(t, 3600*measure.Inch, LinesOver(crib, measure.Inch*3/4))
}

// Superior Threads' buying advice for a crib quilt is 200 to 600 yd of top
// thread: more than any of our densities uses, as buying advice should be.
func TestUseStaysBelowPublishedBuyingAdvice(t *testing.T) {
	crib := measure.Size{Width: 45 * measure.Inch, Height: 60 * measure.Inch}
	for density, most := range map[string]measure.Length{"dense": 600, "medium": 400, "open": 200} {
		needle := Quilting.ForSeam(LinesOver(crib, Spacing[density])) / 2
		assert.Less(t, needle, most*measure.Yard, density)
	}
}
