package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Five units of tide, of which the one of tide-03 was cut through: two pairs and two
// pieces of each fabric went with it.
func TestAnOldLogOfSpoiltWorkIsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "spoilt.store"))
	events := must(s.Events("estuary-lap"))
	require.Len(t, events, 3)
	assert.Equal(t, []tracker.Kind{tracker.Booked, tracker.Logged, tracker.Spoilt}, []tracker.Kind{events[0].Kind, events[1].Kind, events[2].Kind})
	assert.Equal(t, "cut through", events[2].Reason)

	state, err := tracker.Fold(events)
	require.NoError(t, err)
	done := func(key string, kind planner.LotKind, lot string) int {
		row, ok := state.Row(key, tracker.Lot{Kind: kind, Name: lot})
		require.True(t, ok)
		return row.Done
	}
	assert.Equal(t, []int{4, 8, 4}, []int{done("sew-units", planner.ColourwayLot, "tide"), done("sew-pairs", planner.ColourwayLot, "tide"), done("kit", planner.ColourwayLot, "tide")})
	assert.Equal(t, []int{4, 8}, []int{done("cut", planner.FabricLot, "Kelp"), done("cut", planner.FabricLot, "Foam")})
}
