package render

import (
	"bytes"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

func leftText(t testing.TB, s tracker.State) string {
	t.Helper()
	return shownBy(t, func(w *bytes.Buffer) error {
		return Left(w, []tracker.State{s}, friday, Look{Width: 80, Unicode: true})
	})
}

// handedOver is a job of which half of every row is logged, and the hand-over of
// so many of its quilts.
func handedOver(t testing.TB, plan planner.Plan, quilts int) tracker.State {
	t.Helper()
	book := bookedEvent(plan)
	work := loggedEvent(*book.Ledger, 2)
	last := tracker.Event{Schema: tracker.EventSchema, ID: "last", Seq: 3, At: noon, Kind: tracker.Logged, Revision: 1}
	for _, o := range book.Ledger.Operations {
		if o.Key == "hand-over" && len(last.Parts) < quilts {
			last.Parts = append(last.Parts, tracker.Part{Operation: o.Key, Lot: o.Lot, Count: 1})
		}
	}
	state, err := tracker.Fold([]tracker.Event{book, work, last})
	require.NoError(t, err)
	return state
}

func TestNothingIsLeftToDoOnceAllIsHandedOver(t *testing.T) {
	pair := example(t, "harbour-pair")
	shown := leftText(t, handedOver(t, pair, 2))
	assert.Contains(t, shown, "Left       handed over on 2026-11-20 (Friday); nothing is left to do\n")
	assert.NotContains(t, shown, "test block")
	assert.NotContains(t, shown, " min")
	one := leftText(t, handedOver(t, pair, 1))
	assert.NotContains(t, one, "handed over")
	assert.Contains(t, one, "test block", "a quilt of the run is still to come")
}

func TestHandedOverTakesNoMoreMinutesThoughCountsStayOpen(t *testing.T) {
	done := leftOf(handedOver(t, example(t, "harbour-pair"), 2), noon)
	assert.Equal(t, number("0"), done.MinutesLeft)
	open := 0
	for _, lot := range done.Lots {
		for _, o := range lot.Operations {
			assert.Equal(t, o.Count, o.Done+o.Left, o.Key)
			open += o.Left
		}
	}
	assert.Positive(t, open, "the log is not made prettier than it is")
	assert.NotEqual(t, number("0"), leftOf(handedOver(t, example(t, "harbour-pair"), 1), noon).MinutesLeft)
}

func TestManyFabricsHaveOneHeading(t *testing.T) {
	shown := leftText(t, booked(t, example(t, "estuary-lap"), 0))
	assert.Equal(t, 1, strings.Count(shown, "\nfabrics\n"))
	assert.Regexp(t, `(?s)\nfabrics\n +\d+  prepare the fabric.* cut .*\n── Blocks, made/left of each colourway ─+\n +tide +dune +wrack +shingle\n`, shown)
}

func TestTheSeamTestComesBeforeTheBlocks(t *testing.T) {
	shown := leftText(t, booked(t, example(t, "estuary-lap"), 0))
	test, blocks := strings.Index(shown, "seam test"), strings.Index(shown, "Blocks, made/left")
	require.Positive(t, test)
	assert.Less(t, test, blocks)
	assert.Contains(t, shown, "\nquilt-1, before the blocks\n")
	assert.Less(t, blocks, strings.Index(shown, "\nquilt-1: 0 of 20 blocks made\n"))
	assert.Equal(t, 1, strings.Count(shown, "seam test"))
	pair := leftText(t, booked(t, example(t, "harbour-pair"), 0))
	assert.Regexp(t, regexp.MustCompile(`quilt-1, quilt-2: 0 of \d+ blocks made each\n`), pair, "what is left of two quilts alike stands once")
}
