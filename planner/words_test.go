package planner

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"
)

// The count is that of the table in CSS Color Module Level 4, section 6.1; its
// newest name is rebeccapurple, and seven greys are spelled both ways.
func TestTheNamedColoursAreThoseOfCSS(t *testing.T) {
	assert.Len(t, colourNames(), 148)
	greys := 0
	for _, name := range colourNames() {
		if strings.Contains(name, "grey") {
			greys++
			assert.True(t, isColour(strings.Replace(name, "grey", "gray", 1)), name)
		}
	}
	assert.Equal(t, 7, greys)
	for _, colour := range []string{"rebeccapurple", "SlateGray", "#2e6f57", "#FFF"} {
		assert.True(t, isColour(colour), colour)
	}
	for _, none := range []string{"", "#", "#ffff", "#gggggg", "2e6f57", "#2e6f57ff", "transparent", "currentcolor", "sea"} {
		assert.False(t, isColour(none), none)
	}
}

// Hand-worked: an exchange of neighbours is one slip, a third of the longer word
// is the most.
func TestTheNearestNameIsWithinASlip(t *testing.T) {
	names := []string{"colourways", "print", "ground", "藍", "Sea glass"}
	for word, want := range map[string]string{
		"colorways": "colourways", "COLOURWAYS": "colourways", "clourways": "colourways",
		"pritn": "print", "prnt": "print", "groundd": "ground", "ruond": "ground", "sea gls": "Sea glass",
		"colour": "", "x": "", "藍色": "藍", "": "", strings.Repeat("print", 40): "",
	} {
		assert.Equal(t, want, nearest(word, names), word)
	}
	assert.Equal(t, "", nearest("print", nil))
}

func TestTwoSlipsAreForgivenInAWordOfSix(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		word := []rune(rapid.StringMatching(`[a-zå藍]{6,12}`).Draw(t, "word"))
		i := rapid.IntRange(0, len(word)-1).Draw(t, "place")
		slip := string(word[:i]) + rapid.SampledFrom([]string{"", "q", "qq" + string(word[i])}).Draw(t, "slip") + string(word[i+1:])
		assert.Equal(t, string(word), nearest(slip, []string{"zzzzzzzzzzzzzzz", string(word)}))
	})
}

func TestWordsAreComparedWithoutHyphensAndCapitals(t *testing.T) {
	for said, want := range map[string]string{
		"Fat-Quarter": "fat quarter", "fat_quarters": "fat quarter", "PRECUT  squares": "pre-cut squares", "pre‑cut strips": "pre-cut strips",
	} {
		word, ok := formWords.find(said)
		assert.True(t, ok, said)
		assert.Equal(t, want, word)
	}
	_, ok := formWords.find("")
	assert.False(t, ok)
}

func TestEverySynonymMeansAKeyThatExists(t *testing.T) {
	for synonym, key := range keySynonyms() {
		assert.NotEmpty(t, keyExamples()[key], synonym)
	}
}

func TestListsReadAsSentences(t *testing.T) {
	assert.Equal(t, "", listed(nil, "and"))
	assert.Equal(t, "a", listed([]string{"a"}, "and"))
	assert.Equal(t, "a or b", listed([]string{"a", "b"}, "or"))
	assert.Equal(t, "a, b and c", listed([]string{"a", "b", "c"}, "and"))
	assert.Equal(t, strings.Repeat("a, ", 19)+"a and so on", listed(strings.Fields(strings.Repeat("a ", 21)), "and"))
}
