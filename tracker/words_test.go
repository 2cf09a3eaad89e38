package tracker

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
)

func TestNearestNames(t *testing.T) {
	keys := []string{"sew-pairs", "press-pairs", "sew-units", "press-units", "test"}
	for typed, want := range map[string][]string{
		"press-pair":   {"press-pairs"},
		"pres-pairs":   {"press-pairs", "sew-pairs"},
		"SEW-UNITS":    {"sew-units", "sew-pairs"}, // 0 and 3 letters off: a third of nine
		"units":        {"sew-units", "press-units"},
		"tset":         {"test"},
		"embroider":    {},
		"sew-paris":    {"sew-pairs"},
		"quilting bee": {},
	} {
		assert.Equal(t, want, Nearest(typed, keys), typed)
	}
	assert.Empty(t, Nearest("", []string{"藍", "a"}), "nothing typed is no slip of one letter")
	assert.Equal(t, []string{"aa", "ab", "ac"}, Nearest("aa", []string{"ab", "ac", "aa", "ad"}), "not more than three, nearest first")
	assert.Empty(t, Nearest(strings.Repeat("x", 100_000), keys), "a text that is no name is not compared letter by letter")
}

func TestThings(t *testing.T) {
	for want, c := range map[string]struct {
		n    int
		unit string
	}{
		"0 pairs": {0, "pair"}, "1 pair": {1, "pair"}, "12 pairs": {12, "pair"},
		"2 patches": {2, "patch"}, "1 patch": {1, "patch"}, "3 passes": {3, "pass"},
	} {
		assert.Equal(t, want, things(c.n, planner.CountUnit(c.unit)))
	}
}

func TestVerbs(t *testing.T) {
	for key, want := range map[string]deed{
		"sew-pairs": {"chain-sew", "chain-sewn"}, "press-block-rows": {"press", "pressed"}, "recut-level": {"recut", "recut"},
		"square-up": {"square up", "squared up"}, "cut": {"cut", "cut"}, "lay-out-top": {"lay out", "laid out"},
		"hand-over": {"hand over", "handed over"}, "join-block-row-2": {"join", "sewn"}, "add-borders": {"add", "added"},
		"dune-steps": {"dune", "done"},
	} {
		assert.Equal(t, want, Operation{Key: key, Name: key}.deed())
	}
	assert.Equal(t, deed{"chain-sew", "chain-sewn"}, Operation{Key: "sew-units", Name: "chain-sew units"}.deed(), "the wall's word goes first")
	assert.Equal(t, deed{"turn", "turned"}, Operation{Key: "ebb", Name: "turn and lay out ebb"}.deed())
}

func TestListsAreCutShort(t *testing.T) {
	letters := strings.Split("abcdefghij", "")
	assert.Equal(t, "", andList(nil))
	assert.Equal(t, "a", andList(letters[:1]))
	assert.Equal(t, "a and b", andList(letters[:2]))
	assert.Equal(t, "a, b, c, d, e, f and g", andList(letters[:7]), "one more is named rather than counted")
	assert.Equal(t, "a, b, c, d, e, f and 4 more", andList(letters))
}

func TestAJobThatIsNotBooked(t *testing.T) {
	for _, c := range []struct {
		name  string
		known []string
		want  string
	}{
		{"estuary-lab", []string{"estuary-lap", "kelp-cot"}, `"estuary-lab" is not booked; there is estuary-lap`},
		{"gannet", []string{"estuary-lap", "kelp-cot"}, `"gannet" is not booked; booked are estuary-lap and kelp-cot`},
		{"gannet", []string{"estuary-lap"}, `"gannet" is not booked; booked is estuary-lap`},
		{"kelp", []string{"kelp-cot", "kelp-lap"}, `"kelp" is not booked; there are kelp-cot and kelp-lap`},
		{"gannet", nil, `"gannet" is not booked: no job is booked yet`},
	} {
		r := NoSuchJob(c.name, c.known)
		assert.Equal(t, UnknownJob, r.Kind)
		assert.EqualError(t, r, c.want)
	}
}
