package patchwork

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// inches is a length to a thousandth of an inch.
func inches(l measure.Length) string { return l.Decimal(measure.Inches, 3) }

// halfSquareStep makes half-square triangles, in inches; "0" leaves a size out.
func halfSquareStep(t *testing.T, atATime int, size, trim string) Step {
	return Step{
		Name: "half-squares", Do: HalfSquare, Roles: [2]string{"print", "ground"}, AtATime: atATime,
		Size: sides(t, size, size), TrimTo: in(t, trim),
	}
}

func quarterSquareStep(t *testing.T, size, trim string) Step {
	return Step{
		Name: "quarter-squares", Do: QuarterSquare, Roles: [2]string{"print", "ground"},
		Size: sides(t, size, size), TrimTo: in(t, trim),
	}
}

// Published squares and what their triangles are trimmed to. Each published
// trim can be cut from the exact unit, whose side is to the right (exact forms
// side − s√2, side/2 − s√2, (side − 2s)/√2, side − 2s√2, with s 1/4 in).
func TestTrianglesCanBeTrimmedAsPublished(t *testing.T) {
	half, quarters := halfSquareStep, func(t *testing.T, _ int, size, trim string) Step { return quarterSquareStep(t, size, trim) }
	for _, row := range []struct {
		source     string
		step       func(*testing.T, int, string, string) Step
		atATime    int
		size, trim string
		before     string
	}{
		{"Lesson 1, docslib: finished 3", half, 2, "3 7/8", "3 1/2", "3.521"},
		{"Lesson 1, docslib: finished 5", half, 2, "5 7/8", "5 1/2", "5.521"},
		{"All People Quilt, Hourglass Stars", half, 2, "7 1/4", "6 7/8", "6.896"},
		{"All People Quilt, Hourglass Stars: that pair into an hourglass", half, 2, "6 7/8", "6 1/2", "6.521"},
		{"All People Quilt, Ohio Star", half, 2, "4 3/4", "4 3/8", "4.396"},
		{"All People Quilt, Ohio Star: that pair into an hourglass", half, 2, "4 3/8", "4", "4.021"},
		{"Western IPS 2013/04: squares as large as recut quarters of 4 in", half, 2, "5 1/2", "5", "5.146"},
		{"Western IPS 2013/04: squares as large as recut quarters of 5 in", half, 2, "7", "6 1/2", "6.646"},
		{"Sew Me Something", half, 8, "5 3/4", "2 1/2", "2.521"},
		{"A. Tomlinson: finished 5", half, 8, "11 3/4", "5 1/2", "5.521"},
		{"A. Tomlinson: from squares of 5", half, 8, "5", "2", "2.146"},
		{"Quilting Board b10533, twice the unit and 1", half, 8, "10", "4 1/2", "4.646"},
		{"Quilting Board b10533, twice the unit and 1", half, 8, "15", "7", "7.146"},
		{"A. Tomlinson", half, 4, "5 1/2", "3 1/2", "3.536"},
		{"Quilted Diary", half, 4, "4 1/2", "2 1/2", "2.828"},
		{"Disappearing Pinwheel, OHCE slides: about 6 1/4", half, 4, "9 1/2", "6 1/4", "6.364"},
		{"Quiltville: finished 4, and 1 1/4", quarters, 0, "5 1/4", "4 1/2", "4.543"},
		{"Alamosa Quilter: finished 2, and 1 1/2", quarters, 0, "3 1/2", "2 1/2", "2.793"},
		{"ukqu.co.uk, block 4", quarters, 0, "7 1/2", "6 1/2", "6.793"},
		{"Super Scrappy 2019/08", quarters, 0, "6", "5", "5.293"},
		{"Open Gate Quilts", quarters, 0, "5", "4", "4.293"},
		{"Super Scrappy 2019/08, small", quarters, 0, "3", "2", "2.293"},
	} {
		t.Run(row.source, func(t *testing.T) {
			b := made(t, Recipe{[]Step{row.step(t, row.atATime, row.size, row.trim)}}, quarter)
			assert.Equal(t, row.before, inches(b.Steps[0].Before))
			assertSquare(t, row.trim, b.Block().Size, "trimmed")
			assert.Equal(t, b.Steps[0].Before-in(t, row.trim), b.Steps[0].Loss.Width)
		})
	}
}

// The squares worked out for a trim are the published ones where the trade adds
// the least: 7/8 for two at a time, 1 3/4 for eight, 1 1/4 for hourglasses, on
// the finished size (smartplatequilting.com, A. Tomlinson, Quiltville).
func TestSquaresOnTheRulerForATrim(t *testing.T) {
	for _, row := range []struct {
		step Step
		want string
	}{
		{halfSquareStep(t, 2, "0", "3 1/2"), "3 7/8"},
		{halfSquareStep(t, 2, "0", "5 1/2"), "5 7/8"},
		{halfSquareStep(t, 8, "0", "5 1/2"), "11 3/4"},
		{halfSquareStep(t, 8, "0", "2 1/2"), "5 3/4"},
		{halfSquareStep(t, 4, "0", "3 1/2"), "5 1/2"},
		{halfSquareStep(t, 4, "0", "2 1/2"), "4 1/8"},
		{quarterSquareStep(t, "0", "4 1/2"), "5 1/4"},
		{quarterSquareStep(t, "0", "2 1/2"), "3 1/4"},
	} {
		b := made(t, Recipe{[]Step{row.step}}, quarter)
		assert.Equal(t, in(t, row.want), b.Steps[0].Square, "%s", b.Steps[0].Square.Show(measure.Inches))
	}
	// 9 cm with seams of 0.75 cm: 9 + 0.75√2 = 10.061 cm (hand-worked).
	nine := Step{Name: "a", Do: HalfSquare, Roles: [2]string{"print", "ground"}, AtATime: 2, TrimTo: 90 * mm}
	b, err := Make(Recipe{[]Step{nine}}, mm*15/2, measure.Centimetres)
	assert.NoError(t, err)
	assert.Equal(t, 105*mm, b.Steps[0].Square)
}

// The rule that divides a unit by 0.64 for four at a time cuts too small for
// small units and wastes cloth on large ones: 2 1/2 needs 4.036, the rule gives
// 3.906 and units of 2.409; 6 1/2 needs 9.692, the rule gives 10.156.
func TestFourAtATimeIsNotTheRuleOfPointSixFour(t *testing.T) {
	rule := func(unit string) measure.Length { return in(t, unit).Scale(100, 64, measure.Nearest) }
	assert.Equal(t, "2.409", inches(HalfSquareSide(rule("2 1/2"), quarter, 4)))
	assert.Equal(t, "4.036", inches(HalfSquareCut(in(t, "2 1/2"), quarter, 4)))
	assert.Equal(t, "9.692", inches(HalfSquareCut(in(t, "6 1/2"), quarter, 4)))
	assert.Equal(t, "10.156", inches(rule("6 1/2")))

	_, err := Make(Recipe{[]Step{halfSquareStep(t, 4, "3.906", "2 1/2")}}, quarter, measure.Inches)
	assert.EqualError(t, err, "step half-squares: squares of ≈ 3 7/8 in give half-square triangles made 4 at a time of ≈ 2 7/16 in, "+
		"≈ 1/16 in too small to trim to 2 1/2 in; cut squares of 4 1/8 in")
}

// The least square gives the unit back, and a tick less does not.
func TestLeastSquaresAreTheLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.SampledFrom(seams).Draw(t, "seam")
		unit := measure.Length(rapid.Int64Range(int64(measure.Inch), int64(40*measure.Inch)).Draw(t, "unit"))
		for _, n := range []int{2, 4, 8} {
			cut := HalfSquareCut(unit, s, n)
			assert.GreaterOrEqual(t, HalfSquareSide(cut, s, n), unit)
			assert.Less(t, HalfSquareSide(cut-1, s, n), unit)
		}
		cut := QuarterSquareCut(unit, s)
		assert.Equal(t, unit, QuarterSquareSide(cut, s))
		assert.Less(t, QuarterSquareSide(cut-1, s), unit)
	})
}

// Yields, cuts and seams of one run, of squares of 6 in with seams of 1/4 in: the
// diagonal is 6√2 = 8.485, a seam beside it 7.985; an hourglass's second seams
// run beside the diagonal of 5.646, 7.485 long (hand-worked).
func TestOneRunOfTriangles(t *testing.T) {
	for _, row := range []struct {
		step        Step
		yield, cuts int
		seams       [][]string
		all         string
	}{
		{halfSquareStep(t, 2, "6", "0"), 2, 1, [][]string{{"7.985", "7.985"}}, "15.971"},
		{halfSquareStep(t, 4, "6", "0"), 4, 2, [][]string{{"6", "6", "6", "6"}}, "24"},
		{halfSquareStep(t, 8, "6", "0"), 8, 4, [][]string{{"7.985", "7.985", "7.985", "7.985"}}, "31.941"},
		{quarterSquareStep(t, "6", "0"), 2, 2, [][]string{{"7.985", "7.985"}, {"7.485", "7.485"}}, "30.941"},
	} {
		b := made(t, Recipe{[]Step{row.step}}, quarter)
		got := b.Steps[0]
		assert.Equal(t, row.yield, got.Yield)
		assert.Equal(t, row.cuts, got.RunCuts)
		var seams [][]string
		for _, join := range got.Joins {
			var lengths []string
			for _, length := range join.Lengths {
				lengths = append(lengths, inches(length))
			}
			seams = append(seams, lengths)
		}
		assert.Equal(t, row.seams, seams)
		assert.Equal(t, row.all, inches(got.SeamLength()))
		assert.Equal(t, got.SeamLength().Scale(1, int64(row.yield), measure.Nearest), b.SeamLength(), "a block of one unit bears its share")
		assert.Equal(t, []Cloth{{"print", sides(t, "6", "6"), 1}, {"ground", sides(t, "6", "6"), 1}}, got.Cloth())
		assert.Zero(t, got.Loss)
		assert.InDelta(t, int64(got.Before), int64(b.Block().Size.Width), 1)
	}
}

func TestHalfSquareUnitHasThePrintAtTheTopLeft(t *testing.T) {
	want := triangles()
	want.Patches[0].Role, want.Patches[1].Role = "print", "ground"
	want.Seams[0].A, want.Seams[0].B = want.Seams[0].B, want.Seams[0].A
	assert.Equal(t, want, HalfSquareUnit("print", "ground", in(t, "2"), 0))
}

// An hourglass has the print at its top and bottom, a quarter of it each, and
// looks the same after half a turn (hand-worked).
func TestQuarterSquareUnitHasThePrintAtTopAndBottom(t *testing.T) {
	u := QuarterSquareUnit("print", "ground", in(t, "4"), 0, 1)
	assertPatchesFill(t, u)
	assertSeamsSeparate(t, u)
	for at, role := range map[Point]string{pt(16, 4): "print", pt(16, 28): "print", pt(4, 16): "ground", pt(28, 16): "ground"} {
		assert.Equal(t, []string{role}, u.rolesAt(at))
	}
	for _, p := range u.Patches {
		assert.Equal(t, squareInches(4), p.Area())
	}
	assert.Equal(t, picture(u), picture(u.Turned(2)))
	for _, s := range u.Seams[:2] {
		middle := Point{(s.A.X + s.B.X) / 2, (s.A.Y + s.B.Y) / 2}
		assert.Equal(t, []string{"print"}, u.rolesAt(middle.beside(s.Lean)), "the first way is toward the print")
	}
}

// Where a side is an odd number of ticks an hourglass gives up one.
func TestQuarterSquareUnitsMeetInATick(t *testing.T) {
	u := QuarterSquareUnit("print", "ground", 2*measure.Inch+1, 0, 1)
	assertSquare(t, "2", u.Size, "unit")
	assertPatchesFill(t, u)
}

// The two half-square triangles of an hourglass lie with unlike roles facing, so
// their seams nest, whichever role they are pressed to (common practice).
func TestHourglassNestsAtItsCentre(t *testing.T) {
	b := made(t, Hourglass(in(t, "4 1/2")), quarter)
	for _, w := range []Way{{false, false}, {true, false}, {false, true}, {true, true}} {
		assert.Equal(t, Tally{Nest: 1}, b.BlockTally(w))
	}
	assert.Equal(t, in(t, "4").OverRoot2(measure.Nearest), b.Steps[0].Joins[1].Matches[0].At, "half way along the long seam, finished")
}

// Words at the iron for triangles.
func TestTrianglesArePressedTowardARole(t *testing.T) {
	half := made(t, HalfSquares(in(t, "3 1/2"), 2), quarter)
	assert.Equal(t, []Choice{{Step: "half-squares"}}, half.Choices)
	assert.Equal(t, "toward print", half.Direction(half.Choices[0], Way{false}))
	assert.Equal(t, "toward ground", half.Direction(half.Choices[0], Way{true}))
	quarters := made(t, Hourglass(in(t, "3 1/2")), quarter)
	assert.Equal(t, "toward ground", quarters.Direction(quarters.Choices[0], Way{true, true}))
	assert.Equal(t, "right", quarters.Direction(quarters.Choices[1], Way{true, true}))
	assert.Equal(t, "left", quarters.Direction(quarters.Choices[1], nil))
}

func TestTriangleFaults(t *testing.T) {
	with := func(s Step, change func(*Step)) Step { change(&s); return s }
	for _, row := range []struct {
		step Step
		key  string
		want string
	}{
		{halfSquareStep(t, 3, "6", "3"), "at-a-time", "half-square triangles cannot be made 3 at a time; make 2, 4 or 8 at a time"},
		{halfSquareStep(t, 2, "0", "0"), "", "neither the squares nor the units have a size; say to what size the units are trimmed, or what squares to cut"},
		{with(halfSquareStep(t, 2, "4", "0"), func(s *Step) { s.Size.Height = in(t, "5") }), "size", "half-square triangles made 2 at a time cannot be made from pieces of 4 × 5 in; cut squares"},
		{with(halfSquareStep(t, 2, "4", "0"), func(s *Step) { s.Roles[1] = "" }), "half-square", "the triangles need two roles; say what both fabrics do in the block, such as print and ground"},
		{with(quarterSquareStep(t, "4", "0"), func(s *Step) { s.Roles[1] = "print" }), "quarter-square", "both triangles are print; give two roles; they may hold the same fabric"},
		{halfSquareStep(t, 2, "3 7/8", "3 3/4"), "size", "squares of 3 7/8 in give half-square triangles made 2 at a time of ≈ 3 1/2 in, ≈ 1/4 in too small to trim to 3 3/4 in; cut squares of 4 1/8 in"},
		{quarterSquareStep(t, "4", "3 1/2"), "size", "squares of 4 in give quarter-square triangles of ≈ 3 5/16 in, ≈ 3/16 in too small to trim to 3 1/2 in; cut squares of 4 1/4 in"},
		{halfSquareStep(t, 2, "0", "1/2"), "trim", "a triangle unit of 1/2 × 1/2 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{halfSquareStep(t, 2, "3/4", "0"), "trim", "a triangle unit of ≈ 3/8 × 3/8 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
		{halfSquareStep(t, 8, "3/8", "0"), "size", "a piece of 3/8 × 3/8 in has nothing left to show: its two seams take 1/2 in; make it wider than two seams"},
	} {
		_, err := Make(Recipe{[]Step{row.step}}, quarter, measure.Inches)
		assert.EqualError(t, err, "step "+row.step.Name+": "+row.want)
		if fault, ok := err.(*Fault); assert.True(t, ok) {
			assert.Equal(t, row.key, fault.Key)
		}
	}
}
