package tracker

import (
	"reflect"
	"slices"
)

// mostUnlisted is how many of the newest events are searched one by one for an
// id, before all are listed anew.
const mostUnlisted = 256

// Events is all events of the job that the state was folded from, in order. They
// are not to be changed.
func (s State) Events() []Event { return slices.Clip(s.events) }

// With is the state after one more event, as the store has numbered it: the
// same that Fold gives for all of them. What an entry or a sitting at work adds
// is counted on the rows that it touches alone, so that it costs the same
// however long the log is.
func (s State) With(ev Event) (State, error) {
	if !s.Booked() || !ev.Kind.addsUp() {
		return Fold(append(s.events[:len(s.events):len(s.events)], ev))
	}
	last := &s.events[len(s.events)-1]
	_, twice := s.at(ev.ID)
	if err := sound(&ev, last, twice); err != nil {
		return State{}, damaged(&ev, err)
	}
	f := s.folding(&ev)
	if err := f.apply(&ev); err != nil {
		return State{}, damaged(&ev, err)
	}
	next := s
	next.events, next.eventsEnd = grow(s.events, s.eventsEnd, ev)
	if ev.Kind.isEntry() {
		next.Entries, next.entriesEnd = grow(s.Entries, s.entriesEnd, Entry{Event: ev})
	}
	next.adopt(f)
	next.list()
	return next, nil
}

// Through is the state after all events of the job, where a store has given
// them: the state's own, and those that came since. Where the state's own are
// not their beginning, another log lies in the file's place and all are folded
// anew.
func (s State) Through(events []Event) (State, error) {
	n := len(s.events)
	if n == 0 || len(events) < n || !sameEvent(&events[n-1], &s.events[n-1]) {
		return Fold(events)
	}
	for _, ev := range events[n:] {
		var err error
		if s, err = s.With(ev); err != nil {
			return State{}, err
		}
	}
	return s, nil
}

// sameEvent reports whether two events are one: the same in memory, or alike in
// everything.
func sameEvent(a, b *Event) bool { return a == b || reflect.DeepEqual(a, b) }

// addsUp reports whether an event of the kind only adds to what was folded
// before it.
func (k Kind) addsUp() bool {
	switch k {
	case Logged, Recount, Ripped, Spoilt, Measured, Started, Stopped, Paused, Resumed, Noted, Parked, Bobbin:
		return true
	}
	return false
}

// isEntry reports whether events of the kind are entries: they can be taken back.
func (k Kind) isEntry() bool {
	switch k {
	case Logged, Recount, Ripped, Spoilt, Measured, Amended:
		return true
	}
	return false
}

// folding is the fold of the state, ready for one more event: what that touches
// is copied, and all else shared.
func (s State) folding(ev *Event) *folding {
	f := &folding{ledger: s.Ledger, file: s.File, amend: s.amend, aside: s.aside, effort: slices.Clone(s.effort), timing: s.timing.forked()}
	f.board = &board{route: s.board.route, tallies: slices.Clone(s.board.tallies)}
	for _, p := range ev.Parts {
		if row, ok := f.board.index[rowKey{p.Operation, p.Lot}]; ok {
			f.board.tallies[row] = f.board.tallies[row].copied()
		}
	}
	return f
}

// adopt takes over what a fold has come to.
func (s *State) adopt(f *folding) {
	s.Ledger, s.File, s.amend, s.board = f.ledger, f.file, f.amend, f.board
	s.effort, s.aside, s.timing = f.effort, f.aside, f.timing
}

// at is the place of the event with an id.
func (s State) at(id string) (int, bool) {
	if i, ok := s.ids[id]; ok {
		return i, true
	}
	for i := len(s.ids); i < len(s.events); i++ {
		if s.events[i].ID == id {
			return i, true
		}
	}
	return 0, false
}

// list lists the ids of all events once too many are not listed.
func (s *State) list() {
	if len(s.events)-len(s.ids) <= mostUnlisted {
		return
	}
	s.ids = make(map[string]int, len(s.events))
	for i := range s.events {
		s.ids[s.events[i].ID] = i
	}
}
