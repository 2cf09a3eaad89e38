package forecast

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// The tests' job has two rows: one that nothing waits for, and handing over.
var (
	checked = tracker.Operation{
		Number: 30, Key: "test", Lot: tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}, Count: 2,
		Setup: planner.Span{Mean: 5}, Unit: planner.Span{Mean: 3, Spread: 0.4},
	}
	handedOver = tracker.Operation{
		Number: 340, Key: "hand-over", Lot: tracker.Lot{Kind: planner.QuiltLot, Name: "quilt-1"}, Count: 1,
		Unit: planner.Span{Mean: 40}, Wait: 2,
	}
)

// friday is half an hour before midnight for the maker, Saturday in Greenwich.
var friday = time.Date(2026, time.November, 13, 23, 30, 0, 0, time.FixedZone("", -5*60*60))

// tableMat is the tests' job after the entries, all made on that Friday.
func tableMat(t *testing.T, entries ...tracker.Event) tracker.State {
	t.Helper()
	events := append([]tracker.Event{{Kind: tracker.Booked, Ledger: &tracker.Ledger{
		Job: "cove-mat", Received: on(t, "2026-11-02"), Due: on(t, "2026-12-18"), Revision: 1, Quantity: 1,
		Operations: []tracker.Operation{checked, handedOver},
	}}}, entries...)
	for i := range events {
		e := &events[i]
		e.Schema, e.ID, e.Seq, e.At = tracker.EventSchema, fmt.Sprintf("e%d", i+1), uint64(i)+1, friday
	}
	state, err := tracker.Fold(events)
	require.NoError(t, err)
	return state
}

// one is an entry of one count, timed or not.
func one(o tracker.Operation, minutes *planner.Minutes) tracker.Event {
	return tracker.Event{Kind: tracker.Logged, Parts: []tracker.Part{{Operation: o.Key, Lot: o.Lot, Count: 1, Minutes: minutes}}}
}

func TestWhatRemainsIsTheRowsWithWorkLeft(t *testing.T) {
	test := Task{Key: "test", Setup: checked.Setup, Unit: checked.Unit, SetupLeft: true, Left: 2}
	last := Task{Key: "hand-over", Unit: handedOver.Unit, SetupLeft: true, Left: 1, Wait: 2}
	begun := test
	begun.SetupLeft, begun.Left = false, 1
	for name, c := range map[string]struct {
		entries []tracker.Event
		want    []Task
	}{
		"nothing logged":     {nil, []Task{test, last}},
		"one of two checked": {[]tracker.Event{one(checked, nil)}, []Task{begun, last}},
		"all checked":        {[]tracker.Event{one(checked, nil), one(checked, nil)}, []Task{last}},
	} {
		want := []Work{{Job: "cove-mat", Due: on(t, "2026-12-18"), Received: on(t, "2026-11-02"), Tasks: c.want}}
		assert.Equal(t, want, WorkOf([]tracker.State{tableMat(t, c.entries...)}), name)
	}
	assert.Empty(t, WorkOf(nil))
}

func TestAHandedOverQuiltIsDoneThoughARowIsOpen(t *testing.T) {
	state := tableMat(t, one(handedOver, nil))
	require.NotEmpty(t, state.Remaining(), "the checking of the test block was never logged")
	want := []Work{{Job: "cove-mat", Due: on(t, "2026-12-18"), Received: on(t, "2026-11-02"), Done: true, DoneOn: on(t, "2026-11-13")}}
	assert.Equal(t, want, WorkOf([]tracker.State{state}), "on the date that the maker's clock showed")

	back := tableMat(t, one(handedOver, nil), tracker.Event{Kind: tracker.Undone, Target: "e2"})
	assert.False(t, WorkOf([]tracker.State{back})[0].Done)
}

func TestTimeWorkedOnADay(t *testing.T) {
	twelve, half := planner.Minutes(12), planner.Minutes(0.5)
	states := []tracker.State{
		tableMat(t, one(checked, &twelve), one(checked, nil), one(handedOver, &half)),
		tableMat(t, one(checked, &twelve), tracker.Event{Kind: tracker.Undone, Target: "e2"}),
		tableMat(t, one(checked, &twelve)),
	}
	assert.Equal(t, planner.Minutes(24.5), WorkedOn(on(t, "2026-11-13"), states), "not what was taken back")
	assert.Zero(t, WorkedOn(on(t, "2026-11-14"), states), "the day in Greenwich is not the maker's")
}
