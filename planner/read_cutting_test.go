package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

func TestTheCuttingAndTheSparesAreRead(t *testing.T) {
	const in = measure.Inch
	j := readGood(t, changed(t, "seam: 1/4", "seam: 1/4\nprewash: yes\ncutting: {style: nested, layers: 6, square-up: 1/2, selvage: 3/4, shrinkage: {width: 2.5 %, length: 3}}\nspares: {pieces: 4, blocks: 1}"))
	assert.Equal(t, CutRules{Style: cloth.Nested, Layers: 6, SquareUp: in / 2}, j.Cutting)
	assert.Equal(t, Spares{Pieces: 4, Blocks: 1}, j.Spares)
	assert.Equal(t, Shrinkage{250, 300}, j.Fabrics[1].Shrinkage)
}

// Good cotton loses about 2 % each way (published: All About Quilts). What is not
// washed before it is cut loses nothing, nor do pre-cut pieces, which are not washed.
func TestOnlyClothThatIsWashedShrinks(t *testing.T) {
	j := readGood(t, changed(t, "seam: 1/4", "seam: 1/4\nprewash: yes"))
	assert.Equal(t, Shrinkage{200, 200}, j.Fabrics[1].Shrinkage)
	assert.Zero(t, readGood(t, plainJob).Fabrics[1].Shrinkage)
	j = readGood(t, changed(t, "  Foam: {form: yardage, width: 42}", "  Foam: {form: yardage, width: 42, shrinkage: 6 %}\n  Buoy: {form: pre-cut squares, size: 5}", "seam: 1/4", "seam: 1/4\nprewash: yes"))
	assert.Equal(t, Shrinkage{600, 600}, j.Fabrics[1].Shrinkage)
	assert.Zero(t, j.Fabrics[2].Shrinkage)
}

// Cloth sold as 44 in is 42 in without its selvages (published: Quilter's Cache).
func TestAFullWidthLosesItsSelvages(t *testing.T) {
	f := readGood(t, changed(t, "width: 42", "bolt: 44")).Fabrics[1]
	assert.Equal(t, 42*measure.Inch, f.Width)
	assert.False(t, f.Assumed)
}

// A bolt cut in two gives what its longer length gives, and the other one as a
// piece.
func TestPiecesOfAnySizeAreOnHand(t *testing.T) {
	const in = measure.Inch
	j := readGood(t, changed(t, "width: 42", "width: 42, on-hand: [1/2 yd, 12 x 20, 1 1/2 yd]"))
	assert.Equal(t, &Stock{Length: 54 * in, Pieces: []measure.Size{
		{Width: 12 * in, Height: 20 * in}, {Width: 42 * in, Height: 18 * in},
	}}, j.Fabrics[1].OnHand)
	j = readGood(t, changed(t, "on-hand: 4", "on-hand: [3, 9 x 21]"))
	assert.Equal(t, &Stock{Sheets: 3, Pieces: []measure.Size{{Width: 9 * in, Height: 21 * in}}}, j.Fabrics[0].OnHand)
}

func TestTheFinishingTakesTheMakersWays(t *testing.T) {
	const in = measure.Inch
	j := readGood(t, changed(t, "{width: 3, fabric: Foam}", "{width: 3, fabric: Foam, grain: lengthways}",
		"backing: {fabric: Foam}", "backing: {fabric: Foam, extra: 4 x 5, seams: crosswise}",
		"batting: {extra: 4}", "batting: {roll: 96}",
		"strip: 2 1/2", "joins: straight, allowance: 12, grain: on the bias"))
	assert.Equal(t, Lengthwise, j.Borders[0].Grain)
	assert.Equal(t, &Backing{Fabric: "Foam", Extra: 4 * in, Ends: 5 * in, Seams: Crosswise}, j.Backing)
	assert.Equal(t, &Batting{Extra: 3 * in, Roll: 96 * in}, j.Batting)
	assert.Equal(t, StraightJoint, j.Binding.Joints)
	assert.Equal(t, 12*in, j.Binding.Allowance)
	assert.True(t, j.Binding.Bias)
	j = readGood(t, changed(t, "batting: {extra: 4}", "batting: {packages: [60 x 60, 72 x 90], by: quilter}", "by: self", "by: sent out, lead-days: 30"))
	assert.Equal(t, []measure.Size{{Width: 60 * in, Height: 60 * in}, {Width: 72 * in, Height: 90 * in}}, j.Batting.Packages)
	assert.True(t, j.Batting.Quilter)
	// Log House Quilting, Lupine: a quilt 60 × 80 needs a backing 68 × 88 at the frame.
	assert.Equal(t, &Backing{Fabric: "Foam", Extra: 4 * in, Ends: 4 * in}, j.Backing)
}

func TestCuttingFaults(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"a style that is not known", "seam: 1/4", "seam: 1/4\ncutting: {style: wild}",
			[]string{`7:18: "style" cannot be "wild"; it can be simple or nested`},
		},
		{
			"no layer at all", "seam: 1/4", "seam: 1/4\ncutting: {layers: 0}",
			[]string{`7:19: "layers" is 0; it must be at least 1`},
		},
		{
			"shrinkage of what is not washed", "seam: 1/4", "seam: 1/4\ncutting: {shrinkage: 3}",
			[]string{`7:22: "shrinkage" counts where cloth is washed before it is cut; write prewash: yes, or take it out`},
		},
		{
			"shrinkage that is no share", "seam: 1/4", "seam: 1/4\nprewash: yes\ncutting: {shrinkage: much}",
			[]string{`8:22: "shrinkage" should be a share in percent, not "much"; write it as in shrinkage: 3 %`},
		},
		{
			"shrinkage beyond all cloth", "seam: 1/4", "seam: 1/4\nprewash: yes\ncutting: {shrinkage: 40 %}",
			[]string{`8:22: "shrinkage" is "40 %", more than any cloth for quilts shrinks; at most 25 %`},
		},
		{
			"spares of something else", "seam: 1/4", "seam: 1/4\nspares: {squares: 4}",
			[]string{`7:10: "squares" is not a key of the spares; the keys here are pieces and blocks`},
		},
		{
			"more spares than a run may have blocks", "seam: 1/4", "seam: 1/4\nspares: {blocks: 20000}",
			[]string{"7:9: 20000 spares are more than a run may have blocks; keep to 10000"},
		},
		{
			"a width and a bolt", "width: 42", "width: 42, bolt: 44",
			[]string{`10:42: fabric "Foam" has both "width" and "bolt"; keep the usable width or the full width of the bolt`},
		},
		{
			"a bolt of two selvages", "width: 42", "bolt: 2",
			[]string{"10:31: a bolt 2 in wide has nothing left between its selvages; each selvage takes 1 in"},
		},
		{
			"a bolt of sheets", "on-hand: 4", "bolt: 44",
			[]string{`9:35: fabric "Kelp" comes as fat quarters, which have a size and no width; write it as in size: 18 x 22`},
		},
		{
			"a list of bare lengths", "width: 42", "width: 42, on-hand: [2, 12 x]",
			[]string{
				"10:46: yardage on hand needs its unit: 2 yd, not 2",
				`10:49: "on-hand" cannot be "12 x"; a size is a width and a height, such as 18 x 22`,
			},
		},
		{
			"a grain that is not known", "{width: 3, fabric: Foam}", "{width: 3, fabric: Foam, grain: wavy}",
			[]string{`31:37: "grain" cannot be "wavy"; it can be lengthwise or crosswise`},
		},
		{
			"batting by a quilter at home", "batting: {extra: 4}", "batting: {by: quilter}",
			[]string{"33:15: the quilter can bring the batting only where the quilting is sent out; write by: sent out at quilting, or by: self here"},
		},
		{
			"batting off a roll and in packages", "batting: {extra: 4}", "batting: {packages: [72 x 90], roll: 96}",
			[]string{`33:38: the batting has both "packages" and "roll"; keep the one that you buy`},
		},
		{
			"joins that are not known", "strip: 2 1/2", "joins: glued",
			[]string{`34:32: "joins" cannot be "glued"; it can be diagonal or straight`},
		},
	})
}
