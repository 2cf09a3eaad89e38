package patchwork

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// cost is what a way of taking tied choices costs.
func (t *ties) cost(w Way) int64 {
	var sum int64
	for u, links := range t.links {
		for _, link := range links {
			if u < link.to && w[u] == w[link.to] {
				sum += link.cost
			}
		}
	}
	return sum
}

// wayNumber is the n-th way of taking so many choices, in their order.
func wayNumber(n, choices int) Way {
	w := make(Way, choices)
	for i := range w {
		w[i] = n>>(choices-1-i)&1 == 1
	}
	return w
}

// drawTies are ties of which some may be clashes.
func drawTies(t *rapid.T, choices int) *ties {
	drawn := newTies(choices)
	drawn.clash = rapid.SampledFrom([]int64{0, 1001}).Draw(t, "clash")
	for range rapid.IntRange(0, 2*choices).Draw(t, "pairs") {
		u, v := rapid.IntRange(0, choices-1).Draw(t, "u"), rapid.IntRange(0, choices-1).Draw(t, "v")
		if u != v {
			drawn.add(u, v, rapid.Int64Range(-3, 3).Draw(t, "cost")+drawn.clash*rapid.Int64Range(-1, 1).Draw(t, "clashes"))
		}
	}
	return drawn
}

// Every way tried in its order, the first of the cheapest kept; with some
// choices given.
func TestTheCheapestWayIsThatOfEveryWayTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		choices := rapid.IntRange(1, 10).Draw(t, "choices")
		drawn := drawTies(t, choices)
		given := map[int]bool{}
		for range rapid.IntRange(0, 2).Draw(t, "givens") {
			given[rapid.IntRange(0, choices-1).Draw(t, "given")] = rapid.Bool().Draw(t, "second")
		}
		var want Way
		for n := range 1 << choices {
			w := wayNumber(n, choices)
			if keeps(w, given) && (want == nil || drawn.cost(w) < drawn.cost(want)) {
				want = w
			}
		}
		for choice, second := range given {
			drawn.decide(choice, second)
		}
		got, exact := drawn.cheapest()
		require.True(t, exact)
		require.Equal(t, want, got)
	})
}

func keeps(w Way, given map[int]bool) bool {
	for choice, second := range given {
		if w[choice] != second {
			return false
		}
	}
	return true
}

// allOf is a net of all choices.
func (t *ties) allOf() net {
	all := make([]int, len(t.links))
	for i := range all {
		all[i] = i
	}
	return t.net(all)
}

// Small tables and branches find what large tables find.
func TestBranchesFindWhatTablesFind(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := drawTies(t, rapid.IntRange(1, 10).Draw(t, "choices")).allOf()
		cost, want, ok := n.solve(10, 0)
		require.True(t, ok)
		branched, got, ok := n.solve(rapid.IntRange(1, 3).Draw(t, "limit"), 10)
		require.True(t, ok)
		require.Equal(t, cost, branched)
		require.Equal(t, want, got)
	})
}

// Where clashes can all be avoided, choices move in sets, and the answer is that
// of the choices one by one.
func TestRigidSetsFindWhatChoicesFind(t *testing.T) {
	rigid := 0
	rapid.Check(t, func(t *rapid.T) {
		drawn := drawTies(t, rapid.IntRange(2, 10).Draw(t, "choices"))
		if rapid.Bool().Draw(t, "beside something decided") {
			drawn.decide(0, true)
		}
		group := drawn.group(len(drawn.links) - 1)
		n := drawn.net(group)
		r, ok := n.rigid(drawn.clash)
		if !ok {
			return
		}
		rigid++
		_, want, _ := n.solve(10, 0)
		_, sets, _ := r.net.solve(10, 0)
		require.Equal(t, want, r.way(sets))
	})
	assert.Positive(t, rigid)
}

// Too many choices that are all tied to one another are not searched; the way is
// one that no single choice taken otherwise makes cheaper, and says that it is
// not sure.
func TestWhatCannotBeSearchedIsNotCalledExact(t *testing.T) {
	const choices = 40
	all := newTies(choices)
	for u := range choices {
		for v := range u {
			all.add(u, v, int64(1+(u*7+v*3)%5))
		}
	}
	way, exact := all.cheapest()
	assert.False(t, exact)
	cost := all.cost(way)
	for i := range way {
		other := slices.Clone(way)
		other[i] = !other[i]
		assert.GreaterOrEqual(t, all.cost(other), cost)
	}
}

// A chain of 150 choices, each differing from the one before it, is more than
// can be ranked at once.
func TestManyChoicesAreDecidedInTheirOrder(t *testing.T) {
	chain := newTies(150)
	for i := 1; i < 150; i++ {
		chain.add(i-1, i, 1)
	}
	way, exact := chain.cheapest()
	assert.True(t, exact)
	for i, second := range way {
		assert.Equal(t, i%2 == 1, second, "choice %d", i)
	}
}
