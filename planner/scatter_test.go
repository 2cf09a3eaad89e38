package planner

import (
	"cmp"
	"math/big"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

const testInch measure.Length = 146_304_000

var eightInches = measure.Size{Width: 8 * testInch, Height: 8 * testInch}

// scattered is a job's scattered layout.
func scattered(j Job, block measure.Size) []place {
	layout := dealtPlaces(&j, frameOf(&j, block))
	newScatter(j, frameOf(&j, block), layout).lay(layout)
	return layout
}

// scatterOf is the blocks of a job that finish so large, to be laid out.
func scatterOf(j Job, block measure.Size) *scatter {
	f := frameOf(&j, block)
	return newScatter(j, f, dealtPlaces(&j, f))
}

// likePairs is how much every pair of a quilt's blocks counts, by place, worked out
// from the fabrics as they lie: 2 for one colourway, 1 for every print in common.
func likePairs(j Job, layout []place) [][]int64 {
	deals := dealtRoles(j)
	prints := make([]map[string]bool, len(layout))
	for i, p := range layout {
		prints[i] = map[string]bool{}
		for _, f := range deals[p.colourway][p.dealt] {
			if f.Role != "ground" {
				prints[i][f.Fabric] = true
			}
		}
	}
	like := make([][]int64, len(layout))
	for a := range layout {
		like[a] = make([]int64, len(layout))
		for b := range layout {
			if layout[a].colourway == layout[b].colourway {
				like[a][b] = 2
			}
			for fabric := range prints[a] {
				if prints[b][fabric] {
					like[a][b]++
				}
			}
		}
	}
	return like
}

// inverseSquares is 1/d² of all pairs of places times a number that makes all whole,
// for blocks of whole sides.
func inverseSquares(layout []place, width, height int64) [][]int64 {
	square := func(a, b place) int64 {
		x, y := int64(a.column-b.column)*width, int64(a.row-b.row)*height
		return x*x + y*y
	}
	whole := big.NewInt(1)
	for _, p := range layout {
		if d := square(layout[0], p); d > 0 {
			gcd := new(big.Int).GCD(nil, nil, whole, big.NewInt(d))
			whole.Mul(whole, new(big.Int).Div(big.NewInt(d), gcd))
		}
	}
	table := make([][]int64, len(layout))
	for a := range layout {
		table[a] = make([]int64, len(layout))
		for b := range layout {
			if a != b {
				table[a][b] = whole.Int64() / square(layout[a], layout[b])
			}
		}
	}
	return table
}

// exactCost is what blocks cost, the i-th at place at[i].
func exactCost(like, near [][]int64, at []int) int64 {
	var sum int64
	for a := range at {
		for b := range a {
			sum += like[a][b] * near[at[a]][at[b]]
		}
	}
	return sum
}

// everyOrder calls try with every way of putting n things in order.
func everyOrder(at []int, n int, try func()) {
	if n == len(at) {
		try()
		return
	}
	for i := n; i < len(at); i++ {
		at[n], at[i] = at[i], at[n]
		everyOrder(at, n+1, try)
		at[n], at[i] = at[i], at[n]
	}
}

// drawnScatter draws a quilt of few colourways and prints.
func drawnScatter(t *rapid.T, mostAcross, mostDown int) Job {
	across, down := rapid.IntRange(1, mostAcross).Draw(t, "across"), rapid.IntRange(1, mostDown).Draw(t, "down")
	colourways := rapid.IntRange(1, min(4, across*down)).Draw(t, "colourways")
	l := Layout{Across: across, Down: down, Order: Scatter}
	if rapid.Bool().Draw(t, "on point") {
		l.Setting = OnPoint
	}
	return scatterLayout(l, colourways, rapid.IntRange(1, 5).Draw(t, "prints"))
}

// No layout at all of up to nine blocks is better: every one is tried, in exact
// arithmetic that shares nothing with the search.
func TestAFewBlocksAreScatteredAsWellAsCanBe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnScatter(t, 3, 3)
		j.Layout.Setting = Straight
		if j.Layout.Across*j.Layout.Down == 9 && rapid.IntRange(0, 5).Draw(t, "nine") > 0 {
			j = scatterJob(4, 2, len(j.Colourways), 3) // nine take long to try
		}
		width, height := rapid.Int64Range(1, 3).Draw(t, "width"), rapid.Int64Range(1, 3).Draw(t, "height")
		layout := scattered(j, measure.Size{Width: testInch.Times(int(width)), Height: testInch.Times(int(height))})
		like, near := likePairs(j, layout), inverseSquares(layout, width, height)
		at := make([]int, len(layout))
		for i := range at {
			at[i] = i
		}
		found := exactCost(like, near, at)
		everyOrder(at, 0, func() {
			if cost := exactCost(like, near, at); cost < found {
				t.Fatalf("%d is better than %d: %v", cost, found, at)
			}
		})
	})
}

func TestScatterIsNeverWorseThanAnotherOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnScatter(t, 8, 8)
		s := scatterOf(j, eightInches)
		least := s.cost(slices.MinFunc(s.dealt, func(a, b []int) int { return cmp.Compare(s.cost(a), s.cost(b)) }))
		if cost := s.cost(s.best()); cost > least {
			t.Fatalf("scattered costs %d, another order %d", cost, least)
		}
	})
}

// The change that an exchange is reckoned to make is the change that it makes.
func TestAnExchangeCostsWhatItIsReckonedTo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnScatter(t, 5, 5)
		s := scatterOf(j, measure.Size{Width: 9 * testInch, Height: 6 * testInch})
		w := s.walk(s.dealt[0], s.cost(s.dealt[0]))
		place := rapid.IntRange(0, len(w.at)-1)
		for range 20 {
			w.try(place.Draw(t, "one place"), place.Draw(t, "another"), 1<<62)
		}
		if want := s.cost(w.kindAt); w.cost != want {
			t.Fatalf("the layout is said to cost %d and costs %d", w.cost, want)
		}
	})
}

// Every block that is dealt lies in one place, whatever was exchanged for what.
func TestScatteringLosesNoBlock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawnScatter(t, 7, 7)
		type dealt struct{ colourway, nth int }
		seen := map[dealt]bool{}
		for _, p := range scattered(j, eightInches) {
			d := dealt{p.colourway, p.dealt}
			if seen[d] || p.dealt >= j.Colourways[p.colourway].Blocks {
				t.Fatalf("block %+v lies in two places or is none", d)
			}
			seen[d] = true
		}
		if want := placesOf(j.Layout); len(seen) != want {
			t.Fatalf("%d blocks of %d", len(seen), want)
		}
	})
}

// Hand-worked: three blocks that keep to rows and columns of their own are apart by
// √5, √5 and √2, which is 0.9 in 1/d², or all on a long diagonal, 1.125; of the three
// colourways one has to lie on such a diagonal, whichever way round.
func TestScatterPartsLikeBlocks(t *testing.T) {
	j := dealJob(3, 3, Scatter, 3, 3, 3)
	var rows []string
	for i, p := range scattered(j, eightInches) {
		if i%3 == 0 {
			rows = append(rows, "")
		}
		rows[len(rows)-1] += j.Colourways[p.colourway].Name
	}
	assert.Equal(t, "abc bca cab", strings.Join(rows, " "))
}

// On point the nearest neighbours lie along the diagonal rows: five blocks of two
// colourways, the one in the middle being of the lesser one. Hand-worked: its four
// neighbours are all a side away from it, so whatever lies in the middle should be
// the colourway of fewer blocks.
func TestScatterOnPointGoesByTheDiagonalRows(t *testing.T) {
	j := scatterLayout(Layout{Across: 2, Down: 2, Setting: OnPoint, Order: Scatter}, 2, 1)
	j.Colourways[0].Blocks, j.Colourways[1].Blocks = 1, 4
	j.Colourways[1].Roles = nil
	at := map[int]int{}
	for _, p := range scattered(j, eightInches) {
		at[p.line*3+p.nth] = p.colourway
	}
	assert.Equal(t, 0, at[3], "the block between the two lines")
}

// In a border of blocks the border's own list holds; inside it blocks are exchanged.
func TestScatterLeavesABorderOfBlocksItsColourways(t *testing.T) {
	j := scatterLayout(Layout{Across: 3, Down: 3, Order: Scatter}, 3, 4)
	for i, n := range []int{11, 11, 3} {
		j.Colourways[i].Blocks = n
	}
	j.Borders = []Border{{Blocks: []BlockShare{{Colourway: "c0"}, {Colourway: "c1"}}}}
	dealt := dealtPlaces(&j, frameOf(&j, eightInches))
	s := scatterOf(j, eightInches)
	assert.Less(t, s.cost(s.best()), s.cost(s.dealt[1]))
	for i, p := range scattered(j, eightInches) {
		if p.ring > 0 {
			assert.Equal(t, dealt[i].colourway, p.colourway, "row %d, column %d", p.row, p.column)
		}
	}
}

// A scattered run keeps ids with the fabrics that its blocks were dealt, whichever
// quilt they are in.
func TestScatteredBlocksKeepTheirIDsAndFabrics(t *testing.T) {
	j := scatterJob(4, 3, 3, 5)
	j.Quantity = 2
	layout := scattered(j, eightInches)
	blocks := blocksOf(j, layout, Prior{})
	require.Len(t, blocks, 24)
	fabrics := map[string]string{}
	for _, b := range laidBlocks(j, Prior{}) {
		fabrics[b.ID] = b.Fabrics[0].Fabric
	}
	for i, b := range blocks {
		assert.Equal(t, fabrics[b.ID], b.Fabrics[0].Fabric, b.ID)
		first := blocks[i%12]
		assert.Equal(t, [3]any{first.Row, first.Column, first.Colourway}, [3]any{b.Row, b.Column, b.Colourway}, "both quilts are laid alike")
	}
	again := blocksOf(j, layout, prior(blocks))
	assert.Equal(t, blocks, again, "and a revision changes nothing")
}

// A fabric in two roles is one print, and a ground is none.
func TestPrintsAreAllRolesButTheGround(t *testing.T) {
	known := map[string]int{}
	first := printsOf([]RoleFabric{{"corner", "Kelp"}, {"side", "Dune"}, {"centre", "Kelp"}}, known, 2)
	second := printsOf([]RoleFabric{{"print", "Dune"}, {"ground", "Foam"}}, known, 2)
	assert.Equal(t, []int{2, 3}, first)
	assert.Equal(t, []int{3}, second)
}
