package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Ticks at 19:34 and 20:03 with a pause from 19:36 to 20:00, the
// screen opened at 19:30: 4 + 2 + 3 minutes. A clock from 23:30, ended at 00:15
// and put right to 40 minutes. Six minutes of ripping.
func TestAnOldLogOfWorkingTimeIsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "time.store"))
	events := must(s.Events("estuary-lap"))
	var kinds []tracker.Kind
	for _, ev := range events {
		kinds = append(kinds, ev.Kind)
	}
	require.Equal(t, []tracker.Kind{
		tracker.Booked, tracker.Started, tracker.Logged, tracker.Paused, tracker.Resumed, tracker.Logged, tracker.Started,
		tracker.Stopped, tracker.Ripped, tracker.Recount, tracker.Settled, tracker.Settled,
	}, kinds)
	assert.True(t, events[1].Ticked && events[2].Ticked)
	assert.Equal(t, "2026-11-10T00:15:00+01:00", events[7].End.Format("2006-01-02T15:04:05Z07:00"))
	assert.Equal(t, "clock", events[10].Target)

	state, err := tracker.Fold(events)
	require.NoError(t, err)
	tide := tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}
	sewn, _ := state.Row("sew-pairs", tide)
	pressed, _ := state.Row("press-pairs", tide)
	assert.Equal(t, []planner.Minutes{9, 6, 40}, []planner.Minutes{sewn.Minutes, sewn.Ripping, pressed.Minutes})
	assert.Equal(t, []int{2, 2}, []int{sewn.Timed, sewn.Done})
	gap, quiet := state.Limits()
	assert.Equal(t, []planner.Minutes{15, 360}, []planner.Minutes{gap, quiet})
	assert.Equal(t, []string{"estuary-lap"}, must(s.Clocked()))
	assert.Empty(t, must(s.Clocks("Maren")))
}
