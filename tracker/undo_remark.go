package tracker

import (
	"fmt"
	"strconv"
	"strings"
)

// isRemark reports whether events of the kind can be taken back although they count
// nothing: undo takes one only where it is named, so that a note that was kept in
// between never stands before the work that is meant.
func (k Kind) isRemark() bool { return k == Noted || k == Bobbin }

// remarkNamed is the note or bobbin whose number, id or beginning of an id was
// typed, false where there is none, or more than one.
func (s State) remarkNamed(typed string) (Event, bool) {
	var begin []Event
	for _, ev := range s.events {
		switch {
		case !ev.Kind.isRemark():
		case ev.ID == typed, strconv.FormatUint(ev.Seq, 10) == strings.TrimPrefix(typed, "#"):
			return ev, true
		case typed != "" && strings.HasPrefix(ev.ID, typed):
			begin = append(begin, ev)
		}
	}
	if len(begin) != 1 {
		return Event{}, false
	}
	return begin[0], true
}

// refuseGone refuses a remark that was taken back before.
func (s State) refuseGone(remark Event) error {
	for _, ev := range s.events {
		if ev.Kind == Undone && ev.Target == remark.ID {
			return &Refusal{Kind: NothingToUndo, What: fmt.Sprintf("entry %d (%s) is taken back already", remark.Seq, remark.Kind)}
		}
	}
	return nil
}

// newestOf is the newest event of a kind that nobody took back.
func (s State) newestOf(kind Kind) (Event, bool) {
	var gone map[string]bool
	for i := len(s.events) - 1; i >= 0; i-- {
		switch ev := s.events[i]; {
		case ev.Kind == Undone: // an undo comes after what it takes back
			if gone == nil {
				gone = map[string]bool{}
			}
			gone[ev.Target] = true
		case ev.Kind == kind && !gone[ev.ID]:
			return ev, true
		}
	}
	return Event{}, false
}

// Undoes is the event that another takes back or puts right, false where it is
// about none.
func (s State) Undoes(ev Event) (Event, bool) {
	at, ok := s.at(ev.Target)
	if !ok || ev.Target == "" {
		return Event{}, false
	}
	return s.events[at], true
}
