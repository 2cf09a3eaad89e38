package patchwork

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// Each thing that cannot be sewn has its own sentence, with the measures on
// both sides (hand-worked).
func TestFaultsSayWhatWhereAndWhatToDo(t *testing.T) {
	a, b := cutStep(t, "a", "6 1/2", "4"), cutStep(t, "b", "6", "4")
	ab := rowStep("ab", "a", "b")
	recut := func(upright, level []From) Step {
		return Step{Name: "recut", Do: Recut, Of: "ab", Upright: upright, Level: level}
	}
	from := func(edge Edge, distance string) []From { return []From{{edge, in(t, distance)}} }
	halves := recut([]From{{Centre, in(t, "1")}}, nil)
	thin := cutStep(t, "thin", "4", "1/2")
	turn := func(turns ...[]int) Step { return Step{Name: "turn", Do: Turn, Of: "recut", Turns: turns} }
	for _, row := range []struct {
		name  string
		steps []Step
		want  string
	}{
		{"nothing", nil, "the recipe has no steps; begin by cutting pieces"},
		{"no name", []Step{{Do: Cut}}, "step 1 has no name; every step needs a name of its own"},
		{"name", []Step{{Name: "My Step", Do: Cut}}, `step My Step: the name "My Step" will not do; use small letters a to z, digits and hyphens`},
		{"same name", []Step{a, a}, "step a: two steps have this name; give every step a name of its own"},
		{"no action", []Step{{Name: "a"}}, "step a: the step does not say what to do; cut, sew, recut, turn, trim, subcut or make triangles"},
		{"no role", []Step{{Name: "a", Do: Cut, Size: a.Size}}, "step a: the cut has no role; say what the fabric does in the block, such as print or ground"},
		{"cut of nothing", []Step{thin}, "step thin: a piece of 4 × 1/2 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{"unknown step", []Step{a, rowStep("ab", "a", "c")}, `step ab: there is no earlier step "c"; steps so far: a`},
		{"itself", []Step{a, rowStep("ab", "a", "ab")}, `step ab: there is no earlier step "ab"; steps so far: a`},
		{"unknown first", []Step{rowStep("ab", "a")}, `step ab: there is no earlier step "a"`},
		{"no rows", []Step{{Name: "ab", Do: Sew}}, "step ab: there is nothing to sew; give at least one row"},
		{"empty row", []Step{a, {Name: "ab", Do: Sew, Rows: [][]Cell{{{Of: "a"}}, {}}}}, "step ab: row 2 is empty; leave it out or fill it"},
		{"rows and pieces", []Step{a, {Name: "ab", Do: Sew, Of: "a", Whole: true, Rows: ab.Rows}}, "step ab: the step has rows of its own and sews a step's pieces too; give one or the other"},
		{"pieces not whole", []Step{a, {Name: "ab", Do: Sew, Of: "a"}}, "step ab: the step names pieces but does not sew them whole; give rows, or sew the pieces as they lie"},
		{"whole of a unit", []Step{a, {Name: "ab", Do: Sew, Of: "a", Whole: true}}, `step ab: step "a" leaves one unit, not pieces; recut it first`},
		{"rows of unequal length", []Step{a, b, columnStep("ab", "a", "b")}, "step ab: row 1 is 6 1/2 in long, the next one 6 in: 1/2 in too short; rows that are sewn together need equal lengths"},
		{"rows the other way", []Step{b, a, columnStep("ba", "b", "b", "a")}, "step ba: row 2 is 6 in long, the next one 6 1/2 in: 1/2 in too long; rows that are sewn together need equal lengths"},
		{"heights", []Step{a, cutStep(t, "c", "4", "3 3/4"), rowStep("ac", "a", "a", "c")}, "step ac: row 1 is 4 in high so far, piece 3 of row 1 (c) 3 3/4 in: 1/4 in too short; pieces of one row need equal heights"},
		{"a hair", []Step{a, cutStep(t, "c", "4", "4 1/64"), rowStep("ac", "a", "c")}, "step ac: row 1 is 4 in high so far, piece 2 of row 1 (c) ≈ 4 in: less than 1/16 in too long; pieces of one row need equal heights"},
		{"no cuts", []Step{a, b, ab, recut(nil, nil)}, "step recut: the recut has no cuts; say where to cut"},
		{"beyond the right", []Step{a, b, ab, recut(from(Near, "12"), nil)}, "step recut: the upright cut 12 in from the left edge falls outside the unit, which is 12 in wide; cut inside the unit"},
		{"beyond the top", []Step{a, b, ab, recut(nil, from(Far, "4 1/2"))}, "step recut: the level cut 4 1/2 in from the bottom edge falls outside the unit, which is 4 in high; cut inside the unit"},
		{"beyond from the centre", []Step{a, b, ab, recut([]From{{Centre, -in(t, "7")}}, nil)}, "step recut: the upright cut 7 in from the centre to the left falls outside the unit, which is 12 in wide; cut inside the unit"},
		{"beyond the bottom", []Step{a, b, ab, recut(nil, from(Centre, "2"))}, "step recut: the level cut 2 in from the centre to the bottom falls outside the unit, which is 4 in high; cut inside the unit"},
		{"cut along a seam", []Step{a, rowStep("ab", "a", "a"), recut([]From{{Edge: Centre}}, nil)}, "step recut: the upright cut through the centre runs along a seam; move it to one side of the seam"},
		{"too narrow between cuts", []Step{a, b, ab, recut([]From{{Near, in(t, "3")}, {Near, in(t, "2 1/2")}}, nil)}, "step recut: the cuts leave a piece 1/2 in wide, and its two seams take 1/2 in; leave more than two seams between cuts, and to the edges"},
		{"too narrow at the edge", []Step{a, b, ab, recut(nil, from(Far, "3/8"))}, "step recut: the cuts leave a piece 3/8 in high, and its two seams take 1/2 in; leave more than two seams between cuts, and to the edges"},
		{"recut of pieces", []Step{a, b, ab, halves, {Name: "again", Do: Recut, Of: "recut", Level: from(Near, "2")}}, `step again: step "recut" leaves 1 row of 2 pieces, not one unit; sew the pieces together first`},
		{"recut of nothing", []Step{a, {Name: "recut", Do: Recut, Of: "ab"}}, `step recut: there is no earlier step "ab"; steps so far: a`},
		{"turn of nothing", []Step{a, {Name: "turn", Do: Turn, Of: "recut"}}, `step turn: there is no earlier step "recut"; steps so far: a`},
		{"turn of a unit", []Step{a, {Name: "turn", Do: Turn, Of: "a"}}, `step turn: step "a" leaves one unit, not pieces; recut it first`},
		{"too few turns", []Step{a, b, ab, halves, turn([]int{0})}, "step turn: the turns do not fit the 1 row of 2 pieces; give one turn for each piece, row by row"},
		{"too many rows of turns", []Step{a, b, ab, halves, turn([]int{0, 0}, []int{0, 0})}, "step turn: the turns do not fit the 1 row of 2 pieces; give one turn for each piece, row by row"},
		{"a slanted turn", []Step{a, b, ab, halves, turn([]int{0, 45})}, "step turn: piece 2 in row 1 cannot be turned by 45 degrees; turns are 0, 90, 180 or 270 degrees clockwise"},
		{"a quarter turn", []Step{a, b, ab, halves, turn([]int{0, -90})}, "step turn: a quarter turn of piece 2 in row 1 does not fit its place: 5 in against 4 in; give it no turn or half a turn (0 or 180), or cut square pieces"},
		{"trim up", []Step{a, {Name: "trim", Do: Trim, Of: "a", Size: sides(t, "7", "4")}}, "step trim: the unit is 6 1/2 × 4 in, too small to trim to 7 × 4 in; trim to a smaller size or start with larger pieces"},
		{"trim up of pieces", []Step{a, b, ab, halves, {Name: "trim", Do: Trim, Of: "recut", Size: sides(t, "5 1/2", "4")}}, "step trim: piece 2 of row 1 is 5 × 4 in, too small to trim to 5 1/2 × 4 in; trim to a smaller size or start with larger pieces"},
		{"trim away", []Step{a, {Name: "trim", Do: Trim, Of: "a", Size: sides(t, "1/4", "4")}}, "step trim: a piece trimmed to 1/4 × 4 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{"trim of nothing", []Step{{Name: "trim", Do: Trim, Of: "a"}}, `step trim: there is no earlier step "a"`},
		{"cut along a third", []Step{cutStep(t, "c", "3 1/4", "4"), cutStep(t, "d", "6 1/4", "4"), rowStep("ab", "c", "d"), recut(Thirds(), nil)}, "step recut: the upright cut at one third runs along a seam; move it to one side of the seam"},
		{"beyond a third", []Step{a, b, ab, recut(nil, from(FirstThird, "3"))}, "step recut: the level cut 3 in from one third to the bottom falls outside the unit, which is 4 in high; cut inside the unit"},
		{"beyond two thirds", []Step{a, b, ab, recut([]From{{SecondThird, -in(t, "8")}}, nil)}, "step recut: the upright cut 8 in from two thirds to the left falls outside the unit, which is 12 in wide; cut inside the unit"},
		{"beyond all measure", []Step{a, b, ab, recut([]From{{Centre, measure.Longest + 1}}, nil)}, "step recut: the upright cut ≈ 39370 1/16 in from the centre to the right falls outside the unit, which is 12 in wide; cut inside the unit"},
		{"longer than cloth", []Step{{Name: "a", Do: Cut, Role: "a", Size: measure.Size{Width: measure.Longest + 1, Height: measure.Inch}}}, "step a: a piece of ≈ 39370 1/16 × 1 in is longer than ≈ 39370 1/16 in; look for a slip of the pen"},
		{"ends with pieces", []Step{a, b, ab, halves}, "step recut: the recipe ends with 1 row of 2 pieces, not with a block; sew them together in a last step"},
		{"unused", []Step{a, b, rowStep("aa", "a", "a")}, "step b: nothing is made from this step; use it in a later step or leave it out"},
	} {
		t.Run(row.name, func(t *testing.T) {
			build, err := Make(Recipe{row.steps}, quarter, measure.Inches)
			assert.Nil(t, build)
			require.EqualError(t, err, row.want)
			assert.IsType(t, &Fault{}, err)
		})
	}
}

func TestFaultsShowCentimetresWhereTheJobDoes(t *testing.T) {
	steps := []Step{
		{Name: "a", Do: Cut, Role: "a", Size: measure.Size{Width: 205 * mm, Height: 80 * mm}},
		{Name: "b", Do: Cut, Role: "a", Size: measure.Size{Width: 200 * mm, Height: 80 * mm}},
		columnStep("ab", "a", "b"),
	}
	_, err := Make(Recipe{steps}, 6*mm, measure.Centimetres)
	assert.EqualError(t, err, "step ab: row 1 is 20.5 cm long, the next one 20 cm: 0.5 cm too short; rows that are sewn together need equal lengths")

	steps[1].Size.Width = 205*mm - mm/2
	_, err = Make(Recipe{steps}, 6*mm, measure.Centimetres)
	assert.ErrorContains(t, err, "less than 0.1 cm too short")
}

func TestASeamTakesSomeCloth(t *testing.T) {
	_, err := Make(PlainSquare(measure.Inch), 0, measure.Inches)
	assert.EqualError(t, err, "a seam has to take some cloth; give the seam a width above nought")
}

// A fault names the value that it comes from, and its place in a list or grid,
// from 1.
func TestFaultsNameTheValueAtFault(t *testing.T) {
	a, b := cutStep(t, "a", "6 1/2", "4"), cutStep(t, "b", "6", "4")
	ab := rowStep("ab", "a", "b")
	halves := Step{Name: "recut", Do: Recut, Of: "ab", Upright: []From{{Centre, in(t, "1")}}}
	for _, row := range []struct {
		steps []Step
		at    Fault
	}{
		{[]Step{{Name: "a", Do: Cut}}, Fault{Key: "cut"}},
		{[]Step{cutStep(t, "a", "1/4", "4")}, Fault{Key: "size"}},
		{[]Step{a, {Name: "ab", Do: Sew, Rows: [][]Cell{cells([]string{"a", "a"}), cells([]string{"a", "c"})}}}, Fault{Key: "sew", Row: 2, Column: 2}},
		{[]Step{a, cutStep(t, "c", "4", "3"), rowStep("ac", "a", "a", "c")}, Fault{Key: "sew", Row: 1, Column: 3}},
		{[]Step{a, b, columnStep("ab", "a", "b")}, Fault{Key: "sew", Row: 2}},
		{[]Step{a, {Name: "ab", Do: Sew, Rows: [][]Cell{{{Of: "a"}}, {}}}}, Fault{Key: "sew", Row: 2}},
		{[]Step{{Name: "recut", Do: Recut, Of: "ab"}}, Fault{Key: "recut"}},
		{[]Step{a, b, ab, {Name: "recut", Do: Recut, Of: "ab", Upright: []From{{Near, in(t, "2")}, {Far, in(t, "20")}}}}, Fault{Key: "upright", Row: 2}},
		{[]Step{a, b, ab, {Name: "recut", Do: Recut, Of: "ab", Level: []From{{Near, in(t, "1/4")}}}}, Fault{Key: "level"}},
		{[]Step{a, {Name: "turn", Do: Turn, Of: "a"}}, Fault{Key: "turn"}},
		{[]Step{a, b, ab, halves, {Name: "turn", Do: Turn, Of: "recut", Turns: [][]int{{0}}}}, Fault{Key: "by"}},
		{[]Step{a, b, ab, halves, {Name: "turn", Do: Turn, Of: "recut", Turns: [][]int{{0, 45}}}}, Fault{Key: "by", Row: 1, Column: 2}},
		{[]Step{a, b, ab, halves, {Name: "turn", Do: Turn, Of: "recut", Turns: [][]int{{0, 90}}}}, Fault{Key: "by", Row: 1, Column: 2}},
		{[]Step{{Name: "trim", Do: Trim, Of: "a"}}, Fault{Key: "trim"}},
		{[]Step{a, {Name: "trim", Do: Trim, Of: "a", Size: sides(t, "7", "7")}}, Fault{Key: "size"}},
		{[]Step{{Name: "slices", Do: Subcut, Of: "a"}}, Fault{Key: "subcut"}},
	} {
		_, err := Make(Recipe{row.steps}, quarter, measure.Inches)
		var fault *Fault
		require.ErrorAs(t, err, &fault)
		row.at.Step = row.steps[len(row.steps)-1].Name
		assert.Equal(t, row.at, Fault{Step: fault.Step, Key: fault.Key, Row: fault.Row, Column: fault.Column}, "%v", err)
	}
}

// What is trimmed away is counted all the same: each step here takes 64 of the
// one before and keeps one patch of them.
func TestRecipesThatTrimAwayWhatTheyMultiplyAreRefused(t *testing.T) {
	steps := []Step{cutStep(t, "s0", "2", "2")}
	for i := 1; i <= 3; i++ {
		before, name := fmt.Sprintf("s%d", i-1), fmt.Sprintf("s%d", i)
		if i > 1 {
			before = fmt.Sprintf("t%d", i-1)
		}
		steps = append(steps,
			Step{Name: name, Do: Sew, Rows: gridOf(before, 8, 8)},
			Step{Name: fmt.Sprintf("t%d", i), Do: Trim, Of: name, Size: sides(t, "2", "2")})
	}
	_, err := Make(Recipe{steps}, quarter, measure.Inches)
	assert.EqualError(t, err, "step s0: one block would take more than 100000 of this step; make it of fewer pieces")
}

// A recipe of a few lines could ask for a thousand million patches.
func TestRecipesThatMultiplyThemselvesAreRefused(t *testing.T) {
	steps := []Step{cutStep(t, "a", "20", "20")}
	for _, name := range []string{"b", "c", "d", "e"} {
		steps = append(steps, Step{Name: name, Do: Sew, Rows: gridOf(steps[len(steps)-1].Name, 8, 8)})
	}
	_, err := Make(Recipe{steps}, quarter, measure.Inches)
	assert.EqualError(t, err, "step d: the unit would have 262144 patches, and 5000 is the most for one; make it of fewer pieces")
}

// Halving an odd number of ticks leaves pieces that differ by one; they are
// equal to any ruler and sew, and the patches still add up.
func TestEdgesWithinAMicrometreAreEqual(t *testing.T) {
	r := NinePatchRecut(5*measure.Inch+1, [][]int{{90, 180}, {0, 270}})
	b := made(t, r, quarter)
	assertPatchesFill(t, b.Block())
	assert.InDelta(t, int64(in(t, "13 1/2")), int64(b.Block().Size.Width), 4)
}
