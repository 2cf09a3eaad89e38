package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// triangles is a square of 2 in, half a and half b, with its seam from the top
// right to the bottom left corner pressed to the top left: what the pieces of
// recipes with half-square triangles look like.
func triangles() Unit {
	return Unit{
		Size: measure.Size{Width: 2 * measure.Inch, Height: 2 * measure.Inch},
		Patches: []Patch{
			{Role: "a", Corners: []Point{pt(0, 0), pt(16, 0), pt(0, 16)}},
			{Role: "b", Corners: []Point{pt(16, 0), pt(16, 16), pt(0, 16)}},
		},
		Seams: []Seam{{A: pt(16, 0), B: pt(0, 16), Lean: Lean{X: -1, Y: -1}}},
	}
}

func TestRecutUnitSlicesPatchesAndSeamsAlike(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2")), quarter, 3)
	pieces := RecutUnit(pair, []measure.Length{in(t, "1")}, []measure.Length{in(t, "3/4")})
	assert.Equal(t, []Unit{
		{Size: sides(t, "1", "3/4"), Patches: []Patch{{Role: "a", Corners: rect(0, 0, 8, 6)}}},
		{
			Size:    sides(t, "2 1/2", "3/4"),
			Patches: []Patch{{Role: "a", Corners: rect(0, 0, 6, 6)}, {Role: "b", Corners: rect(6, 0, 20, 6)}},
			Seams:   []Seam{{A: pt(6, 0), B: pt(6, 6), Lean: Lean{X: -1}, Choice: 3}},
		},
	}, pieces[0])
	assert.Equal(t, sides(t, "2 1/2", "1 1/4"), pieces[1][1].Size)
}

// Diagonal seams are cut exactly too: a cut 1/2 in from the top and one 1 in
// from the left (hand-worked).
func TestRecutUnitSlicesDiagonals(t *testing.T) {
	pieces := RecutUnit(triangles(), []measure.Length{in(t, "1")}, []measure.Length{in(t, "1/2")})
	assert.Equal(t, Unit{
		Size: sides(t, "1", "1/2"),
		Patches: []Patch{
			{Role: "a", Corners: []Point{pt(0, 0), pt(8, 0), pt(4, 4), pt(0, 4)}},
			{Role: "b", Corners: []Point{pt(8, 0), pt(8, 4), pt(4, 4)}},
		},
		Seams: []Seam{{A: pt(8, 0), B: pt(4, 4), Lean: Lean{X: -1, Y: -1}}},
	}, pieces[0][1])
	for quarters := range 4 {
		turned := triangles().Turned(quarters)
		for _, row := range RecutUnit(turned, []measure.Length{in(t, "1 1/8")}, []measure.Length{in(t, "3/4")}) {
			for _, piece := range row {
				assertPatchesFill(t, piece)
				assertSeamsSeparate(t, piece)
			}
		}
	}
}

// A seam or patch that only touches the corner of a piece is no part of it.
func TestRecutUnitLeavesOutWhatOnlyTouches(t *testing.T) {
	one := []measure.Length{in(t, "1")}
	piece := RecutUnit(triangles(), one, one)[1][1]
	assert.Equal(t, Unit{Size: sides(t, "1", "1"), Patches: []Patch{{Role: "b", Corners: []Point{pt(8, 0), pt(8, 8), pt(0, 8), pt(0, 0)}}}}, piece)
}

func TestRecutUnitLeavesASeamAlongTheCutToNeitherPiece(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2")), quarter, 0)
	pieces := RecutUnit(pair, []measure.Length{in(t, "1 3/4")}, nil)
	assert.Equal(t, []Unit{CutPiece("a", sides(t, "1 3/4", "2")), CutPiece("b", sides(t, "1 3/4", "2"))}, pieces[0])
}

func TestTrimUnitKeepsTheMiddle(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "2", "2")), quarter, 0)
	assert.Equal(t, Unit{
		Size:    sides(t, "3", "2"),
		Patches: []Patch{{Role: "a", Corners: rect(0, 0, 12, 16)}, {Role: "b", Corners: rect(12, 0, 24, 16)}},
		Seams:   []Seam{{A: pt(12, 0), B: pt(12, 16), Lean: Lean{X: -1}}},
	}, TrimUnit(pair, sides(t, "3", "2 1/2")))
}

// A quarter turn clockwise takes the left edge to the top, and an allowance that
// leans left leans up (hand-worked).
func TestTurnedTakesThePressingAlong(t *testing.T) {
	pair := SewBeside(CutPiece("a", sides(t, "2", "2")), CutPiece("b", sides(t, "3", "2")), quarter, 0)
	turned := pair.Turned(1)
	assert.Equal(t, sides(t, "2", "4 1/2"), turned.Size)
	assert.Equal(t, []Seam{{A: pt(16, 14), B: pt(0, 14), Lean: Lean{Y: -1}}}, turned.Seams)
	assert.Equal(t, Patch{Role: "a", Corners: []Point{pt(16, 0), pt(16, 14), pt(0, 14), pt(0, 0)}, Quarters: 1}, turned.Patches[0])
	for quarters, lean := range []Lean{{X: -1}, {Y: -1}, {X: +1}, {Y: +1}} {
		assert.Equal(t, lean, pair.Turned(quarters).Seams[0].Lean)
		assert.Equal(t, pair.Turned(quarters), pair.Turned(quarters-4), "the same turn anticlockwise")
	}
}

func TestTurnedTakesDiagonalPressingAlong(t *testing.T) {
	for quarters, lean := range []Lean{{-1, -1}, {+1, -1}, {+1, +1}, {-1, +1}} {
		turned := triangles().Turned(quarters)
		assert.Equal(t, lean, turned.Seams[0].Lean)
		assertSeamsSeparate(t, turned)
		assertPatchesFill(t, turned)
	}
}
