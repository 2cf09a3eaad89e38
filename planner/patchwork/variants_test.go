package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
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

func drawTies(t *rapid.T, choices int) *ties {
	drawn := newTies(choices)
	for range rapid.IntRange(0, 2*choices).Draw(t, "pairs") {
		u, v := rapid.IntRange(0, choices-1).Draw(t, "u"), rapid.IntRange(0, choices-1).Draw(t, "v")
		if u != v {
			drawn.add(u, v, rapid.Int64Range(-3, 3).Draw(t, "cost"))
		}
	}
	return drawn
}

// Every way tried in its order, the first of the cheapest kept; with some
// choices given, and whether the search may use wide tables or must branch.
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
			for choice, second := range given {
				if w[choice] != second {
					w = nil
					break
				}
			}
			if w != nil && (want == nil || drawn.cost(w) < drawn.cost(want)) {
				want = w
			}
		}
		all := make([]int, choices)
		for i := range all {
			all[i] = i
		}
		if len(given) == 0 {
			_, branched := drawn.net(all).solve(rapid.IntRange(1, 3).Draw(t, "limit"))
			require.Equal(t, want, branched)
		}
		for choice, second := range given {
			drawn.decide(choice, second)
		}
		require.Equal(t, want, drawn.cheapest())
	})
}

// A chain of 150 choices, each differing from the one before it, is more than
// can be ranked at once.
func TestManyChoicesAreDecidedInTheirOrder(t *testing.T) {
	chain := newTies(150)
	for i := 1; i < 150; i++ {
		chain.add(i-1, i, 1)
	}
	for i, second := range chain.cheapest() {
		assert.Equal(t, i%2 == 1, second, "choice %d", i)
	}
}

// A block by itself is a top of one block: two searches that share nothing give
// one answer.
func TestATopOfOneBlockIsPressedAsTheBlock(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		require.Equal(t, b.Best(), NewEdges(b.Seam).Best([]Pressing{{Build: b, Blocks: 1}}, nil)[0])
	})
}

// drawTop is a small top: two pressings, of one build or of two that finish
// alike, and some meetings between them, blocks turned by half turns.
func drawTop(t *rapid.T) ([]Pressing, []Meeting, measure.Length) {
	builds := []Recipe{
		FourPatch(5 * measure.Inch), FourPatchRecut(5*measure.Inch, measure.Inch, nil),
		FourPatchRecut(5*measure.Inch, 3*measure.Inch/2, nil),
		FourPatchRecut(5*measure.Inch, measure.Inch, [][]int{{0, 0, 0}, {0, 90, 0}, {0, 0, 0}}),
		NinePatch(5 * measure.Inch), NinePatchRecut(5*measure.Inch, nil), NinePatchRecut(5*measure.Inch, [][]int{{0, 90}, {270, 180}}),
	}
	pressings := make([]Pressing, 2)
	for i := range pressings {
		b, err := Make(rapid.SampledFrom(builds).Draw(t, "build"), quarter, measure.Inches)
		require.NoError(t, err)
		pressings[i] = Pressing{Build: b, Blocks: rapid.IntRange(0, 5).Draw(t, "blocks")}
		if rapid.Bool().Draw(t, "some given") {
			pressings[i].Given = []Given{{rapid.IntRange(0, len(b.Choices)-1).Draw(t, "choice"), rapid.Bool().Draw(t, "second")}}
		}
	}
	if rapid.Bool().Draw(t, "one build") {
		pressings[1].Build, pressings[1].Given = pressings[0].Build, pressings[0].Given
	}
	face := rapid.Custom(func(t *rapid.T) Face {
		return Face{rapid.IntRange(0, 1).Draw(t, "pressing"), rapid.IntRange(0, 3).Draw(t, "quarters")}
	})
	meetings := make([]Meeting, rapid.IntRange(0, 6).Draw(t, "meetings"))
	for i := range meetings {
		meetings[i] = Meeting{face.Draw(t, "first"), face.Draw(t, "second"), rapid.Bool().Draw(t, "above"), rapid.IntRange(1, 9).Draw(t, "count")}
	}
	return pressings, meetings, quarter
}

// counted counts a top join by join, from the edges of its blocks as they lie.
func counted(pressings []Pressing, meetings []Meeting, seam measure.Length, ways []Way) Met {
	var met Met
	for i, p := range pressings {
		met.Inside = met.Inside.Plus(p.Build.BlockTally(ways[i]).Times(p.Blocks))
		met.Changes += p.Blocks * changes(p.Build, ways[i])
	}
	edge := func(f Face, side Side) ([]Crossing, measure.Length) {
		block := pressings[f.Pressing].Build.Block().Turned(f.Quarters)
		return Crossings(block, side, seam, ways[f.Pressing]), block.Size.Width
	}
	for _, m := range meetings {
		one, other, sum := RightSide, LeftSide, &met.Columns
		if m.Above {
			one, other, sum = BottomSide, TopSide, &met.Rows
		}
		a, length := edge(m.First, one)
		b, _ := edge(m.Second, other)
		*sum = sum.Plus(Meet(a, b, length, seam).Times(m.Count))
	}
	return met
}

func TestATopIsCountedAsItsJoinsAre(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		pressings, meetings, seam := drawTop(t)
		var ways []Way
		for _, p := range pressings {
			n := len(p.Build.Choices)
			ways = append(ways, wayNumber(rapid.IntRange(0, 1<<n-1).Draw(t, "way"), n))
		}
		got := NewEdges(seam).Count(pressings, meetings, ways)
		assert.LessOrEqual(t, got.Least, got.All().Clash)
		got.Least = 0
		require.Equal(t, counted(pressings, meetings, seam, ways), got)
	})
}

// Every pair of ways tried in its order: none is better than the one found, and
// of equals it is the first. Blocks that are not there are pressed the first
// way, as are choices that change nothing.
func TestTheBestPressingOfATopIsThatOfEveryPairTried(t *testing.T) {
	top := func(t *rapid.T) {
		pressings, meetings, seam := drawTop(t)
		edges := NewEdges(seam)
		one, other := len(pressings[0].Build.Choices), len(pressings[1].Build.Choices)
		var want []Way
		var best Met
		for n := range 1 << (one + other) {
			ways := []Way{wayNumber(n>>other, one), wayNumber(n&(1<<other-1), other)}
			if !follows(pressings, ways) {
				continue
			}
			met := edges.Count(pressings, meetings, ways)
			if want == nil || better(met.All(), met.Changes, best.All(), best.Changes) {
				want, best = ways, met
			}
		}
		require.Equal(t, want, edges.Best(pressings, meetings))
	}
	rapid.Check(t, top)
}

func follows(pressings []Pressing, ways []Way) bool {
	for i, p := range pressings {
		for _, g := range p.Given {
			if ways[i][g.Choice] != g.Second {
				return false
			}
		}
	}
	return true
}
