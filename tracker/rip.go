package tracker

// rip takes counts of a row apart again: from the blocks that are named, else
// from the unnamed counts and then from the highest blocks. What was never there
// cannot be taken.
func (b *board) rip(row int, p *Part) {
	t, per := &b.tallies[row], b.rows[row].PerBlock
	if len(p.Blocks) == 0 {
		t.set(max(0, t.all()-p.Count), nil, b.blocksOf(row), per)
		return
	}
	gone := map[string]int{}
	for _, block := range p.Blocks {
		gone[block.Block] += block.Count
	}
	var kept []BlockCount
	count := b.spare(row)
	ids := b.blocksOf(row)
	for i, n := range b.at(row) {
		if n = max(0, n-gone[ids[i]]); n > 0 {
			kept = append(kept, BlockCount{ids[i], n})
			count += n
		}
	}
	t.set(count, kept, ids, per)
}
