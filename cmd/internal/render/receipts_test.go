package render

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// receipt is one answer to a command that writes, in both forms.
type receipt struct {
	schema string
	text   func(io.Writer, Look) error
	json   func(io.Writer) error
}

// receipts are the answers to booking, logging, undoing and revising a job.
func receipts(t testing.TB) []receipt {
	t.Helper()
	book := bookedEvent(example(t, "estuary-lap"))
	work := tracker.Event{Schema: tracker.EventSchema, ID: "evening-1", Seq: 2, At: noon, Kind: tracker.Logged, Revision: 1, Parts: []tracker.Part{
		{Operation: "sew-pairs", Lot: tracker.Lot{Kind: "colourway", Name: "tide"}, Count: 1},
		{Operation: "press-pairs", Lot: tracker.Lot{Kind: "colourway", Name: "tide"}, Count: 4},
	}}
	undo := tracker.Event{Schema: tracker.EventSchema, ID: "oops", Seq: 3, At: noon, Kind: tracker.Undone, Revision: 1, Target: "evening-1"}
	logged, err := tracker.Fold([]tracker.Event{book, work})
	require.NoError(t, err)
	undone, err := logged.With(undo)
	require.NoError(t, err)
	swapped := swappedTidemark(t)
	return []receipt{
		{"swap",
			func(w io.Writer, l Look) error { return Swapped(w, swapped, l) },
			func(w io.Writer) error { return SwappedJSON(w, swapped) }},
		{"book",
			func(w io.Writer, l Look) error { return Booked(w, book, false, nil, l) },
			func(w io.Writer) error { return BookedJSON(w, book, false, nil) }},
		{"log",
			func(w io.Writer, l Look) error { return Logged(w, logged, work, false, l) },
			func(w io.Writer) error { return LoggedJSON(w, logged, work, false) }},
		{"log",
			func(w io.Writer, l Look) error { return Logged(w, logged, work, true, l) },
			func(w io.Writer) error { return LoggedJSON(w, logged, work, true) }},
		{"undo",
			func(w io.Writer, l Look) error { return Undone(w, undone, undo, false, l) },
			func(w io.Writer) error { return UndoneJSON(w, undone, undo, false) }},
		{"revise",
			func(w io.Writer, l Look) error { return Revised(w, book, false, []string{"new: 1 block, tide-06"}, l) },
			func(w io.Writer) error { return RevisedJSON(w, book, false, []string{"new: 1 block, tide-06"}) }},
		{"revise",
			func(w io.Writer, l Look) error { return Revised(w, book, true, nil, l) },
			func(w io.Writer) error { return RevisedJSON(w, book, true, nil) }},
	}
}

// swappedTidemark is an exchange of blocks that are pressed by different cards.
func swappedTidemark(t testing.TB) SwappedBlocks {
	t.Helper()
	plan := example(t, "tidemark-lap")
	was, err := tracker.Fold([]tracker.Event{bookedEvent(plan)})
	require.NoError(t, err)
	ev, err := was.Swap("wet-03", "wet-04", "moved", noon, "Maren")
	require.NoError(t, err)
	ev.Seq = 2
	is, err := was.With(ev)
	require.NoError(t, err)
	now, err := planner.Make(plan.Job, is.Prior())
	require.NoError(t, err)
	effect := planner.Swapped(plan, now, "wet-03", "wet-04")
	return SwappedBlocks{Event: ev, After: is, Plan: &now, Effect: &effect}
}
