package cloth_test

import (
	"fmt"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// The pieces of one fabric, all together, on cloth of 40 in usable width.
func ExampleCutYardage() {
	inches := func(w, h measure.Length) measure.Size {
		return measure.Size{Width: w * measure.Inch / 2, Height: h * measure.Inch / 2}
	}
	wants := []cloth.Want{
		{Name: "squares", Size: inches(14, 14), Count: 20},
		{Name: "cornerstones", Size: inches(5, 5), Count: 8},
	}
	plan, err := cloth.CutYardage(wants, 40*measure.Inch, cloth.Settings{Style: cloth.Simple})
	if err != nil {
		fmt.Println(err)
		return
	}
	u := measure.Inches
	fmt.Printf("%s, and no plan takes less than %s; %d ruler cuts\n", plan.Length.Show(u), plan.Bound.Show(u), plan.Cuts)
	for _, step := range plan.Steps {
		fmt.Printf("%d of %s in %d stack:", step.Count, step.From.Show(u), step.Stacks)
		for _, m := range step.Makes {
			switch m.Want {
			case cloth.Further:
				fmt.Printf(" %d of %s to cut further;", m.Count, m.Size.Show(u))
			case cloth.Left:
				fmt.Printf(" %d of %s left over;", m.Count, m.Size.Show(u))
			default:
				fmt.Printf(" %d %s;", m.Count, wants[m.Want].Name)
			}
		}
		fmt.Printf(" %d cuts\n", step.Cuts)
	}
	// Output:
	// 28 in, and no plan takes less than 28 in; 14 ruler cuts
	// 1 of 40 × 28 in in 1 stack: 4 of 40 × 7 in to cut further; 5 cuts
	// 4 of 40 × 7 in in 1 stack: 20 squares; 4 of 5 × 7 in to cut further; 7 cuts
	// 4 of 5 × 7 in in 1 stack: 4 of 5 × 2 1/2 in to cut further; 4 of 5 × 4 1/2 in left over; 1 cuts
	// 4 of 5 × 2 1/2 in in 1 stack: 8 cornerstones; 1 cuts
}
