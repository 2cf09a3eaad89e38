package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// drawTop is a small top: two pressings, of one build or of two that finish
// alike, and some meetings between them, blocks turned by half turns.
func drawTop(t *rapid.T) ([]Pressing, []Meeting, measure.Length) {
	builds := []Recipe{
		FourPatch(5 * measure.Inch), FourPatchRecut(5*measure.Inch, measure.Inch, nil),
		FourPatchRecut(5*measure.Inch, 3*measure.Inch/2, nil),
		FourPatchRecut(5*measure.Inch, measure.Inch, [][]int{{0, 0, 0}, {0, 90, 0}, {0, 0, 0}}),
		NinePatch(5 * measure.Inch), NinePatchRecut(5*measure.Inch, nil), NinePatchRecut(5*measure.Inch, [][]int{{0, 90}, {270, 180}}),
		ninePatchOfSets(5*measure.Inch, 40*measure.Inch),
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
		pressings[1].OnePool = rapid.Bool().Draw(t, "one pool")
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
// way, as are choices that change nothing. Units of one pool are pressed alike.
func TestTheBestPressingOfATopIsThatOfEveryPairTried(t *testing.T) {
	top := func(t *rapid.T) {
		pressings, meetings, seam := drawTop(t)
		edges := NewEdges(seam)
		contacts := edges.contactsOf(pressings, meetings)
		one, other := len(pressings[0].Build.Choices), len(pressings[1].Build.Choices)
		var want []Way
		var best Met
		for n := range 1 << (one + other) {
			ways := []Way{wayNumber(n>>other, one), wayNumber(n&(1<<other-1), other)}
			if !follows(pressings, ways) {
				continue
			}
			met := edges.count(pressings, meetings, contacts, ways)
			if want == nil || better(met.All(), met.Changes, best.All(), best.Changes) {
				want, best = ways, met
			}
		}
		got, met := edges.Best(pressings, meetings)
		require.Equal(t, want, got)
		require.Equal(t, best, met)
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
		for _, choice := range pooledChoices(p) {
			if ways[i][choice] != ways[i-1][choice] {
				return false
			}
		}
	}
	return true
}

// pooledChoices are the choices that a pressing takes as the one before it does.
func pooledChoices(p Pressing) []int {
	var choices []int
	for i, c := range p.Build.Choices {
		for _, m := range p.Build.Steps {
			if p.OnePool && m.Pooled && m.Step.Name == c.Step {
				choices = append(choices, i)
			}
		}
	}
	return choices
}

// Two ways of pressing a nine-patch whose columns are slices of strip sets, laid
// side by side three times and one above the other three times (hand-worked).
// Outer columns meet side by side: sets pressed alike clash at both seams of each
// join. Rows are sewn block by block and nest.
func TestUnitsOfOnePoolArePressedAlike(t *testing.T) {
	b := made(t, ninePatchOfSets(in(t, "5"), in(t, "40")), quarter)
	for _, row := range []struct {
		onePool bool
		columns Tally
	}{{false, Tally{Nest: 6}}, {true, Tally{Clash: 6}}} {
		ways, met := NewEdges(b.Seam).Best([]Pressing{{Build: b, Blocks: 2}, {Build: b, Blocks: 2, OnePool: row.onePool}}, []Meeting{
			{First: Face{Pressing: 0}, Second: Face{Pressing: 1}, Count: 3},
			{First: Face{Pressing: 0}, Second: Face{Pressing: 1}, Above: true, Count: 3},
		})
		assert.Equal(t, Met{Inside: Tally{Nest: 16}, Columns: row.columns, Rows: Tally{Nest: 6}}, met)
		for choice, c := range b.Choices {
			pooled := c.Step == "outer-set" || c.Step == "inner-set"
			assert.Equal(t, pooled && row.onePool, ways[0][choice] == ways[1][choice], "%v", c)
		}
	}
}
