package tracker

// lack is what an earlier row is short of, for what is done of a later one.
type lack struct {
	rule       *rule
	block      string // the block that is not through it, "" where none is meant
	have, want int    // counts of the earlier row; for quiltBlocks blocks; at the block where one is meant
}

// earlier is the row that is short; of several colourways' the first.
func (l lack) earlier() int { return l.rule.earlier[0] }

// lacks is what a row is short of since before, the row's counts by block at
// that time: blocks that were touched earlier are none of today's business. A
// nil before stands for nothing done.
func (b *board) lacks(later int, before []int) []lack {
	var all []lack
	for _, r := range b.rules[later] {
		switch r.sort {
		case eachBlock:
			all = append(all, b.unfinished(r, before)...)
		case firstBlock:
			all = append(all, b.firstMissing(r)...)
		case pool:
			all = append(all, b.overdrawn(r, before)...)
		case quiltBlocks:
			all = append(all, b.quiltShort(r)...)
		case proportion:
			all = append(all, b.short(r)...)
		}
	}
	return all
}

// unfinished is the blocks that were touched before they were through.
func (b *board) unfinished(r *rule, before []int) []lack {
	var all []lack
	earlier := r.earlier[0]
	ids, want := b.blocksOf(earlier), b.rows[earlier].PerBlock
	have := b.at(earlier)
	for i, n := range b.at(r.later) {
		if n > atIndex(before, i) && have[i] < want {
			all = append(all, lack{rule: r, block: ids[i], have: have[i], want: want})
		}
	}
	return all
}

// atIndex is the i-th count, 0 where nothing was counted.
func atIndex(counts []int, i int) int {
	if i < len(counts) {
		return counts[i]
	}
	return 0
}

// firstMissing is the lot's first block where it has to be through and is not.
func (b *board) firstMissing(r *rule) []lack {
	earlier := r.earlier[0]
	ids, want := b.blocksOf(earlier), b.rows[earlier].PerBlock
	if len(ids) == 0 || b.done(r.later) == 0 {
		return nil
	}
	if have := b.at(earlier)[0]; have < want {
		return []lack{{rule: r, block: ids[0], have: have, want: want}}
	}
	return nil
}

// overdrawn is a pool of cut pieces or units from which more was taken than it
// has.
func (b *board) overdrawn(r *rule, before []int) []lack {
	if b.takenNow(r) <= b.taken(r, before) {
		return nil
	}
	earlier := r.earlier[0]
	if have, want := b.done(earlier), b.allTaken(earlier); have < want {
		return []lack{{rule: r, have: have, want: want}}
	}
	return nil
}

// takenNow is what the later row has taken from a pool.
func (b *board) takenNow(r *rule) int {
	if b.byBlock(r.later) {
		return b.taken(r, b.at(r.later))
	}
	done, count := b.done(r.later), b.rows[r.later].Count
	switch {
	case done == count || count == 0:
		return r.takes[""]
	case r.makes > 0:
		return (done + r.makes - 1) / r.makes
	}
	return (r.takes[""]*done + count - 1) / count // what is begun is taken
}

// taken is the pieces that blocks took, the later row's counts by block given.
// A block that was begun has taken all of its pieces.
func (b *board) taken(r *rule, counts []int) int {
	sum := 0
	ids := b.blocksOf(r.later)
	for i, n := range counts {
		if n > 0 {
			sum += r.takes[ids[i]]
		}
	}
	return sum
}

// allTaken is what all rows together took from a pool.
func (b *board) allTaken(earlier int) int {
	sum := 0
	for _, later := range b.next[earlier] {
		for _, r := range b.rules[later] {
			if r.sort == pool && r.earlier[0] == earlier {
				sum += b.takenNow(r)
			}
		}
	}
	return sum
}

// quiltShort is a quilt that was worked on before enough of its blocks were
// through.
func (b *board) quiltShort(r *rule) []lack {
	have, of := 0, 0
	for _, earlier := range r.earlier {
		blocks, all := b.through(earlier, r.quilt)
		have += blocks
		of += all
	}
	if want := b.needed(r.later, of); have < want {
		return []lack{{rule: r, have: have, want: want}}
	}
	return nil
}

// short is a row that is not as far on as one that comes after it.
func (b *board) short(r *rule) []lack {
	earlier := r.earlier[0]
	if have, want := b.done(earlier), b.needed(r.later, b.rows[earlier].Count); have < want {
		return []lack{{rule: r, have: have, want: want}}
	}
	return nil
}

// needed is the share of the earlier count that the later row's done counts
// stand for, rounded up: the last count of a row needs everything before it.
func (b *board) needed(later, earlierCount int) int {
	count := b.rows[later].Count
	if count == 0 {
		return 0
	}
	return (earlierCount*b.done(later) + count - 1) / count
}
