package english_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/english"
)

// Plain English, from memory.
func TestCountsAgreeWithTheirNouns(t *testing.T) {
	for want, got := range map[string]string{
		"1 pair": english.Count(1, "pair"), "12 pairs": english.Count(12, "pair"), "0 blocks": english.Count(0, "block"),
		"2 patches": english.Count(2, "patch"), "3 washes": english.Count(3, "wash"), "2 boxes": english.Count(2, "box"),
		"2 near misses": english.Count(2, "near miss"), "2 entries": english.Count(2, "entry"), "2 days": english.Count(2, "day"),
		"3 batches": english.Count(3, "batch"), "2 journeys": english.Count(2, "journey"),
	} {
		assert.Equal(t, want, got)
	}
}

func TestListsEndInAWord(t *testing.T) {
	for want, words := range map[string][]string{
		"": nil, "kelp": {"kelp"}, "kelp and dune": {"kelp", "dune"}, "kelp, dune and foam": {"kelp", "dune", "foam"},
	} {
		assert.Equal(t, want, english.List(words, "and"))
	}
	assert.Equal(t, "kelp or dune", english.List([]string{"kelp", "dune"}, "or"))
}

func TestCapitalsBeginASentence(t *testing.T) {
	assert.Equal(t, "Kelp and dune", english.Capital("kelp and dune"))
	assert.Empty(t, english.Capital(""))
}
