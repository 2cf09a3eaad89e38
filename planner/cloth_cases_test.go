package planner

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// needOf is the need of a fabric.
func needOf(t testing.TB, p Plan, fabric string) FabricNeed {
	t.Helper()
	for _, n := range p.Fabrics {
		if n.Fabric.Name == fabric {
			return n
		}
	}
	require.Fail(t, "no fabric", fabric)
	return FabricNeed{}
}

// 49 recut nine-patches of 4 1/2 in squares, 7 × 7. The page (quiltedimpressions.com
// 2015/10/28) buys 2 3/4, 2 3/4 and 3/4 yd on 43 in, which is right there: 22 strips
// of 9 are 99 in, 6 are 27 in. On 40 in it is 25 strips, 112 1/2 in, 3 1/8 yd, and 7
// strips, 31 1/2 in, 7/8 yd: the bought 99 in would be 13 1/2 in short.
func TestTheUsableWidthDecides(t *testing.T) {
	plan := func(width string) Plan {
		return planOf(t, strings.ReplaceAll(`
job: nine
fabrics: {White: {width: #}, Multi: {width: #}, Red: {width: #}}
block: {make: nine-patch recut, square: 4 1/2, corner: White, side: Multi, centre: Red}
colourways: {tide: {blocks: 49}}
layout: {across: 7, down: 7}
`, "#", width))
	}
	for _, c := range []struct{ width, fabric, length, buy string }{
		{"43", "White", "99", "2 3/4 yd"}, {"43", "Multi", "99", "2 3/4 yd"}, {"43", "Red", "27", "3/4 yd"},
		{"40", "White", "112 1/2", "3 1/8 yd"}, {"40", "Red", "31 1/2", "7/8 yd"},
	} {
		p := plan(c.width)
		n := needOf(t, p, c.fabric)
		assert.Equal(t, inches(t, c.length), n.Length, "%s on %s", c.fabric, c.width)
		assert.Equal(t, c.buy, n.LengthBuy.ShowYardage(measure.Inches), "%s on %s", c.fabric, c.width)
		assert.Equal(t, inchSize(t, "80 1/2", "80 1/2"), p.Quilt.Finished)
	}
	assert.Equal(t, inches(t, "13 1/2"), needOf(t, plan("40"), "White").Length-needOf(t, plan("43"), "White").Length)
}

// Squares of 5 in: 12 from a fat quarter of 18 × 22, 16 from one of 20 × 22, 9 from
// 18 × 19 1/2; of 5 1/2 in: 12 from 18 × 22 with nothing to spare, 9 once it is washed
// down to 17 3/4 × 21 3/4 (1.39 % and 1.14 %: 2 % a side leaves 9 too). Of 2 1/2 in 56,
// not the 50 of one shop's list. 42 squares take 4 and 3: three of 18 × 22 give 36, not
// 40. Sources: quiltingboard.com t222332, piecefulliving.blogspot.com 2011/08.
func TestSquaresFromAFatQuarter(t *testing.T) {
	sheets := func(square, size string, blocks int, more string) int {
		return planOf(t, fmt.Sprintf(`
job: fats
%s
fabrics: {Kelp: {form: fat quarter, size: %s}}
block: {make: plain square, square: %s, print: Kelp}
colourways: {tide: {blocks: %d}}
layout: {across: %d, down: 1}
`, more, size, square, blocks, blocks)).Fabrics[0].Sheets
	}
	for _, c := range []struct {
		square, size string
		each         int
		more         string
	}{
		{"5", "18 x 22", 12, ""}, {"5", "20 x 22", 16, ""}, {"5", "18 x 19 1/2", 9, ""},
		{"5 1/2", "18 x 22", 12, ""}, {"5 1/2", "17 3/4 x 21 3/4", 9, ""}, {"2 1/2", "18 x 22", 56, ""},
		{"5 1/2", "18 x 22", 9, "prewash: yes"},
	} {
		assert.Equal(t, 1, sheets(c.square, c.size, c.each, c.more), "%d of %s from %s", c.each, c.square, c.size)
		assert.Equal(t, 2, sheets(c.square, c.size, c.each+1, c.more), "%d of %s from %s", c.each+1, c.square, c.size)
	}
	assert.Equal(t, 4, sheets("5", "18 x 22", 42, ""))
	assert.Equal(t, 3, sheets("5", "20 x 22", 42, ""))
}

// What is spare is cut with the rest and counted in no operation. Hand-worked: 8 blocks
// take 16 squares of each fabric; 4 more pieces and the 2 of one more block are 6.
func TestSparesAreCutAndNotCounted(t *testing.T) {
	p := planOf(t, recutFour+"spares: {pieces: 4, blocks: 1}\n")
	n := needOf(t, p, "Kelp")
	assert.Equal(t, []int{16, 6}, []int{n.Pieces[0].Count, n.Pieces[1].Count})
	assert.Equal(t, "spare", n.Pieces[1].For)
	assert.Equal(t, 16, op(t, p, "cut", "Kelp").Count)
	assert.Equal(t, inches(t, "28"), n.Length, "22 squares are four strips")
	assert.Contains(t, op(t, p, "cut", "Kelp").Doing, "16 squares 7 in + 6 spare squares 7 in")
	assert.Greater(t, op(t, p, "cut", "Kelp").Minutes(), op(t, planOf(t, recutFour), "cut", "Kelp").Minutes(), "spares take time too")
}

// Hand-worked, with 16 squares of 7 in, six to a strip, in strips of 7 in: 21 in are
// needed. Of 10 in on hand one strip comes, 3 in are left, and two strips are missing:
// 14 in, 1/2 yd, and not the 3/8 yd (13 1/2 in) that 21 − 10 = 11 in would make.
func TestALengthOnHandIsNotSewnToWhatIsBought(t *testing.T) {
	on := func(hand string) FabricNeed {
		return needOf(t, planOf(t, strings.Replace(recutFour, "Kelp: {form: yardage, width: 42}", "Kelp: {width: 42, on-hand: "+hand+"}", 1)), "Kelp")
	}
	n := on("10 in")
	assert.Equal(t, inches(t, "3"), n.Joint)
	assert.Equal(t, inches(t, "24"), n.Length)
	assert.Equal(t, "1/2 yd", n.LengthBuy.ShowYardage(measure.Inches))
	// 14 in come out even; 12 in leave 5, and 14 in more are still the 1/2 yd that 9
	// to 18 in would be: 3/8 yd, 13 1/2 in, is not enough for 14.
	assert.Zero(t, on("14 in").Joint)
	assert.Equal(t, inches(t, "5"), on("12 in").Joint)
	assert.Zero(t, on("1 yd").LengthBuy)
	// Pieces beside it: 15 × 22 gives six squares, a whole strip less.
	assert.Equal(t, inches(t, "14"), on("[15 x 22]").Length)
}

// What is bought and what is on hand give every piece, without a strip of two lengths;
// a plan that would lose too much at the joint cuts the length on hand by itself.
func TestALengthOnHandIsCutByItselfWhereThatBuysLess(t *testing.T) {
	for name, job := range examples(t) {
		job.Cutting.Style = cloth.Nested
		for i := range job.Fabrics {
			if f := &job.Fabrics[i]; !f.Form.Sheets() {
				f.OnHand = &Stock{Length: 30 * measure.Inch}
			}
		}
		p, err := Make(job, Prior{})
		require.NoError(t, err)
		for _, n := range p.Fabrics {
			if n.Fabric.Form.Sheets() || n.LengthBuy == 0 {
				continue
			}
			// What is bought is a step at most above need less stock, as always.
			assert.Equal(t, (n.Length - n.Fabric.OnHand.Length).RoundUp(job.Units.ShopStep()), n.LengthBuy, "%s %s", name, n.Fabric.Name)
			// And all comes from the two lengths: strips that end on the first, or a plan for it.
			apart := slices.ContainsFunc(n.Cutting.Cloths, func(c cloth.Cloth) bool { return c.Name == cloth.LengthOnHand })
			short := n.Cutting.Length
			if !apart {
				short += n.Cutting.Lost(n.Fabric.washed(n.Fabric.OnHand.Length)) - n.Fabric.washed(n.Fabric.OnHand.Length)
			}
			assert.LessOrEqual(t, short, n.Fabric.washed(n.LengthBuy), "%s %s", name, n.Fabric.Name)
		}
	}
}

// Hand-worked: 48 × 60 with borders 3 in wide is cut 3 1/2 in wide, 60 1/2 and 54 1/2 in
// long. From 42 in across, joined, 2 × 60 1/2 + 2 × 54 1/2 = 230 in are six strips, 21 in,
// 5/8 yd. Lengthwise the four lie side by side in one length of 62 1/2 in. Crosswise buys
// less, and a border may be forced.
func TestALongBorderIsCutTheWayThatBuysLess(t *testing.T) {
	border := func(more string) (FabricNeed, BorderCut) {
		p := planOf(t, wideBack(4, 5, "borders: [{width: 3, fabric: Foam"+more+"}]"))
		return needOf(t, p, "Foam"), p.Materials.Borders[0]
	}
	n, b := border("")
	assert.Equal(t, Crosswise, b.Grain)
	assert.Equal(t, 6, b.Strips)
	assert.True(t, b.Joined)
	assert.True(t, b.Considered)
	assert.Equal(t, inches(t, "21"), n.Length)
	assert.Equal(t, "lengthwise would buy 1 1/8 yd more", b.SavedWords(measure.Inches))
	forced, b := border(", grain: lengthwise")
	assert.Equal(t, Lengthwise, b.Grain)
	assert.False(t, b.Considered)
	assert.Equal(t, inches(t, "62 1/2"), forced.Length)
	var long int
	for _, p := range forced.Pieces {
		if p.For == forBorder {
			long += p.Count
			assert.True(t, p.Long)
		}
	}
	assert.Equal(t, 4, long)
}

// Good cotton shrinks by 2 % each way (All About Quilts). Hand-worked: 42 in leave
// 41.16, five squares of 7 in a strip; 16 squares are four strips, 28 in, and
// 28 / 0.98 = 28.57 in are to be bought: 7/8 yd.
func TestClothThatIsWashedIsBoughtLarger(t *testing.T) {
	n := needOf(t, planOf(t, recutFour+"prewash: yes\n"), "Kelp")
	assert.Equal(t, inches(t, "28"), n.Cutting.Length)
	assert.InDelta(t, 28.571, n.Length.In(measure.Inches), 0.001)
	assert.GreaterOrEqual(t, n.Fabric.washed(n.Length), n.Cutting.Length)
	assert.Equal(t, "7/8 yd", n.LengthBuy.ShowYardage(measure.Inches))
}

// What squaring up takes is cloth. Hand-worked: 1 in off the width leaves 41, five
// squares of 7 in; four strips and 1 in off the length are 29 in.
func TestSquaringUpTakesCloth(t *testing.T) {
	n := needOf(t, planOf(t, recutFour+"cutting: {square-up: 1}\n"), "Kelp")
	assert.Equal(t, inches(t, "29"), n.Length)
}

// The sheet and the cut list are one plan, whatever the style; the need takes no more
// than plain strips, nor less than its bound, and the blocks' pieces are all in it.
func TestTheSheetAndTheCutListAreOnePlan(t *testing.T) {
	for name, job := range examples(t) {
		for _, style := range styles {
			job.Cutting.Style = style
			p, err := Make(job, Prior{})
			require.NoError(t, err)
			for _, n := range p.Fabrics {
				cut, err := CutPlan(job, n, style)
				require.NoError(t, err)
				assert.Equal(t, n.Cutting, cut, "%s %s", name, n.Fabric.Name)
				assert.Equal(t, n.Cuts, cut.Cuts)
				assert.LessOrEqual(t, n.Cutting.Length, max(n.Plain, 0), "%s %s", name, n.Fabric.Name)
				assert.LessOrEqual(t, n.LengthBound, n.Length)
				assert.LessOrEqual(t, n.SheetBound, n.Sheets)
				assert.Equal(t, pieceCounts(n, cut), counts(n))
			}
		}
	}
}

func counts(n FabricNeed) []int {
	out := make([]int, len(n.Pieces))
	for i, p := range n.Pieces {
		out[i] = p.Count
	}
	return out
}

// Nested cuts are offered where they buy less, and nowhere else.
func TestNestedIsOfferedWhereItBuysLess(t *testing.T) {
	for name, job := range examples(t) {
		p, err := Make(job, Prior{})
		require.NoError(t, err)
		job.Cutting.Style = cloth.Nested
		nested, err := Make(job, Prior{})
		require.NoError(t, err)
		for i, n := range p.Fabrics {
			other := nested.Fabrics[i]
			assert.LessOrEqual(t, other.LengthBuy, n.LengthBuy, "%s %s", name, n.Fabric.Name)
			if n.Nested == nil {
				assert.Equal(t, n.LengthBuy, other.LengthBuy, "%s %s", name, n.Fabric.Name)
				assert.Equal(t, n.SheetBuy, other.SheetBuy)
				continue
			}
			assert.Equal(t, n.Nested.Length, n.LengthBuy-other.LengthBuy, "%s %s", name, n.Fabric.Name)
			assert.Equal(t, n.Nested.Cuts, other.Cuts)
		}
	}
}

// Pre-cut strips of the binding's width are not cut: the binding waits for the fabric
// alone.
func TestStripsThatComeAsTheyAreUsedAreNotCut(t *testing.T) {
	p := planOf(t, strings.Replace(recutFour, "Foam: {form", "Reel: {form: pre-cut strips, size: 2 1/2 x 42, on-hand: 3}, Foam: {form", 1)+"binding: {fabric: Reel, strip: 2 1/2}\n")
	assert.Zero(t, count(p, "cut-binding"))
	assert.Equal(t, []Ref{{Key: "prepare", Lot: Lot{FabricLot, "Reel"}}}, op(t, p, "make-binding", "quilt-1").After)
	assert.Empty(t, needOf(t, p, "Reel").Cutting.Steps)
	assert.Equal(t, 4, needOf(t, p, "Reel").Sheets, "144 in and 10 more, 39 1/2 in each")
	assert.Equal(t, 1, needOf(t, p, "Reel").SheetBuy)
	for _, n := range p.StockNeeds() {
		if n.Name == "Reel" {
			assert.Equal(t, []StockPart{{Operation: "make-binding", LotKind: QuiltLot, Lot: "quilt-1", Count: 4, Share: 1}}, n.Parts)
		}
	}
}
