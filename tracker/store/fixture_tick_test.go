package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// TestASittingAtTheMachineIsReadAsItWasWritten reads ticks, a bobbin and a note as
// the program of their day wrote them.
func TestASittingAtTheMachineIsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "tick.store"))
	events := must(s.Events("cove-mat"))
	var kinds []tracker.Kind
	for _, ev := range events {
		kinds = append(kinds, ev.Kind)
		assert.Equal(t, "Maren", ev.By)
		assert.Equal(t, "2026-11-25T19:30:00+01:00", ev.At.Format("2006-01-02T15:04:05Z07:00"))
	}
	assert.Equal(t, []tracker.Kind{tracker.Booked, tracker.Bobbin, tracker.Logged, tracker.Noted, tracker.Paused, tracker.Resumed, tracker.Undone}, kinds)
	assert.Equal(t, "evening-1", events[1].ID)
	assert.Empty(t, events[1].Parts)
	assert.True(t, events[2].Ticked)
	assert.True(t, events[2].CatchUp)
	assert.Equal(t, "needle 90", events[3].Reason)

	state, err := tracker.Fold(events)
	require.NoError(t, err)
	_, known := state.SinceBobbin()
	assert.True(t, known)
	note, _ := state.NewestNote()
	assert.Equal(t, "needle 90", note.Reason)
}

// TestTheBeginningOfASittingIsReadAsItWasWritten: a first tick at 19:33 of a screen
// that had been opened at 19:30.
func TestTheBeginningOfASittingIsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "sitting.store"))
	events := must(s.Events("cove-mat"))
	require.Len(t, events, 2)
	require.NotNil(t, events[1].Since)
	assert.Equal(t, "2026-11-26T19:30:00+01:00", events[1].Since.Format("2006-01-02T15:04:05Z07:00"))

	state, err := tracker.Fold(events)
	require.NoError(t, err)
	row := state.Rows()[0]
	assert.Equal(t, planner.Minutes(3), row.Minutes)
	assert.Equal(t, 1, row.Timed)
}
