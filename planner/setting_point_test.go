package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// pointJob is plain blocks on point.
func pointJob(square string, across, down int) string {
	blocks := across*down + (across-1)*(down-1)
	return setJob(square, blocks, fmt.Sprintf("across: %d, down: %d, setting: on point, triangles: Foam", across, down), "")
}

// Source: pinemeadowsdesigns.com, block on point; ukqu.co.uk, on point settings: 3 x
// 4 blocks that finish 12: 18 blocks, 50.91 x 67.88 in, 10 side triangles from 3
// squares of 18 1/4, 2 over, and 4 corners from 2 squares of 9 3/8.
func TestOnPointHasThePublishedMeasures(t *testing.T) {
	p := planOf(t, pointJob("12 1/2", 3, 4))
	assert.Equal(t, 18, p.Quilt.Blocks)
	assert.InDelta(t, 50.91, p.Quilt.Finished.Width.In(measure.Inches), 0.005)
	assert.InDelta(t, 67.88, p.Quilt.Finished.Height.In(measure.Inches), 0.005)
	assert.Equal(t, map[string]int{"18 1/4 × 18 1/4 in": 3, "9 3/8 × 9 3/8 in": 2}, piecesFor(p, "setting triangles"))
	assert.Contains(t, doing(t, p, "cut-setting-triangles"), "12 side triangles, 2 over")
	assert.Contains(t, doing(t, p, "cut-setting-triangles"), "4 corner triangles")
}

// doing is the instruction of an operation's first lot.
func doing(t *testing.T, p Plan, key string) string {
	t.Helper()
	for _, o := range p.Operations {
		if o.Key == key {
			return o.Doing
		}
	}
	require.Fail(t, "no operation "+key)
	return ""
}

// Sources: moonlightquilters.org, on point settings: blocks of 6, 9 3/4 and 5 1/8
// (9.735, 5.118); docsbay: 9 3/8 for 12. In centimetres, hand-worked: blocks that
// finish 20 with 0.75 cm seams, 20√2 + 3.75 = 32.03 and 20/√2 + 2.625 = 16.77, cut on
// the half centimetre 32.5 and 17.
func TestSettingSquaresAreRoundedUpToTheRuler(t *testing.T) {
	p := planOf(t, pointJob("6 1/2", 2, 2))
	assert.Equal(t, map[string]int{"9 3/4 × 9 3/4 in": 1, "5 1/8 × 5 1/8 in": 2}, piecesFor(p, "setting triangles"))
	cm := planOf(t, "units: cm\n"+strings.ReplaceAll(strings.TrimPrefix(pointJob("21.5", 2, 2), "\n"), "width: 40", "width: 102"))
	assert.Equal(t, map[string]int{"32.5 × 32.5 cm": 1, "17 × 17 cm": 2}, piecesFor(cm, "setting triangles"))
}

// A triangle as it is cut must hold the one that shows and its seams: exact squares
// are side·√2 + s(2 + 2√2) and side/√2 + s(2 + √2), worked out from the triangles.
func TestSettingTrianglesAreNeverTooSmall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := measure.Length(rapid.IntRange(1*8, 24*8).Draw(t, "side")) * measure.Inch / 8
		seam := measure.Length(rapid.IntRange(2, 16).Draw(t, "seam")) * measure.Inch / 32
		for _, units := range []measure.Unit{measure.Inches, measure.Centimetres} {
			m := &maker{job: Job{Seam: seam, Units: units}, frame: frame{layout: &Layout{Setting: OnPoint}, block: measure.Size{Width: side, Height: side}}}
			exact := side.TimesRoot2(measure.Up) + 2*seam + (2 * seam).TimesRoot2(measure.Up)
			require.GreaterOrEqual(t, m.sideSquare(), exact)
			require.Less(t, m.sideSquare()-exact, seam/4+m.rulerLine(), "only slightly too large")
			corner := side.OverRoot2(measure.Up) + 2*seam + seam.TimesRoot2(measure.Up)
			require.GreaterOrEqual(t, m.cornerSquare(), corner)
			require.Less(t, m.cornerSquare()-corner, seam/4+m.rulerLine())
		}
	})
}

// Hand-worked for any count of quilts: side triangles come four from a square over
// the whole run. Two quilts of 10 are 20 triangles from 5 squares, none over.
func TestSideTrianglesAreCutForTheRun(t *testing.T) {
	p := planOf(t, "quantity: 2\n"+strings.TrimPrefix(pointJob("12 1/2", 3, 4), "\n"))
	assert.Equal(t, map[string]int{"18 1/4 × 18 1/4 in": 5, "9 3/8 × 9 3/8 in": 4}, piecesFor(p, "setting triangles"))
	assert.Contains(t, doing(t, p, "cut-setting-triangles"), "20 side triangles, 0 over")
}

// Diagonal rows of 3 x 4, hand-worked from the picture: 1, 3, 5, 5, 3 and 1 blocks.
// Each row has a seam between blocks and one to either side triangle, but for the two
// ends at the quilt's corners: 12 + 10. Joins of rows cross 2 + 4 + 5 + 4 + 2 seams.
func TestDiagonalRowsOfThreeByFour(t *testing.T) {
	p := planOf(t, pointJob("12 1/2", 3, 4))
	perRow := map[int]int{}
	for _, b := range p.Blocks {
		perRow[b.Row]++
	}
	assert.Equal(t, map[int]int{1: 1, 2: 3, 3: 5, 4: 5, 5: 3, 6: 1}, perRow)
	assert.Equal(t, 22, count(p, "sew-top-rows"))
	assert.Equal(t, 6, count(p, "press-top-rows"))
	assert.Equal(t, 5, count(p, "join-top-rows"))
	assert.Equal(t, 4, count(p, "add-corner-triangles"))
	assert.Equal(t, patchwork.Tally{Nest: 17}, joinsOf(p)["block corners"])
	assert.Equal(t, patchwork.Tally{}, joinsOf(p)["block and setting triangle"])
	// 22 seams as long as a raw block; joins of 3, 5, 6, 5 and 3 blocks' sides, each
	// with 1/4 in times √2 at either end.
	assert.Equal(t, inches(t, "275"), seamOf(p, "sew-top-rows"))
	assert.Equal(t, inches(t, "264")+5*2*(measure.Inch/4).TimesRoot2(measure.Up), seamOf(p, "join-top-rows"))
	assert.Equal(t, inches(t, "50"), seamOf(p, "add-corner-triangles"))
	assert.Equal(t, []string{"right", "left", "right", "left", "right", "left"}, p.Press.Top.Rows)
}

// One block on point has four corners round it and no side triangle.
func TestOneBlockOnPoint(t *testing.T) {
	p := planOf(t, pointJob("12 1/2", 1, 1))
	assert.Equal(t, map[string]int{"9 3/8 × 9 3/8 in": 2}, piecesFor(p, "setting triangles"))
	assert.Zero(t, count(p, "sew-top-rows"))
	assert.Zero(t, count(p, "join-top-rows"))
	assert.Equal(t, 4, count(p, "add-corner-triangles"))
	assertHoldsTogether(t, p)
}

// hungMap is the colourways of a top as the quilt hangs, line by line, the first
// letter of each.
func hungMap(p Plan) string {
	lines := map[int]string{}
	for _, b := range p.Blocks[:p.Quilt.Blocks] {
		line, nth := p.Hung(b)
		for len(lines[line]) <= nth {
			lines[line] += "."
		}
		lines[line] = lines[line][:nth] + b.Colourway[:1] + lines[line][nth+1:]
	}
	var all []string
	for i := range len(lines) {
		all = append(all, lines[i])
	}
	return strings.Join(all, " ")
}

// pointColours is 3 x 2 blocks on point in colourways a, b and c, in an order.
func pointColours(order string) string {
	return `
job: colours
fabrics: {Kelp: {form: yardage, width: 40}, Foam: {form: yardage, width: 40}}
block: {make: plain square, square: 4 1/2, print: Kelp}
colourways: {a: {blocks: 3}, b: {blocks: 3}, c: {blocks: 2}}
layout: {across: 3, down: 2, setting: on point, triangles: Foam, order: ` + order + `}
`
}

// Orders on point, hand-worked. As the quilt hangs its lines hold 3, 2 and 3 blocks;
// rows deal along them, diagonals from their upper right end down to the left.
func TestOrdersOnPoint(t *testing.T) {
	for order, want := range map[string]string{
		"rows":                                  "abc ab cab",
		"{rows: fill}":                          "aaa bb bcc",
		"diagonal":                              "abb cc aab",
		"{diagonal: fill}":                      "aab ab bcc",
		"[[c, b, a], [a, b@90], [b, a, c@180]]": "cba ab bac",
		"[[c], [b, a, b], [a, b@90, a], [c@180]]": "cba ab bac",
	} {
		p := planOf(t, pointColours(order))
		assert.Equal(t, want, hungMap(p), order)
	}
}

// A turn of the map or of the layout is the block's in its diagonal row; a pattern is
// laid over the level lines. Hand-worked: the pattern's first line is 0, 90, its
// second 180 and 180.
func TestTurnsOnPoint(t *testing.T) {
	p := planOf(t, strings.Replace(pointColours("[[c, b, a], [a, b@90], [b, a, c@180]]"), "triangles", "turn: [[0, 90], [180, 180]], triangles", 1))
	turns := map[[2]int]int{}
	for _, b := range p.Blocks {
		line, nth := p.Hung(b)
		turns[[2]int{line, nth}] = b.Turn
	}
	assert.Equal(t, map[[2]int]int{
		{0, 0}: 0, {0, 1}: 90, {0, 2}: 0,
		{1, 0}: 180, {1, 1}: 270,
		{2, 0}: 0, {2, 1}: 90, {2, 2}: 180,
	}, turns)
}

// A map on point is written as the quilt hangs; one with other lines is refused with
// what it should have. A count that no such layout has is explained.
func TestMapsAndCountsOnPointAreRefusedInWords(t *testing.T) {
	for file, want := range map[string]string{
		pointColours("[[c, b, a], [a, b, b], [a, c]]"): "job.yaml:6:85: row 2 of the map has 3 blocks, but the layout has 2 across; on point, write the level lines as the quilt hangs, 3 and 2 blocks by turns, 3 lines in all, or the diagonal rows as the job sheet counts them\n" +
			"job.yaml:6:96: row 3 of the map has 2 blocks, but the layout has 3 across; on point, write the level lines as the quilt hangs, 3 and 2 blocks by turns, 3 lines in all, or the diagonal rows as the job sheet counts them",
		strings.Replace(pointJob("12 1/2", 3, 4), "blocks: 18", "blocks: 17", 1):           "job.yaml:6:18: the colourways have 17 blocks, but the layout holds 18 (3 across × 4 down on point, and 2 × 3 between); make 1 block more, or change across and down; on point, a layout holds across × down and (across − 1) × (down − 1) between them; nearest: 2 × 6 on point holds 17",
		strings.Replace(pointJob("12 1/2", 3, 4), "triangles: Foam", "triangles: Foma", 1): `job.yaml:6:60: the fabric "Foma" is not described under fabrics; did you mean "Foam"?`,
		strings.Replace(pointJob("12 1/2", 3, 4), "setting: on point, ", "", 1): "job.yaml:6:18: the colourways have 18 blocks, but the layout holds 12 (3 across × 4 down); take 6 blocks out, or change across and down; nearest: 3 × 6 holds 18\n" +
			`job.yaml:6:41: "triangles" is for blocks set on point; write setting: on point, or take it out`,
		strings.Replace(pointJob("12 1/2", 3, 4), "triangles", "sashing: {width: 2, fabric: Foam}, triangles", 1): "job.yaml:6:58: sashing on point is not planned: its strips run out into the setting triangles and are cut off at a slant, for which there is no published measure to hold the plan against; take the sashing out, or set the blocks straight",
	} {
		_, err := Parse("job.yaml", []byte(file))
		assert.EqualError(t, err, want)
	}
}

// Layouts that hold the blocks are found, and where none of a like shape does the
// nearest fewer and more. Hand-worked: 3 x 4 on point holds 18, 2 x 4 holds 11; 13 is
// 3 x 3; straight, 13 lies between 3 x 4 and 3 x 5. What is far off is no help.
func TestNearestLayouts(t *testing.T) {
	words := func(setting Setting, blocks int) string {
		return nearestWords(Layout{Across: 3, Down: 4, Setting: setting}, blocks)
	}
	assert.Contains(t, words(OnPoint, 13), "nearest: 3 × 3 on point holds 13")
	assert.Contains(t, words(OnPoint, 12), "nearest: 2 × 4 on point holds 11 and 3 × 3 on point holds 13")
	assert.Equal(t, "; nearest: 3 × 4 holds 12 and 3 × 5 holds 15", words(Straight, 13))
	assert.Empty(t, words(Straight, 1000))
}
