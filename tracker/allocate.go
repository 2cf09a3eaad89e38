package tracker

import "maps"

// allocate says which blocks the counts of one row belong to. Blocks come in
// order of their ids; perBlock counts make one. Counts that were named sit at
// their blocks; unnamed ones fill the lowest blocks that have room beside them.
// Naming so takes a place over from an unnamed count, which moves on, and no
// count is lost by it. Spare is what no block has room for.
func allocate(perBlock int, named []int, unnamed int) (at []int, spare int) {
	at = make([]int, len(named))
	for i, n := range named {
		at[i] = min(n, perBlock)
		spare += n - at[i]
		fill := min(perBlock-at[i], unnamed)
		at[i] += fill
		unnamed -= fill
	}
	return at, spare + unnamed
}

// tally is what was logged of one row.
type tally struct {
	unnamed int
	named   map[string]int // by block id, retired blocks too
}

// put adds counts: blocks name where they belong; without, nobody said.
func (t *tally) put(count int, blocks []BlockCount) {
	for _, b := range blocks {
		if t.named == nil {
			t.named = map[string]int{}
		}
		t.named[b.Block] += b.Count
		count -= b.Count
	}
	t.unnamed += count
}

// set makes the tally what lies on the table. Without blocks the named counts
// stay where they are as far as the number and their blocks allow: unnamed ones
// go first, then those of the highest ids. Order is the lot's blocks in order of
// their ids, of perBlock counts each.
func (t *tally) set(count int, blocks []BlockCount, order []string, perBlock int) {
	before := t.named
	*t = tally{}
	if len(blocks) > 0 {
		t.put(count, blocks)
		return
	}
	for _, id := range order {
		if keep := min(before[id], perBlock, count); keep > 0 {
			t.put(keep, []BlockCount{{Block: id, Count: keep}})
			count -= keep
		}
	}
	t.unnamed = count
}

// copied is a tally that can be changed without harm to this one.
func (t tally) copied() tally {
	return tally{unnamed: t.unnamed, named: maps.Clone(t.named)}
}

// all is every count of the tally, with and without room.
func (t *tally) all() int {
	sum := t.unnamed
	for _, n := range t.named {
		sum += n
	}
	return sum
}
