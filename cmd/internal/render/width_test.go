package render

import (
	"testing"

	"github.com/stretchr/testify/assert"
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
