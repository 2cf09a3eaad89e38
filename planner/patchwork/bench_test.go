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

func BenchmarkMake(b *testing.B) {
	recipes := builtIns()
	recipes["64 pieces"] = sixtyFour()
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
