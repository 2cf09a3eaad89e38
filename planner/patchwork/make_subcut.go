package patchwork

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
)

// mostSegments bounds a strip set, so that a slip of the pen is told.
const mostSegments = 1000

// subcut cuts a strip set into equal segments, from its left edge.
func (m *maker) subcut(step Step) (Made, *Fault) {
	set, fault := m.unitOf(step.Of)
	if fault != nil {
		fault.Key = "subcut"
		return Made{}, fault
	}
	if fault := m.checkEvery(set, step.Every); fault != nil {
		fault.Key = "every"
		return Made{}, fault
	}
	made := Made{Yield: measure.FloorDiv(set.Size.Width+same, step.Every)}
	made.Loss.Width = max(set.Size.Width-step.Every.Times(made.Yield), 0)
	for at := step.Every; at < set.Size.Width-same; at += step.Every {
		if set.seamAlong(across, at) {
			return Made{}, &Fault{
				Key:  "every",
				What: fmt.Sprintf("the cut %s from the left edge of the set runs along a seam", at.Show(m.show)),
				Hint: "cut other segments",
			}
		}
		made.Cuts[across] = append(made.Cuts[across], at)
	}
	for i := range made.Yield {
		segment := set.segment(step.Every, i)
		if i == 0 {
			made.Unit = segment
		} else if !segment.like(made.Unit) {
			return Made{}, &Fault{
				Key:  "every",
				What: fmt.Sprintf("segment %d of %d is not like the first: other patches or seams lie in it", i+1, made.Yield),
				Hint: "sew a set of long strips, its seams from left to right",
			}
		}
	}
	made.RunCuts = len(made.Cuts[across])
	return made, nil
}

// checkEvery refuses segments that cannot be cut from a set.
func (m *maker) checkEvery(set Unit, every measure.Length) *Fault {
	if every <= 2*m.seam {
		return m.checkWide("a segment of", measure.Size{Width: every, Height: set.Size.Height})
	}
	if every >= set.Size.Width-same {
		return &Fault{
			What: fmt.Sprintf("the set is %s wide and the segments are %s: there is nothing to cut",
				set.Size.Width.Show(m.show), every.Show(m.show)),
			Hint: "sew a longer set or cut shorter segments",
		}
	}
	if n := measure.FloorDiv(set.Size.Width, every); n > mostSegments {
		return &Fault{
			What: fmt.Sprintf("the set would give %d segments, and %d is the most for one", n, mostSegments),
			Hint: "sew shorter sets",
		}
	}
	return nil
}

// segment is a piece of a set, counted from the left edge from 0.
func (u Unit) segment(every measure.Length, i int) Unit {
	left := every.Times(i)
	return u.seen(window{Point{left, 0}, Point{min(left+every, u.Size.Width), u.Size.Height}})
}

// like reports whether two units hold the same patches and seams in the same
// places.
func (u Unit) like(v Unit) bool {
	return slices.EqualFunc(u.Patches, v.Patches, func(p, q Patch) bool {
		return p.Role == q.Role && p.Quarters == q.Quarters && sameShape(p.Corners, q.Corners)
	}) && slices.EqualFunc(u.Seams, v.Seams, func(s, t Seam) bool {
		return s.A.near(t.A) && s.B.near(t.B) && s.Lean == t.Lean && s.Choice == t.Choice
	})
}

// sameShape reports whether two polygons have the same corners, whichever comes
// first: that depends on how they were cut.
func sameShape(p, q []Point) bool {
	first := slices.IndexFunc(q, p[0].near)
	return first >= 0 && slices.EqualFunc(p, append(q[first:len(q):len(q)], q[:first]...), Point.near)
}

// near reports whether two points count as one.
func (p Point) near(q Point) bool {
	return p.X-q.X <= same && q.X-p.X <= same && p.Y-q.Y <= same && q.Y-p.Y <= same
}
