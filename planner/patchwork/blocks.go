package patchwork

import "quiltrun/planner/measure"

// The built-in blocks of squares and strips. Each is a recipe and nothing else:
// names of steps are the beginnings of operations' keys and never change.

// PlainPiece is one rectangle of the role print, cut to the given size.
func PlainPiece(size measure.Size) Recipe {
	return Recipe{Steps: []Step{{Name: "square", Do: Cut, Role: "print", Size: size}}}
}

// FourPatchOf is four pieces of the given raw size: print at the top left and
// bottom right, ground in the other two places. Two like pairs are sewn, one
// of them turned by half a turn.
func FourPatchOf(size measure.Size) Recipe {
	return Recipe{Steps: []Step{
		cutPieces("print", size),
		cutPieces("ground", size),
		{Name: "pairs", Do: Sew, Rows: [][]Cell{{{Of: "print"}, {Of: "ground"}}}},
		{Name: "units", Do: Sew, Rows: [][]Cell{{{Of: "pairs"}}, {{Of: "pairs", Quarters: 2}}}},
	}}
}

// NinePatchOf is nine pieces of the given raw size: four corners, four sides
// and a centre.
func NinePatchOf(size measure.Size) Recipe {
	corner, edge, centre := Cell{Of: "corner"}, Cell{Of: "side"}, Cell{Of: "centre"}
	return Recipe{Steps: []Step{
		cutPieces("corner", size),
		cutPieces("side", size),
		cutPieces("centre", size),
		{Name: "nine-patch", Do: Sew, Rows: [][]Cell{
			{corner, edge, corner},
			{edge, centre, edge},
			{corner, edge, corner},
		}},
	}}
}

// FourPatchRecutOf is a four-patch cut at offset either side of both centre
// seams, its pieces turned in their places and sewn again. Without turns the
// four middle pieces of the sides get half a turn. Only half turns fit where
// the pieces are no squares.
func FourPatchRecutOf(size measure.Size, offset measure.Length, turns [][]int) Recipe {
	if turns == nil {
		turns = middlesTurned()
	}
	return recutAndSewn(FourPatchOf(size), EitherSide(offset), turns)
}

// NinePatchRecutOf is a nine-patch halved both ways, its quarters turned in
// their places and sewn again. Without turns the top right and bottom left
// quarters get half a turn. Only half turns fit where the pieces are no squares.
func NinePatchRecutOf(size measure.Size, turns [][]int) Recipe {
	if turns == nil {
		turns = [][]int{{0, 180}, {180, 0}}
	}
	return recutAndSewn(NinePatchOf(size), Halves(), turns)
}

// Rail is strips sewn side by side, of the given roles from left to right, each
// cut strip wide and length long. The step that cuts a role's strips is named
// after it.
func Rail(strips []string, strip, length measure.Length) Recipe {
	size := measure.Size{Width: strip, Height: length}
	var steps []Step
	cut := make(map[string]bool, len(strips))
	row := make([]Cell, len(strips))
	for i, role := range strips {
		row[i].Of = role
		if !cut[role] {
			cut[role] = true
			steps = append(steps, cutPieces(role, size))
		}
	}
	return Recipe{Steps: append(steps, Step{Name: "rail", Do: Sew, Rows: [][]Cell{row}})}
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

// middlesTurned gives the four middle pieces of the sides, of nine, half a turn.
func middlesTurned() [][]int { return [][]int{{0, 180, 0}, {180, 0, 180}, {0, 180, 0}} }

// cutPieces is the cutting of pieces, a step named after their role.
func cutPieces(role string, size measure.Size) Step {
	return Step{Name: role, Do: Cut, Role: role, Size: size}
}

func square(side measure.Length) measure.Size {
	return measure.Size{Width: side, Height: side}
}
