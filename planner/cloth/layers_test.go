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
		b := BackingOf(c.top, in(t, c.extra), in(t, c.width))
		assert.Equal(t, c.want, b.Size, c.name)
		assert.Equal(t, c.panels, b.Panels, c.name)
		assert.Equal(t, c.run, b.Run, c.name)
		assert.Equal(t, in(t, c.length), b.Length, c.name)
		assert.Equal(t, c.toTheYard, b.Length.RoundUp(measure.Inches.ShopStep()).ShowYardage(measure.Inches), c.name)
	}
}

// 83 in is what two 42 in panels make; 83 1/2 in needs a third. Source: OLFA,
// "Preparing your quilt back", whose rule of 84 is a trap.
func TestTwoPanelsLoseTheirSeam(t *testing.T) {
	assert.Equal(t, 2, panels(in(t, "83"), in(t, "100"), in(t, "42"), Lengthwise).Panels)
	assert.Equal(t, 3, panels(in(t, "83 1/2"), in(t, "100"), in(t, "42"), Lengthwise).Panels)
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
		p, ok := BattingFor(c.size)
		assert.True(t, ok)
		assert.Equal(t, c.want, p.Name)
	}
	_, ok := BattingFor(size(t, "121", "100"))
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
		b, ok := BindingOf(in(t, c.edge), allowance, in(t, "2 1/2"), in(t, c.width))
		require.True(t, ok)
		assert.Equal(t, c.strips, b.Strips, "edge %s, %s more", c.edge, c.allowance)
		assert.Equal(t, in(t, c.spare), b.Spare())
	}
	six, _ := BindingOf(in(t, "220"), in(t, "5"), in(t, "2 1/2"), in(t, "40"))
	assert.Equal(t, in(t, "15"), six.Cloth)
	_, ok := BindingOf(in(t, "220"), in(t, "5"), in(t, "40"), in(t, "40"))
	assert.False(t, ok, "a strip as wide as the cloth cannot be joined")
}

// Crayon Box Quilt Studio, "What is lost?": 3 x 10 twice makes 17, 5 x 7 twice
// 9, 1 1/2 x 20 twice 38 1/2: each join costs one strip width. Here the closing
// join is counted too, so two strips lose two.
func TestADiagonalJoinCostsOneStripWidth(t *testing.T) {
	for _, c := range []struct{ strip, width, joined string }{
		{"3", "10", "17"}, {"5", "7", "9"}, {"1 1/2", "20", "38 1/2"},
	} {
		b, ok := BindingOf(in(t, c.width), measure.Inch/8, in(t, c.strip), in(t, c.width))
		require.True(t, ok)
		twoStrips := in(t, c.width).Times(2) - in(t, c.strip)
		assert.Equal(t, in(t, c.joined), twoStrips)
		assert.Equal(t, (in(t, c.width) - in(t, c.strip)).Times(b.Strips), b.Joined)
	}
}
