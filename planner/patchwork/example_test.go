package patchwork_test

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Half-square triangles eight at a time for pinwheels that take four: they are
// made for the lot, and a recut loses what its seams take.
func ExampleMake() {
	recipe := patchwork.PinwheelRecut(25*measure.Inch/4, 8, 0, nil)
	build, err := patchwork.Make(recipe, measure.Inch/4, measure.Inches)
	if err != nil {
		fmt.Println(err)
		return
	}
	triangles := build.Steps[0]
	fmt.Println("squares of", triangles.Square.Show(measure.Inches), "give", triangles.Yield, "units of", triangles.Before.Show(measure.Inches))
	fmt.Println("pinwheel", build.Steps[1].Unit.Size.Show(measure.Inches), "raw, rebuilt", build.Block().Size.Show(measure.Inches))
	for _, batch := range build.Batches(5, func(int, string) string { return "kelp" }) {
		fmt.Println(batch.Step+":", batch.Units, "units in", batch.Runs, "runs")
	}
	// Output:
	// squares of 13 1/4 in give 8 units of ≈ 6 1/4 in
	// pinwheel 12 × 12 in raw, rebuilt 11 × 11 in
	// half-squares: 20 units in 3 runs
}

// Rows that do not fit together are refused, with what they measure.
func ExampleFault() {
	cut := func(name string, width measure.Length) patchwork.Step {
		return patchwork.Step{Name: name, Do: patchwork.Cut, Role: name, Size: measure.Size{Width: width, Height: 4 * measure.Inch}}
	}
	recipe := patchwork.Recipe{Steps: []patchwork.Step{
		cut("tide", 25*measure.Inch/2),
		cut("dune", 12*measure.Inch),
		{Name: "block", Do: patchwork.Sew, Rows: [][]patchwork.Cell{{{Of: "tide"}}, {{Of: "dune"}}}},
	}}
	_, err := patchwork.Make(recipe, measure.Inch/4, measure.Inches)
	fmt.Println(err)
	// Output:
	// step block: row 1 is 12 1/2 in long, the next one 12 in: 1/2 in too short; rows that are sewn together need equal lengths
}
