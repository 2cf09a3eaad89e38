package tracker

import (
	"slices"
	"time"
)

// Bobbin is the kind of event that says that a full bobbin went in. It counts
// nothing.
const Bobbin Kind = "bobbin"

// NewBobbin is the event that a full bobbin went in. An id that the job has
// already is answered as by Log.
func (s State) NewBobbin(id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.NewBobbin(id, at, by) })
	}
	return s.event(Bobbin, id, at, by), nil
}

// SinceBobbin is what was logged since the newest bobbin went in and was not
// taken back, newest first, and false where no bobbin was ever noted. What was
// logged along with later work was done nobody knows when, and is left out.
func (s State) SinceBobbin() ([]Part, bool) {
	bobbin, ok := s.newestOf(Bobbin)
	if !ok {
		return nil, false
	}
	var parts []Part
	for _, e := range slices.Backward(s.Entries) {
		if e.Seq < bobbin.Seq {
			break
		}
		if e.Kind == Logged && e.Standing() {
			parts = append(parts, e.asked()...)
		}
	}
	return parts, true
}

// asked is the parts of an entry that were not logged along: those come before
// what was asked for, and are of other operations.
func (e Entry) asked() []Part {
	last := e.Parts[len(e.Parts)-1].Operation
	if !e.CatchUp {
		return e.Parts
	}
	return slices.DeleteFunc(slices.Clone(e.Parts), func(p Part) bool { return p.Operation != last })
}

// NewestNote is the newest note about the job, false where there is none.
func (s State) NewestNote() (Event, bool) { return s.newestOf(Noted) }
