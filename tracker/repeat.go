package tracker

import (
	"fmt"
	"reflect"
	"slices"
	"time"
)

// Repeated is the stored event with an id, false where the job has none such.
// An id is used once: what was taken back keeps it.
func (s State) Repeated(id string) (Event, bool) {
	at, ok := s.at(id)
	if !ok {
		return Event{}, false
	}
	return s.events[at], true
}

// Before is the job as it was before the event with an id.
func (s State) Before(id string) (State, error) {
	at, _ := s.at(id)
	return Fold(s.events[:at:at])
}

// SentAgain refuses an event that came with the id of a stored one and says
// something else: an entry sent twice counts once, but two entries must not pass
// for one. The *Refusal names the stored one.
func (e Event) SentAgain(sent Event) error {
	if e.saysTheSame(sent) {
		return nil
	}
	return &Refusal{Kind: IDTaken, Near: []string{e.ID},
		What: fmt.Sprintf("the id %s was used for another entry (event %d)", quoted(e.ID), e.Seq),
		Hint: "send new work with a new id",
	}
}

// saysTheSame reports whether two events have the same content: who sent them
// and when is none of it, nor are numbers that the store gave. The ledger is
// not looked at, since it follows from the job file.
func (e Event) saysTheSame(other Event) bool {
	return e.Kind == other.Kind && e.CatchUp == other.CatchUp && e.Ticked == other.Ticked && e.Reason == other.Reason &&
		e.Target == other.Target && e.File == other.File &&
		reflect.DeepEqual(e.Parts, other.Parts) && reflect.DeepEqual(e.Limits, other.Limits) && sameEnd(e.End, other.End) &&
		reflect.DeepEqual(e.Measure, other.Measure) && reflect.DeepEqual(e.Amendment, other.Amendment) &&
		reflect.DeepEqual(e.Shelf, other.Shelf) &&
		slices.Equal(e.Week, other.Week) && slices.Equal(e.Days, other.Days)
}

// sameEnd reports whether two ends that were said are the same instant, or none.
func sameEnd(a, b *time.Time) bool {
	return a == b || a != nil && b != nil && a.Equal(*b)
}

// again is the stored event where the request that came with its id would have
// made the same one at its time.
func (s State) again(stored Event, decide func(then State) (Event, error)) (Event, error) {
	at, _ := s.at(stored.ID)
	then, err := Fold(s.events[:at:at])
	if err != nil {
		return Event{}, err
	}
	// What would have been refused then is something else in any case.
	sent, _ := decide(then)
	if err := stored.SentAgain(sent); err != nil {
		return Event{}, err
	}
	return stored, nil
}
