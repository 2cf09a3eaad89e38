package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// A log with two swaps, one of them taken back, as the first program that knew swaps
// wrote it.
func TestSwapsAreReadAsTheyWereWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "swaps.store"))
	events := must(s.Events("bay-mat"))
	require.Len(t, events, 4)
	assert.Equal(t, tracker.Amended, events[1].Kind)
	assert.Nil(t, events[1].Ledger)
	assert.Equal(t, &tracker.Amendment{Swap: &planner.Swap{A: "tide-02", B: "dune-05"}}, events[1].Amendment)
	state := must(tracker.Fold(events))
	assert.Equal(t, []planner.Swap{{A: "tide-02", B: "dune-05"}}, state.Amendments().Swaps)
	row, column := map[string]int{}, map[string]int{}
	for _, b := range state.Ledger.Blocks {
		row[b.ID], column[b.ID] = b.Row, b.Column
	}
	assert.Equal(t, [2]int{3, 3}, [2]int{row["tide-02"], column["tide-02"]})
	assert.Equal(t, [2]int{1, 1}, [2]int{row["tide-01"], column["tide-01"]}, "taken back")
}
