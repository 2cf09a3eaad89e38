package measure_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

func TestShow(t *testing.T) {
	// Hand-worked.
	for _, c := range []struct {
		length         measure.Length
		inches, centis string
	}{
		{0, "0 in", "0 cm"},
		{8 * in, "8 in", "≈ 20.3 cm"},
		{8*in + in/2, "8 1/2 in", "≈ 21.6 cm"},
		{8*in + 9*in/16, "8 9/16 in", "≈ 21.7 cm"},
		{5 * in, "5 in", "12.7 cm"},
		{in / 16, "1/16 in", "≈ 0.2 cm"},
		{in / 32, "≈ 1/16 in", "≈ 0.1 cm"},        // a half goes up
		{in/32 - 1, "≈ 0 in", "≈ 0.1 cm"},         // 0.794 mm
		{8*in + in/3, "≈ 8 5/16 in", "≈ 21.2 cm"}, // 8.333 in, 21.167 cm
		{1*in - 1, "≈ 1 in", "≈ 2.5 cm"},
		{205 * mm, "≈ 8 1/16 in", "20.5 cm"}, // 8.071 in
		{7*mm + mm/2, "≈ 5/16 in", "≈ 0.8 cm"},
		{1 * m, "≈ 39 3/8 in", "100 cm"}, // 39.370 in
		{-8*in - in/2, "-8 1/2 in", "≈ -21.6 cm"},
		{-1, "≈ 0 in", "≈ 0 cm"},
	} {
		t.Run(c.length.String(), func(t *testing.T) {
			assert.Equal(t, c.inches, c.length.Show(measure.Inches))
			assert.Equal(t, c.centis, c.length.Show(measure.Centimetres))
		})
	}
}

func TestShowYardage(t *testing.T) {
	// Hand-worked.
	for _, c := range []struct {
		length measure.Length
		unit   measure.Unit
		want   string
	}{
		{0, measure.Inches, "0 yd"},
		{99 * in, measure.Inches, "2 3/4 yd"},
		{60 * in, measure.Inches, "1 2/3 yd"},
		{12 * in, measure.Inches, "1/3 yd"},
		{36 * in, measure.Inches, "1 yd"},
		{4*in + in/2, measure.Inches, "1/8 yd"},
		{148 * in, measure.Inches, "≈ 4 1/8 yd"}, // 4.111
		{1 * in, measure.Inches, "≈ 0 yd"},
		{120 * cm, measure.Centimetres, "1.2 m"},
		{25 * cm, measure.Centimetres, "0.25 m"},
		{3 * m, measure.Centimetres, "3 m"},
		{36 * in, measure.Centimetres, "≈ 0.91 m"},
		{5 * mm, measure.Centimetres, "≈ 0.01 m"},
		{4 * mm, measure.Centimetres, "≈ 0 m"},
		{0, measure.Centimetres, "0 m"},
	} {
		t.Run(fmt.Sprint(c.length, " ", c.unit), func(t *testing.T) {
			assert.Equal(t, c.want, c.length.ShowYardage(c.unit))
		})
	}
}

// TestShownMeasuresAreTrueOrMarked reads what is shown back: unmarked it must be
// the length itself, marked it must be another, and no further off than half
// the step.
func TestShownMeasuresAreTrueOrMarked(t *testing.T) {
	for name, c := range map[string]struct {
		show func(measure.Length) string
		half measure.Length
	}{
		"inches":      {func(l measure.Length) string { return l.Show(measure.Inches) }, in / 32},
		"centimetres": {func(l measure.Length) string { return l.Show(measure.Centimetres) }, mm / 2},
		"yards":       {func(l measure.Length) string { return l.ShowYardage(measure.Inches) }, yd / 16},
		"metres":      {func(l measure.Length) string { return l.ShowYardage(measure.Centimetres) }, cm / 2},
	} {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				grid := rapid.SampledFrom([]measure.Length{1, in / 64, in / 16, mm / 10, mm, cm, yd / 8, yd / 3}).Draw(t, "grid")
				l := grid.Times(rapid.IntRange(1, 3000).Draw(t, "steps"))
				exact, marked := strings.CutPrefix(c.show(l), "≈ ")
				shown, err := measure.ParseAllowZero(exact, measure.Inches)
				require.NoError(t, err)
				assert.Equal(t, shown != l, marked)
				assert.LessOrEqual(t, max(shown-l, l-shown), c.half)
			})
		})
	}
}

func TestShowHoldsAtTheEndsOfTheType(t *testing.T) {
	for _, u := range []measure.Unit{measure.Inches, measure.Centimetres} {
		assert.NotContains(t, measure.Length(math.MaxInt64).Show(u), "-")
		assert.Contains(t, measure.Length(math.MinInt64).Show(u), "-")
		assert.NotContains(t, measure.Length(math.MaxInt64).ShowYardage(u), "-")
	}
}
