package guillotine

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestSheetsHoldWhatTheySay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, pieces := strips(t, 30)
		nested := rapid.Bool().Draw(t, "nested")
		stock := []Stock{{W: 24, H: 24, N: rapid.IntRange(0, 3).Draw(t, "counted")}, {W: 30, H: 25}}
		plan := OnSheets(pieces, stock, nested, 5)
		require.Zero(t, sum(plan.Left))
		assert.LessOrEqual(t, plan.Bound, len(plan.Cut))
		used, left := map[int]int{}, counts(pieces)
		for _, s := range plan.Cut {
			used[s.Stock]++
			st := stock[s.Stock]
			assert.Equal(t, []int{st.W, st.H}, []int{s.Root.W, s.Root.H})
			here := make([]int, len(pieces))
			s.Root.Leaves(func(n *Node) {
				if n.Piece != Offcut {
					here[n.Piece]++
					left[n.Piece]--
				}
			})
			holdsAll(t, s.Root, with(pieces, here))
		}
		assert.Zero(t, sum(left))
		if stock[0].N > 0 {
			assert.LessOrEqual(t, used[0], stock[0].N)
		}
	})
}

// What is counted is used first; a sheet too small for anything is not touched.
func TestCountedSheetsComeFirst(t *testing.T) {
	pieces := []Piece{{5, 5, 24, false}}
	plan := OnSheets(pieces, []Stock{{W: 30, H: 22}, {W: 18, H: 22, N: 1}, {W: 4, H: 4, N: 9}}, false, 100)
	var kinds []int
	for _, s := range plan.Cut {
		kinds = append(kinds, s.Stock)
	}
	assert.ElementsMatch(t, []int{1, 0}, kinds, "12 from the one on hand, 12 from a large one")
}

func TestWhatDoesNotFitIsLeft(t *testing.T) {
	plan := OnSheets([]Piece{{5, 5, 24, false}}, []Stock{{W: 18, H: 22, N: 1}}, true, 100)
	assert.Equal(t, []int{12}, plan.Left)
	assert.Equal(t, 2, plan.Bound, "two hold them all")
}

func TestEqualSheetsOfOneSizeAreNoMoreThanPlain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, pieces := strips(t, 60)
		plain := 0
		s := newSheeter(pieces, []Stock{{W: 26, H: 25}}, false)
		plain = len(s.plain(0).cut)
		plan := OnSheets(pieces, []Stock{{W: 26, H: 25}}, rapid.Bool().Draw(t, "nested"), 3)
		assert.LessOrEqual(t, len(plan.Cut), plain)
	})
}

// One piece of each value that fits: hand-worked. Of 6 × 6, one 6 × 4 worth 30
// and two 3 × 2 worth 9 each fill it; without turning, three in a row do not.
func TestTheRichestSheet(t *testing.T) {
	pieces := []Piece{{6, 4, 2, false}, {3, 2, 5, false}, {7, 1, 1, false}}
	for _, first := range []Cut{None, Across, Upright} {
		root, worth := Richest(6, 6, pieces, []int{30, 9, 100}, first, 10)
		want := 48
		if first == Upright {
			want = 45 // columns 3 wide take three of the small ones each, and 6 × 4 needs both
		}
		assert.Equal(t, want, worth, first)
		assert.Equal(t, []int{6, 6}, []int{root.W, root.H})
	}
	root, worth := Richest(2, 2, pieces, []int{1, 1, 1}, None, 1)
	assert.Zero(t, worth)
	assert.Equal(t, Offcut, root.Piece)
}
