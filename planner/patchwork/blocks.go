package patchwork

import "quiltrun/planner/measure"

// The built-in blocks of squares and strips. Each is a recipe and nothing else:
// names of steps are the beginnings of operations' keys and never change.

// PlainSquare is one square of the role print, cut with the given side.
func PlainSquare(side measure.Length) Recipe { return PlainPiece(square(side)) }

// PlainPiece is one rectangle of the role print, cut to the given size.
func PlainPiece(size measure.Size) Recipe {
	return Recipe{Steps: []Step{{Name: "square", Do: Cut, Role: "print", Size: size}}}
}

// FourPatch is four squares of the given cut side: print at the top left and
// bottom right, ground in the other two places. Two like pairs are sewn, one
// of them turned by half a turn.
func FourPatch(side measure.Length) Recipe { return FourPatchOf(square(side)) }

// FourPatchOf is a four-patch of pieces of any size.
func FourPatchOf(size measure.Size) Recipe {
	return Recipe{Steps: []Step{
		cutPieces("print", size),
		cutPieces("ground", size),
		{Name: "pairs", Do: Sew, Rows: [][]Cell{{{Of: "print"}, {Of: "ground"}}}},
		{Name: "units", Do: Sew, Rows: [][]Cell{{{Of: "pairs"}}, {{Of: "pairs", Quarters: 2}}}},
	}}
}

// NinePatch is nine squares of the given cut side: four corners, four sides
// and a centre.
func NinePatch(side measure.Length) Recipe { return NinePatchOf(square(side)) }

// NinePatchOf is a nine-patch of pieces of any size.
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

// FourPatchRecut is a four-patch cut at offset either side of both centre
// seams, its pieces turned in their places and sewn again. Without turns the
// four middle pieces of the sides get half a turn.
func FourPatchRecut(side, offset measure.Length, turns [][]int) Recipe {
	return FourPatchRecutOf(square(side), offset, turns)
}

// FourPatchRecutOf is a recut four-patch of pieces of any size. Only half turns
// fit where they are no squares.
func FourPatchRecutOf(size measure.Size, offset measure.Length, turns [][]int) Recipe {
	if turns == nil {
		turns = middlesTurned()
	}
	return recutAndSewn(FourPatchOf(size), EitherSide(offset), turns)
}

// NinePatchRecut is a nine-patch halved both ways, its quarters turned in
// their places and sewn again. Without turns the top right and bottom left
// quarters get half a turn.
func NinePatchRecut(side measure.Length, turns [][]int) Recipe {
	return NinePatchRecutOf(square(side), turns)
}

// NinePatchRecutOf is a recut nine-patch of pieces of any size. Only half turns
// fit where they are no squares.
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

// cutSquare is the cutting of squares, a step named after their role.
func cutSquare(role string, side measure.Length) Step { return cutPieces(role, square(side)) }

// cutPieces is the cutting of pieces, a step named after their role.
func cutPieces(role string, size measure.Size) Step {
	return Step{Name: role, Do: Cut, Role: role, Size: size}
}

func square(side measure.Length) measure.Size {
	return measure.Size{Width: side, Height: side}
}
