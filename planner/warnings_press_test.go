package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/patchwork"
)

// warned is the messages of a code.
func warned(p Plan, code string) []string {
	var messages []string
	for _, w := range p.Warnings {
		if w.Code == code {
			messages = append(messages, w.Message)
		}
	}
	return messages
}

// Layers by the folded cloth that patchwork's own tests check. With both rows left
// the middle of a pinwheel has 19, with the join of its rows open 14. Blocks lie
// turned by half turns, so that a row pressed right nests as well: the seams then go
// round the middle and can be spun to 11.
func TestAPinwheelSaysWhatHelpsInItsMiddle(t *testing.T) {
	p := sixBlocks(t, "make: pinwheel, unit: 4 1/2", "print: Kelp, ground: Foam")
	assert.Equal(t, []string{
		"tide: at 1 junction of the raw block more cloth lies on itself than the 7 layers of a nested four-patch. " +
			"19 layers in the middle: press the join of rows 1 and 2 of the pinwheel open (14), " +
			"or press row 1 of the pinwheel right instead, costing no clash, and spin the centre there (11).",
	}, warned(p, warnBulk))
	require.Len(t, p.Press.Cards[0].Bulk, 1)
	assert.Equal(t, 19, p.Press.Cards[0].Bulk[0].Layers)
	i := 0
	for p.Warnings[i].Code != warnBulk {
		i++
	}
	assert.Equal(t, "colourways.tide", p.Warnings[i].Path)
}

// Nested seams have the 7 layers that everybody sews over: nothing is said, though
// the plan lists the junctions.
func TestNestedSeamsAreNoBulk(t *testing.T) {
	for _, c := range []struct {
		block, roles string
		junctions    int // of four seams, or where one seam ends on another
	}{
		{"make: four-patch, square: 5", "print: Kelp, ground: Foam", 1},
		{"make: nine-patch, square: 5", "corner: Kelp, side: Foam, centre: Reed", 4},
		{"make: four-patch recut, square: 5, offset: 1", "print: Kelp, ground: Foam", 9},
		{"make: rail, strip: 2 1/2, length: 6 1/2", "strips: [Kelp, Foam, Reed]", 0},
		{"make: hourglass, unit: 4 1/2", "print: Kelp, ground: Foam", 1},
	} {
		p := sixBlocks(t, c.block, c.roles)
		assert.Empty(t, warned(p, warnBulk), c.block)
		assert.Len(t, p.Press.Cards[0].Bulk, c.junctions, c.block)
		for _, j := range p.Press.Cards[0].Bulk {
			assert.LessOrEqual(t, j.Layers, patchwork.NestedLayers, c.block)
		}
	}
}

// Hand-worked: two pairs, neither turned, clash in the middle: 9 layers, 6 with the
// join open; no spinning helps where both pairs' seams lie the same way.
func TestAClashIsBulkAndPressingOpenHelps(t *testing.T) {
	p := sixBlocks(t, "steps: {print: {cut: print, size: 5}, ground: {cut: ground, size: 5}, "+
		"pairs: {sew: [[print, ground]]}, block: {sew: [[pairs], [pairs]]}}", "print: Kelp, ground: Foam")
	assert.Equal(t, []string{
		"tide: at 1 junction of the raw block more cloth lies on itself than the 7 layers of a nested four-patch. " +
			"9 layers in the middle: press the seam of the block open (6).",
	}, warned(p, warnBulk))
}

// Where rows nest inside every block, nothing is thick in them; those of a rule that
// makes one colourway's rows clash are, and colourways that are pressed alike are
// warned of once.
func TestBlocksPressedAlikeAreWarnedOfOnce(t *testing.T) {
	const file = `
job: rows
fabrics: {Kelp: {form: yardage, colour: black}, Foam: {form: yardage, colour: white}}
block:
  steps: {one: {cut: one, size: 5}, two: {cut: two, size: 5}, block: {sew: [[one, two], [one, two]]}}
colourways:
  tide: {blocks: 2, one: Kelp, two: Foam}
  dune: {blocks: 2, one: Foam, two: Kelp}
  reed: {blocks: 2, one: Kelp, two: Foam}
layout: {across: 3, down: 2}
press: %s
`
	best := planOf(t, strings.Replace(file, "%s", "best", 1))
	assert.Empty(t, warned(best, warnBulk))
	assert.Empty(t, warned(best, warnClash))
	dark := planOf(t, strings.Replace(file, "%s", "darker", 1))
	for _, code := range []string{warnClash, warnBulk} {
		said := warned(dark, code)
		require.Len(t, said, 2, code)
		assert.True(t, strings.HasPrefix(said[0], "tide: "))
		assert.True(t, strings.HasPrefix(said[1], "dune: "), "the same block, pressed the other way")
	}
	assert.Contains(t, warned(dark, warnBulk)[0], "9 layers in the middle: press the join of rows 1 and 2 of the block open (6).",
		"a rule's seams are not turned round to spin them")
}

// Many junctions are counted, and the thickest described with where they lie.
func TestTheThickestJunctionsAreDescribed(t *testing.T) {
	p := sixBlocks(t, "make: pinwheel recut, unit: 4 1/2", "print: Kelp, ground: Foam")
	said := warned(p, warnBulk)
	require.Len(t, said, 1)
	assert.True(t, strings.HasPrefix(said[0], "tide: at 5 junctions of the raw block"), said[0])
	assert.Equal(t, mostHeaps, strings.Count(said[0], " layers ")-1, "beside the seven")
	assert.Contains(t, said[0], "15 layers ≈ 2 9/16 in across and ≈ 2 9/16 in down: press the join of rows 1 and 2 of the block open (10), or spin the centre there (11).")
	assert.Contains(t, said[0], "The others are no thicker.")
}

// Hand-worked: the recut unit is 9 1/2 in, its seams at 4 3/4.
func TestACutInsideAnAllowanceIsWarnedOf(t *testing.T) {
	recut := func(cut string) []string {
		return warned(sixBlocks(t, "steps: {print: {cut: print, size: 5}, ground: {cut: ground, size: 5}, "+
			"pairs: {sew: [[print, ground]]}, units: {sew: [[pairs], [pairs@180]]}, "+
			"recut: {recut: units, upright: ["+cut+"]}, block: {sew: recut}}", "print: Kelp, ground: Foam"), warnLoose)
	}
	assert.Equal(t, []string{
		`tide: at step "recut" the upright cut 4 5/8 in from the left edge lies 1/8 in beside a seam, inside its allowance of 1/4 in, and leaves that loose; move the cut at least that far from the seam`,
	}, recut("left 4 5/8"))
	assert.Empty(t, recut("left 4 1/2"))
}
