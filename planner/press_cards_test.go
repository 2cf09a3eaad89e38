package planner

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/patchwork"
)

// A one-way print shows which way up a block lies: cards take the place of half
// turns, and come to the same. Hand-worked, nine-patches 4 x 5: 15 block columns
// and 16 block rows of 2 points each; inside, rows must be pressed in turn, so
// that alike blocks clash at all 62.
func TestAOneWayPrintIsPressedByCards(t *testing.T) {
	file := `
job: nine
fabrics: {Heron: {form: yardage, directional: %s}, Foam: {form: yardage}}
block: {make: nine-patch, square: 5, corner: Heron, side: Foam, centre: Heron}
colourways: {tide: {blocks: 20}}
layout: {across: 4, down: 5}
`
	free, p := planOf(t, fmt.Sprintf(file, "no")), planOf(t, fmt.Sprintf(file, "yes"))
	want := map[Pattern][2]int{AllAlike: {0, 62}, ByRows: {32, 30}, ByColumns: {30, 32}, Chequered: {62, 0}}
	assert.Equal(t, want, betweenOf(free.Press))
	assert.Equal(t, want, betweenOf(p.Press))
	assert.Len(t, free.Press.Half, 10)
	assert.Len(t, free.Press.Cards, 1)

	assert.Empty(t, p.Press.Half)
	require.Len(t, p.Press.Cards, 2)
	a, b := p.Press.Cards[0], p.Press.Cards[1]
	assert.Equal(t, []string{"a", "b"}, []string{a.Variant, b.Variant})
	assert.Len(t, a.Blocks, 10)
	assert.Len(t, b.Blocks, 10)
	assert.Equal(t, "rows left, right, left; joins up, up", a.Steps[0].Words())
	assert.Equal(t, "rows right, left, right; joins down, down", b.Steps[0].Words())
	for _, block := range p.Blocks {
		assert.Zero(t, block.Turn)
		assert.Equal(t, [...]string{"a", "b"}[(block.Row+block.Column)%2], block.Press)
	}
	assert.Equal(t, patchwork.Tally{Nest: 62}, patternOf(p.Press, Chequered).Between)
	assert.Zero(t, patternOf(p.Press, AllAlike).Between.Nest)
}

// Slices of strip sets are pressed before anyone knows whose block they go into:
// both cards press sets alike, and the slices' rows each its own way. Hand-worked,
// 4 x 4 nine-patches of rows cut from sets: the rows' joins nest at all 12 x 2
// points of the block columns; at block rows the sets' own seams lie one way, and
// 12 x 2 clash.
func TestBothCardsPressAlikeWhatIsMadeForTheLot(t *testing.T) {
	p := planOf(t, fmt.Sprintf(`
job: sets
fabrics: {Heron: {form: yardage, directional: yes}, Foam: {form: yardage}}
block: {%s}
colourways: {tide: {blocks: 16, red: Heron, white: Foam}}
layout: {across: 4, down: 4}
`, stripSets))
	require.Len(t, p.Press.Cards, 2)
	for i, step := range p.Press.Cards[0].Steps {
		other := p.Press.Cards[1].Steps[i]
		assert.Equal(t, step.Step != "nine", slices.Equal(step.Joins, other.Joins), step.Step)
	}
	assert.Equal(t, map[string]patchwork.Tally{
		"block columns": {Nest: 24}, "block rows": {Clash: 24}, "block corners": {Nest: 9},
	}, joinsOf(p))
	assert.NotContains(t, doingOf(p, "press-set"), "tide-01", "a set belongs to no block")
	assert.Contains(t, doingOf(p, "press-nine"), "tide-01")
}

// Two colourways of one block that take turns: each has its own way and one card,
// as each lies in one half of the chequer alone.
func TestAColourwayInSecondPlacesAloneHasOneCard(t *testing.T) {
	p := planOf(t, `
job: nine
fabrics: {Heron: {form: yardage, directional: yes}, Foam: {form: yardage}}
block: {make: nine-patch, square: 5, corner: Heron, side: Foam, centre: Heron}
colourways: {tide: {blocks: 2}, dune: {blocks: 2}}
layout: {across: 2, down: 2, order: [[tide, dune], [dune, tide]]}
`)
	require.Len(t, p.Press.Cards, 2)
	assert.False(t, p.Press.TwoWays())
	for i, c := range p.Press.Cards {
		assert.Equal(t, variantA, c.Variant)
		assert.Len(t, c.Blocks, 2)
		assert.Equal(t, p.Colourways[i].Name, c.Colourway)
	}
	assert.NotEqual(t, p.Press.Cards[0].Steps, p.Press.Cards[1].Steps)
	requireJoinsOfItsBlocks(t, p)
}

func TestIdsOfACardAreListedShort(t *testing.T) {
	assert.Equal(t, "tide-01, -03, dune-02, -11", idList([]string{"tide-01", "tide-03", "dune-02", "dune-11"}))
	assert.Equal(t, "north-tide-01, -02, tide-03", idList([]string{"north-tide-01", "north-tide-02", "tide-03"}))
	assert.Empty(t, idList(nil))
}
