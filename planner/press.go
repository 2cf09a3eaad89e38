package planner

import (
	"cmp"

	"quiltrun/planner/patchwork"
)

// PressRule is what decides the way of seams between two cloths.
type PressRule string

// The rules that a job file can ask for.
const (
	PressBest   PressRule = "best"   // whatever gives the fewest clashes
	PressPrint  PressRule = "print"  // toward the role print
	PressDarker PressRule = "darker" // toward the darker fabric
)

// Pattern is where in a top the second way of pressing lies.
type Pattern string

// The patterns, in the order in which they are preferred.
const (
	AllAlike  Pattern = "all alike"
	ByRows    Pattern = "rows"
	ByColumns Pattern = "columns"
	Chequered Pattern = "chequered"
)

var patterns = []Pattern{AllAlike, ByRows, ByColumns, Chequered}

// second reports whether a place, counted from zero, gets the second way.
func (p Pattern) second(row, column int) bool {
	switch p {
	case ByRows:
		return row%2 == 1
	case ByColumns:
		return column%2 == 1
	case Chequered:
		return (row+column)%2 == 1
	}
	return false
}

// The two ways of pressing a colourway's blocks.
const (
	variantA = "a"
	variantB = "b"
)

// PressPlan is how the blocks of a quilt are pressed so that they nest.
type PressPlan struct {
	Rule     PressRule
	RuleCost int            // clashes of one quilt that the rule costs over the best pressing
	Patterns []PatternCount // all four
	Chosen   Pattern
	Half     []string    // ids of blocks given half a turn at the layout, so that all are pressed alike
	Cards    []PressCard // for the iron: by colourway, then variant
	Top      TopPress    // between blocks
}

// PatternCount is what a pattern comes to over one quilt, its blocks pressed as
// well as they can be for it.
type PatternCount struct {
	Pattern Pattern
	Inside  patchwork.Tally // inside all blocks
	Between patchwork.Tally // at block columns and block rows
	Half    bool            // half turns at the layout do it, all blocks of a colourway pressed alike
	Exact   bool            // no way of pressing is better; false where too many kinds of block meet to try all
}

// PressCard is the directions at the iron for some blocks of a colourway.
type PressCard struct {
	Colourway string
	Variant   string // "a" or "b"
	Blocks    []string
	Steps     []PressStep
	Matches   patchwork.Tally      // all joins inside one such block
	Bulk      []patchwork.Junction // where seams meet inside one such block, and the layers of cloth there
}

// PressStep is the directions of one step: left or right for each of its rows,
// up or down for each join between rows.
type PressStep struct {
	Step        string
	Rows, Joins []string
}

// press finds how the blocks are best pressed, and so how they meet.
func (m *maker) press() {
	rule := cmp.Or(m.job.Press, PressBest)
	groups, of := m.pressGroups(rule)
	edges := patchwork.NewEdges(m.job.Seam)
	top := m.pressTop(groups, of, edges)
	best, counts := top.choose()
	m.pressed = pressedTop{best, top, of}
	m.plan.Press = PressPlan{Rule: rule, Patterns: counts, Chosen: best.pattern}
	if rule != PressBest {
		m.warnRule(rule)
		free, group := m.pressGroups(PressBest)
		unruled, _ := m.pressTop(free, group, edges).choose()
		// A rule can part colourways of one build, which then nest better.
		m.plan.Press.RuleCost = max(0, best.met.All().Clash-unruled.met.All().Clash)
	}
	m.pressBlocks(best, of)
	m.pressCards()
	m.plan.Press.Top = m.pressRows()
	m.plan.Joins = m.topJoins(best, top)
}

// pressBlocks gives every colourway its ways of pressing, and every block the
// one that is for it or its half turn. A colourway that lies in the first or the
// second places alone has one way only.
func (m *maker) pressBlocks(best laid, of []int) {
	for i := range m.plan.Colourways {
		var lies [2]bool // in first places, in second places
		for _, b := range m.own[i] {
			lies[boolean(m.second(best, b))] = true
		}
		c, places := &m.plan.Colourways[i], best.places[of[i]]
		c.TwoTops = m.pressed.top.groups[of[i]].same
		c.Press = best.ways[places[boolean(!lies[0])]]
		c.Matches = c.Build.BlockTally(c.Press)
		if lies[0] && lies[1] && best.needsCards(of[i]) {
			c.PressB = best.ways[places[1]]
		}
	}
	for i := range m.plan.Blocks {
		b := &m.plan.Blocks[i]
		b.Press = variantA
		switch colourway := m.colourwayOf[i]; {
		case !m.second(best, b):
		case best.half[of[colourway]]:
			b.Turn = (b.Turn + 180) % 360
			m.plan.Press.Half = append(m.plan.Press.Half, b.ID)
		case m.plan.Colourways[colourway].PressB != nil:
			b.Press = variantB
		}
	}
}

// second reports whether a block lies in one of the pattern's second places.
func (m *maker) second(l laid, b *Block) bool { return l.pattern.second(m.frame.sewnAt(b)) }
