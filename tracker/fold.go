package tracker

import (
	"fmt"
	"sync/atomic"

	"quiltrun/planner"
)

// State is what a job's events add up to. Its methods change nothing; values
// may be shared. The zero State is that of a job that is not booked.
type State struct {
	Ledger  Ledger
	File    string  // the job file's bytes, as booked or last revised
	Entries []Entry // what was logged, recounted, ripped, measured and amended, taken back or not, in order

	events                []Event
	eventsEnd, entriesEnd *atomic.Int64  // see grow
	ids                   map[string]int // event by id, of the first events; With lists the newest from time to time
	amend                 planner.Amendments
	dealt                 []Block // of the ledger, where they were planned
	board                 *board
	effort                []effort         // by row
	aside                 map[rowKey]shelf // as in folding
	timing                timing
}

// Entry is something that can be taken back. UndoneBy is the id of the event that
// took it back, "" while it stands.
type Entry struct {
	Event
	UndoneBy string
}

// Standing reports that the entry counts.
func (e Entry) Standing() bool { return e.UndoneBy == "" }

// Fold adds up the events of one job, in order of their numbers; no events are
// a job that is not booked. An entry that was taken back counts as if it had
// never been. Fold checks no order of work: what was accepted counts. An error
// is for events that this program did not write: it names the event and says
// what is wrong with it.
func Fold(events []Event) (State, error) {
	s := State{ids: make(map[string]int, len(events))}
	if len(events) == 0 {
		return s, nil
	}
	if err := s.read(events); err != nil {
		return State{}, err
	}
	f, err := replay(events, s.undone())
	if err != nil {
		return State{}, err
	}
	s.adopt(f)
	s.dealt = f.dealt
	return s, nil
}

// read looks at every event by itself and at what it points to.
func (s *State) read(events []Event) error {
	s.events, s.Entries = events, make([]Entry, 0, len(events))
	entryOf := make([]int, len(events)) // by event
	for i := range events {
		ev, last := &events[i], (*Event)(nil)
		if i > 0 {
			last = &events[i-1]
		}
		_, twice := s.ids[ev.ID]
		if err := sound(ev, last, twice); err != nil {
			return damaged(ev, err)
		}
		s.ids[ev.ID] = i
		switch {
		case ev.Kind.isEntry():
			entryOf[i] = len(s.Entries)
			s.Entries = append(s.Entries, Entry{Event: *ev})
		case ev.Kind == Undone:
			target, ok := s.ids[ev.Target]
			if ok && events[target].Kind.isRemark() {
				continue // what stands of those is looked up where it is asked for
			}
			if !ok || !events[target].Kind.isEntry() {
				return damaged(ev, fmt.Errorf("it takes back %s, which is no entry of this job", quoted(ev.Target)))
			}
			entry := &s.Entries[entryOf[target]]
			if !entry.Standing() {
				return damaged(ev, fmt.Errorf("it takes back %s a second time", quoted(ev.Target)))
			}
			entry.UndoneBy = ev.ID
		case ev.Kind == Settled && ev.Target != "":
			if _, ok := s.ids[ev.Target]; !ok {
				return damaged(ev, fmt.Errorf("it puts right the time of %s, which is not in this job", quoted(ev.Target)))
			}
		}
	}
	return nil
}

// damaged words what is wrong with a stored event.
func damaged(ev *Event, err error) error {
	return fmt.Errorf("event %d of the job is not one that quiltrun wrote: %w", ev.Seq, err)
}

// sound checks an event's envelope. Last is the event before it, nil for the
// first; twice says that its id was used.
func sound(ev, last *Event, twice bool) error {
	switch {
	case ev.Schema > EventSchema:
		return fmt.Errorf("its schema is %d and this quiltrun reads up to %d: use a newer quiltrun", ev.Schema, EventSchema)
	case ev.Schema < 1:
		return fmt.Errorf("it has no schema")
	case ev.ID == "":
		return fmt.Errorf("it has no id")
	case twice:
		return fmt.Errorf("its id %s was used before", quoted(ev.ID))
	case last != nil && ev.Seq <= last.Seq:
		return fmt.Errorf("it does not come after event %d", last.Seq)
	case last == nil && ev.Kind != Booked:
		return fmt.Errorf("it comes before the job was booked")
	case last != nil && ev.Kind == Booked:
		return fmt.Errorf("the job was booked before")
	}
	return nil
}

// undone is the ids of the entries that were taken back.
func (s State) undone() map[string]bool {
	gone := map[string]bool{}
	for i := range s.Entries {
		if e := &s.Entries[i]; !e.Standing() {
			gone[e.ID] = true
		}
	}
	return gone
}

// LastSeq is the number of the newest event, 0 where there is none.
func (s State) LastSeq() uint64 {
	if len(s.events) == 0 {
		return 0
	}
	return s.events[len(s.events)-1].Seq
}
