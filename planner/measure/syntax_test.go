package measure_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

func TestErrorQuotesTheTextAndSaysWhatWouldBeTaken(t *testing.T) {
	for text, want := range map[string]string{
		"2 1/2 30":  `"2 1/2 30": a second number follows; write one measure, such as 8 1/2 or 8.5`,
		`8" 1/2`:    `'8" 1/2': '" 1/2' is not a unit; write in, yd, mm, cm or m, as in 8 1/2 in or 20.5 cm`,
		"1,000":     `"1,000": the comma could mark thousands or decimals; write a thousand as 1000 and decimals with a point, as 1.0`,
		"-8":        `"-8": a measure cannot be negative; write it without the minus sign`,
		"1/0":       `"1/0": a fraction cannot have 0 below its stroke; write one such as 1/2`,
		"0":         `"0": a measure must be more than 0, such as 8 1/2 or 20.5 cm`,
		"2 km":      `"2 km": "km" is not a unit; write in, yd, mm, cm or m, as in 8 1/2 in or 20.5 cm`,
		"":          `"": nothing is written here; write a measure such as 8 1/2 in or 20.5 cm`,
		"8 \u00bdx": "\"8 ½x\": \"x\" is not a unit; write in, yd, mm, cm or m, as in 8 1/2 in or 20.5 cm",
	} {
		t.Run(text, func(t *testing.T) {
			_, err := measure.Parse(text, measure.Inches)
			assert.EqualError(t, err, want)
		})
	}
}

func TestErrorShowsWhatCannotBeSeen(t *testing.T) {
	for text, want := range map[string]string{
		"a\x00b":       `"a\x00b": `,
		"a\x1b[31m":    `"a\x1b[31m": `, // a terminal must not act on it
		"a\xffb":       `"a\xffb": `,
		"a\u200bb":     `"a\u200bb": `,
		"a\u202e8":     `"a\u202e8": `, // would write the rest backwards
		"a\nb":         `"a\nb": `,
		"藍 🧵":          `"藍 🧵": `,
		"a\u00a0b":     "\"a\u00a0b\": ",
		"a\u2028line":  `"a\u2028line": `,
		"it's":         `"it's": `,
		`it's 8" wide`: `'it's 8" wide': `,
	} {
		t.Run(want, func(t *testing.T) {
			_, err := measure.Parse(text, measure.Inches)
			require.Error(t, err)
			assert.True(t, strings.HasPrefix(err.Error(), want), err.Error())
		})
	}
}

func TestErrorLeavesOutTheMiddleOfALongText(t *testing.T) {
	text := strings.Repeat("a", 100_000) + strings.Repeat("é", 100_000)
	_, err := measure.Parse(text, measure.Inches)
	var syntax *measure.SyntaxError
	require.ErrorAs(t, err, &syntax)
	assert.Equal(t, text, syntax.Text)
	assert.Contains(t, err.Error(), `"`+strings.Repeat("a", 30)+"…"+strings.Repeat("é", 30)+`"`)
	assert.Less(t, len(err.Error()), 300)
}
