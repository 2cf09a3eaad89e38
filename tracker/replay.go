package tracker

import (
	"errors"
	"fmt"
	"slices"
	"time"

	"quiltrun/planner"
)

// folding is a fold under way.
type folding struct {
	ledger Ledger
	file   string
	amend  planner.Amendments
	dealt  []Block // of the ledger, where they were planned
	board  *board
	effort []effort         // by row
	aside  map[rowKey]shelf // by row, as the last ledger left it; of rows that are gone too
	timing
}

// shelf is what was logged of a row.
type shelf struct {
	tally  tally
	effort effort
}

// replay goes through the events as if those undone had never been.
func replay(events []Event, undone map[string]bool) (*folding, error) {
	f := newFolding(events)
	for i := range events {
		if undone[events[i].ID] {
			continue
		}
		if err := f.apply(&events[i]); err != nil {
			return nil, damaged(&events[i], err)
		}
	}
	f.exchange()
	return f, nil
}

// newFolding is the fold before the first of the events.
func newFolding(events []Event) *folding {
	return &folding{aside: map[rowKey]shelf{}, timing: newTiming(settledBy(events))}
}

// apply takes one event in. An unknown kind is no small matter: leaving it out
// could make every later number wrong.
func (f *folding) apply(ev *Event) error {
	switch ev.Kind {
	case Booked, Revised:
		return f.plan(ev)
	case Amended:
		return f.amended(ev)
	case Measured:
		return ev.Measure.sound()
	case Logged, Recount, Ripped, Spoilt:
		return f.entry(ev)
	case Started, Stopped, Paused, Resumed, Settled:
		return f.keepTime(ev)
	case Undone, Hours, Noted, Parked, Bobbin:
		return nil
	}
	return fmt.Errorf("its kind %s is not known: use a newer quiltrun", quoted(string(ev.Kind)))
}

// plan goes over to a job file and its plan. A revision may take back what the
// making has amended.
func (f *folding) plan(ev *Event) error {
	f.file = ev.File
	if ev.Amendment != nil {
		ev.Amendment.change(&f.amend)
	}
	return f.adopt(ev)
}

// entry takes in what an event says of rows, with the minutes that were said of it
// since.
func (f *folding) entry(ev *Event) error {
	if len(ev.Parts) == 0 {
		return errors.New("it says of no operation what was done")
	}
	parts := ev.Parts
	if said := f.settled[ev.ID].parts; !ev.Ticked && len(said) == len(parts) {
		parts = withMinutes(parts, said)
	}
	for i := range parts {
		if err := f.count(ev.Kind, &parts[i]); err != nil {
			return err
		}
	}
	return f.keepTime(ev)
}

// withMinutes is the same parts with other minutes.
func withMinutes(parts, said []Part) []Part {
	put := slices.Clone(parts)
	for i := range put {
		put[i].Minutes = said[i].Minutes
	}
	return put
}

// settledBy is what the maker said last of each time that was put right.
func settledBy(events []Event) map[string]word {
	said := map[string]word{}
	for i := range events {
		if ev := &events[i]; ev.Kind == Settled && ev.Target != "" {
			said[ev.Target] = word{ev.Parts, ev.End}
		}
	}
	return said
}

// word is what the maker said of a time: the minutes of each part, and when work
// ended, nil where only its length was said.
type word struct {
	parts []Part
	end   *time.Time
}

// adopt goes over to a new ledger: what was logged of a row stays with it.
func (f *folding) adopt(ev *Event) error {
	if ev.Ledger == nil {
		return errors.New("it has no ledger")
	}
	made, err := newRoute(*ev.Ledger)
	if err != nil {
		return err
	}
	names := carriedNames(f.ledger, *ev.Ledger)
	f.shelve(names)
	f.renameTimes(names)
	f.ledger = *ev.Ledger
	f.board, f.effort = newBoard(made), make([]effort, len(made.rows))
	for i, o := range made.rows {
		kept := f.aside[rowKey{o.Key, o.Lot}]
		f.board.tallies[i], f.effort[i] = kept.tally, kept.effort
	}
	return nil
}

// shelve puts all rows aside, each under the name that its colourway will bear.
func (f *folding) shelve(names map[string]string) {
	renamed := make(map[rowKey]shelf, len(f.aside))
	for k, s := range f.aside {
		renamed[k.renamed(names)] = s
	}
	if f.board != nil {
		for i, o := range f.board.rows {
			renamed[rowKey{o.Key, o.Lot}.renamed(names)] = shelf{f.board.tallies[i], f.effort[i]}
		}
	}
	f.aside = renamed
}

// renamed is the row under the name that its colourway bears now. A fabric of
// the same name keeps it.
func (k rowKey) renamed(names map[string]string) rowKey {
	if name, ok := names[k.lot.Name]; ok && k.lot.Kind == planner.ColourwayLot {
		k.lot.Name = name
	}
	return k
}

// count adds one part of an entry.
func (f *folding) count(kind Kind, p *Part) error {
	row, ok := f.board.index[rowKey{p.Operation, p.Lot}]
	if !ok {
		return fmt.Errorf("%s of %s is not in the route", quoted(p.Operation), quoted(p.Lot.Name))
	}
	if err := f.possible(kind, row, p); err != nil {
		return err
	}
	tally := &f.board.tallies[row]
	switch kind {
	case Recount:
		tally.set(p.Count, p.Blocks, f.board.blocksOf(row), f.board.rows[row].PerBlock)
	case Ripped, Spoilt:
		f.board.rip(row, p)
	default:
		tally.put(p.Count, p.Blocks)
	}
	if p.Minutes == nil {
		return nil
	}
	if kind == Ripped {
		f.effort[row].ripping += *p.Minutes
		return nil
	}
	f.effort[row].minutes += *p.Minutes
	if kind == Logged {
		f.effort[row].timed += p.Count
	}
	return nil
}

// possible checks the numbers of a part by themselves.
func (f *folding) possible(kind Kind, row int, p *Part) error {
	if p.Count < 0 || p.Count == 0 && kind != Recount {
		return fmt.Errorf("its count of %s is %d", p.Operation, p.Count)
	}
	if p.Minutes != nil && !(*p.Minutes >= 0) {
		return fmt.Errorf("its minutes of %s are below 0", p.Operation)
	}
	if len(p.Blocks) == 0 {
		return nil
	}
	sum := 0
	for _, b := range p.Blocks {
		block, ok := f.board.known[b.Block]
		if !ok || !f.board.byBlock(row) || block.Colourway != p.Lot.Name {
			return fmt.Errorf("%s of %s has no block %s", p.Operation, p.Lot.Name, quoted(b.Block))
		}
		if b.Count <= 0 {
			return fmt.Errorf("its count of block %s is %d", b.Block, b.Count)
		}
		sum += b.Count
	}
	if sum > p.Count || sum < p.Count && kind != Recount {
		return fmt.Errorf("its count of %s is %d and its blocks have %d", p.Operation, p.Count, sum)
	}
	return nil
}
