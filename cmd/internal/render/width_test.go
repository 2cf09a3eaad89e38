package render

import (
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// Columns are as terminals show these texts (from memory of common terminals,
// checked by eye): wide characters two, marks none, a flag and a joined emoji
// two in all, box drawing and ≈ one in every locale.
func TestWidthIsInColumnsOfATerminal(t *testing.T) {
	for text, want := range map[string]int{
		"": 0, "tide": 4, "藍": 2, "🧵 rose": 7, "cafe\u0301": 4, "🇳🇴": 2, "שלום": 4, "👩\u200d🌾": 2, "─": 1, "☐": 1, "≈ 8½": 4,
	} {
		assert.Equal(t, want, width(text), text)
	}
}

func TestCleanTakesOutWhatWouldSteerATerminal(t *testing.T) {
	for text, want := range map[string]string{
		"tide":              "tide",
		"\x1b[31mred":       "\uFFFD[31mred",
		"\u009b31mred":      "\uFFFD31mred",
		"two\nlines\tapart": "two lines apart",
		"\u202eevil":        "evil",
		"bell\a":            "bell\uFFFD",
		"bad\xff":           "bad\uFFFD",
		"🇳🇴 and cafe\u0301": "🇳🇴 and cafe\u0301",
		"שלום: 12":          "שלום" + leftToRight + ": 12",
		"שלום עולם 3":       "שלום עולם" + leftToRight + " 3",
		"שלום":              "שלום" + leftToRight,
	} {
		assert.Equal(t, want, Look{Unicode: true}.text(text), text)
	}
}

func TestPlainTerminalsGetASCII(t *testing.T) {
	assert.Equal(t, "[ ] ~ 8 1/2 x 9 in - 90 deg ...", Look{}.text("☐ ≈ 8½ × 9 in – 90° …"))
}

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
