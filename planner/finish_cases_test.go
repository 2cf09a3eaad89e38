package planner

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// wideBack is a top of 12 in blocks with a backing.
func wideBack(across, down int, more string) string {
	return fmt.Sprintf(`
job: back
fabrics: {Kelp: {width: 42}, Foam: {width: 42}, Wide: {width: 108}}
block: {make: plain square, square: 12 1/2, print: Kelp}
colourways: {tide: {blocks: %d}}
layout: {across: %d, down: %d}
%s
`, across*down, across, down, more)
}

// A top of 72 × 84 with 4 in a side is 80 × 92, and fits cloth 108 in wide lying along
// it: 80 in, no seam (the kind of moxlidesigns.com "quilt preparation": 86 × 99 takes
// 86). One of 108 × 120 in is wider both ways, and that is said.
func TestWideClothIsTriedEitherWayAndSaidWhereItDoesNotFit(t *testing.T) {
	b := planOf(t, wideBack(6, 7, "backing: {fabric: Wide, extra: 4}")).Materials.Backing
	assert.Equal(t, 1, b.Panels)
	assert.Equal(t, inches(t, "80"), b.Length)
	assert.Empty(t, b.FitWords(measure.Inches))
	b = planOf(t, wideBack(9, 10, "backing: {fabric: Wide, extra: 4}")).Materials.Backing
	assert.Equal(t, 2, b.Panels)
	assert.Equal(t, "does not fit 108 in either way", b.FitWords(measure.Inches))
}

// Overage goes by who quilts: 4 in a side sent out (Log House Quilting: 60 × 80 needs
// 68 × 88), 3 at home (Stitched in Color), and what the file says where it does; sides
// and ends may differ (alleycatquiltworks.com asks for 8 wide and 10 long in all).
func TestOverageGoesByWhoQuilts(t *testing.T) {
	size := func(more string) measure.Size {
		return planOf(t, wideBack(5, 6, more)).Materials.Backing.Size
	}
	assert.Equal(t, inchSize(t, "68", "80"), size("backing: {fabric: Wide}\nquilting: {by: sent out, lead-days: 30}"))
	assert.Equal(t, inchSize(t, "66", "78"), size("backing: {fabric: Wide}\nquilting: {by: self}"))
	assert.Equal(t, inchSize(t, "68", "82"), size("backing: {fabric: Wide, extra: 4 x 5}"))
}

// The backing of two alike quilts, hand-worked: 60 × 70 is 42 and 19 in wide panels, and
// the two 19 in ones share a length.
func TestTheBackingBuysLeastOverTheRun(t *testing.T) {
	p := planOf(t, `
job: pair
quantity: 2
fabrics: {Kelp: {width: 42}, Back: {width: 42}}
block: {make: plain square, square: 10 1/2, print: Kelp}
colourways: {tide: {blocks: 30}}
layout: {across: 5, down: 6}
backing: {fabric: Back, extra: 5, seams: lengthwise}
`)
	b := p.Materials.Backing
	assert.Equal(t, inchSize(t, "60", "70"), b.Size)
	assert.Equal(t, "1 panel 42 × 70 in and 1 panel 19 × 70 in", b.PanelWords(measure.Inches))
	assert.Equal(t, "41 1/2 in from the left edge", b.SeamWords(measure.Inches))
	assert.Equal(t, inches(t, "210"), b.RunLength)
	assert.Equal(t, inches(t, "210"), needOf(t, p, "Back").Length)
}

// 50 × 60 of 2 1/2 in strips on 40 in: six strips leave 5 in over the edge, seven
// 42 1/2. With 5 in asked for six do, with more seven, and the plan has both. Sources
// of the case: castillejacotton.blogspot.com 2013/06, quicktipssewing 2011/11.
func TestSixStripsOrSeven(t *testing.T) {
	binding := func(more string) BindingPlan {
		return *planOf(t, `
job: strips
fabrics: {Kelp: {width: 40}}
block: {make: plain square, square: 10 1/2, print: Kelp}
colourways: {tide: {blocks: 30}}
layout: {across: 5, down: 6}
binding: {fabric: Kelp, strip: 2 1/2`+more+"}\n").Materials.Binding
	}
	six, seven := binding(", allowance: 5"), binding("")
	assert.Equal(t, 6, six.Strips)
	assert.Equal(t, inches(t, "5"), six.Spare)
	assert.Equal(t, inches(t, "15"), six.FabricLength)
	assert.Equal(t, 7, seven.Strips)
	assert.Equal(t, inches(t, "42 1/2"), seven.Spare)
	assert.Equal(t, inches(t, "5"), seven.Fewer)
	assert.Equal(t, inches(t, "17 1/2"), seven.FabricLength)
	// Straight joins take 1/2 in each: 6 × 39 1/2 = 237.
	assert.Equal(t, inches(t, "17"), binding(", joins: straight").Spare)
	// On the bias, hand-worked: 230 × 2 1/2 = 575 sq in; (25 − 1) × 25 = 600.
	bias := binding(", grain: bias")
	assert.Equal(t, inches(t, "25"), bias.Square)
	assert.Equal(t, 1, bias.Strips)
	assert.Equal(t, inches(t, "20"), bias.Spare, "600 / 2 1/2 = 240 of 220")
}

// A shop's chart pairs 65 × 88 with 72 × 90 and says to add 6 in: 71 × 94 does not fit
// that, but 81 × 96; with 4 in a side 73 × 96 still does. Source: honeybegood.com,
// "Common quilt and batting sizes". Here a top of 65 × 88 in 13 × 11 in blocks.
func TestAPackageMustHoldTheBatting(t *testing.T) {
	batting := func(more string) BattingPlan {
		return *planOf(t, `
job: pack
fabrics: {Kelp: {width: 42}}
block: {make: plain square, square: 13 1/2 x 11 1/2, print: Kelp}
colourways: {tide: {blocks: 40}}
layout: {across: 5, down: 8}
`+more+"\n").Materials.Batting
	}
	three := batting("batting: {}")
	assert.Equal(t, inchSize(t, "71", "94"), three.Size)
	assert.Equal(t, inchSize(t, "81", "96"), *three.Package)
	assert.Equal(t, inchSize(t, "10", "96"), three.Left[0])
	four := batting("batting: {extra: 4}")
	assert.Equal(t, inchSize(t, "81", "96"), *four.Package)
	roll := batting("batting: {roll: 96}")
	assert.Equal(t, inches(t, "71"), roll.Length, "94 in lie across the roll")
	assert.Contains(t, roll.Choice, "71 in off a roll 96 in wide")
	own := batting("batting: {packages: [72 x 90, 60 x 60]}")
	assert.Nil(t, own.Package)
	assert.Contains(t, own.Choice, "wider than any package")
	by := batting("quilting: {by: sent out, lead-days: 30}\nbatting: {by: quilter}")
	assert.True(t, by.Quilter)
	assert.Nil(t, by.Package)
}
