package planner

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// setJob is a job of plain squares cut so large, in one colourway, set as the layout
// and the borders say.
func setJob(square string, blocks int, layout, borders string) string {
	return fmt.Sprintf(`
job: set
fabrics: {Kelp: {form: yardage, width: 40}, Foam: {form: yardage, width: 40}, Reed: {form: yardage, width: 40}}
block: {make: plain square, square: %s, print: Kelp}
colourways: {tide: {blocks: %d}}
layout: {%s}
%s
`, square, blocks, layout, borders)
}

// Sizes of whole quilts, each with its source. Squares are raw.
func TestQuiltsComeOutAsLargeAsPublished(t *testing.T) {
	for _, c := range []struct {
		source, square string
		blocks         int
		layout         string
		borders        string
		width, height  string
	}{
		{"sewingwithstitcher.com, sashings and cornerstones: all round", "8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: yes}", "", "32", "42"},
		{"the same, only between", "8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: no}", "", "28", "38"},
		{"the same, blocks trimmed to 8 1/4", "8 1/4", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: yes}", "", "31 1/4", "41"},
		{"delawarequilts.com, sizes: 5 x 6 blocks of 12", "12 1/2", 30, "across: 5, down: 6", "", "60", "72"},
		{"the same, 3 in sashing between", "12 1/2", 30, "across: 5, down: 6, sashing: {width: 3, fabric: Foam}", "", "72", "87"},
		{"the same, 6 in more", "12 1/2", 30, "across: 5, down: 6, sashing: {width: 3, fabric: Foam}", "borders: [{width: 3, fabric: Reed}]", "78", "93"},
		{"slideserve, school lesson: strips cut 6 1/2 on 70 x 86", "2 1/2", 1505, "across: 35, down: 43", "borders: [{cut: 6 1/2, fabric: Reed}]", "82", "98"},
		{"patternmart.blogspot.com 2008/01: 6 1/2 cut, 48 x 66", "6 1/2", 88, "across: 8, down: 11", "", "48", "66"},
		{"quilt.com, six hour baby quilt, exact: 4 1/2 in blocks 5 x 7, borders of 1 and 7 3/4", "5", 35, "across: 5, down: 7", "borders: [{cut: 1 1/2, fabric: Foam}, {width: 7 3/4, fabric: Reed}]", "40", "49"},
		{"gardenweb.com 6366797: 54 blocks that finish 10", "10 1/2", 54, "across: 6, down: 9", "", "60", "90"},
		{"the same, for about 48 x 72", "10 1/2", 35, "across: 5, down: 7", "", "50", "70"},
		{"cuddlecatquiltworks.com: 8 in blocks 5 x 6, borders 2 and 4 1/2", "8 1/2", 30, "across: 5, down: 6", "borders: [{width: 2, fabric: Foam}, {width: 4 1/2, fabric: Reed}]", "53", "61"},
		{"the same, a column and a row more", "8 1/2", 42, "across: 6, down: 7", "borders: [{width: 2, fabric: Foam}, {width: 4 1/2, fabric: Reed}]", "61", "69"},
		{"10 x 10 and a border of the same blocks, hand-worked", "6 1/2", 144, "across: 10, down: 10", "borders: [{blocks: tide}]", "72", "72"},
	} {
		t.Run(c.source, func(t *testing.T) {
			p := planOf(t, setJob(c.square, c.blocks, c.layout, c.borders))
			assert.Equal(t, inchSize(t, c.width, c.height), p.Quilt.Finished)
		})
	}
}

// Values that stand published and are wrong must not come out: 40 x 48 for the six
// hour baby quilt, 48 x 72 for blocks that finish 10.
func TestPublishedSlipsAreNotRepeated(t *testing.T) {
	baby := planOf(t, setJob("5", 35, "across: 5, down: 7", "borders: [{cut: 1 1/2, fabric: Foam}, {width: 7 3/4, fabric: Reed}]"))
	assert.NotEqual(t, inchSize(t, "40", "48"), baby.Quilt.Finished)
	lap := planOf(t, setJob("10 1/2", 54, "across: 6, down: 9", ""))
	assert.NotEqual(t, inchSize(t, "48", "72"), lap.Quilt.Finished)
}

// piecesFor is how many pieces of each raw size are cut for a purpose.
func piecesFor(p Plan, purpose string) map[string]int {
	pieces := map[string]int{}
	for _, f := range p.Fabrics {
		for _, piece := range f.Pieces {
			if piece.For == purpose {
				pieces[piece.Size.Show(p.Job.Units)] += piece.Count
			}
		}
	}
	return pieces
}

// Source: sewingwithstitcher.com/sashings-and-cornerstones, 3 x 4 blocks that finish
// 8: all round 16 + 15 = 31 pieces and 20 cornerstones, only between 8 + 9 = 17 and 6.
func TestSashingHasThePublishedPieces(t *testing.T) {
	layout := "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: %s}"
	round := planOf(t, setJob("8 1/2", 12, fmt.Sprintf(layout, "yes"), ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 31}, piecesFor(round, "sashing"))
	assert.Equal(t, map[string]int{"2 1/2 × 2 1/2 in": 20}, piecesFor(round, "cornerstones"))
	between := planOf(t, setJob("8 1/2", 12, fmt.Sprintf(layout, "no"), ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 17}, piecesFor(between, "sashing"))
	assert.Equal(t, map[string]int{"2 1/2 × 2 1/2 in": 6}, piecesFor(between, "cornerstones"))
	trimmed := planOf(t, setJob("8 1/4", 12, fmt.Sprintf(layout, "yes"), ""))
	assert.Equal(t, map[string]int{"8 1/4 × 2 1/2 in": 31}, piecesFor(trimmed, "sashing"))
	// 16 cornerstones a strip of 40 in, two strips (the same page).
	assert.Equal(t, inches(t, "5"), needOf(t, round, "Reed").Length)
}

// The published strips are 2 1/2 in wide, 4 pieces from each: 8 strips, 20 in of
// cloth. The planner turns the pieces: two strips of 8 1/2 in, 16 from each, are 17.
func TestSashingTakesNoMoreClothThanPublished(t *testing.T) {
	p := planOf(t, setJob("8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Reed, edge: yes}", ""))
	for _, need := range p.Fabrics {
		if need.Fabric.Name == "Foam" {
			assert.Equal(t, inches(t, "17"), need.Length)
			assert.LessOrEqual(t, need.Length, inches(t, "2 1/2").Times(8))
		}
	}
}

// Without cornerstones, hand-worked: short pieces stand in the rows, long strips lie
// between them: 3 x 4 blocks, between only, 4 x 2 = 8 pieces of 8 1/2 and three strips
// of 28 1/2, of which 40 in cloth gives one each. All round 16 and five of 32 1/2.
func TestSashingWithoutCornerstonesHasLongStrips(t *testing.T) {
	p := planOf(t, setJob("8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam}", ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 8, "40 × 2 1/2 in": 3}, piecesFor(p, "sashing"))
	assert.Zero(t, count(p, "piece-sashing"), "a strip is as long as a row")
	round := planOf(t, setJob("8 1/2", 12, "across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, edge: yes}", ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 16, "40 × 2 1/2 in": 5}, piecesFor(round, "sashing"))
	// Six across are 6 x 8 + 5 x 2 = 58 finished, 58 1/2 raw; three strips of it are
	// 175 1/2 in, and each strip of 40 gives 39 1/2: five strips, four joins.
	wide := planOf(t, setJob("8 1/2", 24, "across: 6, down: 4, sashing: {cut: 2 1/2, fabric: Foam}", ""))
	assert.Equal(t, map[string]int{"8 1/2 × 2 1/2 in": 20, "40 × 2 1/2 in": 5}, piecesFor(wide, "sashing"))
	assert.Equal(t, 3, count(wide, "piece-sashing"))
	assert.Equal(t, inches(t, "10"), seamOf(wide, "piece-sashing"), "four joins across 2 1/2")
}

// A one-way print keeps its pieces apart: upright ones and level ones are cut as
// they lie. Hand-worked from the published 16 and 15.
func TestDirectionalSashingIsCutAsItLies(t *testing.T) {
	p := planOf(t, `
job: set
fabrics: {Kelp: {form: yardage, width: 40}, Foam: {form: yardage, width: 40, directional: yes}}
block: {make: plain square, square: 8 1/2, print: Kelp}
colourways: {tide: {blocks: 12}}
layout: {across: 3, down: 4, sashing: {cut: 2 1/2, fabric: Foam, cornerstones: Kelp, edge: yes}}
`)
	assert.Equal(t, map[string]int{"2 1/2 × 8 1/2 in": 16, "8 1/2 × 2 1/2 in": 15}, piecesFor(p, "sashing"))
}

// The example of every key plans as it stands. Hand-worked: blocks of 7 in squares
// finish 12; 4 and 2 of them, 2 in sashing between and a 3 in border are
// 48 + 6 + 6 = 60 by 24 + 2 + 6 = 32.
func TestTheJobOfEveryKeyIsPlanned(t *testing.T) {
	job, err := Parse("every-key.yaml", jobFile(t, "every-key.yaml"))
	require.NoError(t, err)
	p, err := Make(job, Prior{})
	require.NoError(t, err)
	assert.Equal(t, inchSize(t, "60", "32"), p.Quilt.Finished)
	assert.Equal(t, map[string]int{"12 1/2 × 2 1/2 in": 10}, piecesFor(p, "sashing"))
	assert.Equal(t, map[string]int{"2 1/2 × 2 1/2 in": 3}, piecesFor(p, "cornerstones"))
}

// Borders are measured through the middle: sides as long as the inside is high, then
// ends over them. Hand-worked: 40 x 48 inside, 2 and 4 1/2 in borders.
func TestBordersGrowFromTheInside(t *testing.T) {
	p := planOf(t, setJob("8 1/2", 30, "across: 5, down: 6", "borders: [{width: 2, fabric: Foam}, {width: 4 1/2, fabric: Reed}]"))
	require.Len(t, p.Borders, 2)
	assert.Equal(t, BorderPlan{
		Fabric: "Foam", Width: inches(t, "2"), Cut: inches(t, "2 1/2"), Inside: inchSize(t, "40", "48"), Outside: inchSize(t, "44", "52"),
		Sides: inches(t, "48 1/2"), Ends: inches(t, "44 1/2"),
	}, p.Borders[0])
	assert.Equal(t, inches(t, "52 1/2"), p.Borders[1].Sides)
	assert.Equal(t, inches(t, "53 1/2"), p.Borders[1].Ends)
	assert.Equal(t, 8, count(p, "add-borders"))
	assert.Equal(t, inches(t, "398"), seamOf(p, "add-borders"), "2 x (48 1/2 + 44 1/2 + 52 1/2 + 53 1/2)")
}
