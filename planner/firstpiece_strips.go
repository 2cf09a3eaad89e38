package planner

import (
	"fmt"
	"strings"

	"quiltrun/planner/measure"
)

// SeamTest is a piece that is sewn for no other end than to measure it: equal
// strips side by side.
type SeamTest struct {
	Name   string // as it may be typed: "three strips"
	Strips int
	Strip  measure.Length // cut width
	Long   measure.Length
}

// SeamTests are the tests of a seam, the standard first piece first. In inches:
// three strips 1 1/2 x 5 in make 3 1/2 in (Quiltcentric, "Testing your scant
// quarter inch seam"), four make 4 1/2 in (Quilting Board, post 5145607), two
// pieces of 2 1/2 in make 4 1/2 in (avalanden, "Sewing strips"). In centimetres
// the strips are 4 x 12 cm and the pieces 6 cm: round sizes near those, since
// none are published.
func SeamTests(u measure.Unit) []SeamTest {
	strip, long, piece := measure.Inch*3/2, measure.Inch*5, measure.Inch*5/2
	if u == measure.Centimetres {
		strip, long, piece = measure.Centimetre*4, measure.Centimetre*12, measure.Centimetre*6
	}
	return []SeamTest{
		{"three strips", 3, strip, long},
		{"four strips", 4, strip, long},
		{"two pieces", 2, piece, piece},
	}
}

// Wide is what the test measures across, raw edge to raw edge, with seams that
// take seam from each side.
func (t SeamTest) Wide(seam measure.Length) measure.Length {
	return t.Strip.Times(t.Strips) - seam.Times(2*(t.Strips-1))
}

// Seam is the allowance that makes a test of that width: for three strips of
// 1 1/2 in, a quarter of what 4 1/2 in is more than the width.
func (t SeamTest) Seam(wide measure.Length) measure.Length {
	return (t.Strip.Times(t.Strips) - wide).Scale(1, int64(2*(t.Strips-1)), measure.Nearest)
}

// Words is the test as it is laid to the machine: "three strips 1 1/2 in × 5 in".
func (t SeamTest) Words(u measure.Unit) string {
	return fmt.Sprintf("%s %s × %s", t.Name, t.Strip.Show(u), t.Long.Show(u))
}

// Key is the test's name as one word: "three-strips".
func (t SeamTest) Key() string { return strings.ReplaceAll(t.Name, " ", "-") }

// piece is the test among other pieces to measure.
func (t SeamTest) piece(j Job) Piece {
	size := func(seam measure.Length) measure.Size { return measure.Size{Width: t.Wide(seam), Height: t.Long} }
	should, probed := size(j.Seam), size(j.Seam+seamProbe)
	return Piece{Step: t.Key(), Name: t.Words(j.Units) + ", sewn side by side", Operation: keySeamTest,
		Size: should, Loses: lost(should, probed)}
}
