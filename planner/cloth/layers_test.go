package cloth

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

func size(t require.TestingT, w, h string) measure.Size {
	return measure.Size{Width: in(t, w), Height: in(t, h)}
}

// Sources: 108 in wide, moxlidesigns.com quilt preparation; "4 in all round is
// 8", blog.missouriquiltco.com; two panels of 67 1/2, quiltingboard.com t28279;
// seam direction, quiltingboard.com 7400852 (65 x 78: 130 against 156);
// 80 x 56 on 40 in cloth, quiltingboard.com t290638 (two panels are an inch
// short, so the other way round).
func TestBackingTakesTheWayRoundThatBuysLess(t *testing.T) {
	for _, c := range []struct {
		name              string
		top               measure.Size
		extra, width      string
		want              measure.Size
		panels            int
		run               Run
		length, toTheYard string
	}{
		{"wide cloth, no seam", size(t, "78", "91"), "4", "108", size(t, "86", "99"), 1, NoSeam, "86", "2 1/2 yd"},
		{"4 in a side is 8 in all", size(t, "51", "61"), "4", "42", size(t, "59", "69"), 2, Crosswise, "118", "3 3/8 yd"},
		{"seams across the shorter way", size(t, "57", "70"), "4", "42", size(t, "65", "78"), 2, Crosswise, "130", "3 5/8 yd"},
		{"an inch short for two panels", size(t, "72", "48"), "4", "40", size(t, "80", "56"), 2, Crosswise, "160", "4 1/2 yd"},
		{"one length", size(t, "36", "54"), "3", "44", size(t, "42", "60"), 1, NoSeam, "60", "1 3/4 yd"},
	} {
		b := BackingOf(larger(c.top, in(t, c.extra)), in(t, c.width), 1, "", false)
		assert.Equal(t, c.want, b.Size, c.name)
		assert.Len(t, b.Panels, c.panels, c.name)
		assert.Equal(t, c.run, b.Run, c.name)
		assert.Equal(t, in(t, c.length), b.Length, c.name)
		assert.Equal(t, c.toTheYard, b.Length.RoundUp(measure.Inches.ShopStep()).ShowYardage(measure.Inches), c.name)
	}
}

// larger is a top with a margin on every side.
func larger(top measure.Size, extra measure.Length) measure.Size {
	return measure.Size{Width: top.Width + 2*extra, Height: top.Height + 2*extra}
}

// 83 in is what two 42 in panels make; 83 1/2 in needs a third. Source: OLFA,
// "Preparing your quilt back", whose rule of 84 is a trap.
func TestTwoPanelsLoseTheirSeam(t *testing.T) {
	assert.Len(t, panels(in(t, "83"), in(t, "100"), in(t, "42"), 1).Panels, 2)
	assert.Len(t, panels(in(t, "83 1/2"), in(t, "100"), in(t, "42"), 1).Panels, 3)
}

// Two 42 in panels 67 1/2 long, 83 in together (quiltingboard.com t28279): all of
// both. 59 × 69 from 42 in cloth is a full width and 28 in, whose seam falls 41 1/2 in from the top (hand-worked: 42 + 28 − 1 = 69).
func TestPanelsMakeUpTheSpanAndSayWhereTheSeamFalls(t *testing.T) {
	b := BackingOf(size(t, "83", "67 1/2"), in(t, "42"), 1, "", false)
	assert.Equal(t, []measure.Size{size(t, "42", "67 1/2"), size(t, "42", "67 1/2")}, b.Panels)
	b = BackingOf(size(t, "59", "69"), in(t, "42"), 1, "", false)
	assert.Equal(t, []measure.Size{size(t, "42", "59"), size(t, "28", "59")}, b.Panels)
	assert.Equal(t, []measure.Length{in(t, "41 1/2")}, b.Seams)
	// Three panels, hand-worked: 42 + 42 + 38 − 2 = 120; seams at 41 1/2 and 82 1/2.
	b = BackingOf(size(t, "120", "120"), in(t, "42"), 1, "", false)
	assert.Equal(t, []measure.Length{in(t, "41 1/2"), in(t, "82 1/2")}, b.Seams)
	assert.Equal(t, in(t, "38"), b.Panels[2].Width)
	// A last panel of 1 1/8 in would be a sliver: the first gives up 2 7/8 in.
	b = BackingOf(size(t, "42 1/8", "80"), in(t, "42"), 1, Lengthwise, false)
	assert.Equal(t, []measure.Size{size(t, "39 1/8", "80"), size(t, "4", "80")}, b.Panels)
}

// The seams may be asked for the other way: 59 × 69 lengthwise is two lengths of
// 69, 138 in (3 7/8 yd) instead of 118.
func TestSeamsMayBeForced(t *testing.T) {
	b := BackingOf(size(t, "59", "69"), in(t, "42"), 1, Lengthwise, false)
	assert.Equal(t, Lengthwise, b.Run)
	assert.Equal(t, in(t, "138"), b.Length)
	assert.Equal(t, NoSeam, BackingOf(size(t, "86", "99"), in(t, "108"), 1, Lengthwise, false).Run, "nothing is pieced that need not be")
}

// Hand-worked. Panels of 42 and 19 in make 60 (42 + 19 − 1); the 19 in panels of
// two quilts lie side by side in one width, so two backings take three lengths of
// 70, not four. Two cot backings of 40 × 50 lie side by side in 108 in.
func TestAlikeBackingsAreCutSideBySide(t *testing.T) {
	b := BackingOf(size(t, "60", "70"), in(t, "42"), 2, Lengthwise, false)
	assert.Equal(t, in(t, "140"), b.Length)
	assert.Equal(t, in(t, "210"), b.RunLength)
	b = BackingOf(size(t, "40", "50"), in(t, "108"), 2, "", false)
	assert.Equal(t, in(t, "40"), b.RunLength, "turned, two of 50 in abreast")
	assert.Equal(t, in(t, "40"), b.Length)
}

// Source: Honey Be Good, quilt and batting sizes: its own chart pairs 65 x 88
// (71 x 94 with its 6 in) with 72 x 90, which is too short.
func TestBattingFitsOnBothSidesAndMayBeTurned(t *testing.T) {
	for _, c := range []struct {
		size measure.Size
		want string
	}{
		{size(t, "71", "94"), "full"},
		{size(t, "73", "96"), "full"},
		{size(t, "96", "73"), "full"},
		{size(t, "45", "60"), "crib"},
		{size(t, "110", "99"), "king"},
		{size(t, "86", "94"), "queen"},
	} {
		p, ok := BattingFor(c.size, Packages)
		assert.True(t, ok)
		assert.Equal(t, c.want, p.Name)
	}
	_, ok := BattingFor(size(t, "121", "100"), Packages)
	assert.False(t, ok)
	own, ok := BattingFor(size(t, "50", "50"), []Package{{"", size(t, "90", "90")}, {"", size(t, "60", "60")}})
	assert.True(t, ok)
	assert.Equal(t, size(t, "60", "60"), own.Size, "the smallest, wherever it stands in the list")
}

// Hand-worked: 66 × 86 of a twin package, 72 × 90, leaves 6 × 90 beside it and
// 66 × 4 above. Of 90 × 108, turned, the
// 86 lies across the 90: 42 × 90 is left in one piece.
func TestWhatIsLeftOfAPackageIsInAsLargeAPieceAsCanBe(t *testing.T) {
	assert.Equal(t, []measure.Size{size(t, "6", "90"), size(t, "66", "4")}, Over(size(t, "72", "90"), size(t, "66", "86")))
	assert.Equal(t, []measure.Size{size(t, "90", "42"), size(t, "4", "66")}, Over(size(t, "90", "108"), size(t, "66", "86")))
	assert.Empty(t, Over(size(t, "45", "60"), size(t, "60", "45")), "nothing of an exact fit")
}

// Hand-worked: off a roll of 96 in, 66 × 86 laid with its 86 in across takes 66 in,
// and 10 in are left beside it. Two of 45 × 50 lie abreast: 50 + 50 > 96, 45 + 45
// fit, so 50 in. A batting larger than the roll both ways is joined.
func TestBattingOffTheRollLiesEitherWayRound(t *testing.T) {
	length, beside, ok := OffRoll(size(t, "66", "86"), 1, in(t, "96"))
	assert.True(t, ok)
	assert.Equal(t, in(t, "66"), length)
	assert.Equal(t, in(t, "10"), beside)
	length, beside, _ = OffRoll(size(t, "45", "50"), 2, in(t, "96"))
	assert.Equal(t, in(t, "50"), length)
	assert.Equal(t, in(t, "6"), beside)
	_, _, ok = OffRoll(size(t, "100", "110"), 1, in(t, "96"))
	assert.False(t, ok)
}

// Six or seven strips for 50 x 60 of 2 1/2 in on 40 in: six leave 5 in over the
// edge, seven 42 1/2. Source of the case: castillejacotton.blogspot.com 2013/06,
// quicktipssewing.blogspot.com 2011/11; worked out by the diagonal join's rule.
// 54 x 60, 10 in more, 42 in: monicacurryquiltdesign.com (6 strips; exact
// 237 in with the closing join, an inch short of 238, so 7).
func TestBindingStripsCountTheirJoins(t *testing.T) {
	for _, c := range []struct {
		edge, allowance, width string
		strips                 int
		spare                  string
	}{
		{"220", "5", "40", 6, "5"},
		{"220", "6", "40", 7, "42 1/2"},
		{"220", "10", "40", 7, "42 1/2"},
		{"184", "0", "40", 5, "3 1/2"},
		{"228", "10", "42", 7, "48 1/2"},
	} {
		allowance := measure.Length(0)
		if c.allowance != "0" {
			allowance = in(t, c.allowance)
		}
		b, ok := BindingOf(in(t, c.edge), allowance, in(t, "2 1/2"), in(t, c.width), in(t, "2 1/2"))
		require.True(t, ok)
		assert.Equal(t, c.strips, b.Strips, "edge %s, %s more", c.edge, c.allowance)
		assert.Equal(t, in(t, c.spare), b.Spare())
	}
	six, _ := BindingOf(in(t, "220"), in(t, "5"), in(t, "2 1/2"), in(t, "40"), in(t, "2 1/2"))
	assert.Equal(t, in(t, "15"), six.Cloth)
	seven, _ := BindingOf(in(t, "220"), in(t, "10"), in(t, "2 1/2"), in(t, "40"), in(t, "2 1/2"))
	assert.Equal(t, in(t, "5"), seven.Fewer(), "both counts are shown")
	_, ok := BindingOf(in(t, "220"), in(t, "5"), in(t, "40"), in(t, "40"), in(t, "40"))
	assert.False(t, ok, "a strip as wide as the cloth cannot be joined")
}

// Crayon Box Quilt Studio, "What is lost?": 3 x 10 twice makes 17, 5 x 7 twice
// 9, 1 1/2 x 20 twice 38 1/2: each join costs one strip width. Here the closing
// join is counted too, so two strips lose two.
func TestADiagonalJoinCostsOneStripWidth(t *testing.T) {
	for _, c := range []struct{ strip, width, joined string }{
		{"3", "10", "17"}, {"5", "7", "9"}, {"1 1/2", "20", "38 1/2"},
	} {
		b, ok := BindingOf(in(t, c.width), measure.Inch/8, in(t, c.strip), in(t, c.width), in(t, c.strip))
		require.True(t, ok)
		twoStrips := in(t, c.width).Times(2) - in(t, c.strip)
		assert.Equal(t, in(t, c.joined), twoStrips)
		assert.Equal(t, (in(t, c.width) - in(t, c.strip)).Times(b.Strips), b.Joined)
	}
}

// Hand-worked: straight joins with 1/4 in seams take 1/2 in each, so six strips of
// 40 in make 240 − 6 × 1/2 = 237 with the closing one.
func TestStraightJoinsCostTheirSeams(t *testing.T) {
	b, ok := BindingOf(in(t, "220"), in(t, "10"), in(t, "2 1/2"), in(t, "40"), in(t, "1/2"))
	require.True(t, ok)
	assert.Equal(t, 6, b.Strips)
	assert.Equal(t, in(t, "17"), b.Spare())
}

// quiltingboard.com t9808: 250 in of 2 in strip from a square of 23 (area alone
// 22.36, up). The same page has 200 in from a square of 20: that leaves out the
// seams, which take 10 in of it. Hand-worked: (20 − 1) × 20 / 2 = 190.
func TestABiasBindingComesFromASquareLessItsSeams(t *testing.T) {
	n, side := BiasSquares(in(t, "250"), in(t, "2"), in(t, "1/4"), in(t, "42"), measure.Inch)
	assert.Equal(t, 1, n)
	assert.Equal(t, in(t, "23"), side)
	assert.Equal(t, in(t, "190"), BiasYield(in(t, "20"), in(t, "2"), in(t, "1/4")))
	assert.NotEqual(t, in(t, "200"), BiasYield(in(t, "20"), in(t, "2"), in(t, "1/4")), "the published figure has no seams")
	// Hand-worked: 700 in of 2 1/2 in strip are 1750 sq in; 42 in gives 41 × 42 = 1722,
	// so two squares, each for 875: 31 × 30 = 930 does, 30 × 29 = 870 does not.
	n, side = BiasSquares(in(t, "700"), in(t, "2 1/2"), in(t, "1/4"), in(t, "42"), measure.Inch)
	assert.Equal(t, 2, n)
	assert.Equal(t, in(t, "31"), side)
}
