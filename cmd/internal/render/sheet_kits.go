package render

import (
	"cmp"
	"fmt"
	"slices"

	"quiltrun/planner"
)

// kits says which fabrics go into which blocks, in the order of the blocks' numbers
// whatever the layout's order: a longer number is a higher one.
func (s *sheet) kits() {
	s.heading("Kits: the fabrics of each block")
	for _, c := range s.plan.Colourways {
		var mine []planner.Block
		for _, b := range s.plan.Blocks {
			if b.Colourway == c.Name {
				mine = append(mine, b)
			}
		}
		slices.SortFunc(mine, func(a, b planner.Block) int {
			na, nb := idNumber(a.ID), idNumber(b.ID)
			return cmp.Or(cmp.Compare(len(na), len(nb)), cmp.Compare(na, nb))
		})
		var kits []string
		for _, group := range grouped(len(mine), func(i int) string { return roleWords(mine[i].Fabrics) }) {
			ids := picked(group, func(i int) string { return mine[i].ID })
			kits = append(kits, fmt.Sprintf("%s: %s", idSpan(ids), roleWords(mine[group[0]].Fabrics)))
		}
		if len(kits) > mostRows {
			s.flow(1, ticked(kits))
			continue
		}
		for _, kit := range kits {
			s.hang(1, s.look.box()+" ", kit)
		}
	}
}

// roleWords are a block's fabrics by what they do in it.
func roleWords(roles []planner.RoleFabric) string {
	parts := make([]string, len(roles))
	for i, r := range roles {
		parts[i] = r.Role + " " + r.Fabric
	}
	return enumerate(parts)
}
