package forecast

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// tableMat is a job of two rows: one that nothing waits for, and handing over.
func tableMat(t *testing.T, entries ...tracker.Event) tracker.State {
	quilt := tracker.Lot{Kind: planner.QuiltLot, Name: "quilt-1"}
	events := []tracker.Event{{Kind: tracker.Booked, Ledger: &tracker.Ledger{
		Job: "cove-mat", Received: on(t, "2026-11-02"), Due: on(t, "2026-12-18"), Revision: 1, Quantity: 1,
		Operations: []tracker.Operation{
			{Number: 30, Key: "test", Lot: tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}, Count: 2,
				Setup: planner.Span{Mean: 5}, Unit: planner.Span{Mean: 3, Spread: 0.4}},
			{Number: 340, Key: "hand-over", Lot: quilt, Count: 1, Unit: planner.Span{Mean: 40}, Wait: 2},
		},
	}}}
	for i, e := range append(events, entries...) {
		e.Schema, e.Seq = tracker.EventSchema, uint64(i)+1
		if e.ID == "" {
			e.ID = string(rune('a' + i))
		}
		if e.At.IsZero() {
			e.At = time.Date(2026, time.November, 13, 23, 30, 0, 0, time.FixedZone("", -5*60*60))
		}
		entries = append(entries[:i], e)
	}
	state, err := tracker.Fold(entries)
	require.NoError(t, err)
	return state
}

// row is an entry for one row, by the last digit of its key's number.
func entryFor(key string, lot tracker.Lot, minutes *planner.Minutes) tracker.Event {
	return tracker.Event{Kind: tracker.Logged, Parts: []tracker.Part{{Operation: key, Lot: lot, Count: 1, Minutes: minutes}}}
}
