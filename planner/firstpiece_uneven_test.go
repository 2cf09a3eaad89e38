package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// 32 blocks of 6 1/2 in raw for 4 x 8, of which two measure 6 1/4
// (hillscreekquilter.blogspot.com, July 2009; hand-worked).
const twoSmall = `
job: two-small
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: nine-patch, square: 2 1/2, corner: Kelp, side: Foam, centre: Kelp}
colourways: {tide: {blocks: 32}}
layout: {across: 4, down: 8}
`

func TestBlocksOfTwoSizesHaveTwoWaysOut(t *testing.T) {
	plan := planOf(t, twoSmall)
	sizes := []SizeCount{{squareOf(inches(t, "6 1/2")), 30}, {squareOf(inches(t, "6 1/4")), 2}}
	u, err := BlocksOf(plan, sizes, nil, "", inches(t, "1/8"))
	require.NoError(t, err)
	assert.Equal(t, 2, u.Short)
	assert.Equal(t, squareOf(inches(t, "6 1/4")), u.Trim.To)
	assert.Equal(t, squareOf(inches(t, "5 3/4")), u.Trim.Block)
	assert.Equal(t, inchSize(t, "23", "46"), u.Trim.Now.Quilt)
	assert.Equal(t, inchSize(t, "24", "48"), u.Trim.Was.Quilt)
	assert.Equal(t, 30, u.Trim.Blocks, "the small ones are left as they are")

	r := u.Remake
	assert.Equal(t, 2, r.Blocks, "two go back to what is left")
	counts := map[string]int{}
	for _, w := range r.Work {
		counts[w.Key] = w.Count
	}
	assert.Equal(t, map[string]int{"kit": 2, "sew-nine-patch-column-2": 6, "sew-nine-patch-column-3": 6, "press-nine-patch-rows": 6,
		"join-nine-patch-row-2": 2, "join-nine-patch-row-3": 2, "press-nine-patch": 2, "square-up": 2}, counts, "hand-worked: 3 rows of 3")
	require.Len(t, r.Pieces, 2)
	assert.Equal(t, 10, r.Pieces[0].Pieces[0].Count, "4 corners and 1 centre a block")
	assert.Equal(t, 8, r.Pieces[1].Pieces[0].Count, "4 sides a block")
	assert.Equal(t, inches(t, "2 1/2"), r.Pieces[0].Length, "10 of them lie in one strip of 42 in")
}

func TestBlocksAreTrimmedNoSmallerThanNeeded(t *testing.T) {
	plan := planOf(t, twoSmall)
	u, err := BlocksOf(plan, []SizeCount{{squareOf(inches(t, "6 5/8")), 3}, {squareOf(inches(t, "6 9/16")), 29}}, nil, "", inches(t, "1/8"))
	require.NoError(t, err)
	assert.Equal(t, u.Planned, u.Trim.To, "all are large enough: as planned")
	assert.Equal(t, u.Trim.Was, u.Trim.Now)
	assert.Equal(t, 32, u.Trim.Blocks)
	assert.Zero(t, u.Short)
}

func TestNamedBlocksAreMadeAgainOutOfTheirOwnFabrics(t *testing.T) {
	plan := planOf(t, twoColourways)
	u, err := BlocksOf(plan, []SizeCount{{squareOf(inches(t, "6 1/4")), 2}}, []string{"tide-01", "dune-02"}, "", inches(t, "1/8"))
	require.NoError(t, err)
	assert.Equal(t, []string{"tide", "dune"}, u.Remake.Of)
	pieces := map[string]int{}
	for _, p := range u.Remake.Pieces {
		pieces[p.Fabric] = p.Pieces[0].Count
	}
	assert.Equal(t, map[string]int{"Kelp": 5, "Samphire": 5, "Foam": 8}, pieces)
}

const twoColourways = `
job: two-colourways
fabrics: {Kelp: {form: yardage, width: 42}, Samphire: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: nine-patch, square: 2 1/2, side: Foam}
colourways:
  tide: {blocks: 4, corner: Kelp, centre: Kelp}
  dune: {blocks: 4, corner: Samphire, centre: Samphire}
layout: {across: 4, down: 2}
`
