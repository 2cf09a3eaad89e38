package tracker

// board is a route with what is done of it: what all decisions look at.
type board struct {
	*route
	tallies []tally // by row
}

// newBoard is a route with nothing done.
func newBoard(r *route) *board {
	return &board{route: r, tallies: make([]tally, len(r.rows))}
}

// copied is a board that can be tried out without harm to this one.
func (b *board) copied() *board {
	c := &board{route: b.route, tallies: make([]tally, len(b.tallies))}
	for i, t := range b.tallies {
		c.tallies[i] = t.copied()
	}
	return c
}

// at is a row's counts by block in order of the blocks' ids; nil outside the
// rows that are counted by block.
func (b *board) at(row int) []int {
	if !b.byBlock(row) {
		return nil
	}
	at, _ := allocate(b.rows[row].PerBlock, b.namedAt(row), b.tallies[row].unnamed)
	return at
}

// namedAt is the counts that were named for each block, in order of the ids.
func (b *board) namedAt(row int) []int {
	ids := b.blocksOf(row)
	named := make([]int, len(ids))
	if t := b.tallies[row]; len(t.named) > 0 {
		for i, id := range ids {
			named[i] = t.named[id]
		}
	}
	return named
}

// done is what counts of a row: never more than its count.
func (b *board) done(row int) int {
	if !b.byBlock(row) {
		return min(b.rows[row].Count, b.tallies[row].all())
	}
	return total(b.at(row))
}

// left is what remains: done and left always make the count.
func (b *board) left(row int) int { return b.rows[row].Count - b.done(row) }

// spare is what was logged beyond what the row has room for: a revision made
// it smaller.
func (b *board) spare(row int) int { return b.tallies[row].all() - b.done(row) }

// doneAt is a row's counts at one block, 0 where it has none there.
func (b *board) doneAt(row int, block string) int {
	for i, n := range b.at(row) {
		if b.blocksOf(row)[i] == block {
			return n
		}
	}
	return 0
}

// through is how many blocks of a row's lot are through it, and of how many. A
// quilt of 0 stands for all quilts.
func (b *board) through(row, quilt int) (blocks, of int) {
	ids := b.blocksOf(row)
	for i, n := range b.at(row) {
		if quilt != 0 && b.live[ids[i]].Quilt != quilt {
			continue
		}
		of++
		if n == b.rows[row].PerBlock {
			blocks++
		}
	}
	return blocks, of
}

// total adds up counts by block.
func total(counts []int) int {
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return sum
}
