package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// Raw and finished sizes of nine-patches that are halved both ways, from the
// sizing table of R. Fea, raevenfea.com/quilting/disappearing-nine-patch: all
// thirteen agree with exact arithmetic (finished 3c - 2), and finished 6, 8 and
// 12 need thirds of an inch, (F + 2)/3, as the page says.
func TestNinePatchRecutFinishesAsTheSizingTableSays(t *testing.T) {
	for _, row := range []struct{ cut, finished string }{
		{"1", "1"}, {"1 1/2", "2 1/2"}, {"2", "4"}, {"2 1/2", "5 1/2"}, {"3", "7"},
		{"3 1/2", "8 1/2"}, {"4", "10"}, {"4 1/2", "11 1/2"}, {"5", "13"},
		{"5 1/2", "14 1/2"}, {"6", "16"}, {"6 1/2", "17 1/2"}, {"10", "28"},
		{"2 2/3", "6"}, {"3 1/3", "8"}, {"4 2/3", "12"},
	} {
		t.Run(row.cut, func(t *testing.T) {
			b := made(t, NinePatchRecut(in(t, row.cut), nil), quarter)
			assertSquare(t, row.finished, finishedSize(b.Block(), quarter), "finished")
		})
	}
}

// Published nine-patches, quarters and rebuilt blocks, raw. Where the source
// prints another figure than exact arithmetic gives, it stands under never.
func TestNinePatchRecutAgainstPublishedBlocks(t *testing.T) {
	for _, row := range []struct {
		source                      string
		cut, unit, quarter, raw     string
		neverUnit, neverQ, neverRaw string
	}{
		{source: "akwadigital.com, halved at 7", cut: "5", unit: "14", quarter: "7", raw: "13 1/2"},
		{source: "Craizee tutorials 2012/03: prints quarters of 6 1/2, as if finished", cut: "5", unit: "14", quarter: "7", raw: "13 1/2", neverQ: "6 1/2", neverRaw: "12 1/2"},
		{source: "Lawsons of Spanish Lakes 2011/03, about 13 1/2", cut: "5", unit: "14", quarter: "7", raw: "13 1/2"},
		{source: "Paula Lynn 2010/05: top of 4 x 5 blocks 51 x 63, so a block of about 12 3/4", cut: "5", unit: "14", quarter: "7", raw: "13 1/2", neverRaw: "13 1/4"},
		{source: "Stitching Depot 2010/02: prints a nine-patch of 11 1/2", cut: "4", unit: "11", quarter: "5 1/2", raw: "10 1/2", neverUnit: "11 1/2"},
		{source: "42 Quilts block 59: first said 2 1/2 makes 6 1/2", cut: "2 1/2", unit: "6 1/2", quarter: "3 1/4", raw: "6", neverRaw: "6 1/2"},
		{source: "42 Quilts block 59, corrected", cut: "2 3/4", unit: "7 1/4", quarter: "3 5/8", raw: "6 3/4"},
		{source: "Just Jude: 12 1/2, which needs a trim of 1/4", cut: "4 3/4", unit: "13 1/4", quarter: "6 5/8", raw: "12 3/4", neverRaw: "12 1/2"},
		{source: "G. Black 2016/05, quarter 10", cut: "7", unit: "20", quarter: "10", raw: "19 1/2"},
		{source: "G. Black 2016/05: prints 9 1/2", cut: "3 1/2", unit: "9 1/2", quarter: "4 3/4", raw: "9", neverRaw: "9 1/2"},
		{source: "Tamarinis 2020/08: finished patch 3, quarter finished 4 1/4", cut: "3 1/2", unit: "9 1/2", quarter: "4 3/4", raw: "9"},
		{source: "C. Cameli, double recut: 3, then 4", cut: "3", unit: "8", quarter: "4", raw: "7 1/2"},
		{source: "C. Cameli, double recut: 4 finishes 10", cut: "4", unit: "11", quarter: "5 1/2", raw: "10 1/2"},
		{source: "Oversized nine-patch tutorial, Aug 2011: used the raw block as finished", cut: "7", unit: "20", quarter: "10", raw: "19 1/2"},
	} {
		t.Run(row.source, func(t *testing.T) {
			b := made(t, NinePatchRecut(in(t, row.cut), nil), quarter)
			unit, piece := b.step(t, "nine-patch").Unit.Size, b.step(t, "recut").Pieces[0][0].Size
			assertSquare(t, row.unit, unit, "nine-patch")
			assertSquare(t, row.quarter, piece, "quarter")
			assertSquare(t, row.raw, b.Block().Size, "block")
			neverSquare(t, row.neverUnit, unit)
			neverSquare(t, row.neverQ, piece)
			neverSquare(t, row.neverRaw, b.Block().Size)
		})
	}
}

// neverSquare checks that a published wrong size is not repeated.
func neverSquare(t *testing.T, wrong string, got measure.Size) {
	t.Helper()
	if wrong != "" {
		assert.NotEqual(t, sides(t, wrong, wrong), got)
	}
}

// The halving line of a nine-patch lies (c - 2s)/2 from a seam of the centre
// square: 2 1/4 for squares of 5 (Craizee tutorials 2012/03, right).
func TestNinePatchIsHalvedTwoAndAQuarterFromTheCentreSeams(t *testing.T) {
	b := made(t, NinePatchRecut(in(t, "5"), nil), quarter)
	firstSeam := in(t, "5") - quarter
	assert.Equal(t, firstSeam+in(t, "2 1/4"), b.step(t, "recut").Cuts[0][0])
}

// Published four-patches cut twice each way. Sizes are raw; pieces are those
// of one row. Where the source prints another size than exact arithmetic
// gives, it stands under never.
func TestFourPatchRecutAgainstPublishedBlocks(t *testing.T) {
	middle := [][]int{{0, 0, 0}, {0, 90, 0}, {0, 0, 0}}
	for _, row := range []struct {
		source      string
		cut, offset string
		turns       [][]int
		unit        string
		outer, mid  string
		raw         string
		never       []string
	}{
		{"Alamosa Quilter 2011/07, Jan's block, Sew Wonderful", "5", "1", nil, "9 1/2", "3 3/4", "2", "8 1/2", nil},
		{"Seams Like a Dream: centre a quarter turn", "5", "1", middle, "9 1/2", "3 3/4", "2", "8 1/2", nil},
		{"Songbird Designs: the offset does not change the size", "5", "1 1/2", nil, "9 1/2", "3 1/4", "3", "8 1/2", nil},
		{"Double split four patch: thinks 8 1/4", "5", "1 1/4", nil, "9 1/2", "3 1/2", "2 1/2", "8 1/2", []string{"8 1/4"}},
		{"Tamarinis 2020/10: shrinks about 2", "4 1/2", "1 1/2", nil, "8 1/2", "2 3/4", "3", "7 1/2", []string{"6 1/2"}},
		{"Big Nutty Quilter 2014/01: centre a quarter turn", "6 1/2", "2", middle, "12 1/2", "4 1/4", "4", "11 1/2", nil},
		{"Quilting Cubby: calls it a 20 in block, 19 to the quilt", "10", "2", nil, "19 1/2", "7 3/4", "4", "18 1/2", []string{"20", "20 1/2", "19", "19 1/2"}},
	} {
		t.Run(row.source, func(t *testing.T) {
			b := made(t, FourPatchRecut(in(t, row.cut), in(t, row.offset), row.turns), quarter)
			assertSquare(t, row.unit, b.step(t, "units").Unit.Size, "four-patch")
			pieces := b.step(t, "recut").Pieces
			assertSquare(t, row.outer, pieces[0][0].Size, "corner piece")
			assert.Equal(t, sides(t, row.mid, row.outer), pieces[0][1].Size)
			assertSquare(t, row.mid, pieces[1][1].Size, "centre piece")
			assertSquare(t, row.outer, pieces[2][2].Size, "corner piece")
			assertSquare(t, row.raw, b.Block().Size, "block")
			for _, wrong := range row.never {
				neverSquare(t, wrong, b.Block().Size)
			}
		})
	}
}

// Songbird Designs gives c = (raw + 1 1/2)/2; exact arithmetic agrees.
func TestFourPatchRecutBackFormulaGivesTheBlockBack(t *testing.T) {
	for _, raw := range []string{"6 1/2", "8 1/2", "10", "12 1/2"} {
		cut := (in(t, raw) + in(t, "1 1/2")) / 2
		b := made(t, FourPatchRecut(cut, measure.Inch, nil), quarter)
		assertSquare(t, raw, b.Block().Size, "block")
	}
}

// worldofneedlepoint.com, strip-pieced four-patches: cut width to raw size; all
// five agree. Fiber Thoughts 2013/03 prints 12 1/2 for squares of 6: exact is
// 11 1/2, and 12 1/2 needs 6 1/2.
func TestFourPatchRawSizes(t *testing.T) {
	for _, row := range []struct{ cut, raw string }{
		{"1 1/2", "2 1/2"}, {"2", "3 1/2"}, {"2 1/2", "4 1/2"}, {"3 1/2", "6 1/2"}, {"6 1/2", "12 1/2"},
		{"6", "11 1/2"},
	} {
		assertSquare(t, row.raw, made(t, FourPatch(in(t, row.cut)), quarter).Block().Size, row.cut)
	}
	neverSquare(t, "12 1/2", made(t, FourPatch(in(t, "6")), quarter).Block().Size)
}

// All People Quilt: squares of 2 1/2 make 6 1/2 raw, 6 finished. Six Hour Baby
// Quilt: strips of 2 make 5 raw, 4 1/2 finished.
func TestNinePatchRawAndFinishedSizes(t *testing.T) {
	for _, row := range []struct{ cut, raw, finished string }{
		{"2 1/2", "6 1/2", "6"}, {"2", "5", "4 1/2"},
	} {
		b := made(t, NinePatch(in(t, row.cut)), quarter)
		assertSquare(t, row.raw, b.Block().Size, "raw")
		assertSquare(t, row.finished, finishedSize(b.Block(), quarter), "finished")
	}
}

// FM Quilters' tip takes off one allowance of two and makes 6 3/4 of a 3 1/2 in
// square to be doubled; exact is 6 1/2, and 6 3/4 makes a row of three 3/4 in
// too long.
func TestDoublingACutSquareTakesOffBothAllowances(t *testing.T) {
	small := finishedSize(made(t, NinePatch(in(t, "3 1/2")), quarter).Block(), quarter)
	double := finishedSize(made(t, NinePatch(in(t, "6 1/2")), quarter).Block(), quarter)
	tip := finishedSize(made(t, NinePatch(in(t, "6 3/4")), quarter).Block(), quarter)
	assert.Equal(t, 2*small.Width, double.Width)
	assert.Equal(t, in(t, "3/4"), tip.Width-2*small.Width)
}

// Metric squares sewn with a foot of another width than they were drawn for,
// from two forum cases: 9.5 cm squares, drawn for 7.5 mm seams (24 cm
// finished), sewn with 1/4 in come out 24.69 cm; 8.0 cm squares with 7.5 mm
// make 19.5 cm. Hand-worked.
func TestNinePatchWithTheSeamAsSewn(t *testing.T) {
	for _, row := range []struct{ cut, seam, finished measure.Length }{
		{95 * mm, mm * 15 / 2, 240 * mm},
		{95 * mm, quarter, mm * 2469 / 10},
		{80 * mm, mm * 15 / 2, 195 * mm},
		{80 * mm, 6 * mm, 204 * mm},
		{80 * mm, 5 * mm, 210 * mm},
	} {
		b := made(t, NinePatch(row.cut), row.seam)
		assert.Equal(t, row.finished, finishedSize(b.Block(), row.seam).Width)
	}
}

// The seam scales only the seam terms: rebuilt nine-patches finish 3c - 8s,
// four-patches 2c - 8s (exact model, hand-worked).
func TestRecutBlocksFinishForAnySeam(t *testing.T) {
	for _, seam := range []measure.Length{5 * mm, 6 * mm, mm * 15 / 2, quarter, measure.Inch / 2} {
		cut := 15 * measure.Centimetre
		nine := made(t, NinePatchRecut(cut, nil), seam)
		four := made(t, FourPatchRecut(cut, 2*measure.Centimetre, nil), seam)
		assert.Equal(t, 3*cut-8*seam, finishedSize(nine.Block(), seam).Width)
		assert.Equal(t, 2*cut-8*seam, finishedSize(four.Block(), seam).Width)
	}
}

// One pack of 42 squares of 5: corners of 12 blocks need 48. Areas of the
// finished block: corners 81, sides 72, centre 16 of 169 square inches (What
// Werks, worked out by hand).
func TestNinePatchRecutAreasAndCopies(t *testing.T) {
	b := made(t, NinePatchRecut(in(t, "5"), nil), quarter)
	assert.Equal(t, []RoleArea{
		{"corner", squareInches(81)}, {"side", squareInches(72)}, {"centre", squareInches(16)},
	}, b.Block().AreaByRole(quarter))
	assertSquare(t, "13", finishedSize(b.Block(), quarter), "finished")
	for _, wrong := range []string{"13 1/2", "14", "15"} {
		neverSquare(t, wrong, finishedSize(b.Block(), quarter))
	}
	for name, copies := range map[string]int{"corner": 4, "side": 4, "centre": 1, "nine-patch": 1, "recut": 1, "turn": 1, "block": 1} {
		assert.Equal(t, copies, b.step(t, name).Copies, name)
	}
}

func squareInches(n int) measure.Area {
	return measure.Mul(measure.Inch, measure.Inch).Times(n)
}

// N recut four-patches take 4N squares, 2N pairs and N four-patches
// (hand-worked).
func TestFourPatchRecutCopies(t *testing.T) {
	b := made(t, FourPatchRecut(in(t, "7"), in(t, "1 1/4"), nil), quarter)
	for name, copies := range map[string]int{"print": 2, "ground": 2, "pairs": 2, "units": 1, "recut": 1, "turn": 1, "block": 1} {
		assert.Equal(t, copies, b.step(t, name).Copies, name)
	}
}

// Squares of 5 with offsets 1, 1 1/4 and 1 1/2 make blocks that mix: each 8 1/2
// raw, print and ground 32 sq in each, and the small squares in the middle
// finish offset - 1/4 (Block Exchange Bonanza, Jan 2012; worked out by hand).
func TestFourPatchRecutOffsetsMix(t *testing.T) {
	for _, row := range []struct{ offset, small string }{{"1", "3/4"}, {"1 1/4", "1"}, {"1 1/2", "1 1/4"}} {
		b := made(t, FourPatchRecut(in(t, "5"), in(t, row.offset), nil), quarter)
		assertSquare(t, "8 1/2", b.Block().Size, row.offset)
		assert.Equal(t, []RoleArea{{"print", squareInches(32)}, {"ground", squareInches(32)}}, b.Block().AreaByRole(quarter))
		assert.Equal(t, measure.Inch, b.step(t, "units").Unit.Size.Width-b.Block().Size.Width, "loses 1 in, not 2")

		centre := b.step(t, "turn").Pieces[1][1].Finished(quarter)
		assert.Len(t, centre.Patches, 4)
		for _, p := range centre.Patches {
			assert.Equal(t, measure.Mul(in(t, row.small), in(t, row.small)), p.Area())
		}
	}
}

// 42 recut nine-patches of 5 in squares, set 6 x 7: a block has 85 1/2 in of
// seam, 6 of 5, 2 of 14, 2 of 7 and one of 13 1/2; the top has 4534 1/2 in
// (hand-worked).
func TestSeamLengthIsRawEdgeToRawEdge(t *testing.T) {
	recipe := NinePatchRecut(in(t, "5"), nil)
	block := made(t, recipe, quarter)
	assert.Equal(t, in(t, "85 1/2"), block.SeamLength())
	assert.Equal(t, in(t, "58"), block.step(t, "nine-patch").SeamLength())
	assert.Equal(t, in(t, "27 1/2"), block.step(t, "block").SeamLength())

	recipe.Steps = append(recipe.Steps, Step{Name: "top", Do: Sew, Rows: gridOf("block", 7, 6)})
	assert.Equal(t, in(t, "4534 1/2"), made(t, recipe, quarter).SeamLength())
}

// A one-way print in the corners of a recut nine-patch stands on its head in
// two of four corner squares, 40 in 20 blocks, when two quarters get half a
// turn (hand-worked).
func TestPatchesRememberTheirTurns(t *testing.T) {
	b := made(t, NinePatchRecut(in(t, "5"), nil), quarter)
	turned := map[uint8]int{}
	for _, p := range b.Block().Patches {
		if p.Role == "corner" {
			turned[p.Quarters]++
		}
	}
	assert.Equal(t, map[uint8]int{0: 2, 2: 2}, turned)
}

func TestPlainSquareIsItsPiece(t *testing.T) {
	b := made(t, PlainSquare(in(t, "6 1/2")), quarter)
	assertSquare(t, "6 1/2", b.Block().Size, "raw")
	assert.Equal(t, []RoleArea{{"print", squareInches(36)}}, b.Block().AreaByRole(quarter))
	assert.Empty(t, b.Choices)
	assert.Zero(t, b.SeamLength())
}

// Operation keys come from step names, so these never change.
func TestBuiltInStepNamesAreFinal(t *testing.T) {
	one := measure.Inch
	for want, r := range map[string]Recipe{
		"square":                                         PlainSquare(one),
		"print ground pairs units":                       FourPatch(one),
		"corner side centre nine-patch":                  NinePatch(one),
		"print ground pairs units recut turn block":      FourPatchRecut(one, one, nil),
		"corner side centre nine-patch recut turn block": NinePatchRecut(one, nil),
		"kelp foam rail":                                 Rail([]string{"kelp", "foam", "kelp"}, one, one),
		"half-squares":                                   HalfSquares(one, 2),
		"half-squares pinwheel":                          Pinwheel(one, 4),
		"quarter-squares":                                Hourglass(one),
		"half-squares pinwheel recut turn block":         PinwheelRecut(one, 8, 0, nil),
		"half-squares hourglass recut turn block":        HourglassRecut(one, 2, one, nil),
	} {
		got := ""
		for i, s := range r.Steps {
			if i > 0 {
				got += " "
			}
			got += s.Name
		}
		assert.Equal(t, want, got)
	}
}

// A turn of nothing is still a step, and does not become the built-in's own.
func TestBuiltInsKeepTheTurnsTheyAreGiven(t *testing.T) {
	still := [][]int{{0, 0}, {0, 0}}
	b := made(t, NinePatchRecut(in(t, "5"), still), quarter)
	assert.Equal(t, b.step(t, "recut").Pieces, b.step(t, "turn").Pieces)
	assert.Equal(t, [][]int{{0, 180}, {180, 0}}, made(t, NinePatchRecut(in(t, "5"), nil), quarter).step(t, "turn").Step.Turns)
}

// gridOf is a grid of like cells.
func gridOf(name string, rows, columns int) [][]Cell {
	grid := make([][]Cell, rows)
	for r := range grid {
		grid[r] = make([]Cell, columns)
		for c := range grid[r] {
			grid[r][c].Of = name
		}
	}
	return grid
}
