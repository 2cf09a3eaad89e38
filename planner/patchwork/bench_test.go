package patchwork

import (
	"testing"

	"quiltrun/planner/measure"
)

// sixtyFour is a block of 64 pieces in eight roles, its four quarters sewn as
// units of their own, then recut in thirds, turned and sewn.
func sixtyFour() Recipe {
	var steps []Step
	roles := []string{"a", "b", "c", "d", "e", "f", "g", "h"}
	for _, role := range roles {
		steps = append(steps, cutSquare(role, 3*measure.Inch))
	}
	quarters := []string{"north", "east", "south", "west"}
	for q, name := range quarters {
		grid := gridOf("", 4, 4)
		for r := range grid {
			for c := range grid[r] {
				grid[r][c] = Cell{Of: roles[(r*3+c+q*2)%len(roles)], Quarters: (r + c) % 4}
			}
		}
		steps = append(steps, Step{Name: name, Do: Sew, Rows: grid})
	}
	steps = append(steps, Step{Name: "units", Do: Sew, Rows: [][]Cell{
		{{Of: "north"}, {Of: "east"}}, {{Of: "west"}, {Of: "south"}},
	}})
	third := 3 * measure.Inch
	turns := [][]int{{0, 180, 90}, {180, 90, 180}, {270, 180, 0}}
	return recutAndSewn(Recipe{steps}, []From{{Centre, -third}, {Centre, third}}, turns)
}

// everyStep is a block of 64 pieces through steps of every kind: squares,
// half-square triangles eight at a time, hourglasses and slices of strip sets in
// four quarters, trimmed, recut in thirds, turned, exchanged and recut again.
func everyStep() Recipe {
	const side = 3 * measure.Inch
	strip := measure.Size{Width: 40 * measure.Inch, Height: side/2 + quarter}
	roles := [2]string{"print", "ground"}
	r := Recipe{Steps: []Step{
		cutSquare("print", side),
		{Name: "halves", Do: HalfSquare, Roles: roles, AtATime: 8, TrimTo: side},
		{Name: "hours", Do: QuarterSquare, Roles: roles, TrimTo: side},
		{Name: "dark", Do: Cut, Role: "print", Size: strip},
		{Name: "light", Do: Cut, Role: "ground", Size: strip},
		columnStep("set", "dark", "light"),
		{Name: "slices", Do: Subcut, Of: "set", Every: side},
	}}
	parts := []string{"print", "halves", "hours", "slices"}
	grid := gridOf("", 4, 4)
	for i := range grid {
		for j := range grid[i] {
			grid[i][j] = Cell{Of: parts[(i+2*j)%len(parts)], Quarters: i + 3*j}
		}
	}
	r.Steps = append(r.Steps,
		Step{Name: "quarter", Do: Sew, Rows: grid},
		Step{Name: "trim", Do: Trim, Of: "quarter", Size: square(10 * measure.Inch)},
		Step{Name: "four", Do: Sew, Rows: [][]Cell{{{Of: "trim"}, {Of: "trim", Quarters: 1}}, {{Of: "trim", Quarters: 3}, {Of: "trim", Quarters: 2}}}},
		Step{Name: "thirds", Do: Recut, Of: "four", Upright: Thirds(), Level: Thirds()},
		Step{Name: "moved", Do: Turn, Of: "thirds", Turns: middlesTurned(), Exchange: [][2]int{{1, 9}}},
		Step{Name: "sewn", Do: Sew, Of: "moved", Whole: true},
	)
	return recutAndSewn(r, EitherSide(measure.Inch), middlesTurned())
}

func BenchmarkMake(b *testing.B) {
	recipes := builtIns()
	recipes["64 pieces"] = sixtyFour()
	recipes["64 pieces, every step"] = everyStep()
	for name, r := range recipes {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Make(r, quarter, measure.Inches); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkBest(b *testing.B) {
	plain := PlainSquare(2 * measure.Inch)
	plain.Steps = append(plain.Steps, Step{Name: "top", Do: Sew, Rows: gridOf("square", 8, 8)})
	for name, r := range map[string]Recipe{
		"four-patch recut": FourPatchRecut(5*measure.Inch, measure.Inch, nil),
		"64 pieces":        sixtyFour(),
		"every step":       everyStep(),
		"pinwheel recut":   PinwheelRecut(6*measure.Inch, 2, 0, nil),
		"64 squares":       plain,
	} {
		build := made(b, r, quarter)
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				build.Best()
			}
		})
	}
}

// BenchmarkMeet is one join between two blocks of a top.
func BenchmarkMeet(b *testing.B) {
	build := made(b, FourPatchRecut(5*measure.Inch, measure.Inch, nil), quarter)
	block, w := build.Block(), build.Best()
	b.ReportAllocs()
	for b.Loop() {
		right, left := Crossings(block, RightSide, quarter, w), Crossings(block.Turned(2), LeftSide, quarter, w)
		Meet(right, left, block.Size.Height, quarter)
	}
}

func BenchmarkBulk(b *testing.B) {
	for name, r := range map[string]Recipe{
		"four-patch recut": FourPatchRecut(5*measure.Inch, measure.Inch, nil),
		"every step":       everyStep(),
	} {
		build := made(b, r, quarter)
		w := build.Best()
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				build.Bulk(w)
			}
		})
	}
}
