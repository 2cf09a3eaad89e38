package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/patchwork"
)

// Source of the case: a maker's page of 2011: a centre of 10 x 10 blocks and one
// border of the same, of which 21 were made (11² - 10²). It takes 12² - 10² = 44: 23
// more.
func TestABorderOfBlocksTakesTheDifferenceOfTheSquares(t *testing.T) {
	p := planOf(t, setJob("6 1/2", 144, "across: 10, down: 10", "borders: [{blocks: tide}]"))
	assert.Equal(t, 144, p.Quilt.Blocks)
	assert.Equal(t, 44, p.Borders[0].Blocks)
	assert.Equal(t, 12, p.Quilt.Rows)
	assert.Equal(t, 12, p.Quilt.Columns)
	job, err := Parse("job.yaml", []byte(setJob("6 1/2", 121, "across: 10, down: 10", "borders: [{blocks: tide}]")))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	assert.EqualError(t, err, "job.yaml:6:18: the colourways have 121 blocks, but the quilt holds 144 (10 across × 10 down, and 44 in border 1); make 23 blocks more, or change across and down")
}

// borderJob is 3 x 2 blocks in two colourways with a border of both.
func borderJob(tide, dune int, order, blocks string) string {
	return fmt.Sprintf(`
job: border
fabrics: {Kelp: {form: yardage, width: 40}, Foam: {form: yardage, width: 40}}
block: {make: plain square, square: 4 1/2, print: Kelp}
colourways: {tide: {blocks: %d}, dune: {blocks: %d, print: Foam}}
layout: {across: 3, down: 2, order: %s}
borders: [{blocks: %s}]
`, tide, dune, order, blocks)
}

// Hand-worked: 14 blocks round 3 x 2. A list is dealt clockwise from the top left
// corner; counts are dealt in turn until one is used up; the layout deals what is left.
func TestABorderOfBlocksIsDealtRound(t *testing.T) {
	for _, c := range []struct{ file, want string }{
		{borderJob(10, 10, "rows", "[tide, dune]"), "tdtdt dtdtd tdtdt dtdtd"},
		{borderJob(17, 3, "rows", "tide"), "ttttt ttdtt tdtdt ttttt"},
		{borderJob(14, 6, "{rows: fill}", "{dune: 3, tide: 11}"), "dtdtd ttttt tdddt ttttt"},
		{borderJob(10, 10, "[[tide, tide, tide], [dune, dune, dune]]", "[tide, dune]"), "tdtdt dtttd tdddt dtdtd"},
	} {
		assert.Equal(t, c.want, hungMap(planOf(t, c.file)))
	}
}

// What a border of blocks cannot be is refused at its place, with what would do.
func TestBordersOfBlocksAreRefusedInWords(t *testing.T) {
	for _, c := range []struct{ file, want string }{
		{borderJob(10, 10, "rows", "[tide, dnue]"), `job.yaml:7:27: the border names the colourway "dnue", which is not described; did you mean "dune"?`},
		{borderJob(10, 10, "rows", "tide, width: 2"), `job.yaml:7:33: border 1 is made of blocks and has no "width" of its own; take it out, or give the cloth a border of its own`},
		{borderJob(10, 10, "rows", "tide"), "job.yaml:7:20: border 1 takes 14 blocks of tide, but there are only 10 for it; make 4 more of them: a colourway's blocks are all of a quilt, its borders counted"},
		{borderJob(10, 10, "rows", "{tide: 4, dune: 4}"), "job.yaml:7:20: border 1 counts 8 blocks, but it is made of 14; make the counts add up, or write a list to deal round"},
		{borderJob(11, 9, "[[tide, tide, tide], [dune, dune, dune]]", "[tide, dune]"), `job.yaml:6:37: the map has "tide" 3 times, but the borders leave 4 blocks of that colourway; make the two agree` + "\n" +
			`job.yaml:6:37: the map has "dune" 3 times, but the borders leave 2 blocks of that colourway; make the two agree`},
		// Hand-worked: 3 x 2 blocks of 4 with 1 in round are 14 x 10; with 2 in 16 x 12.
		{strings.Replace(borderJob(10, 10, "rows", "tide"), "[{", "[{width: 1, fabric: Foam}, {", 1),
			"job.yaml:7:46: border 2 is made of blocks that finish 4 in square, and what it goes round is 14 × 10 in: that is no whole number of blocks; border 1 would have to finish 2 in wide, not 1 in"},
		// 12 + 4 x 1 is 16 and 8 + 3 x 1 is 11: what makes the one come out even never
		// suits the other.
		{strings.Replace(borderJob(10, 10, "rows", "tide"), "order: rows", "sashing: {width: 1, fabric: Foam, edge: yes}", 1),
			"job.yaml:7:20: border 1 is made of blocks that finish 4 in square, and what it goes round is 16 × 11 in: that is no whole number of blocks; no border of cloth between makes both ways come out even; make it of cloth, or change the sashing"},
		{strings.Replace(borderJob(10, 10, "rows", "tide"), "order: rows", "sashing: {width: 1, fabric: Foam}", 1),
			"job.yaml:7:20: with sashing only between, the border's blocks would meet the blocks inside out of step; write edge: yes in the sashing, or put a border of cloth between"},
		{strings.Replace(borderJob(8, 8, "rows", "tide"), "order: rows", "setting: on point, triangles: Foam", 1),
			"job.yaml:7:20: border 1 is made of blocks, and round blocks on point it never comes out even: their diagonal is no whole number of sides; make it of cloth, or set the blocks straight"},
	} {
		job, err := Parse("job.yaml", []byte(c.file))
		if err == nil {
			_, err = Make(job, Prior{})
		}
		assert.EqualError(t, err, c.want)
	}
}

// A square centre needs a border of cloth between that makes up a whole number of
// blocks. Hand-worked: 2 x 2 blocks of 4 with sashing of 1 all round are 11 square;
// half an inch round makes 12.
func TestTheBorderThatWouldFitIsNamed(t *testing.T) {
	file := setJob("4 1/2", 20, "across: 2, down: 2, sashing: {width: 1, fabric: Foam, edge: yes}", "borders: [{blocks: tide}]")
	job, err := Parse("job.yaml", []byte(file))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	assert.ErrorContains(t, err, "a border of cloth between that finishes 1/2 in wide would make it come out even")
	p := planOf(t, strings.Replace(file, "[{", "[{width: 1/2, fabric: Reed}, {", 1))
	assert.Equal(t, inchSize(t, "20", "20"), p.Quilt.Finished)
}

// A border's strips, hand-worked: round 10 x 10, two of 10 blocks and two of 12 have
// 2 x 9 + 2 x 11 = 40 joins; the rows inside keep their 90. Seams of a whole strip:
// 2 x 60 1/2 and 2 x 72 1/2.
func TestTheStripsOfABorderOfBlocks(t *testing.T) {
	p := planOf(t, setJob("6 1/2", 144, "across: 10, down: 10", "borders: [{blocks: tide}]"))
	assert.Equal(t, 40, count(p, "sew-border-blocks"))
	assert.Equal(t, 4, count(p, "press-border-blocks"))
	assert.Equal(t, 90, count(p, "sew-top-rows"))
	assert.Equal(t, inches(t, "266"), seamOf(p, "add-borders"))
	assert.Equal(t, inches(t, "260"), seamOf(p, "sew-border-blocks"))
}

// Round 10 rows, the first pressed right and the last left, hand-worked: the upper
// strip must go left and the lower one right to nest with them, and the two side seams
// cannot nest with both: 2 of 40 clash. Round 9 rows, first and last alike, none does.
func TestABorderOfBlocksIsPressedAgainstWhatItMeets(t *testing.T) {
	even := planOf(t, setJob("6 1/2", 144, "across: 10, down: 10", "borders: [{blocks: tide}]"))
	assert.Equal(t, patchwork.Tally{Nest: 38, Clash: 2}, joinsOf(even)[joinOnBorder])
	odd := planOf(t, setJob("6 1/2", 132, "across: 10, down: 9", "borders: [{blocks: tide}]"))
	assert.Equal(t, patchwork.Tally{Nest: 38}, joinsOf(odd)[joinOnBorder])
	assert.Equal(t, "left", odd.Press.Top.Borders[0].Upper)
	assert.Equal(t, "up", odd.Press.Top.Borders[0].Left)
}

// The joins of blocks with seams of their own, in any setting, are what its blocks
// come to where they lie against each other.
func TestJoinsInAnySettingAreThoseOfItsBlocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		across, down := rapid.IntRange(1, 4).Draw(t, "across"), rapid.IntRange(1, 4).Draw(t, "down")
		blocks, layout, borders := across*down, "", ""
		switch rapid.SampledFrom([]string{"straight", "on point", "border", "border apart", "sashing"}).Draw(t, "setting") {
		case "on point":
			layout, blocks = ", setting: on point, triangles: Foam", blocks+(across-1)*(down-1)
		case "border":
			borders, blocks = "borders: [{blocks: tide}]", blocks+2*(across+down)+4
		case "border apart":
			borders, blocks = "borders: [{width: 4, fabric: Foam}, {blocks: tide}]", blocks+2*(across+down)+8
		case "sashing":
			layout = ", sashing: {width: 1, fabric: Foam, cornerstones: Heron}"
		}
		make := rapid.SampledFrom([]string{"make: four-patch recut, offset: 1, square: 5", "make: nine-patch, square: 3 1/6", "make: four-patch, square: 4 1/2"}).Draw(t, "make")
		roles := "print: Heron, ground: Foam"
		if strings.Contains(make, "nine") {
			roles = "corner: Heron, side: Foam, centre: Heron"
		}
		file := fmt.Sprintf(`
job: met
fabrics: {Heron: {form: yardage, width: 40}, Foam: {form: yardage, width: 40}}
block: {%s, %s}
colourways: {tide: {blocks: %d}}
layout: {across: %d, down: %d, turn: %s%s}
%s
`, make, roles, blocks, across, down, rapid.SampledFrom([]string{"[[0]]", "[[0, 90], [90, 0]]", "[[0, 180, 90]]"}).Draw(t, "turn"), layout, borders)
		job, err := Parse("job.yaml", []byte(file))
		require.NoError(t, err, file)
		p, err := Make(job, Prior{})
		require.NoError(t, err, file)
		requireJoinsOfItsBlocks(t, p)
	})
}
