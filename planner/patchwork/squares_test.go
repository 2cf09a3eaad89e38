package patchwork

import "quiltrun/planner/measure"

// Blocks of squares, by the side of the square as published examples give it.

func PlainSquare(side measure.Length) Recipe { return PlainPiece(square(side)) }

func FourPatch(side measure.Length) Recipe { return FourPatchOf(square(side)) }

func NinePatch(side measure.Length) Recipe { return NinePatchOf(square(side)) }

func FourPatchRecut(side, offset measure.Length, turns [][]int) Recipe {
	return FourPatchRecutOf(square(side), offset, turns)
}

func NinePatchRecut(side measure.Length, turns [][]int) Recipe {
	return NinePatchRecutOf(square(side), turns)
}

func cutSquare(role string, side measure.Length) Step { return cutPieces(role, square(side)) }
