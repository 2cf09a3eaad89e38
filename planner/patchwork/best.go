package patchwork

// Best is the way of pressing with the fewest clashes in a block by itself;
// among those the one with the most nests, then with the fewest changes of
// direction, then the one listed first (the first choice taken the first way,
// and so on). The match points of a step count as often as a block has its unit,
// and once where only pooled steps take from it. It is exact as far as Edges.Best
// is, whose top of one block it is.
func (b *Build) Best() Way {
	ways, _ := NewEdges(b.Seam).Best([]Pressing{{Build: b, Blocks: 1}}, nil)
	return ways[0]
}

// weight is how often the match points of a step count.
func (m Made) weight() int { return max(m.Copies, 1) }

// consecutive reports whether a choice comes straight after the one before it
// in the same step: the next row, or the next row join.
func (b *Build) consecutive(i int) bool {
	before, choice := b.Choices[i-1], b.Choices[i]
	return before.Step == choice.Step && before.Between == choice.Between
}

// mostChanges is how often the direction could change in one block.
func (b *Build) mostChanges() int {
	n := 0
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) {
			n++
		}
	}
	return n
}

// Changes counts the changes of direction at the iron in one block: where, going
// down the rows of one step, or down its row joins, one is pressed another way
// than the one before it.
func (b *Build) Changes(w Way) int {
	n := 0
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) && w.second(i-1) != w.second(i) {
			n++
		}
	}
	return n
}
