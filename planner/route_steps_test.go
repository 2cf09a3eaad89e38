package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// sixBlocks is a job of six blocks that say how they are made.
func sixBlocks(t testing.TB, block, roles string) Plan {
	t.Helper()
	return planOf(t, fmt.Sprintf(`
job: six
fabrics: {Kelp: {width: 40}, Foam: {width: 40}, Reed: {width: 40}}
block: {%s}
colourways: {tide: {blocks: 6, %s}}
layout: {across: 3, down: 2}
`, block, roles))
}

// blockCounts is what is counted of a plan's blocks, key by key in order, and the
// pieces that are cut.
func blockCounts(p Plan) string {
	out := []string{fmt.Sprintf("cut %d", count(p, "cut"))}
	for _, o := range p.Operations {
		if o.Lot.Kind == ColourwayLot && o.Key != keyTest {
			out = append(out, fmt.Sprintf("%s %d", o.Key, o.Count))
		}
	}
	return strings.Join(out, ", ")
}

// Hand-worked for 6 blocks from how each is made. Two squares give 2, 4 or 8
// half-square triangles: 24 for six pinwheels are 12, 6 or 3 pairs.
func TestEveryBuiltInHasTheHandWorkedTotals(t *testing.T) {
	const (
		triangles = "sew-half-squares 12, cut-apart-half-squares 12, press-half-squares 24, trim-half-squares 24"
		fourUp    = "sew-%[1]s-column-2 12, press-%[1]s-rows 12, join-%[1]s-row-2 6, press-%[1]s 6"
		recut     = "recut-upright 12, recut-level 12, turn 6, " +
			"sew-block-column-2 18, sew-block-column-3 18, press-block-rows 18, join-block-row-2 6, join-block-row-3 6, press-block 6"
		nine = "sew-nine-patch-column-2 18, sew-nine-patch-column-3 18, press-nine-patch-rows 18, join-nine-patch-row-2 6, join-nine-patch-row-3 6, press-nine-patch 6"
	)
	for _, c := range []struct{ block, roles, want string }{
		{"make: plain square, square: 5", "print: Kelp", "cut 6, kit 6, square-up 6"},
		{"make: four-patch, square: 5", "print: Kelp, ground: Foam",
			"cut 24, kit 6, sew-pairs 12, press-pairs 12, sew-units 6, press-units 6, square-up 6"},
		{"make: nine-patch, square: 5", "corner: Kelp, side: Foam, centre: Reed", "cut 54, kit 6, " + nine + ", square-up 6"},
		{"make: rail, strip: 2 1/2, length: 6 1/2", "strips: [Kelp, Foam, Reed]",
			"cut 18, kit 6, sew-rail-column-2 6, sew-rail-column-3 6, press-rail-rows 6, square-up 6"},
		{"make: rail, strip: 2, length: 3 1/2", "strips: [Kelp, Foam]", "cut 12, kit 6, sew-rail 6, press-rail 6, square-up 6"},
		{"make: half-square triangle, unit: 4 1/2", "print: Kelp, ground: Foam",
			"cut 6, sew-half-squares 3, cut-apart-half-squares 3, press-half-squares 6, trim-half-squares 6, kit 6, square-up 6"},
		{"make: hourglass, unit: 4 1/2", "print: Kelp, ground: Foam",
			"cut 6, sew-quarter-squares 3, cut-apart-quarter-squares 3, press-quarter-squares 6, sew-quarter-squares-again 3, " +
				"cut-apart-quarter-squares-again 3, press-quarter-squares-again 6, trim-quarter-squares 6, kit 6, square-up 6"},
		{"make: pinwheel, unit: 4 1/2", "print: Kelp, ground: Foam", "cut 24, kit 6, " + triangles + ", " + fmt.Sprintf(fourUp, "pinwheel") + ", square-up 6"},
		{"make: pinwheel, unit: 4 1/2, method: four", "print: Kelp, ground: Foam",
			"cut 12, kit 6, sew-half-squares 6, cut-apart-half-squares 6, press-half-squares 24, trim-half-squares 24, " + fmt.Sprintf(fourUp, "pinwheel") + ", square-up 6"},
		{"make: pinwheel, unit: 4 1/2, method: eight", "print: Kelp, ground: Foam",
			"cut 6, sew-half-squares 3, cut-apart-half-squares 3, press-half-squares 24, trim-half-squares 24, kit 6, " + fmt.Sprintf(fourUp, "pinwheel") + ", square-up 6"},
		{"make: four-patch recut, square: 5, offset: 1", "print: Kelp, ground: Foam",
			"cut 24, kit 6, sew-pairs 12, press-pairs 12, sew-units 6, press-units 6, " + recut + ", square-up 6"},
		{"make: nine-patch recut, square: 5", "corner: Kelp, side: Foam, centre: Reed",
			"cut 54, kit 6, " + nine + ", recut-upright 6, recut-level 6, turn 6, " + fmt.Sprintf(fourUp, "block") + ", square-up 6"},
		{"make: pinwheel recut, unit: 4 1/2", "print: Kelp, ground: Foam",
			"cut 24, kit 6, " + triangles + ", " + fmt.Sprintf(fourUp, "pinwheel") + ", " + recut + ", square-up 6"},
		{"make: hourglass recut, unit: 4 1/2", "print: Kelp, ground: Foam",
			"cut 24, kit 6, " + triangles + ", " + fmt.Sprintf(fourUp, "hourglass") + ", " + recut + ", square-up 6"},
	} {
		assert.Equal(t, c.want, blockCounts(sixBlocks(t, c.block, c.roles)), c.block)
	}
}

// stripSets is nine-patches from strip sets: 40 in strips of 2 1/2 in give 16
// segments a set. Six blocks take 12 of the one kind and 6 of the other.
const stripSets = `steps: {
  dark: {cut: red, size: 40 x 2 1/2}, light: {cut: white, size: 40 x 2 1/2},
  set: {sew: [[dark], [light], [dark]]}, other: {sew: [[light], [dark], [light]]},
  slices: {subcut: set, every: 2 1/2}, pale: {subcut: other, every: 2 1/2},
  nine: {sew: [[slices@90], [pale@90], [slices@90]]}}`

func TestStripSetsAreMadeForTheLot(t *testing.T) {
	p := sixBlocks(t, stripSets, "red: Kelp, white: Foam")
	assert.Equal(t, "cut 6, join-set-row-2 1, join-set-row-3 1, press-set 1, join-other-row-2 1, join-other-row-3 1, press-other 1, "+
		"subcut-slices 12, subcut-pale 6, kit 6, join-nine-row-2 6, join-nine-row-3 6, press-nine 6, square-up 6", blockCounts(p))
	assert.Equal(t, inchSize(t, "6", "6"), p.Colourways[0].Finished)
	for _, o := range p.Operations {
		switch o.Key {
		case "join-set-row-2", "press-set", "subcut-slices":
			assert.Zero(t, o.PerBlock, "%s is made for the lot", o.Key)
		case "kit", "join-nine-row-2":
			assert.Equal(t, 1, o.PerBlock)
		}
	}
	assert.Equal(t, inches(t, "80"), seamOf(p, "join-set-row-2")+seamOf(p, "join-set-row-3"), "two seams of 40 in")
	assert.Equal(t, inches(t, "39"), seamOf(p, "join-nine-row-2"), "6 of 6 1/2 in")
}

func seamOf(p Plan, key string) measure.Length {
	var all measure.Length
	for _, o := range p.Operations {
		if o.Key == key {
			all += o.SeamLength
		}
	}
	return all
}

// A set of Kelp and Foam gives no segments to a block of Reed: half the blocks
// each, so two sets of each kind, and as many strips of each print as one fabric
// alone would take: 2 + 1 each, Foam 2 x (1 + 2).
func TestStripSetsAreCountedByTheFabricsInThem(t *testing.T) {
	p := sixBlocks(t, stripSets, "red: [Kelp, Reed], white: Foam")
	assert.Contains(t, blockCounts(p), "cut 12, join-set-row-2 2, join-set-row-3 2, press-set 2")
	assert.Equal(t, 12, count(p, "subcut-slices"), "what is needed, not what there is room for")
	for i, want := range []int{3, 6, 3} {
		assert.Equal(t, want, p.Fabrics[i].Pieces[0].Count, p.Fabrics[i].Fabric.Name)
	}
	assert.Contains(t, doingOf(p, "join-set-row-2"), "For the whole colourway: 2 sets (1 set of Kelp and Foam; 1 set of Reed and Foam).")
	assert.Contains(t, doingOf(p, "subcut-slices"), "room for 32 segments; 12 are needed, 20 to spare.")
}

func doingOf(p Plan, key string) string {
	for _, o := range p.Operations {
		if o.Key == key {
			return o.Doing
		}
	}
	return ""
}

// Refs of the pool, hand-worked: a set takes 2 dark and 1 light strip, the other
// 1 and 2; 16 segments come of one set; a block takes 2 and 1.
func TestWhatIsMadeForTheLotIsTakenLikeCutPieces(t *testing.T) {
	p := sixBlocks(t, stripSets, "red: Kelp, white: Foam")
	refs := map[string][]Ref{}
	for _, o := range p.Operations {
		refs[o.Key] = o.After
	}
	tide := Lot{ColourwayLot, "tide"}
	kelp, foam := Lot{FabricLot, "Kelp"}, Lot{FabricLot, "Foam"}
	assert.Equal(t, []Ref{
		{Key: "cut", Lot: kelp, Takes: []Take{{Count: 2}}}, {Key: "cut", Lot: foam, Takes: []Take{{Count: 1}}}, {Key: "seam-test", Lot: firstQuilt},
	}, refs["join-set-row-2"])
	assert.Equal(t, []Ref{{Key: "join-set-row-2", Lot: tide}}, refs["join-set-row-3"])
	assert.Equal(t, []Ref{{Key: "press-set", Lot: tide, Takes: []Take{{Count: 1}}, Makes: 16}}, refs["subcut-slices"])
	require.Len(t, refs["kit"], 2)
	assert.Equal(t, "subcut-slices", refs["kit"][0].Key)
	assert.Len(t, refs["kit"][0].Takes, 6)
	assert.Equal(t, Take{Block: "tide-01", Count: 2}, refs["kit"][0].Takes[0])
	assert.Equal(t, Take{Block: "tide-06", Count: 1}, refs["kit"][1].Takes[5])
	assert.Equal(t, []Ref{{Key: "kit", Lot: tide}}, refs["join-nine-row-2"][:1])
}

// 20 triangles for five blocks are three pairs of squares, 24 triangles: 4 are
// left over and neither pressed nor trimmed.
func TestTrianglesLeftOverAreNotCounted(t *testing.T) {
	p := planOf(t, `
job: five
fabrics: {Kelp: {width: 40}, Foam: {width: 40}}
block: {make: pinwheel, unit: 4 1/2, method: eight, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 5}}
layout: {across: 5, down: 1}
`)
	assert.Contains(t, blockCounts(p), "cut 6, sew-half-squares 3, cut-apart-half-squares 3, press-half-squares 20, trim-half-squares 20, kit 5")
	assert.Contains(t, doingOf(p, "sew-half-squares"), "3 pairs, room for 24 units; 20 are needed, 4 to spare.")
}

// Sizes are hand-worked from S − s√2, S/2 − s√2 and (S − 2s)/√2 with s 1/4: units
// of 4 1/2 from 4 7/8, 9 3/4 and 6 7/8; an hourglass from 5 1/4, S − 2s√2. A seam
// beside the diagonal is S√2 − 2s, along an edge S.
func TestInstructionsForTrianglesHaveTheRealMeasures(t *testing.T) {
	for _, c := range []struct {
		block, sewn, pressed, trimmed string
		seam                          float64 // of one pair, in
		pairs                         float64
	}{
		{"make: pinwheel, unit: 4 1/2", "4 7/8 in each, right sides together, a diagonal drawn on the back of the lighter one. Sew 1/4 in either side of the line",
			"It measures 4.521 in before it is trimmed to 4 1/2 in.", "0.021 in comes off", 12.788, 12},
		{"make: pinwheel, unit: 4 1/2, method: eight", "9 3/4 in each, right sides together, both diagonals drawn on the back of the lighter one. Sew 1/4 in either side of both lines",
			"It measures 4.521 in before it is trimmed to 4 1/2 in.", "0.021 in comes off", 53.155, 3},
		{"make: pinwheel, unit: 4 1/2, method: four", "6 7/8 in each, right sides together, and sew all round, 1/4 in from the edge",
			"It measures 4.508 in before it is trimmed to 4 1/2 in.", "0.008 in comes off", 27.5, 6},
	} {
		p := sixBlocks(t, c.block, "print: Kelp, ground: Foam")
		assert.Contains(t, doingOf(p, "sew-half-squares"), c.sewn)
		assert.Contains(t, doingOf(p, "press-half-squares"), c.pressed)
		assert.Contains(t, doingOf(p, "trim-half-squares"), c.trimmed)
		assert.InDelta(t, c.seam*c.pairs, seamOf(p, "sew-half-squares").In(measure.Inches), 0.01, c.block)
	}
	p := sixBlocks(t, "make: hourglass, unit: 4 1/2", "print: Kelp, ground: Foam")
	assert.Contains(t, doingOf(p, "sew-quarter-squares"), "5 1/4 in each")
	assert.Contains(t, doingOf(p, "press-quarter-squares-again"), "It measures 4.543 in before it is trimmed to 4 1/2 in.")
	assert.Contains(t, doingOf(p, "trim-quarter-squares"), "0.043 in comes off")
}

// Squares that come cut to the size are sewn as they come, once they are looked
// over; a block of triangles is sewn, and so it is tested.
func TestTrianglesFromSquaresThatComeCut(t *testing.T) {
	p := planOf(t, `
job: pack
fabrics: {Pack: {form: pre-cut squares, size: 5, on-hand: 42}, Foam: {width: 40}}
block: {steps: {block: {half-square: [print, ground], size: 5, trim: 4 1/2}}, print: Pack, ground: Foam}
colourways: {tide: {blocks: 6}}
layout: {across: 3, down: 2}
`)
	assert.Equal(t, 3, count(p, "cut"), "the ground's squares")
	assert.Equal(t, 3, p.Fabrics[0].Sheets)
	assert.Equal(t, 1, count(p, "test"))
	for _, o := range p.Operations {
		if o.Key == "sew-block" {
			assert.Equal(t, Ref{Key: "prepare", Lot: Lot{FabricLot, "Pack"}}, o.After[0])
			assert.Equal(t, Ref{Key: "cut", Lot: Lot{FabricLot, "Foam"}, Takes: []Take{{Count: 3}}}, o.After[1])
		}
	}
}

// Two colourways that are made differently have one route: each key has one
// number, and each lot its own rows.
func TestBlocksMadeDifferentlyShareOneRoute(t *testing.T) {
	p := planOf(t, `
job: mixed
fabrics: {Kelp: {width: 40}, Foam: {width: 40}}
block: {print: Kelp, ground: Foam}
colourways:
  tide: {blocks: 2, make: pinwheel, unit: 4 1/2, method: eight}
  dune: {blocks: 2, make: pinwheel, unit: 4 1/2}
  gull: {blocks: 2, make: four-patch, square: 4 1/2}
layout: {across: 3, down: 2}
`)
	numbers := map[string]int{}
	for _, o := range p.Operations {
		if n, ok := numbers[o.Key]; ok {
			assert.Equal(t, n, o.Number, o.Key)
		}
		numbers[o.Key] = o.Number
	}
	assert.Less(t, numbers["kit"], numbers["sew-pinwheel-column-2"])
	assert.Equal(t, 1+4, count(p, "sew-half-squares"), "one pair makes 8, and two pairs a block make 2 each")
	assert.Equal(t, 3, count(p, "test"))
}

// Hand-worked: a nine-patch of 4 x 6 pieces is 11 x 17 raw, recut 10 1/2 x 16 1/2;
// half turns fit and a quarter turn does not, its piece being 5 1/2 x 8 1/2.
func TestAQuarterTurnThatDoesNotFitIsRefused(t *testing.T) {
	text := `job: oblong
fabrics: {Kelp: {}, Foam: {}}
block: {make: nine-patch recut, square: 4 x 6, corner: Kelp, side: Foam, centre: Kelp}
colourways: {tide: {blocks: 1, turn: [[0, 180], [180, 0]]}}
layout: {across: 1, down: 1}
`
	assert.Equal(t, inchSize(t, "10 1/2", "16 1/2"), planOf(t, text).Colourways[0].Raw)
	job, err := Parse("job.yaml", []byte(strings.Replace(text, "[[0, 180]", "[[0, 90]", 1)))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	assert.EqualError(t, err, "job.yaml:4:38: tide: a quarter turn of piece 2 in row 1 does not fit its place: 8 1/2 in against 5 1/2 in; "+
		"give it no turn or half a turn (0 or 180), or cut square pieces")
}
