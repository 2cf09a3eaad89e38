package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// A block by itself is a top of one block: two searches that share nothing give
// one answer.
func TestATopOfOneBlockIsPressedAsTheBlock(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		ways, met := NewEdges(b.Seam).Best([]Pressing{{Build: b, Blocks: 1}}, nil)
		require.Equal(t, b.Best(), ways[0])
		require.Equal(t, b.Changes(ways[0]), met.Changes)
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
		edges := NewEdges(seam)
		got := edges.count(pressings, meetings, edges.contactsOf(pressings, meetings), ways)
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
	}
	return true
}
