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

// Published tests of a seam, each for a seam of 1/4 in.
func TestAStandardFirstPieceMeasuresWhatIsPublished(t *testing.T) {
	for _, c := range []struct{ test, want string }{
		{"three-strips", "3 1/2"}, // Quiltcentric, Testing your scant quarter inch seam: 3 strips 1 1/2 x 5
		{"seam-test", "3 1/2"},    // the same, as the route calls it
		{"four-strips", "4 1/2"},  // Quilting Board, post 5145607: 4 strips 1 1/2 x 5
		{"two-pieces", "4 1/2"},   // avalanden, Day 2 sewing strips: 2 at 2 1/2
	} {
		piece, err := PieceAt(planOf(t, recutFour), c.test, "")
		require.NoError(t, err)
		assert.Equal(t, inches(t, c.want), piece.Size.Width, c.test)
	}
}

// In centimetres the strips are our own: 3 x 4 - 4 x 0.75 = 9, hand-worked.
func TestTheTestInCentimetresIsExact(t *testing.T) {
	seam := measure.Millimetre * 15 / 2
	wide := map[string]string{}
	for _, test := range SeamTests(measure.Centimetres) {
		wide[test.Key()] = test.Wide(seam).String()
		assert.Equal(t, seam, test.Seam(test.Wide(seam)))
	}
	assert.Equal(t, map[string]string{"three-strips": "9 cm", "four-strips": "11.5 cm", "two-pieces": "10.5 cm"}, wide)
}

// The seam solved from three strips is (4.5 - width)/4: the published test turned
// round.
func TestTheSeamOfThreeStripsIsAQuarterOfWhatIsMissing(t *testing.T) {
	test := SeamTests(measure.Inches)[0]
	assert.Equal(t, inches(t, "9/32"), test.Seam(inches(t, "3 3/8")), "hand-worked: (4 1/2 - 3 3/8) / 4")
	assert.Equal(t, inches(t, "1/4"), test.Seam(inches(t, "3 1/2")))
}

// Four nine-patches of 2 in squares joined 2 x 2, and a 2 in strip on every
// side: a published block that measured 12 1/8 where it should be 12 1/2
// (nycmetromodquilters.blogspot.com, Feb 2014).
const shrunken = `
job: shrunken
fabrics: {Kelp: {form: yardage, width: 42}}
block:
  print: Kelp
  steps:
    square: {cut: print, size: 2}
    nine: {sew: [[square, square, square], [square, square, square], [square, square, square]]}
    four: {sew: [[nine, nine], [nine, nine]]}
    side: {cut: print, size: 2 x 9 1/2}
    end: {cut: print, size: 12 1/2 x 2}
    sides: {sew: [[side, four, side]]}
    framed: {sew: [[end], [sides], [end]]}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
`

// read is what a measure says of a job's piece, with a tolerance of 1/8 in.
func read(t *testing.T, plan Plan, step, width string) FirstPiece {
	t.Helper()
	piece, err := PieceAt(plan, step, "")
	require.NoError(t, err)
	f, err := ReadPiece(plan, piece, measure.Size{Width: inches(t, width)}, DefaultTolerance(measure.Inches))
	require.NoError(t, err)
	return f
}

func TestABlockTooSmallAfterManySeamsTellsItsSeam(t *testing.T) {
	for _, step := range []string{"sides", "framed", "square-up"} {
		f := read(t, planOf(t, shrunken), step, "12 1/8")
		way := f.Ways[0]
		assert.Equal(t, 7.0, way.Seams, "2 in a nine-patch, twice, 1 between them, 2 at the strips")
		assert.Equal(t, inches(t, "12 1/2"), way.Should, "published, and exact")
		assert.Equal(t, measure.Inch.Scale(3, 56, measure.Nearest), way.Each, "3/56 in a seam")
		assert.InDelta(t, float64(measure.Inch.Scale(31, 112, measure.Nearest)), float64(f.Seam), 1, "31/112 in, about 0.277")
		assert.False(t, f.Within())
	}
}

// Published growth of an error (quilted-connections.com, homeschoolquilting.com,
// Patchwork Times): so many seams, so much off at each, so much in all.
func TestAnErrorGrowsWithTheSeams(t *testing.T) {
	strips := func(n int) string {
		return strings.NewReplacer("N", strings.TrimSuffix(strings.Repeat("strip, ", n), ", ")).Replace(`
job: strips
fabrics: {Kelp: {form: yardage, width: 42}}
block:
  print: Kelp
  steps: {strip: {cut: print, size: 2 x 8}, rail: {sew: [[N]]}}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
`)
	}
	for _, c := range []struct {
		seams     int
		each, all string
	}{
		{4, "1/8", "1/2"},   // 1/8 a seam over 4 seams is 1/2
		{16, "1/32", "1/2"}, // 1/32 a seam over 16 seams is 1/2
		{2, "1/8", "1/4"},   // 1/16 on each of 4 allowances, 2 seams, is 1/4
	} {
		plan := planOf(t, strips(c.seams+1))
		should := plan.Colourways[0].Raw.Width
		f := read(t, plan, "rail", (should - inches(t, c.all)).String())
		assert.Equal(t, float64(c.seams), f.Ways[0].Seams)
		assert.Equal(t, inches(t, c.each), f.Ways[0].Each)
	}
}

// Squares cut 9.5 cm for a nine-patch of 24 cm finished, drawn for 7.5 mm seams
// and sewn with a quarter-inch foot: 6.9 mm too big, eight across 55.2 mm
// (manualidades.facilisimo.com; hand-worked).
func TestAQuarterInchFootOnAMetricPatternIsTold(t *testing.T) {
	plan := planOf(t, `
job: metric
units: cm
fabrics: {Sky: {form: yardage, width: 110}}
block: {make: nine-patch, square: 9.5, corner: Sky, side: Sky, centre: Sky}
colourways: {creek: {blocks: 8}}
layout: {across: 8, down: 1}
`)
	piece, err := PieceAt(plan, "nine-patch", "")
	require.NoError(t, err)
	require.Equal(t, "25.5 cm", piece.Size.Width.String(), "24 cm finished")
	raw := 3*95*measure.Millimetre - 4*measure.Inch/4
	f, err := ReadPiece(plan, piece, measure.Size{Width: raw}, DefaultTolerance(measure.Centimetres))
	require.NoError(t, err)
	assert.Equal(t, measure.Inch/4, f.Seam)
	assert.Equal(t, "24.69 cm", f.Would.Block.Width.String(), "3 x (95 - 12.7)")
	assert.Equal(t, "5.52 cm", (f.Would.Quilt.Width - f.Planned.Quilt.Width).String())
	assert.Contains(t, f.Remedies(plan.Job)[0], "move the guide 1.2 mm away from the needle", "7.5 - 6.35 = 1.15, rounded")
}

// Too wide means too narrow a seam, and the reverse (Sonflower Quilts).
func TestTooWideMeansTooNarrowASeam(t *testing.T) {
	plan := planOf(t, recutFour)
	wide, narrow := read(t, plan, "three-strips", "3 5/8"), read(t, plan, "three-strips", "3 3/8")
	assert.Less(t, wide.Seam, plan.Job.Seam)
	assert.Greater(t, narrow.Seam, plan.Job.Seam)
	assert.Contains(t, wide.Remedies(plan.Job)[0], "move the guide 0.031 in (about 1/32 in) away from the needle")
	assert.Contains(t, narrow.Remedies(plan.Job)[0], "move the guide 0.031 in (about 1/32 in) toward the needle")
	assert.Contains(t, wide.Remedies(plan.Job)[3], "Trim the blocks that are sewn so to 12 1/2 in square")
	assert.Contains(t, narrow.Remedies(plan.Job)[3], "trim all to the smallest, about 12 5/16 in square")
	assert.Empty(t, read(t, plan, "three-strips", "3 1/2").Remedies(plan.Job), "nothing is to be done about a piece that is right")
}

// A recut block crosses half a seam in an outer piece: hand-worked, c - s - d.
func TestTheSeamsOfAPieceAreCountedFromItsRecipe(t *testing.T) {
	for _, c := range []struct {
		job, step    string
		across, down float64
	}{
		{recutFour, "pairs", 1, 0},
		{recutFour, "units", 1, 1},
		{recutFour, "press-units", 1, 1},
		{recutFour, "sew-block-column-2", 1.5, 0.5}, // outer piece and the middle one, whose cuts go by the ruler: 1/2 + 0 + 1
		{recutFour, "press-block-rows", 3, 0.5},
		{recutFour, "join-block-row-2", 3, 1.5},
		{recutFour, "block", 3, 3}, // 2c - 6s
		{recutFour, "measure-top", 15, 7},
		{triangles, "half-squares", 0.71, 0.71}, // a diagonal seam: s x root 2 of each side
		{triangles, "pinwheel", 1, 1},
	} {
		piece, err := PieceAt(planOf(t, c.job), c.step, "")
		require.NoError(t, err, c.step)
		assert.InDelta(t, c.across, piece.SeamsAcross(), 0.005, c.step)
		assert.InDelta(t, c.down, piece.SeamsDown(), 0.005, c.step)
	}
}

const triangles = `
job: triangles
fabrics: {Kelp: {form: yardage, width: 42}, Foam: {form: yardage, width: 42}}
block: {make: pinwheel, unit: 3 1/2, print: Kelp, ground: Foam}
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
`

// 3 7/8 in squares, trimmed to 3 1/2: they come off the machine at 3.521 in
// (docslib.org, Lesson 1: allowing for seam allowances, and exact).
func TestTrianglesAreMeasuredBeforeTheTrim(t *testing.T) {
	plan := planOf(t, triangles)
	piece, err := PieceAt(plan, "half-squares", "")
	require.NoError(t, err)
	assert.Equal(t, "3.5214", piece.Size.Width.Decimal(measure.Inches, 4))
	f := read(t, plan, "half-squares", "3 7/16")
	require.Error(t, f.Problem, "3 7/16 cannot be trimmed to 3 1/2")
	assert.False(t, f.Within())
	assert.Len(t, f.Remedies(plan.Job), 2, "guide and test: nothing that is sewn so can be kept")
}

// A top that is off is judged by itself: its blocks may each be near enough.
func TestATopThatIsOffIsMendedAtTheBorder(t *testing.T) {
	plan := planOf(t, recutFour+"borders: [{width: 3, fabric: Foam}]\n")
	f := read(t, plan, "join-top-rows", "48")
	assert.Equal(t, inches(t, "48 1/2"), f.Ways[0].Should)
	assert.Equal(t, 15.0, f.Ways[0].Seams, "3 in each of 4 blocks, and 3 between them")
	assert.False(t, f.Within(), "1/2 in is off, though a block is off by 1/10 alone")
	assert.Len(t, f.Remedies(plan.Job), 3)
	assert.Contains(t, f.Remedies(plan.Job)[2], "cut the outer border")
	assert.True(t, read(t, plan, "measure-top", "48 3/8").Within())
}

func TestAPieceThatTheRulerMadeHasNoSeam(t *testing.T) {
	f := read(t, planOf(t, recutFour), "print", "6 7/8")
	assert.Zero(t, f.Seam)
	assert.True(t, f.Piece.AsCut)
	assert.Equal(t, []string{"No seam is in this measure: the ruler made it. Cut it again at 7 in, and look how the ruler lay on the cloth."},
		f.Remedies(planOf(t, recutFour).Job))
}

func TestWhatCannotBeMeasuredIsRefusedInWords(t *testing.T) {
	plan := planOf(t, recutFour)
	for step, want := range map[string]string{
		"recut": `the step "recut" leaves pieces of several sizes, which the ruler made`,
		"kit":   `nothing is measured after "kit"`,
	} {
		_, err := PieceAt(plan, step, "")
		assert.EqualError(t, err, want)
	}
	piece, err := PieceAt(plan, "block", "")
	require.NoError(t, err)
	_, err = ReadPiece(plan, piece, measure.Size{Width: inches(t, "5")}, 0)
	assert.EqualError(t, err, `a block should be 12 1/2 in, and no seam makes it 5 in`)
}

// The border that makes up for the seam: the quilt that it would give is the
// one that was planned, to the tick.
func TestTheBorderBringsTheTopBack(t *testing.T) {
	plan := planOf(t, recutFour+"borders: [{width: 2, fabric: Kelp}, {width: 3, fabric: Foam}]\n")
	f := read(t, plan, "block", "12 1/4")
	require.Len(t, f.Borders, 2)
	outer := &plan.Job.Borders[1]
	for i, way := range []struct{ was, want measure.Length }{
		{f.Would.Quilt.Width, f.Planned.Quilt.Width}, {f.Would.Quilt.Height, f.Planned.Quilt.Height},
	} {
		finished := f.Borders[i].Cut - 2*f.Seam
		assert.Equal(t, inches(t, "3 1/2"), f.Borders[i].Planned)
		assert.Equal(t, way.want, way.was+2*(finished-(outer.Width+2*plan.Job.Seam-2*f.Seam)))
	}
}

// Whatever is measured: made with the seam that it implies, the piece measures
// just that.
func TestTheImpliedSeamMakesTheMeasuredPiece(t *testing.T) {
	jobs := []string{recutFour, shrunken, triangles}
	rapid.Check(t, func(rt *rapid.T) {
		plan := planOf(t, rapid.SampledFrom(jobs).Draw(rt, "job"))
		step := rapid.SampledFrom(Measurable(plan)).Draw(rt, "step")
		piece, err := PieceAt(plan, step, "")
		require.NoError(rt, err)
		if piece.Loses.Width == 0 {
			return
		}
		sewn := plan.Job.Seam + measure.Length(rapid.IntRange(1, 12).Draw(rt, "wider"))*measure.Inch/256
		is := piece.Size.Width - (sewn-plan.Job.Seam).Scale(int64(piece.Loses.Width), int64(seamProbe), measure.Nearest)
		f, err := ReadPiece(plan, piece, measure.Size{Width: is}, 0)
		require.NoError(rt, err)
		assert.InDelta(rt, float64(sewn), float64(f.Seam), 2, fmt.Sprintf("%s of %s", step, plan.Job.ID))
		again, err := Make(mustParse(rt, plan), Prior{Amend: Amendments{Seam: f.Seam}})
		if err != nil {
			return // triangles too small to trim
		}
		measured, err := PieceAt(again, step, "")
		require.NoError(rt, err)
		assert.InDelta(rt, float64(is), float64(measured.Size.Width), float64(measure.Millimetre)/100)
	})
}

// mustParse is the job of a plan as its file has it.
func mustParse(t *rapid.T, plan Plan) Job {
	for _, text := range []string{recutFour, shrunken, triangles} {
		if strings.Contains(text, "job: "+plan.Job.ID+"\n") {
			job, err := Parse("job.yaml", []byte(text))
			require.NoError(t, err)
			return job
		}
	}
	t.Fatalf("no job %s", plan.Job.ID)
	return Job{}
}
