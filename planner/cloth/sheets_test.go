package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// Squares from a fat quarter of 18 x 22: docsbay.net, "Number of squares from a
// fat quarter"; piecefulliving.blogspot.com 2011/08. Other sizes of sheet:
// quiltingboard.com, fat quarter conversion.
func TestSquaresFromAFatQuarterAgreeWithTheCharts(t *testing.T) {
	for _, c := range []struct {
		square, wide, high string
		want               int
	}{
		{"2", "18", "22", 99}, {"2 1/2", "18", "22", 56}, {"3", "18", "22", 42}, {"3 1/2", "18", "22", 30},
		{"4", "18", "22", 20}, {"4 1/2", "18", "22", 16}, {"5", "18", "22", 12}, {"5 1/2", "18", "22", 12},
		{"6", "18", "22", 9}, {"6 1/2", "18", "22", 6}, {"7", "18", "22", 6}, {"8", "18", "22", 4}, {"9", "18", "22", 4},
		{"5 1/2", "18", "21", 9}, {"5", "20", "22", 16}, {"5", "18", "19 1/2", 9}, {"5 1/2", "17 3/4", "21 3/4", 9},
		{"5", "50 cm", "55 cm", 12}, {"2 1/2", "17 1/2", "20 1/2", 56}, {"10", "17 1/2", "20 1/2", 2},
	} {
		sheet := measure.Size{Width: in(t, c.wide), Height: in(t, c.high)}
		assert.Equal(t, c.want, PerSheet(square(t, c.square), sheet, false), "%s from %s x %s", c.square, c.wide, c.high)
	}
	assert.NotEqual(t, 50, PerSheet(square(t, "2 1/2"), measure.Size{Width: in(t, "18"), Height: in(t, "22")}, false), "one shop list prints 50")
	assert.NotEqual(t, 4, PerSheet(square(t, "7"), measure.Size{Width: in(t, "18"), Height: in(t, "22")}, false), "quiltingboard.com t73923 prints 4")
}

// 42 squares of 5 in: four fat quarters of 18 x 22 (three give 36), three of
// 20 x 22. Source as above; a forum says that three give 40.
func TestSheetsAreCountedWhole(t *testing.T) {
	for _, c := range []struct {
		wide  string
		count int
		want  int
	}{{"18", 42, 4}, {"20", 42, 3}, {"18", 36, 3}, {"18", 40, 4}} {
		sheet := measure.Size{Width: in(t, c.wide), Height: in(t, "22")}
		cut, _, ok := FromSheets([]Pieces{{square(t, "5"), c.count}}, sheet, false)
		require.True(t, ok)
		assert.Equal(t, c.want, cut.Sheets, "%d from %s", c.count, c.wide)
		assert.LessOrEqual(t, cut.Bound, cut.Sheets)
	}
}

func TestAPieceLargerThanTheSheetIsRefused(t *testing.T) {
	sheet := measure.Size{Width: in(t, "18"), Height: in(t, "22")}
	_, piece, ok := FromSheets([]Pieces{{square(t, "19"), 1}}, sheet, false)
	assert.False(t, ok)
	assert.Equal(t, square(t, "19"), piece)
	upright := measure.Size{Width: in(t, "20"), Height: in(t, "5")}
	_, _, ok = FromSheets([]Pieces{{upright, 1}}, sheet, true)
	assert.False(t, ok, "a directional piece may not be turned to fit")
	_, _, ok = FromSheets([]Pieces{{upright, 1}}, sheet, false)
	assert.True(t, ok)
}
