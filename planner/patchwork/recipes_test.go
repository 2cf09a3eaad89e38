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

// drawRecipe draws a recipe of squares, triangles and strip sets, sewn, recut,
// turned, exchanged and sewn again, that can be made with the seam.
func drawRecipe(t *rapid.T, seam measure.Length) Recipe {
	d := drawing{t, seam, Recipe{}}
	unit := d.grid("grid", d.cuts())
	if rapid.IntRange(0, 3).Draw(t, "trim") == 0 {
		unit = d.trim(unit)
	}
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

// cuts draws squares of some roles, triangle units and slices of strip sets, all
// of one size.
func (d *drawing) cuts() []string {
	side := measure.Inch.Times(rapid.IntRange(12, 60).Draw(d.t, "side in eighths")) / 8
	var names []string
	for i := range rapid.IntRange(1, 3).Draw(d.t, "roles") {
		names = append(names, d.add(cutSquare(fmt.Sprintf("role%d", i), side)))
	}
	roles := [2]string{"role0", "light"}
	if n := rapid.SampledFrom([]int{0, 0, 2, 4, 8}).Draw(d.t, "half-squares"); n > 0 {
		names = append(names, d.add(Step{Name: "halves", Do: HalfSquare, Roles: roles, AtATime: n, TrimTo: side}))
	}
	if rapid.IntRange(0, 3).Draw(d.t, "quarter-squares") == 0 {
		names = append(names, d.add(Step{Name: "quarters", Do: QuarterSquare, Roles: roles, TrimTo: side}))
	}
	if rapid.IntRange(0, 3).Draw(d.t, "strips") == 0 {
		names = append(names, d.slices(side))
	}
	return names
}

// slices draws a set of two long strips, cut into squares.
func (d *drawing) slices(side measure.Length) string {
	long := side.Times(rapid.IntRange(2, 7).Draw(d.t, "slices")) + measure.Inch.Times(rapid.IntRange(0, 1).Draw(d.t, "left over"))
	strip := measure.Size{Width: long, Height: (side + 2*d.seam).Half()}
	d.add(Step{Name: "strip", Do: Cut, Role: "role0", Size: strip})
	d.add(Step{Name: "light-strip", Do: Cut, Role: "light", Size: strip})
	d.add(columnStep("set", "strip", "light-strip"))
	return d.add(Step{Name: "slices", Do: Subcut, Of: "set", Every: side})
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

// trim squares a unit up by a little.
func (d *drawing) trim(of string) string {
	size := d.size()
	off := measure.Inch.Times(rapid.IntRange(0, 3).Draw(d.t, "trim in eighths")) / 8
	return d.add(Step{Name: "trim", Do: Trim, Of: of, Size: measure.Size{Width: size.Width - off, Height: size.Height - off}})
}

// size is how large the block is so far.
func (d *drawing) size() measure.Size {
	b, err := Make(d.recipe, d.seam, measure.Inches)
	if err != nil {
		d.t.Fatalf("drawn recipe: %v", err)
	}
	return b.Block().Size
}

// recutAndTurn cuts a unit both ways, turns the pieces and sews them.
func (d *drawing) recutAndTurn(i int, of string) string {
	size := d.size()
	recut := Step{Name: fmt.Sprintf("recut%d", i), Do: Recut, Of: of}
	recut.Upright = d.places(size.Width, i)
	recut.Level = d.places(size.Height, i)
	if len(recut.Upright)+len(recut.Level) == 0 {
		return of
	}
	turn := Step{Name: fmt.Sprintf("turn%d", i), Do: Turn, Of: recut.Name}
	turn.Turns, turn.Exchange = d.turns(recut, size)
	d.add(recut)
	d.add(turn)
	return d.add(Step{Name: fmt.Sprintf("sewn%d", i), Do: Sew, Of: turn.Name, Whole: true})
}

// turns draws half turns, quarter turns of square pieces, and exchanges of
// pieces of one size.
func (d *drawing) turns(recut Step, size measure.Size) (turns [][]int, exchange [][2]int) {
	wide, high := spans(recut.Upright, size.Width), spans(recut.Level, size.Height)
	last := map[measure.Size]int{}
	for _, height := range high {
		var row []int
		for _, width := range wide {
			choice := []int{0, 180}
			if width == height {
				choice = []int{0, 90, 180, 270}
			}
			row = append(row, rapid.SampledFrom(choice).Draw(d.t, "turn"))
			piece, n := measure.Size{Width: width, Height: height}, len(turns)*len(wide)+len(row)
			if other, ok := last[piece]; ok && rapid.Bool().Draw(d.t, "exchange") {
				exchange = append(exchange, [2]int{n, other})
			}
			last[piece] = n
		}
		turns = append(turns, row)
	}
	return turns, exchange
}

// spans is how wide the pieces are that cuts leave.
func spans(cuts []From, span measure.Length) []measure.Length {
	var places []measure.Length
	for _, cut := range cuts {
		places = append(places, cut.place(span))
	}
	slices.Sort(places)
	places = append(places, span)
	for i := len(places) - 1; i > 0; i-- {
		places[i] -= places[i-1]
	}
	return places
}

// places draws cuts that leave more than two seams between them. They lie a
// little off the ruler's grid, so that none runs along a seam.
func (d *drawing) places(span measure.Length, i int) []From {
	off := mm.Scale(int64(17*i+13), 1000, measure.Nearest)
	if even := EitherSide(span/7 + off); rapid.IntRange(0, 2).Draw(d.t, "even") == 0 && span/7 > 2*d.seam {
		return even
	}
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
