package cloth

import (
	"slices"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// assigned gives each piece of a layout the next want of its size. A layout is
// assigned once, by the draft that it was made from.
func (d *draft) assigned(root *part) *part {
	root.leaves(func(q *part) {
		if q.kind != guillotine.Offcut {
			var written bool
			q.want, written = d.serve(q.kind)
			q.turned = q.turned != written
		}
	})
	return root
}

// lay enters a cloth cut into parts in the plan: its pieces, its usable offcuts
// and the lines along which it is cut. What squaring up takes lies to the left and
// at the bottom.
func (p *Plan) lay(s Settings, c Cloth, root *part) {
	root.place(s.SquareUp, s.SquareUp)
	root.leaves(func(q *part) {
		if q.kind == guillotine.Offcut {
			if min(q.size.Width, q.size.Height) >= s.Usable {
				c.Offcuts = append(c.Offcuts, Offcut{q.x, q.y, q.size})
			}
			return
		}
		c.Pieces = append(c.Pieces, Piece{Want: q.want, X: q.x, Y: q.y, Size: q.size, Turned: q.turned})
	})
	slices.SortStableFunc(c.Offcuts, func(a, b Offcut) int {
		return measure.Mul(b.Size.Width, b.Size.Height).Cmp(measure.Mul(a.Size.Width, a.Size.Height))
	})
	c.Lines = root.lines(nil)
	p.Cloths = append(p.Cloths, c)
}

// lines are the cuts between a part's parts, and within them.
func (p *part) lines(out []Line) []Line {
	for i, q := range p.parts {
		if i > 0 {
			l := Line{Step: p.step, X: q.x, Y: q.y, Upright: p.cut == guillotine.Upright}
			if l.Length = p.size.Width; l.Upright {
				l.Length = p.size.Height
			}
			out = append(out, l)
		}
		out = q.lines(out)
	}
	return out
}
