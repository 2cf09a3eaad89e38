package patchwork

import "quiltrun/planner/measure"

// HalfSquareUnit is a trimmed half-square triangle of the given raw side: the
// first role at the top left, the second at the bottom right, the seam from the
// bottom left to the top right corner. Its allowance leans to the first role
// where choice is taken the first way.
//
// In half of the units that two squares give, a triangle lies turned by half a
// turn against the other half's; Patch.Quarters is 0 in all.
func HalfSquareUnit(first, second string, side measure.Length, choice int) Unit {
	topLeft, topRight, bottomRight, bottomLeft := corners(side)
	return Unit{
		Size: square(side),
		Patches: []Patch{
			{Role: first, Corners: []Point{topLeft, topRight, bottomLeft}},
			{Role: second, Corners: []Point{topRight, bottomRight, bottomLeft}},
		},
		Seams: []Seam{{A: bottomLeft, B: topRight, Lean: Lean{-1, -1}, Choice: choice}},
	}
}

// QuarterSquareUnit is a trimmed quarter-square-triangle unit of the given raw
// side: the first role at the top and bottom, the second at the left and right.
// The seams of its two half-square triangles, short now, run from the centre to
// the top right and bottom left corners and lean to the first role where the
// choice short is taken the first way. The long seam, from the top left to the
// bottom right corner, leans to the bottom left the first way.
//
// A side of an odd number of ticks loses one, so that the centre is a tick.
//
// Of the two units that two squares give, one is sewn so and the other with its
// long seam on the other diagonal; they look alike. All are counted as the one.
func QuarterSquareUnit(first, second string, side measure.Length, short, long int) Unit {
	side -= side % 2
	topLeft, topRight, bottomRight, bottomLeft := corners(side)
	centre := Point{side / 2, side / 2}
	return Unit{
		Size: square(side),
		Patches: []Patch{
			{Role: first, Corners: []Point{topLeft, topRight, centre}},
			{Role: second, Corners: []Point{topRight, bottomRight, centre}},
			{Role: first, Corners: []Point{bottomRight, bottomLeft, centre}},
			{Role: second, Corners: []Point{bottomLeft, topLeft, centre}},
		},
		Seams: []Seam{
			{A: centre, B: topRight, Lean: Lean{-1, -1}, Choice: short},
			{A: centre, B: bottomLeft, Lean: Lean{+1, +1}, Choice: short},
			{A: topLeft, B: bottomRight, Lean: Lean{-1, +1}, Choice: long},
		},
	}
}

func corners(side measure.Length) (topLeft, topRight, bottomRight, bottomLeft Point) {
	return Point{}, Point{side, 0}, Point{side, side}, Point{0, side}
}

// HalfSquareSide is the raw side of the half-square triangles that two squares
// of the given side make, before they are trimmed, rounded down to the tick:
// side − s√2 two at a time, side/2 − s√2 eight at a time, (side − 2s)/√2 four at
// a time, by the geometry of a square sewn s from its diagonals or its edges.
func HalfSquareSide(side, s measure.Length, atATime int) measure.Length {
	switch atATime {
	case 4:
		return (side - 2*s).OverRoot2(measure.Down)
	case 8:
		return (side - (2 * s).TimesRoot2(measure.Up)).Scale(1, 2, measure.Down)
	default:
		return side - s.TimesRoot2(measure.Up)
	}
}

// HalfSquareCut is the least side of squares whose half-square triangles can be
// trimmed to unit, rounded up to the tick.
func HalfSquareCut(unit, s measure.Length, atATime int) measure.Length {
	switch atATime {
	case 4:
		return unit.TimesRoot2(measure.Up) + 2*s
	case 8:
		return 2*unit + (2 * s).TimesRoot2(measure.Up)
	default:
		return unit + s.TimesRoot2(measure.Up)
	}
}

// QuarterSquareSide is the raw side of the two quarter-square-triangle units
// that two squares of the given side make, before they are trimmed, rounded down
// to the tick: side − 2s√2.
func QuarterSquareSide(side, s measure.Length) measure.Length {
	return side - (2 * s).TimesRoot2(measure.Up)
}

// QuarterSquareCut is the least side of squares whose quarter-square-triangle
// units can be trimmed to unit, rounded up to the tick.
func QuarterSquareCut(unit, s measure.Length) measure.Length {
	return unit + (2 * s).TimesRoot2(measure.Up)
}

// besideDiagonal is the length of a seam sewn s beside the diagonal of a square,
// raw edge to raw edge: side·√2 − 2s, rounded up to the tick.
func besideDiagonal(side, s measure.Length) measure.Length {
	return side.TimesRoot2(measure.Up) - 2*s
}

// halfSquareSeams is what is sewn on two squares laid together: on both sides of
// one diagonal, of both diagonals where eight are made, or along all four edges,
// each from raw edge to raw edge, where four are made.
func halfSquareSeams(side, s measure.Length, atATime int) []measure.Length {
	beside := besideDiagonal(side, s)
	switch atATime {
	case 4:
		return []measure.Length{side, side, side, side}
	case 8:
		return []measure.Length{beside, beside, beside, beside}
	default:
		return []measure.Length{beside, beside}
	}
}

// halfSquareCuts is how many cuts part two squares sewn together: along one
// diagonal, along both, or along both and through the middle both ways.
func halfSquareCuts(atATime int) int { return atATime / 2 }
