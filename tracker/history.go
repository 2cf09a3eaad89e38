package tracker

import (
	"slices"
	"strings"

	"quiltrun/planner"
)

// Told is one event of a job as its history tells it. UndoneBy is the event
// that took it back, nil while it stands; Of is the event that it is about, which
// it takes back or puts right, nil where it is about none.
type Told struct {
	Event
	UndoneBy, Of *Event
}

// HistoryRequest narrows a history down; what is left empty narrows nothing.
type HistoryRequest struct {
	Operation string       // as typed: number, key, a unique beginning, or a run a..b
	Lot       *Lot         // of any kind where its kind is ""
	Block     string       // as typed
	From, To  planner.Date // both days are within
}

// History is the job's events in the order in which they were appended, those
// that took others back and those that were taken back among them. A block's
// history is what counted at it, named or not. It is refused with a *Refusal
// where the job has no such operation, lot or block.
func (s State) History(r HistoryRequest) ([]Told, error) {
	keep, err := s.wanted(r)
	if err != nil {
		return nil, err
	}
	told := make([]Told, 0, len(s.events))
	by := map[string]*Event{}
	for i := range s.events {
		if ev := &s.events[i]; ev.Target != "" && ev.Kind == Undone {
			by[ev.Target] = ev
		}
	}
	for i := range s.events {
		t := Told{Event: s.events[i], UndoneBy: by[s.events[i].ID]}
		if at, ok := s.at(t.Target); ok {
			t.Of = &s.events[at]
		}
		if keep(t) {
			told = append(told, t)
		}
	}
	return told, nil
}

// wanted is the test that a request makes of each event.
func (s State) wanted(r HistoryRequest) (func(Told) bool, error) {
	var keys []string
	if r.Operation != "" {
		run, err := s.everRun(r.Operation)
		if err != nil {
			return nil, err
		}
		keys = run
	}
	var lots []Lot
	if r.Lot != nil {
		if lots = s.everLots(*r.Lot); len(lots) == 0 {
			return nil, s.neverLot(*r.Lot)
		}
	}
	var touched map[string]bool
	if r.Block != "" {
		id, err := s.block(r.Block)
		if err != nil {
			return nil, err
		}
		touched = s.touching(id)
	}
	return func(t Told) bool {
		day := planner.DateOf(t.At)
		if !r.From.IsZero() && day.Before(r.From) || !r.To.IsZero() && r.To.Before(day) {
			return false
		}
		return t.about(keys, lots, touched)
	}, nil
}

// about reports whether an event, or the one that it takes back, says something
// of the operations, lots and block; nil stands for all.
func (t Told) about(keys []string, lots []Lot, touched map[string]bool) bool {
	if t.Of != nil && len(t.Parts) == 0 {
		return Told{Event: *t.Of}.about(keys, lots, touched)
	}
	if touched != nil && !touched[t.ID] {
		return false
	}
	if keys == nil && lots == nil {
		return true
	}
	return slices.ContainsFunc(t.Parts, func(p Part) bool {
		return (keys == nil || slices.Contains(keys, p.Operation)) && (lots == nil || slices.Contains(lots, p.Lot))
	})
}

// everRun is the operations that were typed. One that a revision took out of the
// route keeps its history.
func (s State) everRun(typed string) ([]string, error) {
	key := strings.ToLower(strings.TrimSpace(typed))
	if _, retired := s.Ledger.Retired[key]; retired {
		return []string{key}, nil
	}
	return s.run(typed)
}

// everLots is the lots of that name that the job has or had: a colourway's
// earlier entries bear the name that it was booked under.
func (s State) everLots(typed Lot) []Lot {
	var all []Lot
	for _, ev := range s.events {
		for _, p := range ev.Parts {
			if !slices.Contains(all, p.Lot) {
				all = append(all, p.Lot)
			}
		}
	}
	for _, o := range s.Ledger.Operations {
		if !slices.Contains(all, o.Lot) {
			all = append(all, o.Lot)
		}
	}
	found := lotsCalled(typed, all)
	for _, l := range found {
		was := Lot{planner.ColourwayLot, s.Ledger.Renamed[l.Name]}
		if l.Kind == planner.ColourwayLot && was.Name != "" && slices.Contains(all, was) {
			found = append(found, was)
		}
	}
	return found
}

// neverLot refuses a lot that the job never had.
func (s State) neverLot(typed Lot) *Refusal {
	var names []string
	for _, o := range s.Ledger.Operations {
		if (typed.Kind == "" || typed.Kind == o.Lot.Kind) && !slices.Contains(names, o.Lot.Name) {
			names = append(names, o.Lot.Name)
		}
	}
	r := &Refusal{Kind: UnknownLot, Near: s.lotsNear(typed.Name, names)}
	kind := "lot"
	if typed.Kind != "" {
		kind = string(typed.Kind)
	}
	r.What = "there is no " + kind + " " + quoted(typed.Name) + ": there " + isOrAre(len(names)) + " " + andList(names)
	if len(r.Near) > 0 {
		r.What = "there is no " + kind + " " + quoted(typed.Name) + "; " + thereIs(r.Near)
	}
	return r
}

// touching is the events that changed a block's counts, those that were taken
// back where they named it. Which block an unnamed count went to is found by
// going through the entries as they came.
func (s State) touching(block string) map[string]bool {
	touched := map[string]bool{}
	undone := s.undone()
	f := newFolding(s.events)
	for i := range s.events {
		ev := &s.events[i]
		if ev.names(block) {
			touched[ev.ID] = true
		}
		if undone[ev.ID] {
			continue
		}
		before := f.countsAt(block, ev.Parts)
		if f.apply(ev) != nil { // not with events that were folded before
			return touched
		}
		if !slices.Equal(before, f.countsAt(block, ev.Parts)) {
			touched[ev.ID] = true
		}
	}
	return touched
}

// names reports that an event says something of a block by its id.
func (e *Event) names(block string) bool {
	return slices.ContainsFunc(e.Parts, func(p Part) bool {
		return slices.ContainsFunc(p.Blocks, func(b BlockCount) bool { return b.Block == block })
	})
}

// countsAt is a block's counts in the rows of the parts.
func (f *folding) countsAt(block string, parts []Part) []int {
	counts := make([]int, len(parts))
	for i, p := range parts {
		if row, ok := f.board.index[rowKey{p.Operation, p.Lot}]; ok {
			counts[i] = f.board.doneAt(row, block)
		}
	}
	return counts
}
