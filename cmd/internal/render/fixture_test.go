package render

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// examples are the job files that the project ships.
func examples(t testing.TB) []string {
	t.Helper()
	files, err := filepath.Glob("../../../examples/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	names := make([]string, len(files))
	for i, f := range files {
		names[i] = strings.TrimSuffix(filepath.Base(f), ".yaml")
	}
	return names
}

func example(t testing.TB, name string) planner.Plan {
	t.Helper()
	data, err := os.ReadFile("../../../examples/" + name + ".yaml")
	require.NoError(t, err)
	return planned(t, string(data))
}

func planned(t testing.TB, text string) planner.Plan {
	t.Helper()
	job, err := planner.Parse("job.yaml", []byte(text))
	require.NoError(t, err)
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	return plan
}

// hundredFabrics is 162 plain squares over a hundred fabrics: 62 of them give
// two squares and 38 give one (hand-worked: 62×2 + 38×1 = 162).
func hundredFabrics(t testing.TB) planner.Plan {
	t.Helper()
	var text strings.Builder
	text.WriteString("job: hundred-tides\ntitle: Hundred tides\nfabrics:\n")
	var counts []string
	for i := range 100 {
		fmt.Fprintf(&text, "  Tide %d: {form: fat quarter, size: 18 x 22}\n", i+1)
		n := 1
		if i < 62 {
			n = 2
		}
		counts = append(counts, fmt.Sprintf("Tide %d: %d", i+1, n))
	}
	text.WriteString("block: {make: plain square, square: 5}\ncolourways:\n  all: {blocks: 162, print: {" + strings.Join(counts, ", ") + "}}\n")
	text.WriteString("layout: {across: 18, down: 9, order: rows}\n")
	return planned(t, text.String())
}

// fourHundred is a quilt of 400 four-patch recut blocks in four colourways.
func fourHundred(t testing.TB) planner.Plan {
	t.Helper()
	return planned(t, `
job: four-hundred
fabrics:
  Kelp: {form: yardage, width: 42}
  Dune: {form: yardage, width: 42}
  Foam: {form: yardage, width: 42}
  Deep: {form: yardage, width: 108}
block: {make: four-patch recut, square: 5, offset: 1, ground: Foam}
colourways:
  north: {blocks: 100, print: Kelp}
  east: {blocks: 100, print: Dune, offset: 1 1/4}
  south: {blocks: 100, print: Kelp, offset: 1 1/2}
  west: {blocks: 100, print: Dune, offset: 3/4}
layout: {across: 20, down: 20, order: diagonal}
borders: [{width: 3, fabric: Foam}]
backing: {fabric: Deep, extra: 4}
batting: {extra: 4}
binding: {fabric: Kelp, strip: 2 1/2, finish: machine}
quilting: {by: self, density: medium}
`)
}

// awkward is a job whose names are written in many scripts. A flag is two
// characters that show as one, an accent may be a character of its own, and
// Hebrew runs from right to left.
func awkward(t testing.TB) planner.Plan {
	t.Helper()
	return planned(t, `
job: many-scripts
title: Sea glass
client: it's
fabrics:
  "藍": {form: fat quarter, size: 18 x 21}
  "🧵 rose": {form: fat quarter, size: 18 x 21, on-hand: 2}
  "cafe\u0301": {form: fat quarter, size: 18 x 21}
  "🇳🇴": {form: yardage, width: 42}
  "שלום": {form: yardage, width: 42, on-hand: 1 yd}
block: {make: four-patch, square: 4 1/3}
colourways:
  "藍": {blocks: 3, print: "藍", ground: "🇳🇴"}
  "🧵 rose": {blocks: 3, print: "🧵 rose", ground: "שלום"}
  "cafe\u0301": {blocks: 3, print: "cafe\u0301", ground: "🇳🇴"}
  "🇳🇴": {blocks: 3, print: "🇳🇴", ground: "שלום"}
layout: {across: 4, down: 3, order: diagonal, turn: [[0, 90], [180, 270]]}
`)
}

var (
	noon   = time.Date(2026, time.November, 20, 12, 0, 0, 0, time.UTC)
	friday = planner.DateOf(noon)
)

// booked is a job with a share of every row of its route logged: of is 0 for
// nothing, 1 for all, 2 for half, rounded down.
func booked(t testing.TB, plan planner.Plan, of int) tracker.State {
	t.Helper()
	events := []tracker.Event{bookedEvent(plan)}
	if of > 0 {
		events = append(events, loggedEvent(*events[0].Ledger, of))
	}
	state, err := tracker.Fold(events)
	require.NoError(t, err)
	return state
}

func bookedEvent(plan planner.Plan) tracker.Event {
	ledger := tracker.Freeze(plan)
	return tracker.Event{Schema: tracker.EventSchema, ID: "booked", Seq: 1, At: noon, Kind: tracker.Booked, Revision: 1, Ledger: &ledger}
}

func loggedEvent(ledger tracker.Ledger, of int) tracker.Event {
	ev := tracker.Event{Schema: tracker.EventSchema, ID: "logged", Seq: 2, At: noon, Kind: tracker.Logged, Revision: 1}
	for _, o := range ledger.Operations {
		if n := o.Count / of; n > 0 {
			ev.Parts = append(ev.Parts, tracker.Part{Operation: o.Key, Lot: o.Lot, Count: n})
		}
	}
	return ev
}

// shownBy is what a renderer writes.
func shownBy(t testing.TB, show func(*bytes.Buffer) error) string {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, show(&out))
	return out.String()
}
