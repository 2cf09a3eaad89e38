package render

import (
	"bytes"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// tickedEvents is a sitting at the machine: ticks, one of them taken back, a note,
// a bobbin and a pause.
func tickedEvents(t testing.TB) (tracker.State, []tracker.Event) {
	t.Helper()
	tide := tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}
	state, err := tracker.Fold([]tracker.Event{bookedEvent(example(t, "estuary-lap"))})
	require.NoError(t, err)
	var events []tracker.Event
	for i, ev := range []tracker.Event{
		{Kind: tracker.Logged, CatchUp: true, Ticked: true, Parts: []tracker.Part{{Operation: "kit", Lot: tide, Count: 1}, {Operation: "sew-pairs", Lot: tide, Count: 2}}},
		{Kind: tracker.Logged, Ticked: true, Parts: []tracker.Part{{Operation: "sew-pairs", Lot: tide, Count: 1}}},
		{Kind: tracker.Undone},
		{Kind: tracker.Noted, Reason: "needle 90"},
		{Kind: tracker.Bobbin},
		{Kind: tracker.Paused},
		{Kind: tracker.Resumed},
	} {
		ev.Schema, ev.Seq, ev.ID, ev.At, ev.Revision = tracker.EventSchema, uint64(i)+2, string(rune('a'+i)), noon, 1
		if ev.Kind == tracker.Undone {
			ev.Target = "b"
		}
		state, err = state.With(ev)
		require.NoError(t, err)
		events = append(events, ev)
	}
	return state, events
}

func TestEveryEntryIsALine(t *testing.T) {
	state, events := tickedEvents(t)
	var out bytes.Buffer
	for _, ev := range events {
		require.NoError(t, Ticked(&out, state, ev, false, Look{Unicode: true}))
	}
	require.NoError(t, Ticked(&out, state, events[4], true, Look{Unicode: true}))
	row, ok := state.Row("sew-pairs", tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"})
	require.True(t, ok)
	require.NoError(t, Turned(&out, row, Look{Unicode: true}))
	assert.Equal(t, `entry 2: 80 chain-sew pairs, tide: 2 pairs checked off; 2 of 10 made, 8 left; 1 row before it along
entry 3: 80 chain-sew pairs, tide: 1 pair checked off; 2 of 10 made, 8 left
entry 4: 80 chain-sew pairs, tide: 1 pair taken back; 2 of 10 made, 8 left
entry 5: note: needle 90
entry 6: a full bobbin is in
entry 7: paused
entry 8: going on
entry 6: a full bobbin is in; sent before, and counts once
now 80 chain-sew pairs, tide: 2 of 10 made, 8 left
`, out.String())
}

func TestTicksKeepTheirContract(t *testing.T) {
	state, events := tickedEvents(t)
	for _, ev := range events {
		for _, repeated := range []bool{false, true} {
			conforms(t, "tick", func(w io.Writer) error { return TickedJSON(w, state, ev, repeated) })
		}
	}
	for _, row := range state.Rows() {
		conforms(t, "tick", func(w io.Writer) error { return TurnedJSON(w, "estuary-lap", row) })
	}
}
