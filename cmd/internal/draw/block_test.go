package draw

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// blockOf is the drawing of a colourway's block as it is written.
func blockOf(t *testing.T, p planner.Plan, colourway string) string {
	t.Helper()
	return drawingOf(t, p, Drawing{Colourway: colourway})
}

// makingOf is the making of a colourway's block, to be drawn part by part.
func makingOf(p planner.Plan, i int) *making {
	c := p.Colourways[i]
	return newMaking(newDrawing(p, "test", pageWidth, 100), c, setsOf(p, c.Name)[0].wear)
}

// Hand-worked: 7 in squares with seams of 1/4 make units of 13 1/2; cut 1 in
// either side of the centre, that is at 5 3/4 and 7 3/4, they leave 5 3/4, 2 and
// 5 3/4.
func TestCutsAreMeasuredFromEdgesAndFromTheCentre(t *testing.T) {
	p := example(t, "estuary-lap")
	m := makingOf(p, 0)
	recut := m.madeOf("recut")
	scale := scale{1350, 27 * inch / 2} // a unit an inch
	assert.Equal(t, []dim{{0, 575, "5 3/4"}, {575, 775, "2"}, {775, 1350, "5 3/4"}}, m.chain(recut.Cuts[0], recut.Unit.Size.Width, scale))
	assert.Equal(t, []dim{{675, 575, "1"}, {675, 775, "1"}}, m.measured(recut.Step.Upright, recut.Unit.Size.Width, scale))

	texts := textsOf(elements(t, blockOf(t, p, "tide")))
	for text, times := range map[string]int{"5 3/4": 4, "2": 2, "1": 2} {
		assert.Equal(t, times, count(texts, text), text)
	}
	assert.Contains(t, texts, "4 recut")
	assert.Contains(t, texts, "5 recut, apart")
	assert.Contains(t, texts, "6 turn")
	assert.Contains(t, texts, "finished: tide-01, 03, 05")
}

func count(texts []string, text string) int {
	n := 0
	for _, other := range texts {
		if other == text {
			n++
		}
	}
	return n
}

func TestCutsAreWordedAsTheyAreMeasured(t *testing.T) {
	m := makingOf(example(t, "estuary-lap"), 0)
	for want, cuts := range map[string][]patchwork.From{
		"1 in either side of the centre":                                      patchwork.EitherSide(inch),
		"through the centre":                                                  patchwork.Halves(),
		"in equal thirds":                                                     patchwork.Thirds(),
		"2 in from the left edge and 3 in from the right edge":                {{Edge: patchwork.Near, Distance: 2 * inch}, {Edge: patchwork.Far, Distance: 3 * inch}},
		"1 in from the centre to the left":                                    {{Distance: -inch}},
		"1 in from one third to the right":                                    {{Edge: patchwork.FirstThird, Distance: inch}},
		"at two thirds":                                                       {{Edge: patchwork.SecondThird}},
		"through the centre, 1 in from the left edge and at one third":        {{}, {Edge: patchwork.Near, Distance: inch}, {Edge: patchwork.FirstThird}},
		"1 in either side of two thirds":                                      {{Edge: patchwork.SecondThird, Distance: -inch}, {Edge: patchwork.SecondThird, Distance: inch}},
		"1/2 in from the left edge, 1 in from the left edge and at one third": {{Edge: patchwork.Near, Distance: inch / 2}, {Edge: patchwork.Near, Distance: inch}, {Edge: patchwork.FirstThird}},
	} {
		assert.Equal(t, want, strings.ReplaceAll(m.placesOf(cuts, "left", "right"), tied, " "))
	}
}

// Every seam has one sign, and the arrow points where the iron pushes: a pair
// whose seam is pressed left points left, pressed right it points right.
func TestEverySeamHasItsSign(t *testing.T) {
	for name, p := range plans(t) {
		for i := range p.Colourways {
			m := makingOf(p, i)
			for _, made := range m.c.Build.Steps {
				var c canvas
				spots := m.arrows(&c, made.Unit, m.scale, m.way, m.freshIn(made.Step.Name))
				assert.Len(t, spots, len(made.Unit.Seams), name)
				assert.Equal(t, len(made.Unit.Seams), strings.Count(c.String(), "<use "), name)
			}
		}
	}
	pair := patchwork.SewBeside(patchwork.CutPiece("print", squareOf(5*inch)), patchwork.CutPiece("ground", squareOf(5*inch)), inch/4, 0)
	for way, want := range map[bool]patchwork.Lean{false: {X: -1}, true: {X: 1}} {
		assert.Equal(t, want, lean(pair.Seams[0], patchwork.Way{way}))
	}
	assert.Equal(t, patchwork.Lean{X: -1}, lean(pair.Seams[0], nil), "choices that nobody took are taken the first way")
}

// Clockwise from the right, as the page turns.
func TestArrowsPointTheWayOfTheAllowance(t *testing.T) {
	for l, want := range map[patchwork.Lean]int{{X: 1}: 0, {X: 1, Y: 1}: 45, {Y: 1}: 90, {X: -1}: 180, {X: -1, Y: -1}: 225, {Y: -1}: 270} {
		assert.Equal(t, want, turned(l))
	}
	d := newDrawing(example(t, "estuary-lap"), "test", pageWidth, 100)
	var c canvas
	d.sign(&c, arrowNew, spot{}, patchwork.Lean{}, 50*unit)
	assert.Contains(t, c.String(), d.prefix+openedSign, "a seam pressed open has no arrow")
}

// A join that four seams run into leaves the most room between two of them.
func TestArrowsStandWhereNoSeamRunsIn(t *testing.T) {
	seam := patchwork.Seam{A: patchwork.Point{X: 0, Y: 10}, B: patchwork.Point{X: 100, Y: 10}}
	u := patchwork.Unit{Seams: []patchwork.Seam{
		seam,
		{A: patchwork.Point{X: 20, Y: 0}, B: patchwork.Point{X: 20, Y: 10}},
		{A: patchwork.Point{X: 90, Y: 10}, B: patchwork.Point{X: 90, Y: 30}},
		{A: patchwork.Point{X: 50, Y: 0}, B: patchwork.Point{X: 50, Y: 9}}, // ends before it
		{A: patchwork.Point{X: 70, Y: 11}, B: patchwork.Point{X: 80, Y: 21}},
	}}
	from, to := stretch(u, seam)
	assert.Equal(t, [2]measure.Length{20, 90}, [2]measure.Length{from.X, to.X})

	diagonal := patchwork.Seam{A: patchwork.Point{X: 0, Y: 100}, B: patchwork.Point{X: 100, Y: 0}}
	for point, on := range map[patchwork.Point]bool{{X: 40, Y: 60}: true, {X: 40, Y: 61}: false, {X: 60, Y: 60}: false, {X: 120, Y: -20}: false} {
		assert.Equal(t, on, onSeam(diagonal, point), point)
	}
}

// The four middle pieces of a four-patch recut get half a turn, and only they.
func TestTurnedPiecesAreMarked(t *testing.T) {
	m := makingOf(example(t, "estuary-lap"), 0)
	var c canvas
	m.turning(m.madeOf("turn")).art.paint(&c)
	assert.Equal(t, 4, strings.Count(c.String(), "M0-6A6 6 0 0 1 0 6"), "arcs of half a turn")
}

// Hand-worked: pieces 1 and 4 of 2 × 2 change places, then 4 and 2.
func TestExchangedPiecesSayWhereTheyComeFrom(t *testing.T) {
	assert.Equal(t, []int{0, 1, 2, 3}, exchanged(nil, 2, 2))
	assert.Equal(t, []int{3, 1, 2, 0}, exchanged([][2]int{{1, 4}}, 2, 2))
	assert.Equal(t, []int{3, 0, 2, 1}, exchanged([][2]int{{1, 4}, {4, 2}}, 2, 2))

	texts := textsOf(elements(t, blockOf(t, plans(t)["all that is done"], "skerry")))
	assert.Contains(t, texts, "4", "the piece that lies first comes from the last place")
}

// A block pressed two ways is drawn both ways, and says which blocks take which.
func TestBothWaysOfPressingAreDrawn(t *testing.T) {
	p := plans(t)["two ways"]
	require.NotNil(t, p.Colourways[0].PressB)
	texts := textsOf(elements(t, blockOf(t, p, "tide")))
	assert.Contains(t, texts, "block, card b")
	assert.Contains(t, texts, "For "+idList(p.Press.Cards[1].Blocks)+".")
}

func TestManySetsOfFabricsAreCounted(t *testing.T) {
	drawn := blockOf(t, hundredFabrics(t), "all")
	assert.Contains(t, drawn, "94 sets")
	assert.Equal(t, mostSets, strings.Count(drawn, ">finished: "))
}

func TestBlockIDsAreListedShortly(t *testing.T) {
	for want, ids := range map[string][]string{
		"tide-01":                               {"tide-01"},
		"tide-01, 02":                           {"tide-01", "tide-02"},
		"tide-01–03, 05":                        {"tide-01", "tide-02", "tide-03", "tide-05"},
		"tide-99–101":                           {"tide-99", "tide-100", "tide-101"},
		"a-01, 03, 05, 07, 09, 11 and 2 others": {"a-01", "a-03", "a-05", "a-07", "a-09", "a-11", "a-13", "a-15"},
	} {
		assert.Equal(t, want, idList(ids))
	}
}

// Whatever width there is, no line of a block in characters is longer, and where
// the block is shown its seams all have a sign.
func TestCharactersKeepToTheirWidth(t *testing.T) {
	all := plans(t)
	names := []string{"estuary-lap", "saltmarsh-cot", "pinwheel recut", "hourglass", "rail", "all that is done"}
	rapid.Check(t, func(t *rapid.T) {
		p := all[rapid.SampledFrom(names).Draw(t, "plan")]
		width := rapid.IntRange(1, 100).Draw(t, "width")
		unicode := rapid.Bool().Draw(t, "unicode")
		c := p.Colourways[0]
		lines := Characters(c.Build, c.Press, width, unicode)
		if width >= 30 {
			assert.NotNil(t, lines, "any of these blocks fits 30 columns")
		}
		for _, line := range lines {
			assert.LessOrEqual(t, len([]rune(line)), width, line)
			if !unicode {
				assert.Regexp(t, `^[ -~]*$`, line)
			}
		}
	})
}

// Hand-worked: a four-patch whose pairs are pressed left, so that the lower one,
// turned by half a turn, leans right, and whose join is pressed up.
func TestCharactersShowRolesAndArrows(t *testing.T) {
	b, err := patchwork.Make(patchwork.FourPatchOf(squareOf(4*inch)), inch/4, measure.Inches)
	require.NoError(t, err)
	assert.Equal(t, []string{
		"+----------+----------+",
		"|##########|          |",
		"|##########|          |",
		"|##########<          |",
		"|##########|          |",
		"|##########|          |",
		"+----^-----+----------+",
		"|          |##########|",
		"|          |##########|",
		"|          >##########|",
		"|          |##########|",
		"|          |##########|",
		"+----------+----------+",
		"# print   (blank) ground",
	}, Characters(b, patchwork.Way{false, false}, 24, false))
}
