package patchwork

import (
	"fmt"
	"slices"

	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// seams are allowances in use: 1/4 and 1/2 in, 5, 6 and 7.5 mm, and a measured
// one.
var seams = []measure.Length{quarter, measure.Inch / 2, 5 * mm, 6 * mm, mm * 15 / 2, measure.Inch.Scale(31, 112, measure.Nearest)}

// drawRecipe draws a recipe of cut, sew, recut, turn, trim and sew again that
// can be made with the seam.
func drawRecipe(t *rapid.T, seam measure.Length) Recipe {
	d := drawing{t, seam, Recipe{}}
	unit := d.grid("grid", d.cuts())
	for i := range rapid.IntRange(0, 2).Draw(t, "recuts") {
		unit = d.recutAndTurn(i, unit)
	}
	if rapid.Bool().Draw(t, "repeat") {
		quarters := rapid.SampledFrom([]int{0, 2}).Draw(t, "half turn")
		d.add(Step{Name: "pattern", Do: Sew, Rows: [][]Cell{{{Of: unit}, {Of: unit, Quarters: quarters}}, {{Of: unit, Quarters: quarters}, {Of: unit}}}})
	}
	return d.recipe
}

type drawing struct {
	t      *rapid.T
	seam   measure.Length
	recipe Recipe
}

func (d *drawing) add(s Step) string {
	d.recipe.Steps = append(d.recipe.Steps, s)
	return s.Name
}

// cuts draws squares of some roles, all of one size.
func (d *drawing) cuts() []string {
	side := measure.Inch.Times(rapid.IntRange(12, 60).Draw(d.t, "side in eighths")) / 8
	var names []string
	for i := range rapid.IntRange(1, 4).Draw(d.t, "roles") {
		names = append(names, d.add(cutSquare(fmt.Sprintf("role%d", i), side)))
	}
	return names
}

// grid draws rows of turned squares. Every square is used at least once.
func (d *drawing) grid(name string, of []string) string {
	rows := rapid.IntRange(1, 4).Draw(d.t, "rows")
	columns := rapid.IntRange(2, 4).Draw(d.t, "columns")
	for rows*columns < len(of) {
		rows++
	}
	grid := gridOf("", rows, columns)
	for r := range grid {
		for c := range grid[r] {
			grid[r][c] = Cell{rapid.SampledFrom(of).Draw(d.t, "cell"), rapid.IntRange(0, 3).Draw(d.t, "quarters")}
		}
	}
	for i, name := range of {
		grid[i/columns][i%columns].Of = name
	}
	return d.add(Step{Name: name, Do: Sew, Rows: grid})
}

// recutAndTurn cuts a unit both ways, turns the pieces and sews them.
func (d *drawing) recutAndTurn(i int, of string) string {
	b, err := Make(d.recipe, d.seam, measure.Inches)
	if err != nil {
		d.t.Fatalf("drawn recipe: %v", err)
	}
	size := b.Block().Size
	recut := Step{Name: fmt.Sprintf("recut%d", i), Do: Recut, Of: of}
	recut.Upright = d.places(size.Width, i)
	recut.Level = d.places(size.Height, i)
	if len(recut.Upright)+len(recut.Level) == 0 {
		return of
	}
	turns := make([][]int, len(recut.Level)+1)
	for r := range turns {
		turns[r] = make([]int, len(recut.Upright)+1)
		for c := range turns[r] {
			turns[r][c] = rapid.SampledFrom([]int{0, 180}).Draw(d.t, "turn")
		}
	}
	d.add(recut)
	turn := d.add(Step{Name: fmt.Sprintf("turn%d", i), Do: Turn, Of: recut.Name, Turns: turns})
	return d.add(Step{Name: fmt.Sprintf("sewn%d", i), Do: Sew, Of: turn, Whole: true})
}

// places draws cuts that leave more than two seams between them. They lie a
// little off the ruler's grid, so that none runs along a seam.
func (d *drawing) places(span measure.Length, i int) []From {
	off := mm.Scale(int64(17*i+13), 1000, measure.Nearest)
	drawn := rapid.SliceOfN(rapid.IntRange(1, 999), 0, 3).Draw(d.t, "cuts")
	slices.Sort(drawn)
	var cuts []From
	last := measure.Length(0)
	for _, thousandths := range drawn {
		at := span.Scale(int64(thousandths), 1000, measure.Nearest)
		at = at - at%(measure.Inch/16) + off
		if at-last > 2*d.seam && span-at > 2*d.seam {
			last = at
			cuts = append(cuts, rapid.SampledFrom([]From{{Near, at}, {Far, span - at}}).Draw(d.t, "from"))
		}
	}
	return cuts
}
