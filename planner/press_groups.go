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
		g := pressGroup{build: c.Build, given: m.ruled(c, rule), same: looks.same(c.Build, m.directionalRoles(c.Name))}
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

// directionalRoles are the roles in which a colourway uses a one-way print.
func (m *maker) directionalRoles(colourway string) []string {
	var roles []string
	for _, role := range m.jobColourway(colourway).Roles {
		if slices.ContainsFunc(role.Fabrics, func(s Share) bool { return m.fabric(s.Fabric).Directional }) {
			roles = append(roles, role.Role)
		}
	}
	return roles
}

// lookedAt remembers which blocks look the same after half a turn.
type lookedAt []struct {
	build       *patchwork.Build
	directional []string
	same        bool
}

func (l *lookedAt) same(b *patchwork.Build, directional []string) bool {
	for _, seen := range *l {
		if seen.build == b && slices.Equal(seen.directional, directional) {
			return seen.same
		}
	}
	same := b.Block().SameAfterHalfTurn(func(role string) bool { return slices.Contains(directional, role) })
	*l = append(*l, struct {
		build       *patchwork.Build
		directional []string
		same        bool
	}{b, directional, same})
	return same
}
