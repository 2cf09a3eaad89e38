package planner

import "quiltrun/planner/patchwork"

// What meets in a top. It may grow.
const (
	joinColumns      = "block columns"
	joinRows         = "block rows"
	joinCorners      = "block corners"
	joinSashing      = "block and sashing"
	joinCornerstones = "sashing and cornerstones"
	joinTriangles    = "block and setting triangle"
	joinBorder       = "border blocks"
	joinOnBorder     = "border blocks and what they go round"
)

// topJoins sums up where the parts of one quilt meet. Against a plain strip or a
// triangle nothing has to match; that is said too.
func (m *maker) topJoins(best laid, top *pressTop) []Join {
	of := func(at ...seamSort) patchwork.Tally { return m.metAt(best, top, at) }
	press := m.plan.Press.Top
	var joins []Join
	switch {
	case m.frame.layout.Sashing != nil:
		joins = []Join{{joinSashing, patchwork.Tally{}}}
		if m.frame.stones() {
			joins = append(joins, Join{joinCornerstones, press.stones})
		}
	case m.frame.onPoint():
		joins = []Join{{joinColumns, of(inRow)}, {joinRows, of(betweenRows)}, {joinCorners, press.corners}, {joinTriangles, patchwork.Tally{}}}
	default:
		joins = []Join{{joinColumns, of(inRow)}, {joinRows, of(betweenRows)}, {joinCorners, press.corners}}
	}
	if m.job.hasBlockBorder() {
		joins = append(joins, Join{joinBorder, of(inBorder)}, Join{joinOnBorder, of(ofBorder).Plus(press.ring)})
	}
	return joins
}

// metAt is what blocks come to at some sorts of seam.
func (m *maker) metAt(best laid, top *pressTop, at []seamSort) patchwork.Tally {
	var some []patchwork.Meeting
	for i, k := range top.kinds {
		for _, a := range at {
			if k.at == a {
				some = append(some, best.meetings[i])
			}
		}
	}
	met := top.edges.Count(best.pressings, some, best.ways)
	return met.Columns.Plus(met.Rows)
}

// join is what one kind of join comes to; nothing where the top has none.
func (m *maker) join(between string) Join {
	for _, j := range m.plan.Joins {
		if j.Between == between {
			return j
		}
	}
	return Join{Between: between}
}
