package planner

import (
	"slices"

	"quiltrun/planner/patchwork"
)

// pressGroups puts colourways together that are pressed in common, and gives
// each colourway its group.
func (m *maker) pressGroups(rule PressRule) (groups []pressGroup, of []int) {
	of = make([]int, len(m.plan.Colourways))
	var looks lookedAt
	for i, c := range m.plan.Colourways {
		g := pressGroup{build: c.Build, given: m.ruled(i, rule), same: looks.same(c.Build, m.roleLooks(i))}
		of[i] = slices.IndexFunc(groups, func(o pressGroup) bool {
			return o.build == g.build && o.same == g.same && slices.Equal(o.given, g.given)
		})
		if of[i] < 0 {
			of[i] = len(groups)
			groups = append(groups, g)
		}
	}
	return groups, of
}

// roleLook is what a role of a colourway looks like.
type roleLook struct {
	role string
	patchwork.Look
}

// roleLooks is what a colourway's roles look like. Two roles that deal the same
// fabrics in the same order look alike in every block.
func (m *maker) roleLooks(colourway int) []roleLook {
	roles := m.job.Colourways[colourway].Roles
	looks := make([]roleLook, len(roles))
	for i, role := range roles {
		like := slices.IndexFunc(roles, func(o RoleFabrics) bool {
			return o.Counted == role.Counted && slices.Equal(o.Fabrics, role.Fabrics)
		})
		looks[i] = roleLook{role.Role, patchwork.Look{
			Name:        roles[like].Role,
			Directional: slices.ContainsFunc(role.Fabrics, func(s Share) bool { return m.fabric(s.Fabric).Directional }),
		}}
	}
	return looks
}

// lookedAt remembers which blocks look the same after half a turn.
type lookedAt []lookedBlock

type lookedBlock struct {
	build *patchwork.Build
	looks []roleLook
	same  bool
}

func (l *lookedAt) same(b *patchwork.Build, looks []roleLook) bool {
	for _, seen := range *l {
		if seen.build == b && slices.Equal(seen.looks, looks) {
			return seen.same
		}
	}
	same := b.Block().SameAfterHalfTurn(func(role string) patchwork.Look {
		for _, look := range looks {
			if look.role == role {
				return look.Look
			}
		}
		return patchwork.Look{Name: role}
	})
	*l = append(*l, lookedBlock{b, looks, same})
	return same
}
