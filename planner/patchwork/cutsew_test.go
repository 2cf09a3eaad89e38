package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// pt is a point in eighths of an inch.
func pt(x, y measure.Length) Point { return Point{x * measure.Inch / 8, y * measure.Inch / 8} }

func rect(x0, y0, x1, y1 measure.Length) []Point {
	return []Point{pt(x0, y0), pt(x1, y0), pt(x1, y1), pt(x0, y1)}
}

func TestCutPieceIsOnePatch(t *testing.T) {
	piece := CutPiece("print", sides(t, "3", "2"))
	assert.Equal(t, Unit{Size: sides(t, "3", "2"), Patches: []Patch{{Role: "print", Corners: rect(0, 0, 24, 16)}}}, piece)
}

// Two squares of 2 in: 3 1/2 in wide, the seam in the middle (hand-worked).
func TestSewBesideTakesASeamFromEachSide(t *testing.T) {
	a, b := CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2"))
	assert.Equal(t, Unit{
		Size:    sides(t, "3 1/2", "2"),
		Patches: []Patch{{Role: "a", Corners: rect(0, 0, 14, 16)}, {Role: "b", Corners: rect(14, 0, 28, 16)}},
		Seams:   []Seam{{A: pt(14, 0), B: pt(14, 16), Lean: Lean{X: -1}, Choice: 5}},
	}, SewBeside(a, b, quarter, 5))
}

// Two pairs, one below the other: the seams of the pairs end at the join, which
// leans up the first way (hand-worked).
func TestSewRowsJoinsRowsAndShortensTheirSeams(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2")), quarter, 0)
	four := SewRows([]Unit{pair, pair.Turned(2)}, quarter, []int{1})
	assertSquare(t, "3 1/2", four.Size, "four-patch")
	assert.Equal(t, []Seam{
		{A: pt(14, 0), B: pt(14, 14), Lean: Lean{X: -1}, Choice: 0},
		{A: pt(0, 14), B: pt(28, 14), Lean: Lean{Y: -1}, Choice: 1},
		{A: pt(14, 28), B: pt(14, 14), Lean: Lean{X: +1}, Choice: 0},
	}, four.Seams)
	assert.Equal(t, rect(14, 0, 28, 14), four.Patches[1].Corners)
	assert.Equal(t, "a", four.Patches[2].Role)
	assert.Equal(t, []Point{pt(28, 28), pt(14, 28), pt(14, 14), pt(28, 14)}, four.Patches[2].Corners)
}

// What sticks out is cut back; Make refuses all but a hair of it.
func TestSewRowCutsLongerEdgesBack(t *testing.T) {
	row := SewRow([]Unit{CutPiece("a", sides(t, "2", "2 1/8")), CutPiece("b", sides(t, "2", "2"))}, quarter, 0)
	assert.Equal(t, sides(t, "3 1/2", "2"), row.Size)
	assertPatchesFill(t, row)
}
