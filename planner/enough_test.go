package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// ask asks of a job in which nothing is done, with what its file says is there.
func ask(t require.TestingT, file string) EnoughAsk {
	job, err := Parse("job.yaml", []byte(file))
	require.NoError(t, err)
	plan, err := Make(job, Prior{})
	require.NoError(t, err)
	a := EnoughAsk{Plan: plan, Have: map[string]Have{}, Left: Plan.Wanted}
	for _, f := range job.Fabrics {
		if f.OnHand != nil {
			a.Have[f.Name] = f.Own()
		}
	}
	return a
}

func answer(t require.TestingT, a EnoughAsk) Enough {
	e, err := a.Answer()
	require.NoError(t, err)
	return e
}

func (e Enough) fabric(name string) EnoughFabric {
	for _, f := range e.Fabrics {
		if f.Fabric.Name == name {
			return f
		}
	}
	return EnoughFabric{}
}

func (e Enough) ways(kind WayKind) []EnoughWay {
	var found []EnoughWay
	for _, w := range e.Ways {
		if w.Kind == kind {
			found = append(found, w)
		}
	}
	return found
}

const onePack = `
job: pack
fabrics:
  Dunes: {form: pre-cut squares, size: 5, on-hand: 42}
  Foam: {form: yardage, width: 42}
block: {make: nine-patch recut, square: 5, corner: Dunes, side: Foam, centre: Foam}
colourways: {tide: {blocks: 12}}
layout: {across: 3, down: 4, order: rows}
`

// 12 blocks take 48 squares of 5 in for their corners; a pack of 42 is 6 short and
// makes 10 blocks, 2 over. Published question, What Werks, "Using pre-cut quilting
// patterns"; the count is hand-worked. Not 12 blocks, and not 10 with none over.
func TestOnePackMakesTenBlocks(t *testing.T) {
	e := answer(t, ask(t, onePack))
	assert.Equal(t, []EnoughColourway{{"tide", 12, 10}}, e.Colourways)
	f := e.fabric("Dunes")
	assert.Equal(t, []int{48, 42, 2}, []int{f.Wanted, f.Gives, f.Over})
	assert.Equal(t, Amount(6), f.Buy)
	assert.False(t, e.Fits)
	assert.False(t, e.fabric("Foam").Said, "nothing is said of it: it is taken as bought")
	require.NotEmpty(t, e.ways(WayBuy))
	assert.Equal(t, []EnoughBuy{{f.Fabric, 48, 6}}, e.ways(WayBuy)[0].Buy)
}

// Squares of 5 in from a fat quarter: 12 of 18 × 22, 16 of 20 × 22, 9 of 18 × 19
// 1/2; of 5 1/2 in 12 of 18 × 22 and 9 of 17 3/4 × 21 3/4. Published: Quilting
// Board, "Fat quarter conversion"; Piece Full Living. 42 squares of 5 in take 4
// fat quarters of 18 × 22 (a forum says 40 come of three) and 3 of 20 × 22.
func TestFatQuartersGiveWhatTheChartSays(t *testing.T) {
	for _, c := range []struct {
		sheet, square string
		sheets, gives int
	}{
		{"18 x 22", "5", 1, 12}, {"20 x 22", "5", 1, 16}, {"18 x 19 1/2", "5", 1, 9},
		{"18 x 22", "5 1/2", 1, 12}, {"17 3/4 x 21 3/4", "5 1/2", 1, 9}, {"18 x 22", "2 1/2", 1, 56},
		{"18 x 22", "5", 3, 36}, {"18 x 22", "5", 4, 48}, {"20 x 22", "5", 3, 48},
	} {
		e := answer(t, ask(t, fmt.Sprintf(`
job: chart
fabrics: {Kelp: {form: fat quarter, size: %s, on-hand: %d}}
block: {make: plain square, square: %s, print: Kelp}
colourways: {tide: {blocks: 42}}
layout: {across: 7, down: 6, order: rows}
`, c.sheet, c.sheets, c.square)))
		f := e.fabric("Kelp")
		assert.Equal(t, c.gives, f.Gives, "%s of %s", c.square, c.sheet)
		assert.Equal(t, min(42, c.gives), e.Colourways[0].Makes)
	}
}

const twoPrints = `
job: split
fabrics:
  Kelp: {form: fat quarter, size: 18 x 22, on-hand: 1}
  Cormorant: {form: fat quarter, size: 18 x 22, on-hand: 2}
block: {make: plain square, square: 5, print: [Kelp, Cormorant]}
colourways: {tide: {blocks: 30}}
layout: {across: 6, down: 5, order: rows}
`

// Hand-worked: each print has 15 blocks; Kelp gives 12 squares, Cormorant 24. 12
// and 18 make all 30, and no block is lost.
func TestAnotherSplitMakesItFit(t *testing.T) {
	e := answer(t, ask(t, twoPrints))
	assert.Equal(t, 27, e.Colourways[0].Makes)
	require.Len(t, e.ways(WaySplit), 1)
	w := e.ways(WaySplit)[0]
	assert.Equal(t, []string{"tide:", "  print: {Kelp: 12, Cormorant: 18}"}, w.Lines)
	assert.Empty(t, w.Buy)
	fits := answer(t, ask(t, strings.Replace(twoPrints, "[Kelp, Cormorant]", "{Kelp: 12, Cormorant: 18}", 1)))
	assert.True(t, fits.Fits, "and it is so when it is done")
}

// 20 blocks of seven prints are six 3 and one 2; an eighth makes four 3 and four
// 2 of it. Published question: Scrappy Piece, "It's a numbers game". Whatever the
// caps, the sum stays.
func TestNoBlockIsLostWhenTheSplitChanges(t *testing.T) {
	seven, ok := shareOut(20, []int{3, 3, 3, 3, 3, 3, 2}, []int{9, 9, 9, 9, 9, 9, 9})
	assert.True(t, ok)
	assert.Equal(t, []int{3, 3, 3, 3, 3, 3, 2}, seven)
	rapid.Check(t, func(t *rapid.T) {
		blocks := rapid.IntRange(1, 60).Draw(t, "blocks")
		n := rapid.IntRange(1, 8).Draw(t, "prints")
		now, caps, most := make([]int, n), make([]int, n), 0
		for i := range blocks {
			now[i%n]++
		}
		for i := range caps {
			caps[i] = rapid.IntRange(0, 20).Draw(t, "cap")
			most += caps[i]
		}
		shares, ok := shareOut(blocks, now, caps)
		assert.Equal(t, most >= blocks, ok)
		sum := 0
		for i, s := range shares {
			assert.LessOrEqual(t, s, caps[i])
			sum += s
		}
		if ok {
			assert.Equal(t, blocks, sum)
		}
	})
}

const fourColours = `
job: gaps
fabrics:
  Teal: {form: fat quarter, size: 18 x 22, on-hand: %d}
  Navy: {form: fat quarter, size: 18 x 22, on-hand: 2}
  Rose: {form: fat quarter, size: 18 x 22, on-hand: 2}
  Ochre: {form: fat quarter, size: 18 x 22, on-hand: 2}
  Foam: {form: yardage, width: 42}
block: {make: nine-patch recut, square: 5, side: Foam, centre: Foam}
colourways:
  teal: {blocks: %d, corner: Teal}
  navy: {blocks: %d, corner: Navy}
  rose: {blocks: 6, corner: Rose}
  ochre: {blocks: 6, corner: Ochre}
layout: {across: 4, down: 6, order: rows}
`

// 24 blocks, four colourways of 6, 4 corner squares a block, 12 squares a fat
// quarter: teal ends after 3. Three more of navy make 3, 9, 6 and 6, which take 3
// fat quarters of navy, not 2. Published question: Fluffyland, "A slight dilemma";
// worked by hand.
func TestAnotherColourwayTakesOver(t *testing.T) {
	e := answer(t, ask(t, fmt.Sprintf(fourColours, 1, 6, 6)))
	assert.Equal(t, []EnoughColourway{{"teal", 6, 3}, {"navy", 6, 6}, {"rose", 6, 6}, {"ochre", 6, 6}}, e.Colourways)
	ways := e.ways(WayColourway)
	require.Len(t, ways, 3)
	w := ways[0]
	assert.Equal(t, []any{"teal", "navy", 3, 9}, []any{w.Colourway, w.By, w.Makes, w.Instead})
	assert.Equal(t, []string{"teal:", "  blocks: 3", "navy:", "  blocks: 9"}, w.Lines)
	require.Len(t, w.Buy, 1)
	assert.Equal(t, []any{"Navy", Amount(3), Amount(1)}, []any{w.Buy[0].Fabric.Name, w.Buy[0].Need, w.Buy[0].Amount})
	changed := answer(t, ask(t, fmt.Sprintf(fourColours, 1, 3, 9)))
	assert.Equal(t, []EnoughColourway{{"teal", 3, 3}, {"navy", 9, 6}, {"rose", 6, 6}, {"ochre", 6, 6}}, changed.Colourways)
}

// Pieces that are cut and that fewer blocks take are over: of 14 squares 3 blocks
// take 12.
func TestCutPiecesOfARemovedBlockAreSpare(t *testing.T) {
	a := ask(t, fmt.Sprintf(fourColours, 0, 6, 6))
	a.Have["Teal"] = Have{}
	a.Begun = true
	a.Left = func(p Plan) Wanted {
		w := p.Wanted()
		for _, o := range p.Operations {
			if o.Key == keyCut && o.Lot.Name == "Teal" {
				w.Done(o, 14)
			}
		}
		return w
	}
	e := answer(t, a)
	assert.Equal(t, EnoughColourway{"teal", 6, 3}, e.Colourways[0])
	require.NotEmpty(t, e.ways(WayColourway))
	assert.Equal(t, []EnoughSpare{{"Teal", []PieceCount{{Size: squareOf(inches(t, "5")), Count: 2, For: forBlocks}}}}, e.ways(WayColourway)[0].Spare)
	assert.Empty(t, e.ways(WaySmaller), "its size is settled")
}

// Hand-worked: 30 squares of 5 in of 2 fat quarters (24): of 4 1/2 in each gives
// 16, of 4 3/4 in 12 still.
func TestASmallerSquareMakesItFit(t *testing.T) {
	e := answer(t, ask(t, `
job: small
fabrics: {Kelp: {form: fat quarter, size: 18 x 22, on-hand: 2}}
block: {make: plain square, square: 5, print: Kelp}
colourways: {tide: {blocks: 30}}
layout: {across: 6, down: 5, order: rows}
`))
	ways := e.ways(WaySmaller)
	require.Len(t, ways, 1)
	assert.Equal(t, inches(t, "4 1/2"), ways[0].Square)
	assert.Equal(t, []string{"square: 4 1/2"}, ways[0].Lines)
	assert.Equal(t, inchSize(t, "24", "20"), ways[0].Quilt)
}

// A greater length, or one more sheet, never makes fewer blocks of any colourway.
func TestMoreClothNeverMakesFewerBlocks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		file := fmt.Sprintf(`
job: more
fabrics:
  Kelp: {form: fat quarter, size: 18 x 21}
  Foam: {form: yardage, width: 40}
block: {make: four-patch, square: %s, ground: Foam}
colourways:
  tide: {print: Kelp, blocks: 4}
  dune: {print: Foam, blocks: 3}
layout: {across: 7, down: 1, order: rows}
borders: [{width: 2, fabric: Foam}]
`, rapid.SampledFrom([]string{"3", "5", "6 1/2", "7 3/4"}).Draw(t, "square"))
		a := ask(t, file)
		length, sheets := rapid.IntRange(0, 60).Draw(t, "length"), rapid.IntRange(0, 3).Draw(t, "sheets")
		more, moreSheets := rapid.IntRange(0, 40).Draw(t, "more"), rapid.IntRange(0, 2).Draw(t, "more sheets")
		few := reachOf(t, a, length, sheets)
		many := reachOf(t, a, length+more, sheets+moreSheets)
		for i := range few.Colourways {
			assert.LessOrEqual(t, few.Colourways[i].Makes, many.Colourways[i].Makes)
		}
		if few.Fits {
			assert.True(t, many.Fits)
		}
	})
}

func reachOf(t require.TestingT, a EnoughAsk, length, sheets int) Enough {
	a.Have = map[string]Have{
		"Foam": {Lengths: []measure.Length{measure.Inch.Times(length)}},
		"Kelp": {Sheets: []HaveSheets{{measure.Size{Width: 18 * measure.Inch, Height: 21 * measure.Inch}, sheets}}},
	}
	e, err := a.reach(a.Plan)
	require.NoError(t, err)
	return e
}

// A name that could be read as something else is quoted: the lines are pasted.
func TestNamesInTheLinesAreReadBack(t *testing.T) {
	for name, want := range map[string]string{"Sea holly": "Sea holly", "a:b": `"a:b"`, "藍": "藍", `say "x"`: `"say \"x\""`, "12": `"12"`, "{x}": `"{x}"`} {
		assert.Equal(t, want, yamlName(name))
	}
}

// Hand-worked: 6 blocks of four half-square triangles of 5 in, two at a time, take
// 12 squares of a fabric, 5 + √2/4 = 5.354, 5 3/8 in: 9 come from 18 × 21. Of units
// of 4 3/4 in they are 5 1/8, and 12 come; a block finishes 2 × 4 1/4.
func TestASmallerUnitMakesItFit(t *testing.T) {
	e := answer(t, ask(t, `
job: small
fabrics:
  Kelp: {form: fat quarter, size: 18 x 21, on-hand: 1}
  Foam: {form: yardage, width: 42}
block: {make: pinwheel, unit: 5, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 6}}
layout: {across: 3, down: 2, order: rows}
`))
	ways := e.ways(WaySmaller)
	require.Len(t, ways, 1)
	assert.Equal(t, []string{"unit: 4 3/4"}, ways[0].Lines)
	assert.Equal(t, inchSize(t, "25 1/2", "17"), ways[0].Quilt)
}
