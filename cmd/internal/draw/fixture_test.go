package draw

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

const inch = measure.Inch

// example is the plan of a job file that the project ships.
func example(t testing.TB, name string) planner.Plan {
	t.Helper()
	return fileAt(t, filepath.Join("..", "..", "..", "examples", name+".yaml"))
}

func fileAt(t testing.TB, path string) planner.Plan {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return planned(t, string(data))
}

func planned(t testing.TB, text string) planner.Plan {
	t.Helper()
	job, err := planner.Parse("job.yaml", []byte(text))
	require.NoError(t, err)
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	return plan
}

// ofSteps is the plan of two blocks side by side that are made by a recipe, each
// role in a fabric of its own whose colour nobody has given.
func ofSteps(t testing.TB, id string, recipe patchwork.Recipe) planner.Plan {
	t.Helper()
	build, err := patchwork.Make(recipe, inch/4, measure.Inches)
	require.NoError(t, err)
	job := planner.Job{
		ID: id, Title: "Skerry mat, " + id, Quantity: 1, Seam: inch / 4, Press: planner.PressBest,
		Layout: planner.Layout{Across: 2, Down: 1, Order: planner.DealRows, Setting: planner.Straight},
	}
	colourway := planner.Colourway{Name: "skerry", Blocks: 2, Block: planner.BlockSpec{Steps: recipe}}
	last := build.Steps[len(build.Steps)-1].Step.Name
	for _, role := range build.Roles(last) {
		job.Fabrics = append(job.Fabrics, planner.Fabric{Name: role + " cloth", Form: planner.Yardage, Width: 40 * inch})
		colourway.Roles = append(colourway.Roles, planner.RoleFabrics{Role: role, Fabrics: []planner.Share{{Fabric: role + " cloth"}}})
	}
	job.Colourways = []planner.Colourway{colourway}
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	return plan
}

func squareOf(side measure.Length) measure.Size { return measure.Size{Width: side, Height: side} }

// everyAction is a block for which everything is done that a recipe can do to
// cloth but make triangles: a strip set cut into segments, the four-patch of two
// of them cut again, pieces turned and exchanged, trimmed and sewn, the unit
// trimmed.
func everyAction() patchwork.Recipe {
	strip := measure.Size{Width: 20 * inch, Height: 5 * inch / 2}
	return patchwork.Recipe{Steps: []patchwork.Step{
		{Name: "reed", Do: patchwork.Cut, Role: "reed", Size: strip},
		{Name: "sand", Do: patchwork.Cut, Role: "sand", Size: strip},
		{Name: "set", Do: patchwork.Sew, Rows: [][]patchwork.Cell{{{Of: "reed"}}, {{Of: "sand"}}}},
		{Name: "segments", Do: patchwork.Subcut, Of: "set", Every: 5 * inch / 2},
		{Name: "four", Do: patchwork.Sew, Rows: [][]patchwork.Cell{{{Of: "segments"}, {Of: "segments", Quarters: 2}}}},
		{Name: "recut", Do: patchwork.Recut, Of: "four",
			Upright: []patchwork.From{{Edge: patchwork.Near, Distance: 3 * inch / 2}},
			Level:   []patchwork.From{{Edge: patchwork.Far, Distance: 3 * inch / 2}}},
		{Name: "turn", Do: patchwork.Turn, Of: "recut", Turns: [][]int{{90, 0}, {0, 270}}, Exchange: [][2]int{{1, 4}}},
		{Name: "trim", Do: patchwork.Trim, Of: "turn", Size: squareOf(5 * inch / 4)},
		{Name: "sewn", Do: patchwork.Sew, Of: "trim", Whole: true},
		{Name: "block", Do: patchwork.Trim, Of: "sewn", Size: squareOf(7 * inch / 4)},
	}}
}

// names are as odd as names in a job file can be. A flag is two characters that
// show as one, Hebrew runs from right to left.
const oddNames = `
job: odd-names
title: "It's <odd> & \"wide\""
fabrics:
  "<Kelp> & 'Foam'": {form: yardage, width: 42}
  "藍": {form: yardage, width: 42, colour: "#248"}
  "שלום": {form: yardage, width: 42, colour: SlateGray}
block: {make: four-patch, square: 4}
colourways:
  "<tide>": {blocks: 1, print: "<Kelp> & 'Foam'", ground: "藍"}
  "it's": {blocks: 1, print: "藍", ground: "<Kelp> & 'Foam'"}
  "藍": {blocks: 1, print: "藍", ground: "שלום"}
  "🇳🇴 & co": {blocks: 1, print: "שלום", ground: "<Kelp> & 'Foam'"}
  "top": {blocks: 1, print: "שלום", ground: "藍"}
  "its": {blocks: 1, print: "שלום", ground: "藍"}
layout: {across: 3, down: 2, order: rows, turn: [[0, 90], [180, 270]]}
`

// hundredFabrics is 162 plain squares over a hundred fabrics: 62 of them give
// two squares and 38 give one (hand-worked: 62×2 + 38×1 = 162).
func hundredFabrics(t testing.TB) planner.Plan {
	t.Helper()
	var fabrics, counts strings.Builder
	for i := range 100 {
		name := "Tide " + strings.Repeat("i", i%7) + string(rune('A'+i/26)) + string(rune('a'+i%26))
		fabrics.WriteString("  " + name + ": {form: fat quarter, size: 18 x 22}\n")
		n := ": 1"
		if i < 62 {
			n = ": 2"
		}
		if i > 0 {
			counts.WriteString(", ")
		}
		counts.WriteString(name + n)
	}
	return planned(t, "job: hundred-tides\ntitle: Hundred tides\nfabrics:\n"+fabrics.String()+
		"block: {make: plain square, square: 5}\ncolourways:\n  all: {blocks: 162, print: {"+counts.String()+"}}\n"+
		"layout: {across: 18, down: 9, order: rows}\n")
}

// blockBorder has a border made of blocks round one of cloth, and turned blocks.
const blockBorder = `job: lagoon-throw
title: Lagoon throw
fabrics:
  Kelp: {form: yardage, width: 42, colour: "#2e6f57"}
  Cormorant: {form: yardage, width: 42, colour: slategray}
  Marram: {form: yardage, width: 42}
  Foam: {form: yardage, width: 42, colour: "#e8f0ee"}
block: {make: four-patch, square: 5, ground: Foam}
colourways:
  tide: {blocks: 24, print: [Kelp, Cormorant]}
  dune: {blocks: 28, print: Marram}
layout: {across: 4, down: 6, order: scatter, turn: [[0, 90], [90, 0]]}
borders:
  - {width: 4 1/2, fabric: Kelp}
  - {blocks: [tide, dune]}
`

// plans are all examples and the blocks that they do not have.
func plans(t testing.TB) map[string]planner.Plan {
	t.Helper()
	all := map[string]planner.Plan{
		"odd names":        planned(t, oddNames),
		"hundred fabrics":  hundredFabrics(t),
		"four hundred":     fileAt(t, "../../../testdata/breakwater-400.yaml"),
		"two ways":         fileAt(t, "../../../planner/testdata/jobs/twelve-colourways.yaml"),
		"pinwheel recut":   ofSteps(t, "pinwheel-recut", patchwork.PinwheelRecut(4*inch, 8, 0, nil)),
		"four at a time":   ofSteps(t, "four-at-a-time", patchwork.Pinwheel(4*inch, 4)),
		"hourglass":        ofSteps(t, "hourglass", patchwork.Hourglass(5*inch)),
		"rail":             ofSteps(t, "rail", patchwork.Rail([]string{"a", "b", "c", "d", "e"}, 2*inch, 8*inch)),
		"block border":     planned(t, blockBorder),
		"all that is done": ofSteps(t, "every-action", everyAction()),
	}
	for _, name := range []string{"estuary-lap", "harbour-pair", "lighthouse-king", "saltmarsh-cot", "cormorant-point", "dune-sampler"} {
		all[name] = example(t, name)
	}
	return all
}

// drawingOf is a drawing as it is written.
func drawingOf(t testing.TB, p planner.Plan, d Drawing) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, d.Draw(&out, p))
	return out.String()
}
