package patchwork

import "quiltrun/planner/measure"

// The built-in blocks of triangles, of the roles print and ground. A unit is
// given by its raw side once it is trimmed, a method by how many half-square
// triangles are made at a time: 2, 4 or 8.

// HalfSquares is one half-square triangle, print at the top left.
func HalfSquares(unit measure.Length, method int) Recipe {
	return Recipe{Steps: []Step{halfSquares(unit, method)}}
}

// Pinwheel is four half-square triangles whose prints chase one another
// clockwise round the centre.
func Pinwheel(unit measure.Length, method int) Recipe {
	return fourTriangles("pinwheel", unit, method, [2][2]int{{1, 2}, {0, 3}})
}

// Hourglass is one quarter-square-triangle unit, print at its top and bottom.
func Hourglass(unit measure.Length) Recipe {
	return Recipe{Steps: []Step{{
		Name: "quarter-squares", Do: QuarterSquare, Roles: [2]string{"print", "ground"}, TrimTo: unit,
	}}}
}

// PinwheelRecut is a pinwheel cut either side of its centre, at offset or, where
// that is 0, in equal thirds; its pieces are turned in their places and sewn
// again. Without turns the four middle pieces of the sides get half a turn.
func PinwheelRecut(unit measure.Length, method int, offset measure.Length, turns [][]int) Recipe {
	return recutAtThirds(Pinwheel(unit, method), offset, turns)
}

// HourglassRecut is an hourglass of four half-square triangles, print at the top
// and bottom, cut, turned and sewn as PinwheelRecut is.
func HourglassRecut(unit measure.Length, method int, offset measure.Length, turns [][]int) Recipe {
	hourglass := fourTriangles("hourglass", unit, method, [2][2]int{{1, 0}, {2, 3}})
	return recutAtThirds(hourglass, offset, turns)
}

func halfSquares(unit measure.Length, method int) Step {
	return Step{
		Name: "half-squares", Do: HalfSquare, Roles: [2]string{"print", "ground"},
		AtATime: method, TrimTo: unit,
	}
}

// fourTriangles sews four half-square triangles, each given its quarter turns.
func fourTriangles(name string, unit measure.Length, method int, quarters [2][2]int) Recipe {
	rows := make([][]Cell, len(quarters))
	for r, row := range quarters {
		for _, turn := range row {
			rows[r] = append(rows[r], Cell{Of: "half-squares", Quarters: turn})
		}
	}
	return Recipe{Steps: []Step{halfSquares(unit, method), {Name: name, Do: Sew, Rows: rows}}}
}

func recutAtThirds(r Recipe, offset measure.Length, turns [][]int) Recipe {
	cuts := Thirds()
	if offset != 0 {
		cuts = EitherSide(offset)
	}
	if turns == nil {
		turns = middlesTurned()
	}
	return recutAndSewn(r, cuts, turns)
}
