package patchwork

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// better reports whether a tally with so many changes comes before another.
func better(a Tally, changesA int, b Tally, changesB int) bool {
	switch {
	case a.Clash != b.Clash:
		return a.Clash < b.Clash
	case a.Nest != b.Nest:
		return a.Nest > b.Nest
	default:
		return changesA < changesB
	}
}

// changes counts the changes of direction down the rows and down the row joins
// of each step.
func changes(b *Build, w Way) int {
	last, n := map[string]bool{}, 0
	for i, c := range b.Choices {
		key := fmt.Sprint(c.Step, c.Between)
		if before, ok := last[key]; ok && before != w[i] {
			n++
		}
		last[key] = w[i]
	}
	return n
}

// weighed is the tally of a block with the work for pools counted once.
func weighed(b *Build, w Way) Tally {
	t := b.BlockTally(w)
	for _, m := range b.Steps {
		if m.Copies == 0 {
			t = t.Plus(b.Tally(m.Joins, w))
		}
	}
	return t
}

// everyWay tries all ways in their order and keeps the first of the best.
func everyWay(b *Build) Way {
	n := len(b.Choices)
	var best Way
	for code := range 1 << n {
		w := make(Way, n)
		for i := range w {
			w[i] = code>>(n-1-i)&1 == 1
		}
		if best == nil || better(weighed(b, w), changes(b, w), weighed(b, best), changes(b, best)) {
			best = w
		}
	}
	return best
}

func TestBestIsThatOfEveryWayTried(t *testing.T) {
	for name, r := range builtIns() {
		b := made(t, r, quarter)
		assert.Equal(t, everyWay(b), b.Best(), name)
	}
	tried := 0
	forRecipes(t, func(t *rapid.T, b *Build) {
		if len(b.Choices) <= 13 {
			tried++
			require.Equal(t, everyWay(b), b.Best())
		}
	})
	assert.Positive(t, tried)
}

func builtIns() map[string]Recipe {
	return map[string]Recipe{
		"plain square":       PlainSquare(6 * measure.Inch),
		"four-patch":         FourPatch(5 * measure.Inch),
		"nine-patch":         NinePatch(5 * measure.Inch),
		"four-patch recut":   FourPatchRecut(5*measure.Inch, measure.Inch, nil),
		"nine-patch recut":   NinePatchRecut(5*measure.Inch, nil),
		"quarters turned":    NinePatchRecut(5*measure.Inch, [][]int{{0, 90}, {270, 180}}),
		"middle turned":      FourPatchRecut(5*measure.Inch, measure.Inch, [][]int{{0, 0, 0}, {0, 90, 0}, {0, 0, 0}}),
		"half-squares":       HalfSquares(3*measure.Inch, 8),
		"pinwheel":           Pinwheel(3*measure.Inch, 4),
		"hourglass":          Hourglass(3 * measure.Inch),
		"pinwheel recut":     PinwheelRecut(6*measure.Inch, 2, 0, nil),
		"hourglass recut":    HourglassRecut(6*measure.Inch, 8, 0, nil),
		"rail":               Rail([]string{"a", "b", "a"}, 2*measure.Inch, 6*measure.Inch),
		"four-patches twice": twice(FourPatch(3*measure.Inch), "units"),
		"nine-patches twice": twice(NinePatch(3*measure.Inch), "nine-patch"),
	}
}

// twice sews four of a unit, two of them given a quarter turn.
func twice(r Recipe, unit string) Recipe {
	r.Steps = append(r.Steps, Step{Name: "large", Do: Sew, Rows: [][]Cell{
		{{Of: unit}, {Of: unit, Quarters: 1}}, {{Of: unit, Quarters: 1}, {Of: unit}},
	}})
	return r
}

// Match points of a step count as often as a block has its unit: pressing that
// spares one clash in each of four units beats sparing three in one.
func TestBestWeighsStepsByTheirCopies(t *testing.T) {
	clash := func(choice, n int) []SewnJoin {
		var join SewnJoin
		for range n {
			join.Matches = append(join.Matches, Match{Leans: []Signed{{choice, +1}, {1 - choice, +1}}})
		}
		return []SewnJoin{join}
	}
	nest := clash(0, 3)
	for i := range nest[0].Matches {
		nest[0].Matches[i].Leans[1].Along = -1
	}
	b := &Build{Choices: []Choice{{Step: "unit"}, {Step: "block"}}, Steps: []Made{
		{Copies: 4, Joins: clash(0, 1)}, {Copies: 1, Joins: nest},
	}}
	assert.Equal(t, Way{false, true}, b.Best())
	assert.Equal(t, Tally{Nest: 4, Clash: 3}, b.BlockTally(b.Best()))
}

// Where tables would grow too wide the search branches; the answer stays.
func TestBranchingFindsTheSameWay(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		if len(b.Choices) == 0 || len(b.Choices) > 20 {
			return
		}
		block := []Pressing{{Build: b, Blocks: 1}}
		numbers, choices := numbered(block)
		whole := newTies(choices)
		NewEdges(b.Seam).tie(whole, block, nil, nil, numbers)
		n := whole.allOf()
		least, best, ok := n.solve(20, 0)
		require.True(t, ok)
		for _, limit := range []int{1, 2} {
			sum, way, ok := n.solve(limit, 20)
			require.True(t, ok)
			assert.Equal(t, least, sum)
			assert.Equal(t, best, way)
		}
	})
}

// Random match points over few choices, not only those that recipes make:
// three seams and more in one place, and near misses, which weigh nothing.
func TestBestOfRandomMatchesIsThatOfEveryWayTried(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 9).Draw(t, "choices")
		b := &Build{}
		for i := range n {
			b.Choices = append(b.Choices, Choice{Step: rapid.SampledFrom([]string{"a", "b"}).Draw(t, "step"), Row: i})
		}
		lean := rapid.Custom(func(t *rapid.T) Signed {
			return Signed{rapid.IntRange(0, n-1).Draw(t, "choice"), rapid.SampledFrom([]int8{-1, 0, 1}).Draw(t, "along")}
		})
		match := rapid.Custom(func(t *rapid.T) Match {
			return Match{Near: rapid.IntRange(0, 5).Draw(t, "near") == 0, Leans: rapid.SliceOfN(lean, 2, 4).Draw(t, "leans")}
		})
		for range rapid.IntRange(1, 3).Draw(t, "steps") {
			b.Steps = append(b.Steps, Made{
				Copies: rapid.IntRange(1, 3).Draw(t, "copies"),
				Joins:  []SewnJoin{{Matches: rapid.SliceOfN(match, 0, 6).Draw(t, "matches")}},
			})
		}
		require.Equal(t, tryAdjacent(b), b.Best())
	})
}

// tryAdjacent is everyWay for choices of any order: a change of direction is
// between neighbours of one step.
func tryAdjacent(b *Build) Way {
	n := len(b.Choices)
	count := func(w Way) (sum int) {
		for i := 1; i < n; i++ {
			if b.Choices[i-1].Step == b.Choices[i].Step && w[i-1] != w[i] {
				sum++
			}
		}
		return sum
	}
	var best Way
	for code := range 1 << n {
		w := make(Way, n)
		for i := range w {
			w[i] = code>>(n-1-i)&1 == 1
		}
		if best == nil || better(b.BlockTally(w), count(w), b.BlockTally(best), count(best)) {
			best = w
		}
	}
	return best
}

// More choices than one order ranks: 40 rows of 3 squares and their 39 joins.
// Rows go left, right, left ..., joins all up (hand-worked).
func TestBestOfMoreChoicesThanOneOrderRanks(t *testing.T) {
	r := PlainSquare(2 * measure.Inch)
	r.Steps = append(r.Steps, Step{Name: "top", Do: Sew, Rows: gridOf("square", 40, 3)})
	b := made(t, r, quarter)
	want := make(Way, 79)
	require.Len(t, b.Choices, len(want))
	for i := 1; i < 40; i += 2 {
		want[i] = true
	}
	assert.Equal(t, want, b.Best())
	assert.Equal(t, Tally{Nest: 78}, b.BlockTally(want))
}
