package planner

import (
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// ending is a seam that ends at an edge of what has been sewn: how far along the
// edge, from its left or upper end, finished, and how it leans along it.
type ending struct {
	at   measure.Length
	lean int8
}

// outline is the seams that end at the four edges of what has been sewn. Those inside
// blocks are not among them: where blocks lie against blocks, these meet as blocks do.
type outline struct{ upper, lower, left, right []ending }

// pressRings finds how each border of blocks is pressed, from the inside out.
func (m *maker) pressRings(t *TopPress) {
	if !m.job.hasBlockBorder() {
		return
	}
	now := m.outlineInside(t)
	for _, r := range m.frame.rounds() {
		if !r.ofBlocks() {
			now = borderOutline(r)
			continue
		}
		g := ring{block: m.frame.block.Width, seam: m.job.Seam, round: r}
		g.across, g.down = m.frame.along(r)
		press, met := g.best(now)
		press.Border = r.nth + 1
		t.Borders = append(t.Borders, press)
		t.ring = t.ring.Plus(met)
		now = g.outline(press)
	}
}

// outlineInside is the outline of what is inside all borders: its outer rows are
// pressed as rows are, and the joins of rows down, or toward the sashing.
func (m *maker) outlineInside(t *TopPress) outline {
	f, l := m.frame, m.frame.layout
	if l.Sashing != nil {
		return f.sashOutline(t)
	}
	var o outline
	for c := 1; c < l.Across; c++ {
		o.upper = append(o.upper, ending{f.x(c), rowLean(0)})
		o.lower = append(o.lower, ending{f.x(c), rowLean(l.Down - 1)})
	}
	for r := 1; r < l.Down; r++ {
		o.left = append(o.left, ending{f.y(r), 1})
	}
	o.right = o.left
	return o
}

// sashOutline is the outline of a top with sashing all round: above and below, the
// seams of cornerstones; at the sides, the joins of rows.
func (f frame) sashOutline(t *TopPress) outline {
	var o outline
	if f.stones() {
		for c := range f.layout.Across {
			o.upper = append(o.upper, ending{f.x(c), t.stoneWay.right}, ending{f.x(c) + f.block.Width, t.stoneWay.left})
		}
	}
	for r := range f.layout.Down {
		o.left = append(o.left, ending{f.y(r), -1}, ending{f.y(r) + f.block.Height, 1})
	}
	o.lower, o.right = o.upper, o.left
	return o
}

// borderOutline is that of a top with a border of cloth: its ends lie over its sides,
// pressed outward.
func borderOutline(r round) outline {
	sides := []ending{{r.Width, -1}, {r.outside.Height - r.Width, 1}}
	return outline{left: sides, right: sides}
}

// ring is a border of blocks that is to be pressed.
type ring struct {
	round
	block, seam  measure.Length
	across, down int // blocks along the inside
}

// best tries all 64 ways of pressing a border's four strips and the two seams of its
// left and right one, and keeps the first with the fewest clashes.
func (g ring) best(inside outline) (best RingPress, met patchwork.Tally) {
	for way := range 64 {
		lean := func(bit int) int8 { return 1 - 2*int8(way>>bit&1) }
		// The seams of the side strips are first tried away from the middle.
		p := RingPress{upper: lean(5), lower: lean(4), leftStrip: -lean(3), rightStrip: -lean(2), leftOn: -lean(1), onTo: lean(0)}
		tally := g.tally(p, inside)
		if way == 0 || tally.Clash < met.Clash {
			best, met = p, tally
		}
	}
	best.Upper, best.Lower = leanWord(best.upper, "left", "right"), leanWord(best.lower, "left", "right")
	best.Left, best.Right = leanWord(best.leftStrip, "up", "down"), leanWord(best.rightStrip, "up", "down")
	best.LeftSeam, best.RightSeam = leanWord(best.leftOn, "left", "right"), leanWord(best.onTo, "left", "right")
	return best, met
}

// tally is what the seams of a border's strips come to: against the seams that end
// at what it goes round, and of the upper and lower one against those of the sides.
func (g ring) tally(p RingPress, inside outline) patchwork.Tally {
	t := g.against(p.leftStrip, g.down-1, 0, inside.left).Plus(g.against(p.rightStrip, g.down-1, 0, inside.right))
	width := g.block.Times(g.across)
	ends := []ending{{0, p.leftOn}, {width, p.onTo}}
	return t.Plus(g.against(p.upper, g.across+1, g.block, append(inside.upper[:len(inside.upper):len(inside.upper)], ends...))).
		Plus(g.against(p.lower, g.across+1, g.block, append(inside.lower[:len(inside.lower):len(inside.lower)], ends...)))
}

// together is how close seams come to count as meeting: 1/64 in, as inside blocks.
const together = measure.Inch / 64

// against counts what the seams of a strip that leans so come to, each a block from
// the one before, where seams of the other side end. Before is how far the strip
// reaches beyond that side.
func (g ring) against(lean int8, seams int, before measure.Length, endings []ending) patchwork.Tally {
	var t patchwork.Tally
	for _, e := range endings {
		n := int((e.at + before + g.block/2) / g.block) // the nearest seam of the strip
		if n < 1 || n > seams {
			continue
		}
		switch off := off(g.block.Times(n), e.at+before); {
		case off <= together:
			t = t.Plus(meets(lean, e.lean, 1))
		case off < g.seam:
			t.Near++
		}
	}
	return t
}

// outline is that of a top with the border sewn on: its upper and lower strips are
// pressed outward.
func (g ring) outline(p RingPress) outline {
	strip := func(lean int8, seams int) []ending {
		all := make([]ending, seams)
		for i := range all {
			all[i] = ending{g.block.Times(i + 1), lean}
		}
		return all
	}
	side := func(lean int8) []ending {
		all := strip(lean, g.down+1)
		all[0].lean, all[g.down].lean = -1, 1
		return all
	}
	return outline{
		upper: strip(p.upper, g.across+1), lower: strip(p.lower, g.across+1),
		left: side(p.leftStrip), right: side(p.rightStrip),
	}
}
