package forecast

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// quilts are two tops that go out for 35 days each, are collected and bound; the
// strips for the binding can be cut at any time.
func quilts() []tracker.Operation {
	cut := tracker.Operation{Number: 10, Key: "cut-binding", Lot: tracker.Lot{Kind: planner.FabricLot, Name: "Kelp"},
		Count: 1, Unit: planner.Span{Mean: 60}}
	var out, back, bind []tracker.Operation
	for n := 1; n <= 2; n++ {
		lot := tracker.Lot{Kind: planner.QuiltLot, Name: fmt.Sprintf("quilt-%d", n)}
		row := func(number int, key, after string, wait int) tracker.Operation {
			o := tracker.Operation{Number: number, Key: key, Lot: lot, Count: 1, Unit: planner.Span{Mean: 30}, Wait: wait}
			if after != "" {
				o.After = []tracker.Ref{{Key: after, Lot: lot}}
			}
			return o
		}
		out = append(out, row(20, "send-out", "", 35))
		back = append(back, row(30, "collect", "send-out", 0))
		bind = append(bind, row(40, "bind", "collect", 0))
	}
	return append(append(append([]tracker.Operation{cut}, out...), back...), bind...)
}

// loggedOn is an entry of one count of the quilts' rows on a date.
func loggedOn(t *testing.T, date, key string, n int) tracker.Event {
	t.Helper()
	lot := tracker.Lot{Kind: planner.QuiltLot, Name: fmt.Sprintf("quilt-%d", n)}
	d := on(t, date)
	return tracker.Event{Kind: tracker.Logged, At: time.Date(d.Year, d.Month, d.Day, 23, 30, 0, 0, time.FixedZone("", -5*60*60)),
		Parts: []tracker.Part{{Operation: key, Lot: lot, Count: 1}}}
}

// quiltsAfter is the work left of the quilts after the entries.
func quiltsAfter(t *testing.T, entries ...tracker.Event) []Work {
	t.Helper()
	events := append([]tracker.Event{{Kind: tracker.Booked, Ledger: &tracker.Ledger{
		Job: "tide", Revision: 1, Quantity: 2, Operations: quilts()}}}, entries...)
	for i := range events {
		events[i].Schema, events[i].ID, events[i].Seq = tracker.EventSchema, fmt.Sprintf("e%d", i+1), uint64(i)+1
	}
	state, err := tracker.Fold(events)
	require.NoError(t, err)
	return WorkOf([]tracker.State{state})
}

// All hand-worked at an hour a day: what goes out on 1 March is back on 5 April,
// the days before which pass whenever one asks; collecting and binding two
// quilts takes two hours from the day after, and cutting the binding an hour
// before.
func TestAwayQuiltsComeBackThirtyFiveDaysAfterTheyWereSentOut(t *testing.T) {
	first, second := loggedOn(t, "2026-03-01", "send-out", 1), loggedOn(t, "2026-03-01", "send-out", 2)
	later := loggedOn(t, "2026-03-11", "send-out", 2)
	collected := loggedOn(t, "2026-03-20", "collect", 1)
	for _, c := range []struct {
		name, today string
		entries     []tracker.Event
		want        string
	}{
		{"on that day", "2026-03-01", []tracker.Event{first, second}, "2026-04-07"},
		{"days later", "2026-03-30", []tracker.Event{first, second}, "2026-04-07"},
		{"on the day of the return", "2026-04-05", []tracker.Event{first, second}, "2026-04-07"},
		{"past it, with the binding still to cut", "2026-04-10", []tracker.Event{first, second}, "2026-04-12"},
		{"the later of two", "2026-03-30", []tracker.Event{first, later}, "2026-04-17"},
		// Sent out on 30 or 31 March, behind the cutting: back on 5 May.
		{"one not sent out yet", "2026-03-30", []tracker.Event{first}, "2026-05-07"},
		{"back before its time", "2026-03-21", []tracker.Event{first, second, collected, loggedOn(t, "2026-03-21", "collect", 2)}, "2026-03-22"},
		{"one back before its time", "2026-03-21", []tracker.Event{first, second, collected}, "2026-04-07"},
		{"sent out again", "2026-03-30", []tracker.Event{first, second, {Kind: tracker.Undone, Target: "e3"}, later}, "2026-04-17"},
	} {
		answer := when(0, on(t, c.today), 0, everyDay(60), quiltsAfter(t, c.entries...))[0]
		assert.Equal(t, c.want, answer.P50.String(), c.name)
	}
}

// The work left of a job whose tops are away is what it was: waiting is none.
func TestAnAwayQuiltHasNoWorkOfItsOwn(t *testing.T) {
	jobs := quiltsAfter(t, loggedOn(t, "2026-03-01", "send-out", 1), loggedOn(t, "2026-03-01", "send-out", 2))
	answer := when(0, on(t, "2026-03-02"), 0, everyDay(60), jobs)[0]
	assert.Equal(t, planner.Minutes(60+4*30), answer.Minutes.P50)
}

// Of a job alone: a row that is away makes nothing earlier, nothing after it is
// done before the day after its return, and no date moves back while nothing
// happens.
func TestNothingComesBeforeTheReturn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := NewCalendar(anyHours(t))
		var before, after []Task
		for range rapid.IntRange(0, 3).Draw(t, "before") {
			before = append(before, anyTask(t, false))
		}
		for range rapid.IntRange(0, 3).Draw(t, "after") {
			after = append(after, anyTask(t, false))
		}
		away := Task{Key: "send-out", Wait: 35, Back: start.AddDays(rapid.IntRange(0, 35).Draw(t, "back"))}
		with := Work{Job: "tide", Tasks: append(append(slices.Clone(before), away), after...)}
		without := Work{Job: "tide", Tasks: append(slices.Clone(before), after...)}

		got := When(start, 0, c, []Work{with})[0]
		if plain := When(start, 0, c, []Work{without})[0]; !notAfter(plain.P50, got.P50) {
			t.Fatalf("%v with the wait, %v without", got.P50, plain.P50)
		}
		work := 0.0
		for _, task := range after {
			one := load{}
			task.onto(&one)
			work += float64(min(task.Left, 1)) * one.mean
		}
		if work > 1 && notAfter(got.P50, away.Back) {
			t.Fatalf("done on %v, back on %v", got.P50, away.Back)
		}
		later := start.AddDays(rapid.IntRange(1, 60).Draw(t, "later"))
		if then := When(later, 0, c, []Work{with})[0]; !notAfter(got.P50, then.P50) {
			t.Fatalf("%v, and later %v", got.P50, then.P50)
		}
	})
}
