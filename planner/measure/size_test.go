package measure_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestParseSize(t *testing.T) {
	// Hand-worked; a bare number is in inches. 18 × 22 in and 50 × 55 cm are the
	// fat quarters of the trade.
	quarter, metric := measure.Size{Width: 18 * in, Height: 22 * in}, measure.Size{Width: 50 * cm, Height: 55 * cm}
	for text, want := range map[string]measure.Size{
		"18 x 22": quarter, "18x22": quarter, "18 X 22": quarter, "18 × 22": quarter, "18×22": quarter,
		"18 × 22 in": quarter, "18 in x 22 in": quarter, `18" x 22"`: quarter, "18 by 22": quarter, "18″ × 22″": quarter,
		"18 in x 22": quarter, "  18 x 22  ": quarter, "18\u00a0×\u00a022\u202fin": quarter, "18 BY 22": quarter,
		"1/2 yd x 22 in": quarter,
		"50 x 55 cm":     metric, "50 × 55 cm": metric, "50 cm x 55 cm": metric, "500 mm x 55 cm": metric, "0,5 x 0,55 m": metric,
		"5": {Width: 5 * in, Height: 5 * in}, "5 in": {Width: 5 * in, Height: 5 * in}, "12,7 cm": {Width: 5 * in, Height: 5 * in},
		"2 1/2 x 42": {Width: 2*in + in/2, Height: 42 * in}, "2½×42": {Width: 2*in + in/2, Height: 42 * in},
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.ParseSize(text, measure.Inches)
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

// Hand-worked: 12.7 cm is 5 in, 5.08 cm is 2 in.
func TestWordsNameASquareByItsSide(t *testing.T) {
	square, oblong := measure.Size{Width: 5 * in, Height: 5 * in}, measure.Size{Width: 5 * in, Height: 2 * in}
	assert.Equal(t, "5 in square", square.Words(measure.Inches))
	assert.Equal(t, "12.7 cm square", square.Words(measure.Centimetres))
	assert.Equal(t, oblong.Show(measure.Inches), oblong.Words(measure.Inches))
}

func TestBareSizeIsInTheJobsUnit(t *testing.T) {
	for text, want := range map[string]measure.Size{
		"50 x 55":    {Width: 50 * cm, Height: 55 * cm},
		"50 cm x 55": {Width: 50 * cm, Height: 55 * cm},
		"18 x 22 in": {Width: 18 * in, Height: 22 * in},
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.ParseSize(text, measure.Centimetres)
			require.NoError(t, err)
			assert.Equal(t, want, got)
		})
	}
}

func TestParseSizeRefuses(t *testing.T) {
	for text, reason := range map[string]string{
		"": "a width and a height", "x": "a width and a height", "18 x": "a width and a height",
		"x 22": "a width and a height", "18 x 22 x 2": "a width and a height", "18 xx 22": "a width and a height",
		"0 x 22": "more than 0", "18 x 0": "more than 0", "0": "more than 0", "0x10": "more than 0",
		"-18 x 22": "cannot be negative", "18 x -22": "cannot be negative",
		"1 yd x 42": "the second measure has no unit", "50 cm x 55": "the second measure has no unit",
		"18 22": "second number", "18 * 22": "is not a unit", "18 x 22 ft": "feet", "wide x tall": "begins with a number",
		"1,000 x 5": "thousands", "18 x 1001 m": "longer than 1000 m", "1001 m x 18 in": "longer than 1000 m",
		"≈ 18 × 22 in": "≈ marks",
	} {
		t.Run(text, func(t *testing.T) {
			got, err := measure.ParseSize(text, measure.Inches)
			var syntax *measure.SyntaxError
			require.ErrorAs(t, err, &syntax)
			assert.Contains(t, syntax.Reason, reason)
			assert.Equal(t, text, syntax.Text)
			assert.Zero(t, got)
		})
	}
}

func TestSizeShow(t *testing.T) {
	// Hand-worked.
	size := measure.Size{Width: 8*in + in/2, Height: 9 * in}
	assert.Equal(t, "8 1/2 × 9 in", size.Show(measure.Inches))
	assert.Equal(t, "≈ 21.6 × 22.9 cm", size.Show(measure.Centimetres)) // 21.59 and 22.86
	assert.Equal(t, "≈ 8 5/16 × 9 in", measure.Size{Width: 8*in + in/3, Height: 9 * in}.Show(measure.Inches))
	assert.Equal(t, "≈ 9 × 8 5/16 in", measure.Size{Width: 9 * in, Height: 8*in + in/3}.Show(measure.Inches))
	assert.Equal(t, "0 × 0 in", measure.Size{}.Show(measure.Inches))
}

func TestSizeTurnedSwapsTheSides(t *testing.T) {
	size := measure.Size{Width: 18 * in, Height: 22 * in}
	assert.Equal(t, measure.Size{Width: 22 * in, Height: 18 * in}, size.Turned())
	assert.Equal(t, size, size.Turned().Turned())
}

func TestSizeOnTheRulersGridReadsBackAsShown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.IntRange(1, 10_000)
		size := measure.Size{
			Width:  (in / 16).Times(side.Draw(t, "width")),
			Height: (in / 16).Times(side.Draw(t, "height")),
		}
		got, err := measure.ParseSize(size.Show(measure.Inches), measure.Centimetres)
		require.NoError(t, err)
		assert.Equal(t, size, got)
	})
}
