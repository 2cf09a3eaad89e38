package planner

import "quiltrun/planner/patchwork"

// recipeFor is the recipe of a built-in with its measures. Parse has checked
// that the name is one that can be made and that its measures are there.
func recipeFor(b BlockSpec) patchwork.Recipe {
	square, offset := b.Measures["square"], b.Measures["offset"]
	switch b.Make {
	case "plain square":
		return patchwork.PlainSquare(square)
	case "four-patch":
		return patchwork.FourPatch(square)
	case "nine-patch":
		return patchwork.NinePatch(square)
	case "four-patch recut":
		return patchwork.FourPatchRecut(square, offset, b.Turn)
	case "nine-patch recut":
		return patchwork.NinePatchRecut(square, b.Turn)
	}
	return patchwork.Recipe{}
}
