package planner

import (
	"fmt"

	"quiltrun/planner/measure"
)

// checkSetting refuses a top that cannot be put together, before it is sized.
func (m *maker) checkSetting() {
	if b := m.frame.block; m.frame.onPoint() && b.Width != b.Height {
		m.refuse("layout.setting", fmt.Sprintf("blocks that finish %s cannot be set on point: the setting triangles are cut from squares", b.Show(m.job.Units)),
			"make square blocks, or set them straight")
		return
	}
	for _, r := range m.frame.rounds() {
		if r.ofBlocks() && !m.ringFits(r) {
			return
		}
	}
	if m.job.hasBlockBorder() {
		m.checkRings()
	}
}

// ringFits refuses a border of blocks that does not come out even round what is
// inside it, with the width of cloth between that would make it so.
func (m *maker) ringFits(r round) bool {
	block, at := m.frame.block, borderPath(r.nth)
	switch {
	case m.frame.onPoint():
		m.refuse(at, fmt.Sprintf("border %d is made of blocks, and round blocks on point it never comes out even: their diagonal is no whole number of sides", r.nth+1),
			"make it of cloth, or set the blocks straight")
	case block.Width != block.Height:
		m.refuse(at, fmt.Sprintf("border %d is made of blocks that finish %s: they would not meet at the corners", r.nth+1, block.Show(m.job.Units)),
			"make square blocks, or the border of cloth")
	case r.nth == 0 && m.job.Layout.Sashing != nil && !m.frame.edged():
		m.refuse(at, "with sashing only between, the border's blocks would meet the blocks inside out of step",
			"write edge: yes in the sashing, or put a border of cloth between")
	case r.inside.Width%block.Width != 0 || r.inside.Height%block.Height != 0:
		m.refuse(at, fmt.Sprintf("border %d is made of blocks that finish %s, and what it goes round is %s: that is no whole number of blocks",
			r.nth+1, m.sized(block), m.sized(r.inside)), m.spacerHint(r))
	default:
		return true
	}
	return false
}

// spacerHint says which border of cloth under a border of blocks would make it come
// out even: the nearest to the one that is there, or a new one.
func (m *maker) spacerHint(r round) string {
	side, now := m.frame.block.Width, measure.Length(0)
	if r.nth > 0 && !m.job.Borders[r.nth-1].ofBlocks() {
		now = m.job.Borders[r.nth-1].Width
	}
	bare := measure.Size{Width: r.inside.Width - 2*now, Height: r.inside.Height - 2*now}
	best := measure.Length(0)
	first := measure.CeilDiv(bare.Width+1, side)
	for n := first; n < first+measure.CeilDiv(2*now, side)+8; n++ {
		width := (side.Times(n) - bare.Width) / 2
		if (bare.Height+2*width)%side == 0 && (best == 0 || off(width, now) < off(best, now)) {
			best = width
		}
	}
	switch {
	case best == 0:
		return "no border of cloth between makes both ways come out even; make it of cloth, or change the sashing"
	case now > 0:
		return fmt.Sprintf("border %d would have to finish %s wide, not %s", r.nth, m.show(best), m.show(now))
	}
	return fmt.Sprintf("a border of cloth between that finishes %s wide would make it come out even", m.show(best))
}

func off(a, b measure.Length) measure.Length { return max(a-b, b-a) }

// checkRings counts the blocks of a quilt with borders of blocks: each border's by
// itself, then all of them.
func (m *maker) checkRings() {
	left, blocks := map[string]int{}, 0
	for _, c := range m.job.Colourways {
		left[c.Name] = c.Blocks
		blocks += c.Blocks
	}
	rings := ""
	for _, r := range m.frame.rounds() {
		if r.ofBlocks() {
			m.ringCounts(r, left)
			rings += fmt.Sprintf(", and %d in border %d", m.frame.ringBlocks(r), r.nth+1)
		}
	}
	if run := m.frame.count() * m.job.Quantity; run > MostBlocks {
		m.refuse("layout.across", fmt.Sprintf("the run has %d blocks; quiltrun plans at most %d", run, MostBlocks),
			"check across, down and quantity, or split the run into several jobs")
		return
	}
	if places := m.frame.count(); places != blocks {
		m.refuse("layout.across", fmt.Sprintf("the colourways have %s, but the quilt holds %d (%s%s)", counted(blocks, "block"), places, layoutWords(m.job.Layout), rings),
			countHint(blocks, places))
		return
	}
	m.mapCounts(left)
}

// ringCounts takes a border's blocks off what is left of each colourway.
func (m *maker) ringCounts(r round, left map[string]int) {
	places, sum := m.frame.ringBlocks(r), 0
	counts := make([]int, len(r.Blocks))
	for i, s := range r.Blocks {
		counts[i], sum = s.Blocks, sum+s.Blocks
	}
	if r.Counted && sum != places {
		m.refuse(borderPath(r.nth), fmt.Sprintf("border %d counts %s, but it is made of %d", r.nth+1, counted(sum, "block"), places),
			"make the counts add up, or write a list to deal round")
		return
	}
	takes := map[string]int{}
	for _, share := range inTurn(counts, r.Counted, places) {
		takes[r.Blocks[share].Colourway]++
	}
	for _, s := range r.Blocks {
		n := takes[s.Colourway]
		if n > left[s.Colourway] {
			m.refuse(borderPath(r.nth), fmt.Sprintf("border %d takes %s of %s, but there are only %d for it", r.nth+1, counted(n, "block"), s.Colourway, left[s.Colourway]),
				fmt.Sprintf("make %d more of them: a colourway's blocks are all of a quilt, its borders counted", n-left[s.Colourway]))
			return
		}
		left[s.Colourway] -= n
		takes[s.Colourway] = 0
	}
}

// mapCounts refuses a map that does not use what the borders leave of a colourway.
func (m *maker) mapCounts(left map[string]int) {
	if m.job.Layout.Order != Mapped || len(m.problems) > 0 {
		return
	}
	uses := map[string]int{}
	for _, row := range m.job.Layout.Map {
		for _, cell := range row {
			uses[cell.Colourway]++
		}
	}
	for _, c := range m.job.Colourways {
		if uses[c.Name] != left[c.Name] {
			m.refuse("layout.order", fmt.Sprintf("the map has %s %s, but the borders leave %s of that colourway", said(c.Name), times(uses[c.Name]), counted(left[c.Name], "block")),
				"make the two agree")
		}
	}
}

// borderPlans sizes the borders.
func (m *maker) borderPlans() {
	seams := 2 * m.job.Seam
	for _, r := range m.frame.rounds() {
		b := BorderPlan{
			Fabric: r.Fabric, Width: m.frame.widthOf(r.Border).Width, Inside: r.inside, Outside: r.outside,
			Sides: r.inside.Height + seams, Ends: r.outside.Width + seams,
		}
		b.Cut = b.Width + seams
		if r.ofBlocks() {
			b.Blocks = m.frame.ringBlocks(r)
		}
		m.plan.Borders = append(m.plan.Borders, b)
	}
}
