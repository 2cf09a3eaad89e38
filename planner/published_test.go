package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// ownSteps is a job of like blocks in one row, made by steps.
func ownSteps(t *testing.T, blocks, steps, roles string) Plan {
	t.Helper()
	return planOf(t, `
job: published
fabrics: {Kelp: {width: 42}, Foam: {width: 42}, Reed: {width: 42}}
block:
  steps:
`+steps+`
colourways: {tide: {blocks: `+blocks+`, `+roles+`}}
layout: {across: `+blocks+`, down: 1}
`)
}

// rawSizes is the raw size after each step.
func rawSizes(p Plan) map[string]string {
	sizes := map[string]string{}
	for _, s := range p.Colourways[0].Build.Steps {
		sizes[s.Step.Name] = s.Unit.Size.Show(p.Job.Units)
	}
	return sizes
}

// shawkl.com 2013/03: 10 in squares cut 3 1/2 and 6 1/2, sewn 9 1/2 x
// 10, cut at 5, sewn again 9 1/2 square, 9 finished. quilton.blogspot.com 2012/05
// begins with 10 1/2 for the same pieces, which exact arithmetic refutes.
func TestASquareCutAcrossTwiceHasThePublishedSizes(t *testing.T) {
	steps := `
    narrow: {cut: print, size: 3 1/2 x 10}
    wide: {cut: ground, size: 6 1/2 x 10}
    slice: {sew: [[narrow, wide]]}
    recut: {recut: slice, level: [top 5]}
    turn: {turn: recut, by: [[0], [180]]}
    block: {sew: turn}`
	p := ownSteps(t, "1", steps, "print: Kelp, ground: Foam")
	assert.Equal(t, "9 1/2 × 10 in", rawSizes(p)["slice"])
	assert.Equal(t, inchSize(t, "9 1/2", "9 1/2"), p.Colourways[0].Raw)
	assert.Equal(t, inchSize(t, "9", "9"), p.Colourways[0].Finished)
	wrong := ownSteps(t, "1", strings.ReplaceAll(steps, "x 10", "x 10 1/2"), "print: Kelp, ground: Foam")
	assert.NotEqual(t, p.Colourways[0].Raw, wrong.Colourways[0].Raw)
}

// exuberantcolor.blogspot.com 2016/09: a centre of 6 1/2 with strips of
// 1 1/2 is 8 1/2, with strips of 2 1/2 then 12 1/2. Derived: quarters of 6 1/4, the
// block 12 raw.
func TestFramesRoundACentreHaveThePublishedSizes(t *testing.T) {
	p := ownSteps(t, "1", `
    centre: {cut: centre, size: 6 1/2}
    side-1: {cut: inner, size: 1 1/2 x 6 1/2}
    row-1: {sew: [[side-1, centre, side-1]]}
    end-1: {cut: inner, size: 8 1/2 x 1 1/2}
    box-1: {sew: [[end-1], [row-1], [end-1]]}
    side-2: {cut: outer, size: 2 1/2 x 8 1/2}
    row-2: {sew: [[side-2, box-1, side-2]]}
    end-2: {cut: outer, size: 12 1/2 x 2 1/2}
    box-2: {sew: [[end-2], [row-2], [end-2]]}
    recut: {recut: box-2, upright: halves, level: halves}
    turn: {turn: recut, by: [[0, 90], [270, 180]]}
    block: {sew: turn}`, "centre: Kelp, inner: Foam, outer: Reed")
	sizes := rawSizes(p)
	assert.Equal(t, "8 1/2 × 8 1/2 in", sizes["box-1"])
	assert.Equal(t, "12 1/2 × 12 1/2 in", sizes["box-2"])
	assert.Equal(t, inchSize(t, "6 1/4", "6 1/4"), p.Colourways[0].Build.Steps[9].Pieces[0][0].Size)
	assert.Equal(t, inchSize(t, "12", "12"), p.Colourways[0].Raw)
}

// warpedspinster.blogspot.com 2016/10: 2 1/2 in segments, 16 from a set across the
// fabric; 3 sets, 48 segments, 24 four-patches of 4 1/2 in raw.
func TestStripSetsHaveThePublishedCounts(t *testing.T) {
	p := ownSteps(t, "24", `
    dark: {cut: print, size: 42 x 2 1/2}
    light: {cut: ground, size: 42 x 2 1/2}
    set: {sew: [[dark], [light]]}
    segments: {subcut: set, every: 2 1/2}
    block: {sew: [[segments, segments@180]]}`, "print: Kelp, ground: Foam")
	assert.Equal(t, 3, count(p, "sew-set"))
	assert.Equal(t, 48, count(p, "subcut-segments"))
	assert.Equal(t, inchSize(t, "4 1/2", "4 1/2"), p.Colourways[0].Raw)
	assert.Equal(t, 3, p.Fabrics[0].Pieces[0].Count)
}

// worldofneedlepoint.com, strip-pieced four-patches: strips of 1 1/2, 2, 2 1/2, 3 1/2
// and 6 1/2 give 2 1/2, 3 1/2, 4 1/2, 6 1/2 and 12 1/2 raw.
func TestStripWidthsGiveThePublishedFourPatches(t *testing.T) {
	for strip, want := range map[string]string{"1 1/2": "2 1/2", "2": "3 1/2", "2 1/2": "4 1/2", "3 1/2": "6 1/2", "6 1/2": "12 1/2"} {
		p := ownSteps(t, "1", strings.ReplaceAll(`
    dark: {cut: print, size: 40 x WIDTH}
    light: {cut: ground, size: 40 x WIDTH}
    set: {sew: [[dark], [light]]}
    segments: {subcut: set, every: WIDTH}
    block: {sew: [[segments, segments@180]]}`, "WIDTH", strip), "print: Kelp, ground: Foam")
		assert.Equal(t, inchSize(t, want, want), p.Colourways[0].Raw, strip)
	}
}

// Squares that published patterns cut for triangle units, held against the exact
// forms: units trimmed from them have room, and the next eighth below has none.
// Published: docslib.org lesson 1 (3 7/8 and 5 7/8 for 3 and 5 finished);
// sewmesomethingcourses.com (5 3/4, trimmed to 2 1/2, eight at a time);
// theashleytomlinson.com (5 1/2 for 3 1/2, four at a time).
func TestTrianglesComeFromThePublishedSquares(t *testing.T) {
	for _, c := range []struct{ step, square string }{
		{"{half-square: [print, ground], trim: 3 1/2}", "3 7/8"},
		{"{half-square: [print, ground], trim: 5 1/2}", "5 7/8"},
		{"{half-square: [print, ground], at-a-time: 8, trim: 2 1/2}", "5 3/4"},
		{"{half-square: [print, ground], at-a-time: 4, trim: 3 1/2}", "5 1/2"},
		{"{quarter-square: [print, ground], trim: 4 1/2}", "5 1/4"},
	} {
		p := ownSteps(t, "1", "    block: "+c.step, "print: Kelp, ground: Foam")
		assert.Equal(t, inches(t, c.square), p.Colourways[0].Build.Steps[0].Square, c.step)
	}
	// The rule "unit / 0.64" cuts too small below 3.37: 3.906 for a unit of 2 1/2
	// gives 2.409, and 4 1/8 is the least eighth that has room.
	p := ownSteps(t, "1", "    block: {half-square: [print, ground], at-a-time: 4, trim: 2 1/2}", "print: Kelp, ground: Foam")
	assert.Equal(t, inches(t, "4 1/8"), p.Colourways[0].Build.Steps[0].Square)
	faults := stepFaults(t, "{cut: print, size: 7}", "{half-square: [print, ground], at-a-time: 4, size: 3.906, trim: 2 1/2}")
	assert.Contains(t, faults[0], "too small to trim to 2 1/2 in; cut squares of 4 1/8 in")
}

// Hand-worked: a rail of three 1 1/4 in strips is 2 3/4 wide, so cut at 4 it cannot
// be turned in every other place; for 4 raw the strips are (4 + 1)/3.
func TestARailThatIsNoSquareIsNotTurned(t *testing.T) {
	rail := `job: rail
fabrics: {Kelp: {}, Foam: {}}
block: {make: rail, strip: 1 1/4, length: 4, strips: [Kelp, Foam, Kelp]}
colourways: {tide: {blocks: 2}}
layout: {across: 2, down: 1, turn: [[0, 90]]}
`
	job, err := Parse("job.yaml", []byte(rail))
	require.NoError(t, err)
	_, err = Make(job, Prior{})
	assert.ErrorContains(t, err, "job.yaml:5:36: block tide-02 is 2 3/4 × 4 in raw and cannot be turned by 90°")
	assert.Equal(t, inchSize(t, "4", "4"), planOf(t, strings.Replace(rail, "1 1/4", "1 2/3", 1)).Colourways[0].Raw)
}
