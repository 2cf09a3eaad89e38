package render

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// loggedFor is the answer to logging two operations in one entry with the times
// given, nil where a part was not timed.
func loggedFor(t testing.TB, times ...*planner.Minutes) string {
	t.Helper()
	work := tracker.Event{Schema: tracker.EventSchema, ID: "evening-1", Seq: 2, At: noon, Kind: tracker.Logged, Revision: 1}
	for i, took := range times {
		work.Parts = append(work.Parts, tracker.Part{
			Operation: []string{"sew-pairs", "press-pairs"}[i], Lot: tracker.Lot{Kind: "colourway", Name: "tide"}, Count: 1, Minutes: took,
		})
	}
	after, err := tracker.Fold([]tracker.Event{bookedEvent(example(t, "estuary-lap")), work})
	require.NoError(t, err)
	return shownBy(t, func(w *bytes.Buffer) error { return Logged(w, after, work, false, Look{Unicode: true}) })
}

func TestAnEntrySaysTheTimeThatWasGivenForIt(t *testing.T) {
	assert.Contains(t, loggedFor(t, some(planner.Minutes(35))), ")\n  took 35 min\n")
	assert.Contains(t, loggedFor(t, some(planner.Minutes(20)), some(planner.Minutes(15))), "  took 35 min\n", "the parts of one entry together")
	assert.Contains(t, loggedFor(t, some(planner.Minutes(20)), nil), "  took 20 min\n")
	assert.NotContains(t, loggedFor(t, nil), "took")
}

func TestAVeryLongEntryMayBeASlip(t *testing.T) {
	slip := "12 h or more in one entry: undo it if that is a slip"
	assert.Contains(t, loggedFor(t, some(planner.Minutes(35*60))), "  took 35 h; "+slip+"\n")
	assert.Contains(t, loggedFor(t, some(planner.Minutes(6*60)), some(planner.Minutes(6*60))), slip)
	assert.NotContains(t, loggedFor(t, some(planner.Minutes(12*60-1))), slip)
}

// A revision may retire blocks: they are no longer of the job.
func TestARevisionSaysHowLargeTheJobIsNow(t *testing.T) {
	book := bookedEvent(example(t, "estuary-lap"))
	book.Ledger.Blocks[0].Retired = true
	shown := func(changes ...string) string {
		return shownBy(t, func(w *bytes.Buffer) error { return Revised(w, book, false, changes, Look{Unicode: true}) })
	}
	assert.Regexp(t, `\n  now 1 quilt, 19 blocks, about \d+ h( \d+ min)? of work; due 2027-02-12 \(Friday\)\n  - retired: 1 block, tide-01\n$`,
		shown("retired: 1 block, tide-01"))
	assert.Regexp(t, `\)\n  nothing is different\n$`, shown())
}
