package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/patchwork"
)

// likeTop is the top of an independent exact computation: 5 x 6 like blocks, a
// four-patch recut, squares 8, offset 1.
const likeTop = `
job: like
fabrics: {Kelp: {form: yardage, colour: "#2e6f57"}, Foam: {form: yardage, colour: "#e8f0ee"}}
block: {make: four-patch recut, square: 8, offset: 1, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 30}}
layout: {across: 5, down: 6}
`

// betweenOf is nests and clashes between blocks, by pattern.
func betweenOf(p PressPlan) map[Pattern][2]int {
	counts := map[Pattern][2]int{}
	for _, c := range p.Patterns {
		counts[c.Pattern] = [2]int{c.Between.Nest, c.Between.Clash}
	}
	return counts
}

func joinsOf(p Plan) map[string]patchwork.Tally {
	joins := map[string]patchwork.Tally{}
	for _, j := range p.Joins {
		joins[j.Between] = j.Matches
	}
	return joins
}

// Source: the independent computation. 147 match points between the blocks, 72
// at block columns and 75 at block rows; all alike 122 clash, alternate rows 72,
// alternate columns 50, chequered none; since the block looks the same after half
// a turn, half turns do it with all blocks pressed alike.
func TestALikeTopNestsByHalfTurns(t *testing.T) {
	p := planOf(t, likeTop+"press: print\n")
	assert.Equal(t, map[Pattern][2]int{
		AllAlike: {25, 122}, ByRows: {75, 72}, ByColumns: {97, 50}, Chequered: {147, 0},
	}, betweenOf(p.Press))
	assert.Equal(t, Chequered, p.Press.Chosen)
	assert.Equal(t, map[string]patchwork.Tally{
		"block columns": {Nest: 72}, "block rows": {Nest: 75}, "block corners": {Nest: 20},
	}, joinsOf(p))
	assert.False(t, p.Press.TwoWays())
	assert.Len(t, p.Press.Half, 15)
	half := 0
	for _, b := range p.Blocks {
		assert.Equal(t, "a", b.Press)
		assert.Equal(t, (b.Row+b.Column)%2*180, b.Turn, "%s in row %d, column %d", b.ID, b.Row, b.Column)
		half += b.Turn / 180
	}
	assert.Equal(t, 15, half)
	assert.Equal(t, patchwork.Tally{Nest: 147}, patternOf(p.Press, Chequered).Between)
	assert.Equal(t, 25, patternOf(p.Press, AllAlike).Between.Nest)
	assert.Zero(t, p.Press.RuleCost, "pressing toward the print costs no clash")
}

// Source: the same. All 8 points inside the recut nest with rows right, left,
// right (the four-patch's own centre is a ninth); so they do with rows left,
// right, left, which is listed first.
func TestTheRowsOfALikeTopNestInsideEachBlock(t *testing.T) {
	p := planOf(t, likeTop+"press: print\n")
	tide := p.Colourways[0]
	assert.Equal(t, patchwork.Tally{Nest: 9}, tide.Matches)
	steps := p.Press.Cards[0].Steps
	require.Len(t, steps, 3)
	assert.Equal(t, []string{"left"}, steps[0].Rows, "the print lies on the left of a pair")
	assert.Equal(t, "rows left, right, left; joins up, up", steps[2].Words())
	turned := patchwork.Way{false, true, true, false, true, false, false} // pairs, units, three rows, two joins
	assert.Equal(t, patchwork.Tally{Nest: 9}, tide.Build.BlockTally(turned))
}

// Source: the same: two offsets chequered leave only the centre seams to match.
func TestTwoOffsetsLeaveTheCentreSeams(t *testing.T) {
	rows := strings.Repeat("[tide, dune, tide, dune, tide], [dune, tide, dune, tide, dune], ", 3)
	p := planOf(t, `
job: two
fabrics: {Kelp: {form: yardage}, Foam: {form: yardage}}
block: {make: four-patch recut, square: 8, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 15, offset: 1}, dune: {blocks: 15, offset: 1 1/2}}
layout: {across: 5, down: 6, order: [`+strings.TrimSuffix(rows, ", ")+`]}
`)
	joins := joinsOf(p)
	all := joins["block columns"].Plus(joins["block rows"])
	assert.Equal(t, patchwork.Tally{Nest: 49}, all)
	assert.Equal(t, AllAlike, p.Press.Chosen, "tide and dune are pressed each its own way; nothing is turned")
	assert.Empty(t, p.Press.Half)
}

// A recut four-patch has as much of its print upside down as upright, so a half
// turn shows nothing even of a one-way print.
func TestABlockThatIsUpsideDownAlreadyMayBeTurned(t *testing.T) {
	text := strings.Replace(likeTop, "{form: yardage, colour: \"#2e6f57\"}", "{form: yardage, directional: true}", 1)
	assert.Len(t, planOf(t, text).Press.Half, 15)
}

// Source of the case: snugglesquilts.com, directional prints; worked out by hand:
// recut nine-patches of a one-way print in the corners. Two of the four corners
// stand on their heads in each block as it is; a half turn at the layout would
// turn the other two over, and nobody asked for that.
func TestARecutNinePatchOfAOneWayPrintIsNotTurned(t *testing.T) {
	file := `
job: nine
fabrics: {Heron: {form: yardage, directional: %s}, Foam: {form: yardage}, Reed: {form: yardage}}
block: {make: nine-patch recut, square: 5, corner: Heron, side: Foam, centre: Reed}
colourways: {tide: {blocks: 20}}
layout: {across: 4, down: 5}
`
	p := planOf(t, fmt.Sprintf(file, "yes"))
	assert.Empty(t, p.Press.Half)
	for _, b := range p.Blocks {
		assert.Zero(t, b.Turn)
	}
	free := planOf(t, fmt.Sprintf(file, "no"))
	assert.Equal(t, free.Joins, p.Joins, "cards come to what half turns do")
	assert.Equal(t, len(free.Press.Half) > 0, p.Press.TwoWays())
}

// Source of the case: snugglebugstitching.com: plain blocks 6 x 7, rows pressed
// right, left, right ..., row 4 like row 3: 30 corners, 10 clash and 20 nest.
func TestARowPressedLikeTheOneAboveClashesOnBothSides(t *testing.T) {
	top := frame{layout: &Layout{Across: 6, Down: 7}}
	rows := make([]int8, 7)
	for row := range rows {
		rows[row] = rowLean(row)
	}
	assert.Equal(t, patchwork.Tally{Nest: 30}, top.corners(rows))
	rows[3] = rows[2]
	assert.Equal(t, patchwork.Tally{Nest: 20, Clash: 10}, top.corners(rows))
}

// One row or one column has no corners, and nothing of plain squares meets.
func TestWhereNothingMeetsNothingHasToMatch(t *testing.T) {
	p := planOf(t, `
job: plain
fabrics: {Kelp: {form: yardage}}
block: {make: plain square, square: 5, print: Kelp}
colourways: {tide: {blocks: 6}}
layout: {across: 6, down: 1}
`)
	for _, j := range p.Joins {
		assert.Zero(t, j.Matches, j.Between)
	}
}

// A block that the layout turns is turned on from there.
func TestHalfTurnsAddToTheTurnsOfTheLayout(t *testing.T) {
	p := planOf(t, likeTop+"press: print\n")
	turned := planOf(t, strings.Replace(likeTop, "down: 6}", "down: 6, turn: [[90]]}", 1)+"press: print\n")
	assert.Equal(t, [2]int{147, 0}, betweenOf(turned.Press)[Chequered])
	for i, b := range turned.Blocks {
		assert.Equal(t, p.Blocks[i].Turn+90, b.Turn)
	}
}

// A rectangle takes half a turn as a square does, and its seams meet alike.
func TestRectanglesNestByHalfTurnsToo(t *testing.T) {
	p := planOf(t, strings.Replace(likeTop, "square: 8", "square: 8 x 6", 1)+"press: print\n")
	assert.Equal(t, [2]int{147, 0}, betweenOf(p.Press)[Chequered])
	assert.Len(t, p.Press.Half, 15)
}

// Hand-worked: the print on the left and the right of two seams pulls one row
// both ways, so a nine-patch's rows stay free and print decides nothing.
func TestARuleThatDecidesNothingSaysSo(t *testing.T) {
	file := `
job: nine
fabrics: {Kelp: {form: yardage, colour: black}, Foam: {form: yardage, colour: white}}
block: {make: nine-patch, square: 5, corner: Kelp, side: Foam, centre: Kelp}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
press: %s
`
	for _, rule := range []string{"print", "darker"} {
		p := planOf(t, fmt.Sprintf(file, rule))
		assert.Zero(t, p.Press.RuleCost)
		require.NotEmpty(t, p.Warnings)
		var codes []string
		for _, w := range p.Warnings {
			codes = append(codes, w.Code)
		}
		assert.Contains(t, codes, warnRuleIdle, rule)
	}
}

// clashesOf is all clashes of a quilt, inside its blocks and between them.
func clashesOf(p Plan) int {
	c := patternOf(p.Press, p.Press.Chosen)
	return c.Inside.Clash + c.Between.Clash
}

// Hand-worked: two rows of print and ground, 2 x 2 blocks. Pressed left and right
// the rows nest inside each block and with the block below; pressed to the print
// they clash in all 4 blocks and at both block rows. At block columns the joins
// of the rows nest either way, by cards.
func TestARuleCostsTheClashesThatItMakes(t *testing.T) {
	const file = `
job: rows
fabrics: {Kelp: {form: yardage, width: 42, colour: "#2e6f57"}, Foam: {form: yardage, width: 42, colour: "#e8f0ee"}}
block:
  steps:
    print: {cut: print, size: 5}
    ground: {cut: ground, size: 5}
    block: {sew: [[print, ground], [print, ground]]}
colourways: {tide: {blocks: 4, print: Kelp, ground: Foam}}
layout: {across: 2, down: 2}
press: `
	assert.Zero(t, clashesOf(planOf(t, file+"best")))
	for _, rule := range []string{"print", "darker"} {
		p := planOf(t, file+rule)
		assert.Equal(t, PressRule(rule), p.Press.Rule)
		assert.Equal(t, 6, clashesOf(p), rule)
		assert.Equal(t, 6, p.Press.RuleCost, rule)
		assert.Equal(t, []string{"left", "left"}, p.Press.Cards[0].Steps[0].Rows)
	}
}

// A dark ground beside a light print: the two rules pull opposite ways.
func TestDarkerGoesByTheColourAndPrintByTheRole(t *testing.T) {
	text := strings.NewReplacer(`"#2e6f57"`, "lightyellow", `"#e8f0ee"`, "navy").Replace(likeTop)
	for rule, toward := range map[string]string{"print": "left", "darker": "right"} {
		p := planOf(t, text+"press: "+rule+"\n")
		assert.Equal(t, []string{toward}, p.Press.Cards[0].Steps[0].Rows, rule)
		assert.Zero(t, p.Press.RuleCost)
	}
}

func TestTrianglesArePressedTowardTheCloth(t *testing.T) {
	p := planOf(t, `
job: pinwheels
fabrics: {Kelp: {form: yardage, width: 42, colour: white}, Foam: {form: yardage, width: 42, colour: black}}
block: {make: pinwheel, unit: 4 1/2, method: two, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
press: darker
`)
	for _, c := range p.Press.Cards {
		assert.Equal(t, []string{"toward ground"}, c.Steps[0].Rows)
	}
}

func TestDarkerIsWhatMostBlocksShow(t *testing.T) {
	file := `
job: mixed
fabrics:
  Kelp: {form: yardage, width: 42, colour: darkgreen}
  Sand: {form: yardage, width: 42, colour: white}
  Foam: {form: yardage, width: 42, colour: silver}
block: {make: four-patch, square: 5, ground: Foam}
colourways: {tide: {blocks: 3, print: [Kelp, Sand, Kelp]}, dune: {blocks: 3, print: Sand}}
layout: {across: 3, down: 2}
press: darker
`
	p := planOf(t, file)
	assert.Equal(t, []string{"left"}, p.Press.Cards[0].Steps[0].Rows, "toward Kelp in two blocks of three")
	assert.Equal(t, []string{"right"}, p.Press.Cards[1].Steps[0].Rows, "toward Foam, darker than Sand")
	require.Len(t, p.Warnings, 1)
	assert.Equal(t, warnRuleMixed, p.Warnings[0].Code)
	assert.Equal(t, "tide: print is the lighter cloth in 1 of 3 blocks of a quilt; its seams are pressed toward the print in all of them, since every unit of a step is pressed alike", p.Warnings[0].Message)
}

// Relative luminance by W3C, Web Content Accessibility Guidelines 2.2: white is 1
// and black 0; the primaries are the factors of its formula. #777777 against
// white has the contrast 4.48, (1 + 0.05) / (L + 0.05), from its discussion.
func TestLuminance(t *testing.T) {
	for colour, want := range map[string]float64{
		"white": 1, "#000": 0, "#ff0000": 0.2126, "Lime": 0.7152, "#00F": 0.0722,
		"#777777": 1.05/4.48 - 0.05, "#fff": 1, "gray": 0.2159, "grey": 0.2159,
	} {
		assert.InDelta(t, want, luminance(colour), 0.0005, colour)
	}
	for _, name := range colourNames() {
		assert.Len(t, colourValues()[name], 6, name)
	}
	assert.Len(t, colourValues(), len(colourNames()))
}

func TestThePressRuleIsReadAndRefusedWhereItStands(t *testing.T) {
	assertFaults(t, []faultCase{
		{
			"darker without colours: every fabric of the blocks, where it stands", "seam: 1/4",
			"seam: 1/4\npress: darker",
			[]string{
				`10:9: "Kelp" has no colour, and press: darker needs the colour of every fabric in the blocks; write it as in colour: "#2e6f57" or colour: slategray`,
				`11:9: "Foam" has no colour, and press: darker needs the colour of every fabric in the blocks; write it as in colour: "#2e6f57" or colour: slategray`,
			},
		},
		{
			"a rule that there is not", "seam: 1/4",
			"seam: 1/4\npress: lighter",
			[]string{`7:8: "press" cannot be "lighter"; it can be best, print or darker`},
		},
	})
	assert.Equal(t, PressPrint, readGood(t, changed(t, "seam: 1/4", "seam: 1/4\npress: to the print")).Press)
	assert.Equal(t, PressBest, readGood(t, changed(t, "seam: 1/4", "seam: 1/4\npress: best")).Press)
}

func TestAPlanWithoutARuleIsPressedAsItNestsBest(t *testing.T) {
	assert.Equal(t, PressBest, planOf(t, likeTop).Press.Rule)
}

// Forty measures scattered over one top are more than can be tried in all ways
// where blocks clash whatever is done; where none need clash the plan is sure.
func TestAPlanSaysWhetherItIsSure(t *testing.T) {
	const kinds, across = 40, 20
	blocks := make([]int, kinds)
	var rows, colourways strings.Builder
	drawn := uint32(1)
	for range across {
		rows.WriteString("    - [")
		for c := range across {
			drawn = drawn*1664525 + 1013904223
			kind := int(drawn>>16) % kinds
			blocks[kind]++
			fmt.Fprintf(&rows, "%sc%d", strings.Repeat(", ", min(c, 1)), kind)
		}
		rows.WriteString("]\n")
	}
	for kind, n := range blocks {
		fmt.Fprintf(&colourways, "  c%d: {blocks: %d, offset: %d/64}\n", kind, n, 48+kind)
	}
	p := planOf(t, fmt.Sprintf(`
job: many
fabrics: {Kelp: {form: yardage}, Foam: {form: yardage}}
block: {make: four-patch recut, square: 8, print: Kelp, ground: Foam}
colourways:
%slayout:
  across: %d
  down: %d
  order:
%s`, colourways.String(), across, across, rows.String()))
	require.Equal(t, Chequered, p.Press.Chosen)
	assert.Zero(t, clashesOf(p))
	assert.True(t, patternOf(p.Press, Chequered).Exact)
	requireJoinsOfItsBlocks(t, p)

	assert.False(t, patternOf(p.Press, AllAlike).Exact)
	p.Press.Chosen = AllAlike
}

// patternOf is what a pattern comes to.
func patternOf(p PressPlan, pattern Pattern) PatternCount {
	for _, c := range p.Patterns {
		if c.Pattern == pattern {
			return c
		}
	}
	return PatternCount{Pattern: pattern}
}
