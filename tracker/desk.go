package tracker

import (
	"strings"
	"time"
)

// Note is the event that keeps a note about the job. Its text is taken without
// blanks at its ends; a note without any is refused.
func (s State) Note(text, id string, at time.Time, by string) (Event, error) {
	return s.remark(Noted, text, id, at, by)
}

// Park is the event that says where the job's things lie while it rests. An
// empty text takes them up again, and is refused where nothing is parked.
func (s State) Park(text, id string, at time.Time, by string) (Event, error) {
	return s.remark(Parked, text, id, at, by)
}

// remark is an event of words alone.
func (s State) remark(kind Kind, text, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.remark(kind, text, id, at, by) })
	}
	ev := s.event(kind, id, at, by)
	ev.Reason = strings.TrimSpace(text)
	if ev.Reason != "" {
		return ev, nil
	}
	if kind == Noted {
		return Event{}, &Refusal{Kind: MissingText, What: "the note is empty"}
	}
	if _, parked := s.Parked(); !parked {
		return Event{}, &Refusal{Kind: MissingText, What: "nothing of " + s.Ledger.Job + " is parked",
			Hint: "say where its things lie, such as: blue box 3; row 4 half joined"}
	}
	return ev, nil
}

// Parked is the event that says where the job's things lie, false where nothing
// is parked: the next work that is logged takes it up, and so does an empty
// parking. Work that was taken back never was.
func (s State) Parked() (Event, bool) {
	for i := len(s.events) - 1; i >= 0; i-- {
		switch ev := s.events[i]; {
		case ev.Kind == Parked:
			return ev, ev.Reason != ""
		case ev.Kind == Logged && s.stands(ev.ID):
			return Event{}, false
		}
	}
	return Event{}, false
}

// stands reports that an entry was not taken back.
func (s State) stands(id string) bool {
	for i := len(s.Entries) - 1; i >= 0; i-- {
		if s.Entries[i].ID == id {
			return s.Entries[i].Standing()
		}
	}
	return false
}
