package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// trimmedBefore trims a step's unit, before the steps that come after it.
func trimmedBefore(t *testing.T, r Recipe, step, size string) Recipe {
	t.Helper()
	var steps []Step
	for _, s := range r.Steps {
		if s.Of == step {
			s.Of = "trim"
		}
		steps = append(steps, s)
		if s.Name == step {
			steps = append(steps, Step{Name: "trim", Do: Trim, Of: step, Size: sides(t, size, size)})
		}
	}
	return Recipe{steps}
}

// fromSquares has the triangles cut from squares of a size and not trimmed.
func fromSquares(t *testing.T, r Recipe, size string) Recipe {
	t.Helper()
	r.Steps[0].Size, r.Steps[0].TrimTo = sides(t, size, size), 0
	return r
}

// Published pinwheels and hourglasses of four half-square triangles, cut in
// thirds both ways. Cut is the distance of both cuts from the middle. Where a
// source trims, the exact size before stands in its row; C47 says hourglass.
func TestRecutPinwheelsAgainstPublishedBlocks(t *testing.T) {
	six, thirds := in(t, "6"), measure.Length(0)
	for _, row := range []struct {
		source                      string
		recipe                      Recipe
		half, before, set, cut, raw string
	}{
		{"Disappearing Pinwheel, OHCE slides: squares of 9 1/2, trimmed to 6 1/4, cut 2",
			PinwheelRecut(in(t, "6 1/4"), 4, thirds, nil), "6.25", "12", "12", "2", "11"},
		{"Sweet Grass Designs: squares of 6 1/2, trimmed to 7 1/2, cut 1 1/4, finished 6",
			trimmedBefore(t, fromSquares(t, PinwheelRecut(six, 4, thirds, nil), "6 1/2"), "pinwheel", "7 1/2"), "4.243", "7.985", "7 1/2", "1.25", "6.5"},
		{"Sweet Adeline Quilts: squares of 5, trimmed to 5 1/4, cut 7/8, finished 3 3/4",
			trimmedBefore(t, fromSquares(t, PinwheelRecut(six, 4, thirds, nil), "5"), "pinwheel", "5 1/4"), "3.182", "5.864", "5 1/4", "0.875", "4.25"},
		{"J. Janovi: squares of 10, cut 2 1/8 (exact 2.156)",
			fromSquares(t, PinwheelRecut(six, 4, thirds, nil), "10"), "6.718", "12.935", "", "2.156", "11.935"},
		{"Life With Quilting: squares of 5, trimmed to 4 1/2, finished 7",
			HourglassRecut(in(t, "4 1/2"), 2, thirds, nil), "4.5", "8.5", "8 1/2", "1.417", "7.5"},
		{"C. Sherman: nine sections of 2 1/4",
			PinwheelRecut(in(t, "3 5/8"), 2, thirds, nil), "3.625", "6.75", "6 3/4", "1.125", "5.75"},
		{"the same with the cut given",
			PinwheelRecut(in(t, "3 5/8"), 2, in(t, "1 1/8"), nil), "3.625", "6.75", "6 3/4", "1.125", "5.75"},
	} {
		t.Run(row.source, func(t *testing.T) {
			b := made(t, row.recipe, quarter)
			assert.Equal(t, row.half, inches(b.Steps[0].Unit.Size.Width))
			assert.Equal(t, row.before, inches(b.Steps[1].Unit.Size.Width))
			recut := b.step(t, "recut")
			if row.set != "" {
				assertSquare(t, row.set, recut.Unit.Size, "before the recut")
			}
			assert.Equal(t, row.cut, inches((recut.Cuts[across][1]-recut.Cuts[across][0]).Scale(1, 2, measure.Down)))
			assert.Equal(t, row.raw, inches(b.Block().Size.Width))
			assertPatchesFill(t, b.Block())
		})
	}
}

// Thirds are of the raw unit: each of the nine sections is as large.
func TestThirdsAreEqualRaw(t *testing.T) {
	b := made(t, PinwheelRecut(in(t, "3 5/8"), 2, 0, nil), quarter)
	for _, row := range b.step(t, "recut").Pieces {
		for _, piece := range row {
			assertSquare(t, "2 1/4", piece.Size, "section")
		}
	}
}

// M. Devin 2014/01: recut pinwheels from squares of 8, four at a time, measured
// 8 3/4 and "should be 8 1/2". Untrimmed they are 9.107; 8 1/2 needs triangles
// trimmed to 5.
func TestRecutPinwheelOfEightInchSquares(t *testing.T) {
	untrimmed := made(t, fromSquares(t, PinwheelRecut(in(t, "5"), 4, 0, nil), "8"), quarter).Block().Size.Width
	assert.Equal(t, "9.107", inches(untrimmed))
	for _, wrong := range []string{"8.75", "8.5"} {
		assert.NotEqual(t, wrong, inches(untrimmed))
	}
	trimmed := PinwheelRecut(in(t, "5"), 4, 0, nil)
	trimmed.Steps[0].Size = sides(t, "8", "8")
	assertSquare(t, "8 1/2", made(t, trimmed, quarter).Block().Size, "trimmed to 5")
}

// Western IPS 2013/04: triangles trimmed to 5 and to 6 1/2, four of them, finish
// 9 and 12.
func TestFourTrianglesFinishAsPublished(t *testing.T) {
	for _, row := range []struct{ square, trim, finished string }{{"5 1/2", "5", "9"}, {"7", "6 1/2", "12"}} {
		r := Pinwheel(in(t, row.trim), 2)
		r.Steps[0].Size = sides(t, row.square, row.square)
		assertSquare(t, row.finished, finishedSize(made(t, r, quarter).Block(), quarter), "finished")
	}
}

// The prints of a pinwheel chase one another round the centre: a quarter turn
// shows it again. In the hourglass they are at the top and bottom (hand-worked).
func TestPinwheelAndHourglassLookAsTheyShould(t *testing.T) {
	block := made(t, Pinwheel(in(t, "2 1/2"), 2), quarter).Block()
	assertSquare(t, "4 1/2", block.Size, "pinwheel")
	assert.Equal(t, picture(block), picture(block.Turned(1)))
	for at, role := range map[Point]string{pt(24, 6): "ground", pt(12, 6): "print", pt(30, 12): "print", pt(30, 24): "ground"} {
		assert.Equal(t, []string{role}, block.rolesAt(at), "%v", at)
	}

	hourglass := HourglassRecut(in(t, "2 1/2"), 2, 0, nil)
	hourglass.Steps = hourglass.Steps[:2]
	block = made(t, hourglass, quarter).Block()
	for at, role := range map[Point]string{pt(12, 6): "print", pt(24, 6): "print", pt(20, 32): "print", pt(6, 12): "ground", pt(30, 24): "ground"} {
		assert.Equal(t, []string{role}, block.rolesAt(at), "%v", at)
	}
	assert.Equal(t, []RoleArea{{"ground", squareInches(8)}, {"print", squareInches(8)}}, sortedAreas(block))
}

func sortedAreas(u Unit) []RoleArea {
	areas := u.AreaByRole(quarter)
	if areas[0].Role > areas[1].Role {
		areas[0], areas[1] = areas[1], areas[0]
	}
	return areas
}

// Six seams come together in the middle of a pinwheel, three on either side of
// the last join, so two always lean the same way (hand-worked).
func TestPinwheelAlwaysClashesInTheMiddle(t *testing.T) {
	b := made(t, Pinwheel(in(t, "3 1/2"), 2), quarter)
	joins := b.step(t, "pinwheel").Joins
	assert.Empty(t, joins[0].Matches, "diagonals reach the ends of the upright joins")
	assert.Len(t, joins[1].Matches, 1)
	assert.Equal(t, []Signed{{0, +1}, {0, +1}, {1, -1}, {0, -1}, {0, -1}, {2, -1}}, sortedLeans(joins[1].Matches[0]))
	assert.Equal(t, Tally{Clash: 1}, b.BlockTally(b.Best()))
}

// sortedLeans lists the seams of the side above, then those below, the
// triangles' first.
func sortedLeans(m Match) []Signed {
	above, below := []Signed{}, []Signed{}
	for _, lean := range m.Leans {
		switch {
		case lean.Choice == 1 || lean.Choice == 0 && lean.Along > 0:
			above = append(above, lean)
		default:
			below = append(below, lean)
		}
	}
	for _, side := range [][]Signed{above, below} {
		for i := range side {
			if side[i].Choice != 0 {
				side[i], side[len(side)-1] = side[len(side)-1], side[i]
			}
		}
	}
	return append(above, below...)
}

// A pinwheel recut in thirds has eight match points inside the block: where the
// old centre seams cross the four joins of the centre piece, which nest as in a
// recut four-patch, and at the corners of the centre piece, where two diagonals
// join the crossing and two of four seams always lean alike (hand-worked).
func TestRecutPinwheelMatchPoints(t *testing.T) {
	b := made(t, PinwheelRecut(in(t, "6 1/4"), 2, 0, nil), quarter)
	joins := b.step(t, "block").Joins
	assert.Equal(t, Tally{Nest: 4, Clash: 4}, b.Tally(joins, b.Best()))
	for _, join := range joins {
		assert.Len(t, join.Matches, map[bool]int{false: 1, true: 3}[join.Between])
	}
}

// Areas of the recut blocks: half print and half ground, as the pieces are cut
// alike from both (hand-worked: 10 1/2 in finished).
func TestRecutPinwheelAreas(t *testing.T) {
	for _, r := range []Recipe{PinwheelRecut(in(t, "6 1/4"), 8, 0, nil), HourglassRecut(in(t, "6 1/4"), 4, 0, nil)} {
		b := made(t, r, quarter)
		assertSquare(t, "10 1/2", finishedSize(b.Block(), quarter), "finished")
		half := measure.Mul(in(t, "10 1/2"), in(t, "10 1/2")).Half()
		assert.Equal(t, []RoleArea{{"ground", half}, {"print", half}}, sortedAreas(b.Block()))
	}
}

// How many units of each step a block takes, and what is made for the lot: eight
// at a time do not come out even with four to a block.
func TestTriangleCopiesAndPools(t *testing.T) {
	for _, row := range []struct {
		method int
		pooled bool
	}{{2, false}, {4, false}, {8, true}} {
		b := made(t, PinwheelRecut(in(t, "6 1/4"), row.method, 0, nil), quarter)
		triangles := b.step(t, "half-squares")
		assert.Equal(t, 4, triangles.Copies)
		assert.Equal(t, row.pooled, triangles.Pooled)
		assert.False(t, b.step(t, "pinwheel").Pooled)
	}
	assert.True(t, made(t, HalfSquares(in(t, "3 1/2"), 2), quarter).Steps[0].Pooled)
	assert.True(t, made(t, Hourglass(in(t, "3 1/2")), quarter).Steps[0].Pooled)
}

// A pinwheel of 4 in finished, triangles two at a time: four half-square
// triangles of squares of 2 7/8 take 2 runs of two seams 3.566, the rows 2 seams
// of 2 1/2, the row join 4 1/2 (hand-worked).
func TestPinwheelSeamLength(t *testing.T) {
	b := made(t, Pinwheel(in(t, "2 1/2"), 2), quarter)
	assert.Equal(t, in(t, "2 7/8"), b.Steps[0].Square)
	seam := in(t, "2 7/8").TimesRoot2(measure.Up) - 2*quarter
	assert.Equal(t, "3.566", inches(seam))
	assert.Equal(t, 4*seam+2*in(t, "2 1/2")+in(t, "4 1/2"), b.SeamLength())
}

// Three strips of 2 1/2 by 6 1/2 make 6 1/2 square; two roles are cut, one twice
// (common practice: rail of three).
func TestRail(t *testing.T) {
	b := made(t, Rail([]string{"kelp", "foam", "kelp"}, in(t, "2 1/2"), in(t, "6 1/2")), quarter)
	assertSquare(t, "6 1/2", b.Block().Size, "rail")
	assert.Len(t, b.Steps, 3)
	assert.Equal(t, 2, b.step(t, "kelp").Copies)
	assert.Equal(t, 1, b.step(t, "foam").Copies)
	assert.Equal(t, []RoleArea{{"kelp", squareInches(24)}, {"foam", squareInches(12)}}, b.Block().AreaByRole(quarter))
	assert.Equal(t, in(t, "13"), b.SeamLength())

	// An outside reckoning: strips of 1 1/4 cut at 4 make 2 3/4 x 4 (a published
	// page ends on 2 2/4 for the same sum).
	narrow := made(t, Rail([]string{"a", "b", "a"}, in(t, "1 1/4"), in(t, "4")), quarter).Block().Size
	assert.Equal(t, sides(t, "2 3/4", "4"), narrow)
	assert.NotEqual(t, in(t, "2 1/2"), narrow.Width)
}

// Four- and nine-patches of rectangles: half turns fit, quarter turns do not.
// The nine-patch of 4 x 6 is 11 x 17, rebuilt 10 1/2 x 16 1/2 (hand-worked).
func TestBlocksOfRectangles(t *testing.T) {
	size := sides(t, "4", "6")
	assert.Equal(t, size, made(t, PlainPiece(size), quarter).Block().Size)
	assert.Equal(t, sides(t, "7 1/2", "11 1/2"), made(t, FourPatchOf(size), quarter).Block().Size)
	assert.Equal(t, sides(t, "11", "17"), made(t, NinePatchOf(size), quarter).Block().Size)
	assert.Equal(t, sides(t, "10 1/2", "16 1/2"), made(t, NinePatchRecutOf(size, nil), quarter).Block().Size)
	assert.Equal(t, sides(t, "6 1/2", "10 1/2"), made(t, FourPatchRecutOf(size, measure.Inch, nil), quarter).Block().Size)
	_, err := Make(FourPatchRecutOf(size, measure.Inch, [][]int{{90, 0, 0}, {0, 0, 0}, {0, 0, 0}}), quarter, measure.Inches)
	assert.EqualError(t, err, "step turn: a quarter turn of piece 1 in row 1 does not fit its place: "+
		"4 3/4 in against 2 3/4 in; give it no turn or half a turn (0 or 180), or cut square pieces")
}
