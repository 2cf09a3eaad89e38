package measure_test

import (
	"fmt"

	"quiltrun/planner/measure"
)

func ExampleParse() {
	for _, text := range []string{"8½", "8 1/2 in", "20,5 cm", "1 1/4 yd", "2 1/2 30"} {
		l, err := measure.Parse(text, measure.Inches)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 8 1/2 in
	// 8 1/2 in
	// 20.5 cm
	// 45 in
	// "2 1/2 30": a second number follows; write one measure, such as 8 1/2 or 8.5
}

func ExampleLength_Show() {
	third := measure.Inch / 3
	fmt.Println(third, "shown as", third.Show(measure.Inches))
	fmt.Println(3*third, "shown as", (3 * third).Show(measure.Inches))
	// Output:
	// 1/3 in shown as ≈ 5/16 in
	// 1 in shown as 1 in
}

func ExampleLength_ShowYardage() {
	need := 93 * measure.Inch
	fmt.Println("buy", need.RoundUp(measure.Inches.ShopStep()).ShowYardage(measure.Inches))
	fmt.Println("buy", need.RoundUp(measure.Centimetres.ShopStep()).ShowYardage(measure.Centimetres))
	// Output:
	// buy 2 5/8 yd
	// buy 2.4 m
}

func ExampleParseSize() {
	sheet, err := measure.ParseSize("50 × 55 cm", measure.Inches)
	fmt.Println(sheet.Show(measure.Centimetres), err)
	fmt.Println(sheet.Turned().Show(measure.Centimetres))
	// Output:
	// 50 × 55 cm <nil>
	// 55 × 50 cm
}
