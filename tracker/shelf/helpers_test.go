package shelf

import (
	"fmt"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// morning is when the tests' first event happens; each further one is a minute
// later.
var morning = time.Date(2026, time.November, 2, 9, 0, 0, 0, time.UTC)

// world is a maker's whole log, as the store would keep it.
type world struct {
	t     require.TestingT
	clock int
	maker []tracker.Event
	jobs  []tracker.State
}

func (w *world) now() time.Time {
	w.clock++
	return morning.Add(time.Duration(w.clock) * time.Minute)
}

// fold is the shelf of all that happened.
func (w *world) fold() Shelf {
	s, err := Fold(w.maker, w.jobs)
	require.NoError(w.t, err)
	return s
}

// enter appends an entry of the shelf if it is not refused.
func (w *world) enter(e tracker.Shelf) error {
	if err := w.fold().Check(e); err != nil {
		return err
	}
	w.own(tracker.Event{Kind: tracker.Shelved, Shelf: &e})
	return nil
}

func (w *world) own(ev tracker.Event) {
	ev.Schema, ev.Seq, ev.At = 1, uint64(len(w.maker))+1, w.now()
	ev.ID = fmt.Sprint("own-", ev.Seq)
	w.maker = append(w.maker, ev)
}

// undo takes the newest entry of the shelf back, false where none stands.
func (w *world) undo() bool {
	e, err := w.fold().Undo("")
	if err == nil {
		w.own(tracker.Event{Kind: tracker.Undone, Target: e.ID})
	}
	return err == nil
}

// dunes is a job of plain blocks: each takes one square of Kelp and one of Foam.
func dunes(id string, blocks int, onHand string) string {
	return fmt.Sprintf(`job: %s
fabrics:
  Kelp: {form: fat quarter, size: 18 x 22%s}
  Foam: {form: yardage, width: 40}
block: {make: four-patch, square: 5, ground: Foam, print: Kelp}
colourways:
  tide: {blocks: %d}
layout: {across: %d, down: 1, order: rows}
backing: {fabric: Foam, extra: 12 1/2 x 4}
batting: {extra: 4}
quilting: {by: self}
`, id, onHand, blocks, blocks)
}

// book takes a job on and gives its place.
func (w *world) book(file string) int {
	return w.put(tracker.State{}, len(w.jobs), file)
}

// planned plans a file, on the numbers of a job that is booked.
func (w *world) planned(s tracker.State, file string) planner.Plan {
	job, err := planner.Parse("job.yaml", []byte(file))
	require.NoError(w.t, err)
	plan, err := planner.Make(job, s.Ledger.Prior())
	require.NoError(w.t, err)
	return plan
}

// put books or revises a job.
func (w *world) put(s tracker.State, at int, file string) int {
	plan := w.planned(s, file)
	ev := tracker.Event{Kind: tracker.Booked, File: file}
	ledger := tracker.Freeze(plan)
	if s.Booked() {
		ev.Kind, ledger = tracker.Revised, tracker.Refreeze(s.Ledger, plan)
	}
	ev.Ledger = &ledger
	if at == len(w.jobs) {
		w.jobs = append(w.jobs, s)
	}
	w.happen(at, ev)
	return at
}

// happen appends an event to a job.
func (w *world) happen(job int, ev tracker.Event) {
	s := w.jobs[job]
	seq := 1
	if s.Booked() {
		seq = int(s.Newest()) + 1
	}
	ev.Schema, ev.Seq, ev.At, ev.ID = 1, uint64(seq), w.now(), fmt.Sprintf("job-%d-%d", job, seq)
	var err error
	if s.Booked() {
		s, err = s.With(ev)
	} else {
		s, err = tracker.Fold([]tracker.Event{ev})
	}
	require.NoError(w.t, err)
	w.jobs[job] = s
}

// log checks work off if it is not refused.
func (w *world) log(job int, op, lot string, n int) error {
	r := tracker.LogRequest{Operation: op, ID: "x", At: morning, CatchUp: true, Counts: []tracker.CountAsked{{Lot: lot, Number: n}}}
	ev, err := w.jobs[job].Log(r)
	if err == nil {
		w.happen(job, ev)
	}
	return err
}

// recount sets a row to what lies on the table.
func (w *world) recount(job int, op, lot string, n int) {
	w.happen(job, tracker.Event{Kind: tracker.Recount, Parts: []tracker.Part{{
		Operation: op, Lot: tracker.Lot{Kind: planner.FabricLot, Name: lot}, Count: n}}})
}

// undoJob takes back a job's newest entry if that is not refused.
func (w *world) undoJob(job int) {
	if ev, err := w.jobs[job].Undo("", "x", morning, "kelp"); err == nil {
		w.happen(job, ev)
	}
}

func foam(length measure.Length, lot string) tracker.Shelf {
	return tracker.Shelf{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: "Foam", Form: planner.Yardage,
		Width: 42 * measure.Inch, Amount: planner.Amount(length), DyeLot: lot}
}

func kelp(sheets int, lot string) tracker.Shelf {
	return tracker.Shelf{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: "Kelp", Form: planner.FatQuarter,
		Width: 18 * measure.Inch, Height: 22 * measure.Inch, Amount: planner.Amount(sheets), DyeLot: lot}
}

// rectangles is pieces of cloth in inches.
func rectangles(name string, width, height, count int, lot string) tracker.Shelf {
	return tracker.Shelf{Do: tracker.PutOn, Material: planner.ClothMaterial, Name: name, Form: planner.Pieces,
		Width: measure.Inch.Times(width), Height: measure.Inch.Times(height), Amount: planner.Amount(count), DyeLot: lot}
}

// needOf is what a job takes of a fabric.
func (w *world) needOf(s Shelf, job, name, purpose string) Need {
	for _, n := range s.Needs {
		if n.Job == job && n.Name == name && n.StockNeed.For == purpose {
			return n
		}
	}
	require.Fail(w.t, "no such need", "%s of %s", name, job)
	return Need{}
}
