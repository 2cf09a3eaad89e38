package planner

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// YAML 1.1 takes NO and on for truth values and 010 for eight; as names they are
// what the maker wrote.
func TestNamesArePeoples(t *testing.T) {
	j := readGood(t, string(jobFile(t, "names.yaml")))
	assert.Equal(t, "What's in a name?", j.Title)
	var fabrics []string
	for _, f := range j.Fabrics {
		fabrics = append(fabrics, f.Name)
	}
	assert.Equal(t, []string{"藍", "🧵 rose", "Sea glass", "it's", "NO", "010", "on", "null", "a: b"}, fabrics)
	assert.Equal(t, []string{"藍", "🧵 rose", "NO", "on"}, (&jobReader{job: j}).colourwayNames())
	assert.Equal(t, []RoleFabrics{
		{Role: "print", Fabrics: []Share{{Fabric: "010"}, {Fabric: "null"}}},
		{Role: "ground", Fabrics: []Share{{Fabric: "a: b", Blocks: 1}}, Counted: true},
	}, j.Colourways[3].Roles)
	assert.Equal(t, [][]MapCell{
		{{Colourway: "藍"}, {Colourway: "🧵 rose", Turn: 90}},
		{{Colourway: "NO", Turn: 180}, {Colourway: "on"}},
	}, j.Layout.Map)
}

func TestWordsOfTheTradeCountAsTheKeysAndValuesTheyMean(t *testing.T) {
	const in = measure.Inch
	j := readGood(t, string(jobFile(t, "trade-words.yaml")))
	j.At = nil
	assert.Equal(t, Job{
		File: "job.yaml", ID: "trade-words", Title: "trade-words", Quantity: 1, Seam: in / 4,
		Fabrics: []Fabric{
			{Name: "Kelp", Form: FatQuarter, Size: measure.Size{Width: 18 * in, Height: 21 * in}, OnHand: &Stock{Sheets: 4}, Colour: "Teal", Assumed: true},
			{Name: "Foam", Form: Yardage, Width: 40 * in, OnHand: &Stock{Length: 54 * in}, Assumed: true},
		},
		Colourways: []Colourway{{
			Name: "tide", Blocks: 2,
			Block: BlockSpec{Make: "four-patch recut", Square: squareOf(7 * in), Measures: map[string]measure.Length{"offset": 5 * in / 4}},
			Roles: []RoleFabrics{{Role: "print", Fabrics: []Share{{Fabric: "Kelp"}}}, {Role: "ground", Fabrics: []Share{{Fabric: "Foam"}}}},
		}},
		Layout:   Layout{Across: 2, Down: 1, Setting: Straight, Order: DealDiagonal},
		Borders:  []Border{{Width: 3 * in, Fabric: "Foam"}, {Width: 2 * in, Fabric: "Kelp"}}, // cut 2 1/2 less two seams
		Batting:  &Batting{},
		Binding:  &Binding{Fabric: "Kelp", Strip: 5 * in / 2, Finish: ByHand, Joints: DiagonalJoint, Allowance: 10 * in},
		Quilting: &Quilting{SentOut: true, LeadDays: 42, Density: Dense},
	}, j)
}

func TestBlocksGoUnderTheNamesPeopleGiveThem(t *testing.T) {
	for said, want := range map[string]string{
		"Plain Squares": "plain square", "4-patch": "four-patch", "four patch": "four-patch", "9patch": "nine-patch",
		"nine-patch blocks": "nine-patch", "rail fence": "rail", "HSTs": "half-square triangle",
		"pinwheels": "pinwheel", "quarter-square triangle": "hourglass", "disappearing four-patch": "four-patch recut",
		"split four-patch": "four-patch recut", "recut 4 patch": "four-patch recut", "Disappearing Nine Patch": "nine-patch recut",
		"D9P": "nine-patch recut", "disappearing pinwheel": "pinwheel recut", "Disappearing Hour Glass": "hourglass recut", "hourglasses": "hourglass",
	} {
		b, ok := BuiltInCalled(said)
		assert.True(t, ok, said)
		assert.Equal(t, want, b.Name, said)
	}
	// A split nine-patch is another block of the trade, not one cut again.
	_, ok := BuiltInCalled("split nine-patch")
	assert.False(t, ok)
}

// Every other way of writing an order, a turn and a role.
func TestOrdersTurnsAndRolesAreReadHoweverTheyAreWritten(t *testing.T) {
	order := func(text string) Layout {
		return readGood(t, changed(t, "  down: 2\n", "  down: 2\n  order: "+text+"\n")).Layout
	}
	assert.Equal(t, DealRows, order("rows").Order)
	assert.Equal(t, FillDiagonal, order("{diagonal: fill}").Order)
	assert.Equal(t, FillRows, order("{rows: fill}").Order)

	mapped := order("[[tide, tide@90, tide@360, dune], [dune, tide, tide@180, tide@270]]\n  turn: [[0, 90]]")
	assert.Equal(t, Mapped, mapped.Order)
	assert.Equal(t, [][]int{{0, 90}}, mapped.Turn, "a map may turn its cells and the layout turn them all")
	assert.Equal(t, []MapCell{{"tide", 0}, {"tide", 90}, {"tide", 0}, {"dune", 0}}, mapped.Map[0])
	assert.Equal(t, []MapCell{{"dune", 0}, {"tide", 0}, {"tide", 180}, {"tide", 270}}, mapped.Map[1])

	turned := readGood(t, changed(t, "offset: 1 1/4", "offset: 1 1/4\n  turn: [[0, 180, 0], [180, 90, 180], [0, 180, 0]]"))
	assert.Equal(t, [][]int{{0, 180, 0}, {180, 90, 180}, {0, 180, 0}}, turned.Colourways[0].Block.Turn)

	counted := readGood(t, changed(t, "print: Kelp", "print: {Kelp: 5, Foam: 1}")).Colourways[0].Roles[0]
	assert.Equal(t, RoleFabrics{Role: "print", Fabrics: []Share{{"Kelp", 5}, {"Foam", 1}}, Counted: true}, counted)

	renamed := readGood(t, changed(t, "    blocks: 6", "    blocks: 6\n    was: ebb")).Colourways[0]
	assert.Equal(t, "ebb", renamed.Was)
}

// Two colourways may exchange their names: neither old name is left over.
func TestColourwaysMayExchangeNames(t *testing.T) {
	text := changed(t, "    blocks: 6\n    print: Kelp\n    ground: Foam\n  dune:\n",
		"    blocks: 6\n    was: dune\n    print: Kelp\n    ground: Foam\n  dune:\n    was: tide\n")
	j := readGood(t, text)
	assert.Equal(t, "dune", j.Colourways[0].Was)
	assert.Equal(t, "tide", j.Colourways[1].Was)
}

// An own block takes its own measures, the shared ones where it has use for
// them, and leaves the shared turn to the shared block.
func TestAColourwayMayMakeAnotherBlock(t *testing.T) {
	text := changed(t, "offset: 1 1/4", "offset: 1 1/4\n  turn: [[0, 180, 0], [180, 0, 180], [0, 180, 0]]\n  ground: Foam")
	j, err := Parse("job.yaml", []byte(text+"\n"))
	require.NoError(t, err)
	assert.Len(t, j.Colourways[1].Roles, 2)

	text = changed(t, "    blocks: 2\n    print: [Foam]\n    ground: Kelp", "    blocks: 2\n    make: plain square\n    print: [Foam]")
	j = readGood(t, text)
	assert.Equal(t, BlockSpec{Make: "plain square", Square: squareOf(7 * measure.Inch), Measures: map[string]measure.Length{}}, j.Colourways[1].Block)
}

// What colourways share is read for each of them; a person is told once.
func TestASharedFaultIsSaidOnce(t *testing.T) {
	assert.Equal(t, []string{`14:11: "square" cannot be "wide"; a measure begins with a number, such as 8, 8.5 or 8 1/2`},
		sentences(t, changed(t, "square: 7", "square: wide")))
}

// The measures of every built-in, as the table of the contract lists them. Raw
// sizes are hand-worked: a rail of three strips 3 x 2 - 1 by 5; triangles are
// trimmed to their unit; a pinwheel 2 x 4 1/2 - 1/2, recut 2 x 1/2 less.
func TestEveryBuiltInIsReadAndMade(t *testing.T) {
	for block, want := range map[string]measure.Size{
		"plain square, square: 4 x 6, print: Kelp":                                                inchSize(t, "4", "6"),
		"four-patch, square: 4 x 6, print: Kelp, ground: Foam":                                    inchSize(t, "7 1/2", "11 1/2"),
		"nine-patch, square: 4 x 6, corner: Kelp, side: Foam, centre: Kelp":                       inchSize(t, "11", "17"),
		"rail, strip: 2, length: 5, strips: [Kelp, Foam, Kelp]":                                   inchSize(t, "5", "5"),
		"half-square triangle, unit: 4 1/2, method: eight, print: Kelp, ground: Foam":             inchSize(t, "4 1/2", "4 1/2"),
		"pinwheel, unit: 4 1/2, print: Kelp, ground: Foam":                                        inchSize(t, "8 1/2", "8 1/2"),
		"hourglass, unit: 4 1/2, print: Kelp, ground: Foam":                                       inchSize(t, "4 1/2", "4 1/2"),
		"four-patch recut, square: 4 x 6, offset: 1, print: Kelp, ground: Foam":                   inchSize(t, "6 1/2", "10 1/2"),
		"nine-patch recut, square: 4 x 6, corner: Kelp, side: Foam, centre: Kelp":                 inchSize(t, "10 1/2", "16 1/2"),
		"pinwheel recut, unit: 4 1/2, method: four, print: Kelp, ground: Foam":                    inchSize(t, "7 1/2", "7 1/2"),
		"hourglass recut, unit: 4 1/2, method: 4 at a time, offset: 1, print: Kelp, ground: Foam": inchSize(t, "7 1/2", "7 1/2"),
	} {
		p := planOf(t, fmt.Sprintf("job: x\nfabrics: {Kelp: {}, Foam: {}}\nblock: {make: %s}\n"+
			"colourways: {tide: {blocks: 1}}\nlayout: {across: 1, down: 1}\n", block))
		assert.Equal(t, want, p.Colourways[0].Raw, block)
	}
}

// No cloth on hand needs no unit: none is none in any.
func TestNoClothOnHandNeedsNoUnit(t *testing.T) {
	for _, none := range []string{"0", "0 yd"} {
		j := readGood(t, changed(t, "{form: yardage, width: 42}", "{on-hand: "+none+"}"))
		assert.Equal(t, &Stock{}, j.Fabrics[1].OnHand)
	}
}

func TestYesAndNoAreReadAsWords(t *testing.T) {
	for text, want := range map[string]bool{"yes": true, "true": true, "On": true, "no": false, "false": false, "off": false} {
		assert.Equal(t, want, readGood(t, "prewash: "+text+"\n"+plainJob).Prewash, text)
	}
}
