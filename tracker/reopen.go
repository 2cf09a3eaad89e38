package tracker

import "slices"

// lowering takes counts off a board: off rows that somebody names, and off whatever
// follows them that cannot have been done without.
type lowering struct {
	*board
	before *board
	rows   []int // those that were touched, each once, in the order in which they were reached
	still  bool  // unnamed counts of later rows stay at their blocks: what is ripped there is gone
}

// lower begins to take counts off.
func (s State) lower() *lowering { return &lowering{board: s.board.copied(), before: s.board} }

// set gives a row its counts, by block where at says so, and reopens what follows
// where they are less than before.
func (l *lowering) set(row, count int, at []int) {
	if !slices.Contains(l.rows, row) {
		l.rows = append(l.rows, row)
	}
	was := l.done(row)
	ids, per := l.blocksOf(row), l.board.rows[row].PerBlock
	l.tallies[row].set(count, l.named(row, count, at), ids, per)
	if l.done(row) >= was && at == nil {
		return
	}
	for _, later := range l.next[row] {
		l.reopen(later)
	}
}

// named is the blocks of counts that would not lie at them of themselves.
func (l *lowering) named(row, count int, at []int) []BlockCount {
	if at == nil {
		return nil
	}
	try := l.copied()
	try.tallies[row].set(count, nil, l.blocksOf(row), l.board.rows[row].PerBlock)
	if slices.Equal(try.at(row), at) {
		return nil
	}
	return blockCounts(l.blocksOf(row), at)
}

// blockCounts is counts by block, those that are not 0.
func blockCounts(ids []string, at []int) []BlockCount {
	var named []BlockCount
	for i, n := range at {
		if n > 0 {
			named = append(named, BlockCount{ids[i], n})
		}
	}
	return named
}

// counts is what each row that was touched has now.
func (l *lowering) counts() []Part {
	var parts []Part
	for _, row := range l.rows {
		o, count := l.board.rows[row], l.tallies[row].all()
		p := Part{Operation: o.Key, Lot: o.Lot, Count: count}
		try := l.before.copied()
		try.tallies[row].set(count, nil, l.blocksOf(row), o.PerBlock)
		if !slices.Equal(try.at(row), l.at(row)) {
			p.Blocks = blockCounts(l.blocksOf(row), l.at(row))
		}
		parts = append(parts, p)
	}
	return parts
}

// gone is what each row that was touched has lost.
func (l *lowering) gone() []Part {
	var parts []Part
	for _, row := range l.rows {
		o := l.board.rows[row]
		p := Part{Operation: o.Key, Lot: o.Lot, Count: l.before.tallies[row].all() - l.tallies[row].all()}
		try := l.before.copied()
		try.rip(row, &p)
		if !slices.Equal(try.at(row), l.at(row)) {
			p.Blocks = blockCounts(l.blocksOf(row), l.lost(row))
			if p.Count = countOf(p.Blocks); p.Count == 0 {
				continue
			}
		}
		parts = append(parts, p)
	}
	return parts
}

// lost is a row's counts by block that are gone. A block may have gained: counts
// that it had no room for beside others' have moved on to it.
func (l *lowering) lost(row int) []int {
	lost := l.before.at(row)
	for i, n := range l.at(row) {
		lost[i] = max(0, lost[i]-n)
	}
	return lost
}

// countOf adds up counts by block.
func countOf(blocks []BlockCount) int {
	sum := 0
	for _, b := range blocks {
		sum += b.Count
	}
	return sum
}

// reopen lowers a row to what the rows before it allow. Cut pieces and units that
// are short do not tell whose kit lacks them, and a check that was made stays
// made: neither reopens anything.
func (l *lowering) reopen(row int) {
	if l.byBlock(row) {
		if at := l.allowedAt(row); !slices.Equal(at, l.at(row)) {
			l.set(row, total(at)+l.spare(row), at)
		}
		return
	}
	most := l.done(row)
	for _, r := range l.rules[row] {
		most = min(most, l.allowed(r))
	}
	if most < l.done(row) {
		l.set(row, most, nil)
	}
}

// allowedAt is a row's counts by block, as far as the blocks have what they take:
// with one pair of two a block has one of two pressed, and none of one unit.
// Unnamed counts move on to blocks that have.
func (l *lowering) allowedAt(row int) []int {
	ids, per := l.blocksOf(row), l.board.rows[row].PerBlock
	most := make([]int, len(ids))
	for i := range most {
		most[i] = per
	}
	for _, r := range l.rules[row] {
		if r.sort != eachBlock {
			continue
		}
		earlier := r.earlier[0]
		have, want := l.at(earlier), l.board.rows[earlier].PerBlock
		for i := range most {
			most[i] = min(most[i], per*have[i]/want)
		}
	}
	at, unnamed := l.namedAt(row), l.tallies[row].unnamed
	if l.still {
		at, unnamed = slices.Clone(l.at(row)), 0
	}
	for i := range at {
		at[i] = min(at[i], most[i])
		fill := min(most[i]-at[i], unnamed)
		at[i] += fill
		unnamed -= fill
	}
	return at
}

// allowed is how many counts of its later row a rule allows.
func (l *lowering) allowed(r *rule) int {
	have, of := 0, 0
	switch r.sort {
	case quiltBlocks:
		for _, earlier := range r.earlier {
			blocks, all := l.through(earlier, r.quilt)
			have, of = have+blocks, of+all
		}
	case proportion:
		have, of = l.done(r.earlier[0]), l.board.rows[r.earlier[0]].Count
	}
	if of == 0 {
		return l.board.rows[r.later].Count
	}
	return have * l.board.rows[r.later].Count / of
}

// TakenBeyond is the rows that took more from a pool of pieces or units than is
// made of it.
func (s State) TakenBeyond(key string, lot Lot) []Row {
	at, ok := s.find(key, lot)
	if !ok || s.board.done(at) >= s.board.allTaken(at) {
		return nil
	}
	var rows []Row
	for _, later := range s.board.next[at] {
		for _, r := range s.board.rules[later] {
			if r.sort == pool && r.earlier[0] == at && s.board.takenNow(r) > 0 {
				rows = append(rows, s.row(later))
			}
		}
	}
	return rows
}
