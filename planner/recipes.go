package planner

import (
	"cmp"
	"fmt"

	"quiltrun/planner/patchwork"
)

// usualMethod is how many half-square triangles are made at a time where the
// job file does not say: from two squares, with nothing left over in a block of
// four.
const usualMethod = 2

// recipeFor is the recipe of a block: steps of its own, or a built-in with its
// measures. Parse has checked that the measures are there.
func recipeFor(b BlockSpec) patchwork.Recipe {
	offset, unit := b.Measures["offset"], b.Measures["unit"]
	method := cmp.Or(b.Method, usualMethod)
	switch b.Make {
	case "plain square":
		return patchwork.PlainPiece(b.Square)
	case "four-patch":
		return patchwork.FourPatchOf(b.Square)
	case "nine-patch":
		return patchwork.NinePatchOf(b.Square)
	case "rail":
		return patchwork.Rail(stripRoles(b.Strips), b.Measures["strip"], b.Measures["length"])
	case "half-square triangle":
		return patchwork.HalfSquares(unit, method)
	case "pinwheel":
		return patchwork.Pinwheel(unit, method)
	case "hourglass":
		return patchwork.Hourglass(unit)
	case "four-patch recut":
		return patchwork.FourPatchRecutOf(b.Square, offset, b.Turn)
	case "nine-patch recut":
		return patchwork.NinePatchRecutOf(b.Square, b.Turn)
	case "pinwheel recut":
		return patchwork.PinwheelRecut(unit, method, offset, b.Turn)
	case "hourglass recut":
		return patchwork.HourglassRecut(unit, method, offset, b.Turn)
	}
	return b.Steps
}

// stripRoles are the roles of a rail's strips, from left to right.
func stripRoles(strips int) []string {
	roles := make([]string, strips)
	for i := range roles {
		roles[i] = fmt.Sprintf("strip-%d", i+1)
	}
	return roles
}
