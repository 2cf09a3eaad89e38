package cloth

import (
	"slices"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// lay enters a cloth cut into parts in the plan: its pieces, each for the next
// want of its size, and its usable offcuts. What squaring up takes lies to the
// left and at the bottom.
func (p *Plan) lay(d *draft, c Cloth, root *part) {
	root.place(d.settings.SquareUp, d.settings.SquareUp)
	root.leaves(func(q *part) {
		if q.kind == guillotine.Offcut {
			if min(q.size.Width, q.size.Height) >= d.settings.Usable {
				c.Offcuts = append(c.Offcuts, Offcut{q.x, q.y, q.size})
			}
			return
		}
		var written bool
		q.want, written = d.serve(q.kind)
		c.Pieces = append(c.Pieces, Piece{Want: q.want, X: q.x, Y: q.y, Size: q.size, Turned: q.turned != written})
	})
	slices.SortStableFunc(c.Offcuts, func(a, b Offcut) int {
		return measure.Mul(b.Size.Width, b.Size.Height).Cmp(measure.Mul(a.Size.Width, a.Size.Height))
	})
	p.Cloths = append(p.Cloths, c)
}
