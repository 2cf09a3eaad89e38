package patchwork

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// oneFabric gives every block the same fabrics.
func oneFabric(int, string) string { return "" }

// batchWords lists batches as "step RUNS of UNITS".
func batchWords(batches []Batch) []string {
	words := make([]string, len(batches))
	for i, b := range batches {
		words[i] = fmt.Sprintf("%s %d of %d", b.Step, b.Runs, b.Units)
	}
	return words
}

// Eight at a time for blocks that take four: each fabric's blocks have runs of
// their own. 5 blocks of kelp and 3 of dune take 20 and 12 triangles, 3 and 2
// runs (hand-worked).
func TestBatchesAreOfOneFabricEach(t *testing.T) {
	b := made(t, Pinwheel(in(t, "3 1/2"), 8), quarter)
	prints := []string{"kelp", "dune", "kelp", "kelp", "dune", "kelp", "dune", "kelp"}
	batches := b.Batches(len(prints), func(block int, role string) string {
		if role == "print" {
			return prints[block]
		}
		return "foam"
	})
	assert.Equal(t, []Batch{
		{Step: "half-squares", Blocks: []int{0, 2, 3, 5, 7}, Units: 20, Runs: 3},
		{Step: "half-squares", Blocks: []int{1, 4, 6}, Units: 12, Runs: 2},
	}, batches)
	assert.Equal(t, []string{"print", "ground"}, b.Roles("pinwheel"))
	assert.Empty(t, b.Roles("nothing"))
}

// Steps that come out even with a block are in no batch.
func TestNoBatchesWhereRunsComeOutEven(t *testing.T) {
	assert.Empty(t, made(t, Pinwheel(in(t, "3 1/2"), 4), quarter).Batches(7, oneFabric))
	assert.Empty(t, made(t, FourPatchRecut(in(t, "5"), in(t, "1"), nil), quarter).Batches(7, oneFabric))
}

// Pools may take from pools: a sheet gives 4 strips, a set takes 3 of them and
// gives 3 slices, a block takes one. 5 blocks take 2 sets, 6 strips, 2 sheets; the
// sheet that pools and blocks both take is counted for both (hand-worked).
func TestPoolsTakeFromPools(t *testing.T) {
	strip := Cell{Of: "strips", Quarters: 1}
	b := made(t, Recipe{Steps: []Step{
		cutStep(t, "sheet", "12", "10"),
		{Name: "strips", Do: Subcut, Of: "sheet", Every: in(t, "3")},
		{Name: "set", Do: Sew, Rows: [][]Cell{{strip}, {strip}, {strip}}},
		{Name: "slices", Do: Subcut, Of: "set", Every: in(t, "3")},
		{Name: "large", Do: Trim, Of: "sheet", Size: sides(t, "12", "8")},
		rowStep("block", "slices", "large"),
	}}, quarter)
	assert.Equal(t, []string{"sheet 7 of 7", "strips 2 of 6", "set 2 of 2", "slices 2 of 5"}, batchWords(b.Batches(5, oneFabric)))
	assert.Equal(t, 1, b.step(t, "sheet").Copies)
	assert.Equal(t, []Feed{{"strips", 1}}, b.step(t, "sheet").Feeds)
	assert.Equal(t, []Feed{{"set", 3}}, b.step(t, "strips").Feeds)
	assert.Equal(t, in(t, "20").Scale(1, 3, 1)+in(t, "8"), b.SeamLength(), "a third of the set's two seams of 10, and the block's")
}

// Whatever the recipe and the deal: every block of a step is in one batch, runs
// make what is taken and no run is spare.
func TestBatchesCoverEveryBlockOnce(t *testing.T) {
	forRecipes(t, func(t *rapid.T, b *Build) {
		fabrics := rapid.SliceOfN(rapid.SampledFrom([]string{"kelp", "dune"}), 1, 9).Draw(t, "fabrics")
		batches := b.Batches(len(fabrics), func(block int, role string) string {
			if role == "role0" {
				return fabrics[block]
			}
			return role
		})
		units, seen := map[string]int{}, map[string]map[int]bool{}
		for _, batch := range batches {
			yield := b.step(t, batch.Step).Yield
			assert.GreaterOrEqual(t, batch.Runs*yield, batch.Units)
			assert.Less(t, batch.Runs*yield-batch.Units, yield)
			units[batch.Step] += batch.Units
			if seen[batch.Step] == nil {
				seen[batch.Step] = map[int]bool{}
			}
			for _, block := range batch.Blocks {
				assert.False(t, seen[batch.Step][block])
				seen[batch.Step][block] = true
			}
		}
		for _, m := range b.Steps {
			if m.Pooled {
				assert.Len(t, seen[m.Step.Name], len(fabrics))
				assert.GreaterOrEqual(t, units[m.Step.Name], m.Copies*len(fabrics))
			} else {
				assert.Zero(t, units[m.Step.Name])
				assert.Zero(t, m.Copies%m.Yield)
			}
		}
	})
}
