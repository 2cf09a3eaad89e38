package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

// parse reads a measure of the charts below.
func parse(t *testing.T, text string) measure.Length {
	t.Helper()
	l, err := measure.Parse(text, measure.Inches)
	require.NoError(t, err)
	return l
}

func TestYardFractionsOfTheTradeCharts(t *testing.T) {
	// Scissortail Quilting, "Convert fabric measurements", and Quilting Board
	// t280955; thirds are shop cuts too.
	for yards, inches := range map[string]string{
		"1/8": "4.5", "1/4": "9", "1/3": "12", "3/8": "13.5", "1/2": "18", "5/8": "22.5", "2/3": "24", "3/4": "27", "7/8": "31.5",
	} {
		t.Run(yards, func(t *testing.T) {
			l := parse(t, yards+" yd")
			assert.Equal(t, parse(t, inches), l)
			assert.Equal(t, inches, l.Decimal(measure.Inches, 6))
			assert.Equal(t, yards+" yd", l.ShowYardage(measure.Inches))
		})
	}
}

func TestYardFractionsThatAChartMisprints(t *testing.T) {
	// Lovely Frankenstein Designs, August 2011, in whole inches: 3/8 yd is 13.5,
	// 2/3 yd is 24 and 1/8 yd is 4.5.
	for yards, inches := range map[string]string{"3/8 yd": "15 in", "2/3 yd": "25 in", "1/8 yd": "5 in"} {
		t.Run(yards, func(t *testing.T) {
			assert.NotEqual(t, parse(t, inches), parse(t, yards))
		})
	}
}

func TestThirdsOfAYardAreNotTheirPrintedDecimals(t *testing.T) {
	// The Spruce, conversion chart for quilters, prints .333 and .66: .66 yd is
	// 23.76 in, a quarter of an inch short of 2/3 yd (hand-worked: 0.24).
	assert.Equal(t, "23.76", parse(t, "0.66 yd").Decimal(measure.Inches, 6))
	assert.Equal(t, "0.24", (parse(t, "2/3 yd")-parse(t, ".66 yd")).Decimal(measure.Inches, 6))
	assert.NotEqual(t, parse(t, "1/3 yd"), parse(t, "0.333 yd"))
}

func TestInchDecimalsOfTheTradeChart(t *testing.T) {
	// Catbird Quilts, "Fraction conversions": all fifteen sixteenths.
	for decimal, fraction := range map[string]string{
		".0625": "1/16", ".125": "1/8", ".1875": "3/16", ".25": "1/4", ".3125": "5/16",
		".375": "3/8", ".4375": "7/16", ".5": "1/2", ".5625": "9/16", ".625": "5/8",
		".6875": "11/16", ".75": "3/4", ".8125": "13/16", ".875": "7/8", ".9375": "15/16",
	} {
		t.Run(fraction, func(t *testing.T) {
			l := parse(t, decimal)
			assert.Equal(t, parse(t, fraction), l)
			assert.Equal(t, fraction+" in", l.Show(measure.Inches))
			assert.Equal(t, "0"+decimal, l.Decimal(measure.Inches, 4))
		})
	}
}

func TestInchesAndCentimetresConvertExactly(t *testing.T) {
	// Tilkkunen, "Fabric size calculations", and NIST SP 811: 2.54 cm, 0.9144 m.
	// The Next Stitch, "A yarn about yards": an eighth and a quarter of a yard
	// are 11.43 and 22.86 cm, bought as 15 and 25 in steps of 5.
	assert.Equal(t, "2.54", parse(t, "1 in").Decimal(measure.Centimetres, 6))
	assert.Equal(t, parse(t, "0.9144 m"), parse(t, "1 yd"))
	assert.Equal(t, "11.43", parse(t, "1/8 yd").Decimal(measure.Centimetres, 6))
	assert.Equal(t, "22.86", parse(t, "1/4 yd").Decimal(measure.Centimetres, 6))
	assert.Equal(t, parse(t, "15 cm"), parse(t, "1/8 yd").RoundUp(5*cm))
	assert.Equal(t, parse(t, "25 cm"), parse(t, "1/4 yd").RoundUp(5*cm))

	// A shop's imperial to metric guide prints both 12.7 and 12.75 cm for 5 in.
	assert.Equal(t, parse(t, "12.7 cm"), parse(t, "5 in"))
	assert.NotEqual(t, parse(t, "12.75 cm"), parse(t, "5 in"))
}

func TestMetricSeamIsNearerToAQuarterInch(t *testing.T) {
	// Lone Sock Productions, August 2010, calls 7.5 mm nearer to 3/8 in.
	// Hand-worked: 7.5 − 6.35 = 1.15; 9.525 − 7.5 = 2.025.
	seam := parse(t, "7.5 mm")
	assert.Equal(t, "0.115", (seam-parse(t, "1/4")).Decimal(measure.Centimetres, 6))
	assert.Equal(t, "0.2025", (parse(t, "3/8")-seam).Decimal(measure.Centimetres, 6))
	assert.NotEqual(t, parse(t, "6 mm"), parse(t, "1/4")) // the usual rounding of it
}

func TestMetricSquaresSewnWithAnInchFoot(t *testing.T) {
	// The same page's cot quilt: squares cut 9.5 cm for nine-patches of 24 cm
	// finished with seams of 7.5 mm, sewn with a 1/4 in foot. Hand-worked:
	// 3·(95 − 12.7) = 246.9 mm; 6.9 too big, 55.2 over eight blocks.
	finished := func(cut, seam measure.Length) measure.Length { return (cut - 2*seam).Times(3) }
	cut := parse(t, "9.5 cm")
	assert.Equal(t, parse(t, "24 cm"), finished(cut, parse(t, "7.5 mm")))
	wide := finished(cut, parse(t, "1/4 in"))
	assert.Equal(t, parse(t, "246.9 mm"), wide)
	assert.Equal(t, parse(t, "6.9 mm"), wide-parse(t, "24 cm"))
	assert.Equal(t, parse(t, "55.2 mm"), (wide - parse(t, "24 cm")).Times(8))

	// And its second trap: 8 cm taken for the cut size rather than the finished.
	assert.Equal(t, parse(t, "19.5 cm"), finished(parse(t, "8 cm"), parse(t, "7.5 mm")))
}

func TestClothSoldByEighthsOfAYard(t *testing.T) {
	// Worked examples of backing: 65 in across twice is 130 in, 3 5/8 yd, and 78
	// twice 4 1/3 yd (Quilting Board 7400852); 148 in is 4 1/4 yd to the quarter
	// (petiterepublic.com); to the eighth it is 4 1/8.
	assert.Equal(t, "3 5/8 yd", parse(t, "130 in").RoundUp(measure.Inches.ShopStep()).ShowYardage(measure.Inches))
	assert.Equal(t, "4 1/3 yd", parse(t, "156 in").ShowYardage(measure.Inches))
	assert.Equal(t, "4 1/4 yd", parse(t, "148 in").RoundUp(yd/4).ShowYardage(measure.Inches))
	assert.Equal(t, "4 1/8 yd", parse(t, "148 in").RoundUp(measure.Inches.ShopStep()).ShowYardage(measure.Inches))
}
