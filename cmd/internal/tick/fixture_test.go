package tick

import (
	"fmt"
	"os"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
)

// evening is when the tests sit down at the machine.
var evening = time.Date(2026, time.November, 25, 19, 30, 0, 0, time.UTC)

// desk is a screen with a log behind it that writes at once.
type desk struct {
	t      require.TestingT
	screen *Screen
	log    tracker.State
	now    time.Duration // since the screen was opened
	keys   int
	every  time.Duration // between keys
}

// estuary is the estuary lap quilt, booked, and what the plan says of it.
func estuary(t require.TestingT) (tracker.State, Guide) {
	data, err := os.ReadFile("../../../examples/estuary-lap.yaml")
	require.NoError(t, err)
	job, err := planner.Parse("estuary-lap.yaml", data)
	require.NoError(t, err)
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	ledger := tracker.Freeze(plan)
	state, err := tracker.Fold([]tracker.Event{{
		Schema: 1, ID: "booking", Seq: 1, At: evening, By: "Runa", Kind: tracker.Booked, Revision: 1, File: string(data), Ledger: &ledger,
	}})
	require.NoError(t, err)
	return state, NewGuide(plan)
}

// settings are those of a UTF-8 terminal.
func settings() Settings {
	return Settings{Look: render.Look{Unicode: true}, Apart: Apart, CatchUp: true}
}

// sit opens a screen on an operation of a colourway.
func sit(t require.TestingT, key, colourway string) *desk {
	state, guide := estuary(t)
	row, ok := state.Row(key, tracker.Lot{Kind: planner.ColourwayLot, Name: colourway})
	require.True(t, ok)
	screen := NewScreen(state, guide, row.Operation, settings())
	screen.Opened(evening)
	return &desk{t: t, screen: screen, log: state, every: 1500 * time.Millisecond}
}

// press types keys, and writes what they ask for.
func (d *desk) press(keys ...string) {
	for _, key := range keys {
		d.now += d.every
		d.pressAt(d.now, key)
		d.write()
	}
}

// pressAt is one key at a time, with nothing written.
func (d *desk) pressAt(since time.Duration, key string) {
	d.keys++
	text := ""
	if len(key) == 1 {
		text = key
	}
	d.now = since
	d.screen.Press(Press{Key: key, Text: text, Since: since, At: evening.Add(since), ID: fmt.Sprintf("key-%d", d.keys)})
}

// write writes all that waits.
func (d *desk) write() {
	for {
		r, ok := d.screen.Send()
		if !ok {
			return
		}
		d.screen.Answered(d.answer(r))
	}
}

// answer is what a log makes of a request.
func (d *desk) answer(r Request) Answer {
	ev, err := r.Decide(d.log, "Runa")
	if err != nil {
		return Answer{Request: r, Trouble: err.Error()}
	}
	if ev.Seq == 0 {
		ev.Seq = uint64(len(d.log.Events())) + 1
		d.log, err = d.log.With(ev)
		require.NoError(d.t, err)
	}
	return Answer{Request: r, State: d.log, Event: ev}
}

// row is the row on the screen.
func (d *desk) row() tracker.Row {
	row, ok := d.screen.row()
	require.True(d.t, ok)
	return row
}

// shown is the screen as text.
func (d *desk) shown(wide, high int) []string {
	var lines []string
	for _, l := range d.screen.Lines(wide, high) {
		lines = append(lines, l.Text)
	}
	return lines
}
