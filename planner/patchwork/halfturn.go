package patchwork

import (
	"cmp"
	"slices"
)

// Look is what a role looks like: roles with one name look alike, and where the
// cloth is directional it shows which way up a patch stands.
type Look struct {
	Name        string
	Directional bool
}

// SameAfterHalfTurn reports whether a unit looks the same when it is turned by
// half a turn. Seams are not compared: the allowances are at the back.
func (u Unit) SameAfterHalfTurn(look func(role string) Look) bool {
	looks := func(u Unit) []Patch {
		patches := slices.Clone(u.Patches)
		for i := range patches {
			p := &patches[i]
			shown := look(p.Role)
			p.Role, p.Corners = shown.Name, fromTop(p.Corners)
			if !shown.Directional {
				p.Quarters = 0
			}
		}
		slices.SortFunc(patches, comparePatches)
		return patches
	}
	return slices.EqualFunc(looks(u), looks(u.Turned(2)), func(a, b Patch) bool { return comparePatches(a, b) == 0 })
}

// fromTop is the corners of a patch from its topmost on, the leftmost of equals.
func fromTop(corners []Point) []Point {
	top := 0
	for i, p := range corners {
		if comparePoints(p, corners[top]) < 0 {
			top = i
		}
	}
	return slices.Concat(corners[top:], corners[:top])
}

func comparePoints(p, q Point) int { return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X)) }

func comparePatches(a, b Patch) int {
	return cmp.Or(
		slices.CompareFunc(a.Corners, b.Corners, comparePoints),
		cmp.Compare(a.Role, b.Role),
		cmp.Compare(a.Quarters, b.Quarters),
	)
}
