package tracker

import "time"

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
// taken back, false where no bobbin was ever noted. What was logged along with
// later work was done nobody knows when, and is left out.
func (s State) SinceBobbin() ([]Part, bool) {
	bobbin, ok := s.newestOf(Bobbin)
	if !ok {
		return nil, false
	}
	var parts []Part
	for _, e := range s.Entries {
		if e.Kind != Logged || !e.Standing() || e.Seq < bobbin.Seq {
			continue
		}
		asked := e.Parts[len(e.Parts)-1].Operation // what is logged along comes before it
		for _, p := range e.Parts {
			if !e.CatchUp || p.Operation == asked {
				parts = append(parts, p)
			}
		}
	}
	return parts, true
}

// NewestNote is the newest note about the job, false where there is none.
func (s State) NewestNote() (Event, bool) { return s.newestOf(Noted) }

// newestOf is the newest event of a kind.
func (s State) newestOf(kind Kind) (Event, bool) {
	for i := len(s.events) - 1; i >= 0; i-- {
		if s.events[i].Kind == kind {
			return s.events[i], true
		}
	}
	return Event{}, false
}
