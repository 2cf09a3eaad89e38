package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// overStrip is a pair of 2 in squares over a strip cut to its planned length: two
// seams' allowances less than 4 in, so 3 1/2.
func overStrip() Recipe {
	side := 2 * measure.Inch
	return Recipe{Steps: []Step{
		{Name: "print", Do: Cut, Role: "print", Size: measure.Size{Width: side, Height: side}},
		{Name: "strip", Do: Cut, Role: "print", Size: measure.Size{Width: measure.Inch * 7 / 2, Height: side}},
		{Name: "pair", Do: Sew, Rows: [][]Cell{{{Of: "print"}, {Of: "print"}}}},
		{Name: "block", Do: Sew, Rows: [][]Cell{{{Of: "pair"}}, {{Of: "strip"}}}},
	}}
}

// With a wider seam the pair is shorter than the strip that was cut for it:
// hand-worked, 4 - 2 x 5/16 = 3 3/8. With a narrower one the strip is shorter.
func TestWhatComesOutLongerIsCutBack(t *testing.T) {
	for _, c := range []struct{ seam, wide measure.Length }{
		{measure.Inch / 4, measure.Inch * 7 / 2},
		{measure.Inch * 5 / 16, measure.Inch * 27 / 8},
		{measure.Inch * 3 / 16, measure.Inch * 7 / 2},
	} {
		build, err := Remake(overStrip(), c.seam, measure.Inches)
		require.NoError(t, err)
		assert.Equal(t, c.wide, build.Block().Size.Width)
		assert.Equal(t, 4*measure.Inch-2*c.seam, build.Block().Size.Height)
	}
	_, err := Make(overStrip(), measure.Inch*5/16, measure.Inches)
	assert.Error(t, err, "a block that is designed so is refused")
}
