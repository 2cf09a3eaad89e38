package planner

import "quiltrun/planner/patchwork"

// outline is how the seams lean that end at the edges of what has been sewn: along
// the upper and lower edge from the left, along the left and right one from the top.
// They are nil where a plain edge lies outside.
type outline struct{ upper, lower, left, right []int8 }

// pressRings finds how each border of blocks is pressed, from the inside out.
func (m *maker) pressRings(t *TopPress) {
	now := m.outlineInside()
	for _, r := range m.frame.rounds() {
		if !r.ofBlocks() {
			now = outline{}
			continue
		}
		if !r.touching {
			now = outline{}
		}
		across, down := m.frame.along(r)
		press, met := bestRing(now, across, down)
		press.Border = r.nth + 1
		t.Borders = append(t.Borders, press)
		t.ring = t.ring.Plus(met)
		now = press.outline(across, down)
	}
}

// outlineInside is the outline of a straight top: its outer rows are pressed as rows
// are, and the joins of rows down.
func (m *maker) outlineInside() outline {
	l := m.frame.layout
	if m.frame.onPoint() || l.Sashing != nil {
		return outline{}
	}
	return outline{
		upper: alike(rowLean(0), l.Across-1), lower: alike(rowLean(l.Down-1), l.Across-1),
		left: alike(1, l.Down-1), right: alike(1, l.Down-1),
	}
}

func alike(lean int8, n int) []int8 {
	all := make([]int8, n)
	for i := range all {
		all[i] = lean
	}
	return all
}

// bestRing tries all 64 ways of pressing a border's four strips and the two seams
// of its left and right one, and keeps the first with the fewest clashes.
func bestRing(inside outline, across, down int) (best RingPress, met patchwork.Tally) {
	for way := range 64 {
		lean := func(bit int) int8 { return 1 - 2*int8(way>>bit&1) }
		// The seams of the side strips are first tried away from the middle.
		r := RingPress{upper: lean(5), lower: lean(4), leftStrip: -lean(3), rightStrip: -lean(2), leftOn: -lean(1), onTo: lean(0)}
		tally := r.tally(inside, across)
		if way == 0 || tally.Clash < met.Clash {
			best, met = r, tally
		}
	}
	best.Upper, best.Lower = leanWord(best.upper, "left", "right"), leanWord(best.lower, "left", "right")
	best.Left, best.Right = leanWord(best.leftStrip, "up", "down"), leanWord(best.rightStrip, "up", "down")
	best.LeftSeam, best.RightSeam = leanWord(best.leftOn, "left", "right"), leanWord(best.onTo, "left", "right")
	return best, met
}

// tally is what the seams of a border's strips come to: against the seams that end
// at what it goes round, and against the seams of its own side strips.
func (r RingPress) tally(inside outline, across int) patchwork.Tally {
	t := against(r.leftStrip, inside.left).Plus(against(r.rightStrip, inside.right))
	t = t.Plus(against(r.upper, inside.upper)).Plus(against(r.lower, inside.lower))
	if across == 0 {
		return t
	}
	for _, strip := range []int8{r.upper, r.lower} {
		t = t.Plus(meets(strip, r.leftOn, 1)).Plus(meets(strip, r.onTo, 1))
	}
	return t
}

func against(strip int8, seams []int8) patchwork.Tally {
	var t patchwork.Tally
	for _, lean := range seams {
		t = t.Plus(meets(strip, lean, 1))
	}
	return t
}

// outline is that of a top with the border sewn on: its upper and lower strips are
// pressed outward.
func (r RingPress) outline(across, down int) outline {
	side := func(strip int8) []int8 { return append(append([]int8{-1}, alike(strip, down-1)...), 1) }
	return outline{
		upper: alike(r.upper, across+1), lower: alike(r.lower, across+1),
		left: side(r.leftStrip), right: side(r.rightStrip),
	}
}
