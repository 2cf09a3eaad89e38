package patchwork

import "quiltrun/planner/measure"

// RoleArea is the finished area of all patches of one role.
type RoleArea struct {
	Role string
	Area measure.Area
}

// AreaByRole is the finished area of each role in a unit: what shows once a
// seam is taken on all four sides. Roles come in the order in which they first
// appear in the unit.
func (u Unit) AreaByRole(seam measure.Length) []RoleArea {
	var list []RoleArea
	place := make(map[string]int)
	for _, patch := range u.Finished(seam).Patches {
		i, ok := place[patch.Role]
		if !ok {
			i = len(list)
			place[patch.Role] = i
			list = append(list, RoleArea{Role: patch.Role})
		}
		list[i].Area = list[i].Area.Add(patch.twiceArea())
	}
	for i := range list {
		list[i].Area = list[i].Area.Half()
	}
	return list
}

// Finished is the part of a unit that shows once a seam is taken on all four
// sides, with coordinates from its finished top left corner.
func (u Unit) Finished(seam measure.Length) Unit {
	return u.seen(window{
		min: Point{seam, seam},
		max: Point{u.Size.Width - seam, u.Size.Height - seam},
	})
}

// Area is the exact area of the patch. On half a square tick it is rounded down
// to whole ones.
func (p Patch) Area() measure.Area { return p.twiceArea().Half() }

// twiceArea is twice the area, by the shoelace formula: the sum over the sides
// of the cross products of their ends.
func (p Patch) twiceArea() measure.Area {
	var twice measure.Area
	for i, a := range p.Corners {
		b := p.Corners[(i+1)%len(p.Corners)]
		twice = twice.Add(measure.Mul(a.X, b.Y)).Sub(measure.Mul(b.X, a.Y))
	}
	return twice
}
