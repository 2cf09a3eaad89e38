package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func scrapped(t *testing.T, s State, operation, count, block string) (Event, error) {
	asked, err := ParseCounts([]string{count})
	require.NoError(t, err)
	return s.Scrap(ScrapRequest{Operation: operation, Counts: asked, Block: block, ID: "spoilt", At: monday, By: "Runa"})
}

// Hand-worked on the tests' job: a unit is sewn of 2 pairs, a block is kitted of 2
// pieces of each fabric.
func TestWhatIsSpoiltIsMadeAnewFromThePiecesOn(t *testing.T) {
	s := book(t, smallJob())
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "tide=4")))
	cut := s.Done("cut", kelp)
	done := func(s State) []int {
		var all []int
		for _, key := range []string{"kit", "sew-pairs", "press-pairs", "sew-units", "sew-block-column-2", "sew-block-column-3", "square-up"} {
			all = append(all, s.Done(key, tide))
		}
		return all
	}
	ev, err := scrapped(t, s, "sew-units", "1", "tide-02")
	require.NoError(t, err)
	then := after(t, s, ev)
	assert.Equal(t, []int{3, 6, 6, 3, 9, 9, 3}, done(then))
	assert.Equal(t, []int{cut - 2, cut - 2}, []int{then.Done("cut", kelp), then.Done("cut", foam)})
	assert.Equal(t, 0, then.BlockDone("tide-02", "kit"), "of that block")
	assert.Equal(t, 1, then.Done("prepare", kelp), "the cloth is prepared")

	// a pair of two took one piece of two of each fabric; its block stays kitted
	ev, err = scrapped(t, s, "sew-pairs", "1", "tide-02")
	require.NoError(t, err)
	then = after(t, s, ev)
	assert.Equal(t, []int{4, 7, 7, 3, 9, 9, 3}, done(then))
	assert.Equal(t, cut-1, then.Done("cut", kelp))

	then = undone(t, then, "spoilt", "u1")
	assert.Equal(t, s.Rows(), then.Rows())
}

func TestWhatCannotBeTracedBackIsNotScrapped(t *testing.T) {
	s := book(t, smallJob())
	s = accepted(t, s, caughtUp(request(t, s, "layer", "quilt-1=1")))
	for _, c := range []struct {
		operation, count, block string
		kind                    RefusalKind
	}{
		{"sew-block-column-2", "1", "tide-01", MissingCount}, // a third of a block took two thirds of a piece
		{"cut", "Kelp=1", "", TooMany},                       // all of it is kitted
		{"sew-top-rows", "quilt-1=1", "", WrongPlace},
		{"sew-units", "2", "tide-01", TooMany},
	} {
		_, err := scrapped(t, s, c.operation, c.count, c.block)
		assert.Equal(t, c.kind, asRefusal(t, err).Kind, c.operation)
	}
	ev, err := scrapped(t, s, "sew-block-column-2", "3", "tide-01")
	require.NoError(t, err)
	s = after(t, s, ev)
	assert.Equal(t, 0, s.BlockDone("tide-01", "kit"))
}

func TestLoosePiecesAreScrapped(t *testing.T) {
	s := book(t, smallJob())
	s = accepted(t, s, caughtUp(request(t, s, "cut", "Kelp=3")))
	ev, err := scrapped(t, s, "cut", "Kelp=2", "")
	require.NoError(t, err)
	assert.Equal(t, []Part{{Operation: "cut", Lot: kelp, Count: 2}}, ev.Parts)
	assert.Equal(t, 1, after(t, s, ev).Done("cut", kelp))
}

// Two segments of 24 are spoilt with a kitted block, of two sets of 16: the sets make
// 8 more than are needed. The sixth block that is spoilt takes the ninth segment of
// those, and with it a third set.
func TestASetIsMadeAnewOnlyWhereItsOthersDoNotDo(t *testing.T) {
	s := stripSetsBooked(t)
	s = accepted(t, s, caughtUp(request(t, s, "kit", "tide=all")))
	sets := func() []int {
		return []int{s.Left("press-set", tide), s.Left("join-set-row-2", tide), s.Left("subcut-slices", tide)}
	}
	want := [][]int{{0, 2}, {0, 4}, {0, 6}, {0, 8}, {1, 10}, {1, 12}}
	for i, left := range want {
		asked, err := ParseCounts([]string{"tide=1"})
		require.NoError(t, err)
		ev, err := s.Scrap(ScrapRequest{Operation: "kit", Counts: asked, ID: string(rune('a' + i)), At: monday})
		require.NoError(t, err)
		s = after(t, s, ev)
		assert.Equal(t, []int{left[0], left[0], left[1]}, sets(), i)
	}
}
