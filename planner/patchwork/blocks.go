package patchwork

import "quiltrun/planner/measure"

// The built-in blocks. Each is a recipe and nothing else: names of steps are
// the beginnings of operations' keys and never change.

// PlainSquare is one square of the role print, cut with the given side.
func PlainSquare(side measure.Length) Recipe {
	return Recipe{Steps: []Step{{Name: "square", Do: Cut, Role: "print", Size: square(side)}}}
}

// FourPatch is four squares of the given cut side: print at the top left and
// bottom right, ground in the other two places. Two like pairs are sewn, one
// of them turned by half a turn.
func FourPatch(side measure.Length) Recipe {
	return Recipe{Steps: []Step{
		cutSquare("print", side),
		cutSquare("ground", side),
		{Name: "pairs", Do: Sew, Rows: [][]Cell{{{Of: "print"}, {Of: "ground"}}}},
		{Name: "units", Do: Sew, Rows: [][]Cell{{{Of: "pairs"}}, {{Of: "pairs", Quarters: 2}}}},
	}}
}

// NinePatch is nine squares of the given cut side: four corners, four sides
// and a centre.
func NinePatch(side measure.Length) Recipe {
	corner, edge, centre := Cell{Of: "corner"}, Cell{Of: "side"}, Cell{Of: "centre"}
	return Recipe{Steps: []Step{
		cutSquare("corner", side),
		cutSquare("side", side),
		cutSquare("centre", side),
		{Name: "nine-patch", Do: Sew, Rows: [][]Cell{
			{corner, edge, corner},
			{edge, centre, edge},
			{corner, edge, corner},
		}},
	}}
}

// FourPatchRecut is a four-patch cut at offset either side of both centre
// seams, its pieces turned in their places and sewn again. Without turns the
// four middle pieces of the sides get half a turn.
func FourPatchRecut(side, offset measure.Length, turns [][]int) Recipe {
	if turns == nil {
		turns = [][]int{{0, 180, 0}, {180, 0, 180}, {0, 180, 0}}
	}
	cuts := []From{{Centre, -offset}, {Centre, offset}}
	return recutAndSewn(FourPatch(side), cuts, turns)
}

// NinePatchRecut is a nine-patch halved both ways, its quarters turned in
// their places and sewn again. Without turns the top right and bottom left
// quarters get half a turn.
func NinePatchRecut(side measure.Length, turns [][]int) Recipe {
	if turns == nil {
		turns = [][]int{{0, 180}, {180, 0}}
	}
	return recutAndSewn(NinePatch(side), []From{{Edge: Centre}}, turns)
}

// recutAndSewn goes on from a recipe: its unit is cut at the same places both
// ways, the pieces are turned and sewn.
func recutAndSewn(r Recipe, cuts []From, turns [][]int) Recipe {
	unit := r.Steps[len(r.Steps)-1].Name
	r.Steps = append(r.Steps,
		Step{Name: "recut", Do: Recut, Of: unit, Upright: cuts, Level: cuts},
		Step{Name: "turn", Do: Turn, Of: "recut", Turns: turns},
		Step{Name: "block", Do: Sew, Of: "turn", Whole: true},
	)
	return r
}

// cutSquare is the cutting of squares, a step named after their role.
func cutSquare(role string, side measure.Length) Step {
	return Step{Name: role, Do: Cut, Role: role, Size: square(side)}
}

func square(side measure.Length) measure.Size {
	return measure.Size{Width: side, Height: side}
}
