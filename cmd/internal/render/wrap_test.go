package render

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

func TestWrapKeepsMeasuresWhole(t *testing.T) {
	for _, c := range []struct {
		text  string
		limit int
		want  []string
	}{
		{"cut 8 1/2 in wide", 10, []string{"cut", "8 1/2 in", "wide"}},
		{"of ≈ 8 1/2 × 9 in each", 12, []string{"of", "≈ 8 1/2 ×", "9 in each"}},
		{"of 10 11/16 in", 8, []string{"of", "10 11/16 in"}},
		{"it takes 3 h 20 min in all", 14, []string{"it takes", "3 h 20 min in", "all"}},
		{"a chance of 88 % now", 13, []string{"a chance of", "88 % now"}},
		{"strips of 1 1/2 in × 5 in each", 18, []string{"strips of", "1 1/2 in × 5 in", "each"}},
		{"strips of 1 1/2 in × 5 in each", 10, []string{"strips of", "1 1/2 in ×", "5 in each"}},
		{"cut 4 of 38 1/2 in for border", 16, []string{"cut", "4 of 38 1/2 in", "for border"}},
		{"cut 4 of 38 1/2 in for border", 9, []string{"cut", "4 of", "38 1/2 in", "for", "border"}},
		{"(made of 2) is 38 1/2 in, 1 left", 23, []string{"(made of 2) is", "38 1/2 in, 1 left"}},
		{"done and 1 left of it", 10, []string{"done and", "1 left of", "it"}},
		{"0 of 126 blocks, 0 of 2 quilts", 20, []string{"0 of 126 blocks,", "0 of 2 quilts"}},
		{"What to do: of " + together("38 1/2 in"), 12, []string{"What to do:", "of " + together("38 1/2 in")}},
		{together("Raw size: 38 1/2 in"), 12, []string{"Raw" + tied + "size:" + tied, together("38 1/2 in")}},
		{"turn 0° 180° / 180° 0°", 12, []string{"turn", "0° 180° /", "180° 0°"}},
		{"turn 0 deg 180 deg / 180 deg", 10, []string{"turn 0 deg", "180 deg /", "180 deg"}},
		{"12 oystercatchers", 14, []string{"12", "oystercatchers"}},
		{"estuary-lap-with-a-long-name", 12, []string{"estuary-lap-", "with-a-long-", "name"}},
		{"tide-01 2027-02-12", 8, []string{"tide-01", "2027-02-12"}},
		{"oystercatchers", 6, []string{"oyster", "catche", "rs"}},
		{"藍藍藍藍", 4, []string{"藍藍", "藍藍"}},
		{"🇳🇴🇳🇴🇳🇴", 4, []string{"🇳🇴🇳🇴", "🇳🇴"}},
		{"as it is", 0, []string{"as it is"}},
	} {
		assert.Equal(t, c.want, wrap(c.text, c.limit), c.text)
	}
}

func TestWrapLosesNothingAndKeepsToTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOfN(rapid.RuneFrom([]rune("ab-é藍🧵 ")), 0, 60, -1).Draw(t, "text")
		limit := rapid.IntRange(2, 30).Draw(t, "limit")
		lines := wrap(text, limit)
		for _, line := range lines {
			assert.LessOrEqual(t, width(line), limit)
		}
		squeezed := func(s string) string { return strings.Join(strings.Fields(s), "") }
		assert.Equal(t, squeezed(text), squeezed(strings.Join(lines, "")))
	})
}

func TestNumbersAreNeverCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		number := rapid.StringMatching(`[0-9]{1,12}(\.[0-9]{1,6}|/[0-9]{1,3})?`).Draw(t, "number")
		limit := rapid.IntRange(1, 8).Draw(t, "limit")
		lines := wrap("needs "+number+" of it", limit)
		found := 0
		for _, line := range lines {
			found += strings.Count(line, number)
		}
		assert.Equal(t, 1, found, "%q", lines)
		for _, line := range lines {
			assert.False(t, strings.ContainsFunc(line, unicode.IsControl))
		}
	})
}

// However narrow the page, a number, its fraction and its unit stay on one line;
// a size may end a line only behind its ×.
func TestMeasuresNeverBreakInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		measure := rapid.SampledFrom([]string{"38 1/2 in", "≈ 4 11/16 in", "20.5 cm", "3 h 20 min", "2 3/4 yd", "88 %"}).Draw(t, "measure")
		before := rapid.StringMatching(`([a-z]{1,9} ){0,4}([0-9]{1,3} of )?`).Draw(t, "before")
		after := rapid.StringMatching(`([;,.]|( × 5 in)|( [a-z]{1,9}){0,4})`).Draw(t, "after")
		text := before + measure + after
		if rapid.Bool().Draw(t, "tied") {
			text = together(text)
		}
		lines := wrap(text, rapid.IntRange(8, 40).Draw(t, "limit"))
		assert.Contains(t, untied(strings.Join(lines, "\n")), measure, "%q", lines)
	})
}
