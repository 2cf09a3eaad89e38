package planner

import (
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/patchwork"
)

// swapPlan is the tidemark quilt after some swaps: its blocks are pressed in two ways,
// chequered.
func swapPlan(t *testing.T, swaps ...Swap) Plan {
	t.Helper()
	data, err := os.ReadFile("../examples/tidemark-lap.yaml")
	require.NoError(t, err)
	job, err := Parse("tidemark-lap.yaml", data)
	require.NoError(t, err)
	plan, err := Make(job, Prior{Amend: Amendments{Swaps: swaps}})
	require.NoError(t, err)
	return plan
}

// A block pressed by card b between blocks of card a nests; in the place of one of
// card a it lies beside others of card b, and clashes. Both exchanged and pressed
// anew by each other's cards, everything is as it was.
func TestASwapOfDifferentCardsClashesUntilBothArePressedAnew(t *testing.T) {
	before := swapPlan(t)
	after := swapPlan(t, Swap{"wet-03", "wet-04"})
	effect := Swapped(before, after, "wet-03", "wet-04")
	assert.Equal(t, 0, effect.Before.Clash)
	require.Len(t, effect.Worse, 1)
	assert.Equal(t, "wet-03 and dry-03, side by side in row 2: 1 of 2 match points clashes", effect.Worse[0].Words())
	assert.Equal(t, []Repress{{"wet-03", "b"}, {"wet-04", "a"}}, sortedRepress(effect.Repress))
	assert.Equal(t, effect.Before, effect.Left)
	assert.Contains(t, codesOf(after), warnSwapClash)
	assert.NotContains(t, codesOf(before), warnSwapClash)
}

func sortedRepress(all []Repress) []Repress {
	if len(all) == 2 && all[0].Block > all[1].Block {
		return []Repress{all[1], all[0]}
	}
	return all
}

func codesOf(p Plan) []string {
	var codes []string
	for _, w := range p.Warnings {
		codes = append(codes, w.Code)
	}
	return codes
}

func TestASwapMovesBlocksAndNothingElse(t *testing.T) {
	before, after := swapPlan(t), swapPlan(t, Swap{"wet-03", "dry-10"})
	assert.Equal(t, before.Operations, after.Operations)
	assert.Equal(t, before.Press.Cards, after.Press.Cards, "what is on the wall at the iron stays")
	was, is := map[string]Block{}, map[string]Block{}
	for i, b := range before.Blocks {
		was[b.ID], is[after.Blocks[i].ID] = b, after.Blocks[i]
		assert.Equal(t, b.Spot(), after.Blocks[i].Spot(), "blocks come by place")
	}
	a, b := Exchanged(was["wet-03"], was["dry-10"])
	was["wet-03"], was["dry-10"] = a, b
	assert.Equal(t, was, is)
}

// The joins of a quilt are those of its blocks as they lie: all joins, looked at one
// by one, come to the sums that the plan gives.
func TestJoinsAreCountedAsBlocksLie(t *testing.T) {
	plans := []Plan{
		swapPlan(t, Swap{"wet-03", "wet-04"}), swapPlan(t, Swap{"wet-03", "wet-04"}, Swap{"wet-04", "dry-03"}, Swap{"wet-10", "dry-01"}),
	}
	for _, job := range examples(t) {
		plan, err := Make(job, Prior{})
		require.NoError(t, err)
		plans = append(plans, plan)
	}
	for _, p := range plans {
		var first []Spot
		for _, b := range p.Blocks {
			if b.Quilt == 1 {
				first = append(first, b.Spot())
			}
		}
		sums := map[string]patchwork.Tally{}
		for _, j := range newFloor(p).round(first) {
			sums[j.kind] = sums[j.kind].Plus(j.Matches)
		}
		for _, j := range p.Joins {
			if j.Between == joinColumns || j.Between == joinRows {
				assert.Equal(t, j.Matches, sums[j.Between], "%s of %s after %v", j.Between, p.Job.ID, p.Swaps)
			}
		}
	}
}

func TestHalfTurnsStayWithThePlace(t *testing.T) {
	assert.Equal(t, []string{"a", "c"}, halfTurns([]string{"a", "b"}, Swap{"b", "c"}))
	assert.Equal(t, []string{"a", "b"}, halfTurns([]string{"a", "b"}, Swap{"a", "b"}))
	assert.Equal(t, []string{"a"}, halfTurns([]string{"a"}, Swap{"b", "c"}))
}

func TestASwapOfABlockThatIsGoneIsDroppedAndSaid(t *testing.T) {
	p := swapPlan(t, Swap{"wet-03", "wet-40"})
	assert.Empty(t, p.Swaps)
	assert.Equal(t, swapPlan(t).Blocks, p.Blocks)
	assert.Contains(t, codesOf(p), warnSwapGone)
}

// A four-patch looks the same after half a turn and gets it where seams nest so; a
// plain square of a directional cloth does not, and lies on its head in that place.
func TestABlockThatTakesOverAHalfTurnIsSaid(t *testing.T) {
	const file = `job: tern-mat
fabrics:
  Kelp: {form: yardage, width: 42}
  Foam: {form: yardage, width: 42}
  Terns: {form: yardage, width: 42, directional: true}
block: {make: four-patch, square: 5}
colourways:
  tide: {blocks: 5, print: Kelp, ground: Foam}
  tern: {blocks: 4, make: plain square, square: 9 1/2, print: Terns}
layout: {across: 3, down: 3, order: {rows: fill}}
`
	job, err := Parse("tern-mat.yaml", []byte(file))
	require.NoError(t, err)
	before, err := Make(job, Prior{})
	require.NoError(t, err)
	require.NotEmpty(t, before.Press.Half)
	turned := before.Press.Half[0]
	after, err := Make(job, Prior{Amend: Amendments{Swaps: []Swap{{turned, "tern-01"}}}})
	require.NoError(t, err)
	effect := Swapped(before, after, turned, "tern-01")
	assert.Equal(t, []string{"tern-01"}, effect.Overturned)
	assert.Contains(t, codesOf(after), warnSwapTurned)
	assert.Contains(t, after.Press.Half, "tern-01")
}
