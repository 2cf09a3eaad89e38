package planner

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// stepsJob is a job whose block has steps of its own; the table of faults changes
// one thing in it. Its lines are counted in their sentences.
const stepsJob = `job: x
fabrics: {Kelp: {}, Foam: {}}
block:
  steps:
    print:  {cut: print, size: 7}
    ground: {cut: ground, size: 7}
    pairs:  {sew: [[print, ground]]}
    units:  {sew: [[pairs], [pairs@180]]}
    recut:  {recut: units, upright: [-1, 1], level: [-1, 1]}
    turn:   {turn: recut, by: [[0, 180, 0], [180, 0, 180], [0, 180, 0]]}
    block:  {sew: turn}
  print: Kelp
  ground: Foam
colourways: {tide: {blocks: 4}}
layout: {across: 2, down: 2}
`

// stepFaults is what is said of stepsJob with one thing replaced, by Parse or by
// Make, each with its hint.
func stepFaults(t *testing.T, old, replacement string) []string {
	t.Helper()
	require.Contains(t, stepsJob, old)
	job, err := Parse("job.yaml", []byte(strings.Replace(stepsJob, old, replacement, 1)))
	if err == nil {
		_, err = Make(job, Prior{})
	}
	var problems Problems
	require.ErrorAs(t, err, &problems)
	var all []string
	for _, p := range problems {
		all = append(all, strings.TrimPrefix(p.Error(), "job.yaml:"))
	}
	return all
}

func TestFaultsOfStepsPointIntoTheRecipe(t *testing.T) {
	const first, by = "    print:  {cut: print, size: 7}\n", "by: [[0, 180, 0], [180, 0, 180], [0, 180, 0]]"
	for _, c := range []struct {
		name, old, replacement string
		want                   []string
	}{
		{
			"a step that is not there", "[[print, ground]]", "[[print, grond]]",
			[]string{`7:28: there is no step "grond"; did you mean "ground"?`},
		},
		{
			"a step like none", "sew: turn", "sew: zebra",
			[]string{`11:19: there is no step "zebra"; the steps are print, ground, pairs, units, recut, turn and block`},
		},
		{
			"a step that comes later", "[[print, ground]]", "[[units, ground]]",
			[]string{`7:21: the step "units" is not made yet here; a step uses what is made above it: move it up`},
		},
		{
			"a row where rows are meant", "[[print, ground]]", "[print, ground]",
			[]string{`7:19: "sew" is a list of rows, each a list of steps; write one row as in sew: [[print, ground]]`},
		},
		{
			"a grid of one piece", "[[print, ground]]", "[[print]]",
			[]string{`7:19: there is only one piece, so there is nothing to sew; name two steps or more, or one step twice`},
		},
		{
			"an empty row", "[[print, ground]]", "[[print, ground], []]",
			[]string{`7:37: a row of "sew" is an empty list; write it as in sew: [[print, ground], [ground, print@90]]`},
		},
		{
			"a cell that is no quarter turn", "[[print, ground]]", "[[print, ground@45]]",
			[]string{`7:28: "ground@45" is not turned by quarter turns; write the degrees clockwise, 0, 90, 180 or 270, as in ground@90`},
		},
		{
			"a word that is no action", "sew: turn", "sow: turn",
			[]string{`11:14: the step "block" does nothing that is known here: "sow" is not an action; did you mean "sew"?`},
		},
		{
			"a word like no action", "sew: turn", "applique: turn",
			[]string{`11:14: the step "block" does nothing that is known here: "applique" is not an action; the actions are cut, sew, recut, turn, subcut, half-square, quarter-square and trim`},
		},
		{
			"two actions in one step", first, "    print:  {cut: print, size: 7, recut: print}\n",
			[]string{`5:5: the step "print" does two things: cut and recut; make two steps of it`},
		},
		{
			"a step without an action", first, "    print: 7\n",
			[]string{`5:12: the step "print" does not say what it does; write it as in print: {cut: print, size: 7}`},
		},
		{
			"a key of another action", first, "    print:  {cut: print, size: 7, every: 3}\n",
			[]string{`5:35: "every" is not a key of the step "print"; the keys here are cut and size`},
		},
		{
			"a size missing", first, "    print:  {cut: print}\n",
			[]string{`5:13: the step "print" has no "size"; write it as in size: 7`},
		},
		{
			"a size said to be finished", first, "    print:  {cut: print, size: 7 x 4 finished}\n",
			[]string{`5:32: "size" is a raw size, with its seam allowances; this one is said to be finished; what is 7 × 4 in inside its seams is cut 7 1/2 × 4 1/2 in`},
		},
		{
			"a name that cannot be a key", first, "    Print!:  {cut: print, size: 7}\n",
			[]string{
				`5:5: "Print!" cannot be a step's name: names are small letters a to z, digits and hyphens, at most 64, and begin with no hyphen; such as print`,
				`7:21: there is no step "print"; did you mean "Print!"?`,
			},
		},
		{
			"a name given twice", "    block:  {sew: turn}", "    pairs:  {sew: turn}",
			[]string{`11:5: "pairs" is given twice; the first is on line 7; keep one`},
		},
		{
			"a role that is a key of the block", first, "    print:  {cut: square, size: 7}\n",
			[]string{`5:19: "square" cannot be a role: it is a key of the block itself; say what the fabric does in the block, such as print or ground`},
		},
		{
			"a role in capitals", first, "    print:  {cut: Print, size: 7}\n",
			[]string{`5:19: "Print" cannot be a role: roles are small letters a to z, digits and hyphens, and begin with no hyphen; such as print`},
		},
		{
			"triangles three at a time", first, "    print:  {half-square: [print, ground], trim: 7, at-a-time: 3}\n",
			[]string{`5:64: "at-a-time" cannot be "3"; it can be two, four or eight`},
		},
		{
			"triangles of one role", first, "    print:  {half-square: [print, print], trim: 7}\n",
			[]string{`5:27: both triangles are print; give two roles; a colourway may give both the same fabric`},
		},
		{
			"triangles of three squares", first, "    print:  {quarter-square: [print, ground, sky], trim: 7}\n",
			[]string{`5:30: triangles are sewn from two squares, not 3; write it as in quarter-square: [print, ground]`},
		},
		{
			"triangles without a size", first, "    print:  {half-square: [print, ground]}\n",
			[]string{`5:13: the step "print" has no size; give the raw size of a trimmed unit, as in trim: 3 1/2, or of the squares, as in size: 4`},
		},
		{
			"a recut that cuts nothing", "upright: [-1, 1], level: [-1, 1]}", "}",
			[]string{`9:13: the step "recut" does not say where it is cut; give it upright: [-1, 1] (from the centre), [left 2 1/2, right 2], halves or thirds, or level likewise`},
		},
		{
			"an edge of the other way", "upright: [-1, 1]", "upright: [top 2]",
			[]string{`9:38: "top" is no edge for the upright cuts; upright cuts are measured from the centre, the left or the right`},
		},
		{
			"a cut outward from an edge", "upright: [-1, 1]", "upright: [left -2]",
			[]string{`9:38: "left -2" is not inside the unit; measure inward from the edge, as in left 2 1/2`},
		},
		{
			"a place that is none", "upright: [-1, 1]", "upright: quarters",
			[]string{`9:37: "quarters" is no place for a cut; write it as in upright: [-1, 1] (from the centre), [left 2 1/2, right 2], halves or thirds`},
		},
		{
			"a turn that does nothing", ", " + by, "",
			[]string{`10:13: the step "turn" turns nothing and exchanges nothing; give it by: [[0, 180], [180, 0]] or exchange: [[1, 9]]`},
		},
		{
			"a turn by no quarter", by, "by: [[45]]",
			[]string{`10:33: "45" is not a turn by quarter turns; turns are 0, 90, 180 or 270, in degrees clockwise`},
		},
		{
			"an exchange that is one pair", by, "exchange: [1, 2]",
			[]string{`10:37: "exchange" is a list of pairs of pieces; write it as in exchange: [[1, 9]]`},
		},
		{
			"an exchange of three", by, "exchange: [[1, 2, 3]]",
			[]string{`10:38: an exchange is of two pieces, not 3; write it as in exchange: [[1, 9]]`},
		},
		{
			"a step that nothing is made from", first, first + "    spare:  {cut: print, size: 3}\n",
			[]string{`6:13: tide: at the step "spare", nothing is made from this step; use it in a later step or leave it out`},
		},
		{
			"pieces left over at the end", "    block:  {sew: turn}\n", "",
			[]string{`10:13: tide: at the step "turn", the recipe ends with 3 rows of 3 pieces, not with a block; sew them together in a last step`},
		},
		{
			"edges that do not fit", "size: 7}\n    pairs", "size: 6}\n    pairs",
			[]string{`7:28: tide: at the step "pairs", row 1 is 7 in high so far, piece 2 of row 1 (ground) 6 in: 1 in too short; pieces of one row need equal heights`},
		},
		{
			"turns for another grid", by, "by: [[0, 180], [180, 0]]",
			[]string{`10:31: tide: at the step "turn", the turns do not fit the 3 rows of 3 pieces; give one turn for each piece, row by row`},
		},
		{
			"a name whose key is taken", "    block:  {sew: turn}", "    top:  {sew: turn}",
			[]string{`11:11: tide: the step "top" would be logged as press-top-rows, which is the key of another operation; give the step another name`},
		},
		{
			"two names that give one key", "    pairs:  {sew: [[print, ground]]}\n    units:  {sew: [[pairs], [pairs@180]]}\n",
			"    block-column-2:  {sew: [[print, ground]]}\n    units:  {sew: [[block-column-2], [block-column-2@180]]}\n",
			[]string{`11:13: tide: the step "block" would be logged as sew-block-column-2, which the step "block-column-2" has already; give the step another name`},
		},
		{
			"a role without a fabric", "  print: Kelp\n", "",
			[]string{`13:20: colourway "tide" has no fabric for its "print"; write it as in print: [Kelp, Cormorant]`},
		},
		{
			"steps and a name", "  print: Kelp\n", "  print: Kelp\n  make: four-patch\n",
			[]string{`4:3: the block has both "make" and "steps"; keep the name of a block or the steps of one`},
		},
		{
			"measures beside steps", "  print: Kelp\n", "  print: Kelp\n  square: 7\n  corner: Foam\n",
			[]string{
				`13:11: a block with steps of its own takes no "square"; sizes, methods and turns stand in its steps`,
				`14:11: a block with steps of its own has no role "corner"; its roles: print and ground`,
			},
		},
		{
			"no steps at all", stepsJob[strings.Index(stepsJob, "  steps:"):strings.Index(stepsJob, "  print: Kelp")], "  steps: {}\n",
			[]string{`4:10: "steps" is empty; write it as in steps: {print: {cut: print, size: 7}, block: {sew: [[print, print]]}}`},
		},
	} {
		t.Run(c.name, func(t *testing.T) { assert.Equal(t, c.want, stepFaults(t, c.old, c.replacement)) })
	}
}

// The bounds are far beyond any block; they keep a slip that multiplies itself from
// being worked out.
func TestARecipeCannotGrowWithoutBound(t *testing.T) {
	var steps strings.Builder
	for i := range mostSteps {
		fmt.Fprintf(&steps, "    spare-%d: {cut: print, size: 7}\n", i)
	}
	const first = "    print:  {cut: print, size: 7}\n"
	assert.Equal(t, []string{`4:3: the recipe has 207 steps; quiltrun makes blocks of at most 200; make the block of fewer steps`},
		stepFaults(t, first, first+steps.String()))
	assert.Equal(t, []string{`9:37: "upright" has 41 cuts; quiltrun makes at most 40 each way`},
		stepFaults(t, "upright: [-1, 1]", "upright: ["+strings.Repeat("1, ", mostCuts)+"1]"))
}

// Every way of writing what steps do, as the recipe that it stands for.
func TestStepsAreReadAsWritten(t *testing.T) {
	const in = measure.Inch
	read := func(step string) patchwork.Step {
		text := strings.Replace(stepsJob, "    turn:   {turn: recut, by: [[0, 180, 0], [180, 0, 180], [0, 180, 0]]}\n    block:  {sew: turn}\n", "    last: "+step+"\n", 1)
		if strings.Contains(step, "sky") {
			text = strings.Replace(text, "print: Kelp", "print: Kelp\n  sky: Foam", 1)
		}
		job, err := Parse("job.yaml", []byte(text))
		require.NoError(t, err, step)
		steps := job.Colourways[0].Block.Steps.Steps
		return steps[len(steps)-1]
	}
	named := func(s patchwork.Step) patchwork.Step { s.Name = "last"; return s }
	for text, want := range map[string]patchwork.Step{
		"{cut: sky, size: 4 x 2 1/2}":  {Do: patchwork.Cut, Role: "sky", Size: measure.Size{Width: 4 * in, Height: 5 * in / 2}},
		"{cut: background, size: 4}":   {Do: patchwork.Cut, Role: "ground", Size: squareOf(4 * in)},
		"{sew: recut}":                 {Do: patchwork.Sew, Of: "recut", Whole: true},
		"{sew: [[print @ 90, units]]}": {Do: patchwork.Sew, Rows: [][]patchwork.Cell{{{Of: "print", Quarters: 1}, {Of: "units"}}}},
		"{recut: units, upright: [left 2 1/2, -1, right 2, centre]}": {Do: patchwork.Recut, Of: "units", Upright: []patchwork.From{
			{Edge: patchwork.Near, Distance: 5 * in / 2}, {Distance: -in}, {Edge: patchwork.Far, Distance: 2 * in}, {}}},
		"{recut: units, level: [top 2, bottom 1]}": {Do: patchwork.Recut, Of: "units", Level: []patchwork.From{
			{Edge: patchwork.Near, Distance: 2 * in}, {Edge: patchwork.Far, Distance: in}}},
		"{recut: units, upright: halves, level: thirds}": {Do: patchwork.Recut, Of: "units", Upright: patchwork.Halves(), Level: patchwork.Thirds()},
		"{recut: units, level: 1}":                       {Do: patchwork.Recut, Of: "units", Level: []patchwork.From{{Distance: in}}},
		"{turn: recut, exchange: [[1, 9], [2, 3]]}":      {Do: patchwork.Turn, Of: "recut", Exchange: [][2]int{{1, 9}, {2, 3}}},
		"{turn: recut, by: [[0, 90]]}":                   {Do: patchwork.Turn, Of: "recut", Turns: [][]int{{0, 90}}},
		"{subcut: units, every: 2 1/2}":                  {Do: patchwork.Subcut, Of: "units", Every: 5 * in / 2},
		"{trim: units, size: 12 x 3}":                    {Do: patchwork.Trim, Of: "units", Size: measure.Size{Width: 12 * in, Height: 3 * in}},
		"{half-square: [sky, ground], trim: 3}":          {Do: patchwork.HalfSquare, Roles: [2]string{"sky", "ground"}, AtATime: 2, TrimTo: 3 * in},
		"{half square: [sky, grounds], size: 4, at-a-time: eight}": {Do: patchwork.HalfSquare, Roles: [2]string{"sky", "ground"}, AtATime: 8,
			Size: squareOf(4 * in)},
		"{quarter-square: [print, ground], size: 4, trim: 3}": {Do: patchwork.QuarterSquare, Roles: [2]string{"print", "ground"},
			Size: squareOf(4 * in), TrimTo: 3 * in},
	} {
		assert.Equal(t, named(want), read(text), text)
	}
}

// Colourways may share steps, have their own, or make a built-in; each has the
// roles of its own block, in the order in which the steps name them.
func TestColourwaysMayHaveStepsOfTheirOwn(t *testing.T) {
	job := readGood(t, `
job: x
fabrics: {Kelp: {}, Foam: {}}
block:
  steps: {sea: {cut: sea, size: 6 1/2}}
  ground: Foam
colourways:
  tide: {blocks: 1, sea: Kelp}
  dune: {blocks: 1, make: four-patch, square: 3 1/2, print: Kelp}
  gull:
    blocks: 1
    steps:
      wing: {cut: wing, size: 3 1/2 x 6 1/2}
      tail: {cut: ground, size: 3 1/2 x 6 1/2}
      bird: {sew: [[tail, wing]]}
    wing: [Kelp, Foam]
  reed: {blocks: 1, sea: Foam}
layout: {across: 2, down: 2}
`)
	var roles [][]string
	for _, c := range job.Colourways {
		var of []string
		for _, r := range c.Roles {
			of = append(of, r.Role)
		}
		roles = append(roles, of)
	}
	assert.Equal(t, [][]string{{"sea"}, {"print", "ground"}, {"wing", "ground"}, {"sea"}}, roles)
	assert.Equal(t, []string{"", "four-patch", "", ""}, []string{
		job.Colourways[0].Block.Make, job.Colourways[1].Block.Make, job.Colourways[2].Block.Make, job.Colourways[3].Block.Make,
	})
	assert.Equal(t, Position{13, 13}, job.PositionOf("colourways.gull.steps.wing"))
	p, err := Make(job, Prior{})
	require.NoError(t, err)
	assert.Equal(t, inchSize(t, "6", "6"), p.Colourways[2].Finished)
}
