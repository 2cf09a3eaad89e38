package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Hand-worked: blocks of 2 counts, four blocks.
func TestCountsGoToTheLowestBlocksThatHaveRoom(t *testing.T) {
	for name, c := range map[string]struct {
		named   []int
		unnamed int
		want    []int
		spare   int
	}{
		"nothing":                        {[]int{0, 0, 0, 0}, 0, []int{0, 0, 0, 0}, 0},
		"unnamed fill from the lowest":   {[]int{0, 0, 0, 0}, 3, []int{2, 1, 0, 0}, 0},
		"named stay where they are":      {[]int{0, 0, 2, 0}, 0, []int{0, 0, 2, 0}, 0},
		"unnamed go round the named":     {[]int{2, 0, 1, 0}, 4, []int{2, 2, 2, 1}, 0},
		"a named one takes a place over": {[]int{1, 0, 0, 0}, 2, []int{2, 1, 0, 0}, 0},
		"the lot is full":                {[]int{1, 2, 0, 1}, 4, []int{2, 2, 2, 2}, 0},
		"more than the lot has room for": {[]int{0, 0, 0, 0}, 11, []int{2, 2, 2, 2}, 3},
		"more named than a block takes":  {[]int{3, 0, 0, 0}, 1, []int{2, 1, 0, 0}, 1},
		"no block at all":                {[]int{}, 4, []int{}, 4},
	} {
		at, spare := allocate(2, c.named, c.unnamed)
		assert.Equal(t, c.want, at, name)
		assert.Equal(t, c.spare, spare, name)
	}
}

// seat is one place of a block that takes a count, in the naive model.
type seat struct {
	block        int
	taken, named bool
}

// seats is the naive model of which blocks counts belong to: a row of seats,
// block by block. Who comes without a name takes the first free seat; who comes
// with one takes a seat of that block, and whoever sat there without a name
// moves on to the first free seat.
type seats []seat

func newSeats(blocks, perBlock int) seats {
	var all seats
	for b := range blocks {
		for range perBlock {
			all = append(all, seat{block: b})
		}
	}
	return all
}

func (s seats) sit() bool {
	for i := range s {
		if !s[i].taken {
			s[i].taken = true
			return true
		}
	}
	return false
}

func (s seats) sitAt(block int) bool {
	for i := range s {
		if s[i].block == block && !s[i].named {
			moves := s[i].taken
			s[i].taken, s[i].named = true, true
			return !moves || s.sit()
		}
	}
	return false
}

func (s seats) perBlock(blocks int) []int {
	at := make([]int, blocks)
	for _, seat := range s {
		if seat.taken {
			at[seat.block]++
		}
	}
	return at
}

func TestAllocationIsThatOfPeopleTakingSeats(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blocks, perBlock := rapid.IntRange(1, 6).Draw(t, "blocks"), rapid.IntRange(1, 4).Draw(t, "per block")
		model, named, unnamed := newSeats(blocks, perBlock), make([]int, blocks), 0
		for range rapid.IntRange(0, blocks*perBlock).Draw(t, "counts") {
			block := rapid.IntRange(-1, blocks-1).Draw(t, "block") // -1: nobody said which
			switch {
			case block < 0:
				assert.True(t, model.sit())
				unnamed++
			case named[block] < perBlock:
				assert.True(t, model.sitAt(block))
				named[block]++
			default:
				continue
			}
			at, spare := allocate(perBlock, named, unnamed)
			assert.Equal(t, model.perBlock(blocks), at)
			assert.Zero(t, spare)
		}
	})
}

func TestNamingABlockNeverChangesTheTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blocks, perBlock := rapid.IntRange(1, 6).Draw(t, "blocks"), rapid.IntRange(1, 4).Draw(t, "per block")
		named := make([]int, blocks)
		for i := range named {
			named[i] = rapid.IntRange(0, perBlock).Draw(t, "named")
		}
		unnamed := rapid.IntRange(1, blocks*perBlock+1).Draw(t, "unnamed")
		before, spareBefore := allocate(perBlock, named, unnamed)
		block := rapid.IntRange(0, blocks-1).Draw(t, "block")
		if named[block] == perBlock {
			return
		}
		named[block]++
		now, spareNow := allocate(perBlock, named, unnamed-1)
		assert.Equal(t, total(before)+spareBefore, total(now)+spareNow, "the same counts, one of them named")
		assert.Equal(t, total(before), total(now), "and as many have a place")
	})
}

func TestARecountKeepsNamedCountsAsFarAsTheNumberAllows(t *testing.T) {
	order := []string{"tide-01", "tide-02", "tide-03"}
	start := func() *tally {
		return &tally{unnamed: 3, named: map[string]int{"tide-01": 1, "tide-03": 3, "tide-09": 1}}
	}
	for name, c := range map[string]struct {
		count  int
		blocks []BlockCount
		want   tally
	}{
		"more lies there":            {8, nil, tally{unnamed: 5, named: map[string]int{"tide-01": 1, "tide-03": 2}}},
		"unnamed ones go first":      {3, nil, tally{unnamed: 0, named: map[string]int{"tide-01": 1, "tide-03": 2}}},
		"then the highest block":     {2, nil, tally{unnamed: 0, named: map[string]int{"tide-01": 1, "tide-03": 1}}},
		"nothing lies there":         {0, nil, tally{}},
		"no more than a block takes": {9, nil, tally{unnamed: 6, named: map[string]int{"tide-01": 1, "tide-03": 2}}},
		"blocks are named anew":      {4, []BlockCount{{"tide-02", 2}}, tally{unnamed: 2, named: map[string]int{"tide-02": 2}}},
	} {
		got := start()
		got.set(c.count, c.blocks, order, 2)
		assert.Equal(t, c.want, *got, name)
	}
}
