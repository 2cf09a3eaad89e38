package tracker

import (
	"fmt"
	"strconv"
	"strings"
	"time"
)

// Undo is the event that takes an entry back: the newest that stands where
// entry is "" (a revision is none, and nothing older than it is meant so), else the one whose id, beginning of an id or event number it is.
// A note or a bobbin is taken back where it is named.
// An entry that others rest on is refused, and they are named. An id that
// the job has already is answered as by Log.
func (s State) Undo(entry, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Undo(entry, id, at, by) })
	}
	typed := strings.TrimSpace(entry)
	if remark, named := s.remarkNamed(typed); named && len(s.entriesLike(typed)) == 0 {
		ev := s.event(Undone, id, at, by)
		ev.Target = remark.ID
		return ev, s.refuseGone(remark)
	}
	target, err := s.entry(typed)
	if err != nil {
		return Event{}, err
	}
	if err := s.restsOn(target); err != nil {
		return Event{}, err
	}
	if c := s.clear(target); c.knot || len(c.first) > 0 {
		return Event{}, c.refusal(target)
	}
	ev := s.event(Undone, id, at, by)
	ev.Target = target.ID
	return ev, nil
}

// entry finds the entry that is meant, which has to stand.
func (s State) entry(typed string) (Entry, error) {
	if typed == "" {
		return s.newest()
	}
	found := s.entriesLike(typed)
	switch {
	case len(found) == 0:
		return Entry{}, s.noEntry(typed)
	case len(found) > 1:
		r := &Refusal{Kind: Ambiguous, What: fmt.Sprintf("%s begins the ids of %d entries", quoted(typed), len(found)), Hint: "type more of it"}
		for _, e := range found {
			r.Near = append(r.Near, e.ID)
		}
		return Entry{}, r
	case !found[0].Standing():
		return Entry{}, &Refusal{Kind: NothingToUndo, What: s.describe(found[0]) + " is taken back already"}
	}
	return found[0], nil
}

// newest is the entry that undo means where none is named.
func (s State) newest() (Entry, error) {
	revision := s.revised()
	for i := len(s.Entries) - 1; i >= 0; i-- {
		switch e := s.Entries[i]; {
		case !e.Standing():
		case e.Seq < revision.Seq:
			return Entry{}, afterRevision(revision)
		default:
			return e, nil
		}
	}
	if len(s.Entries) > 0 {
		return Entry{}, &Refusal{Kind: NothingToUndo, What: "nothing to undo: every entry is taken back already"}
	}
	return Entry{}, &Refusal{Kind: NothingToUndo, What: "nothing to undo: nothing is logged yet"}
}

// revised is the newest revision, with number 0 where there is none.
func (s State) revised() Event {
	for i := len(s.events) - 1; i >= 0; i-- {
		if s.events[i].Kind == Revised {
			return s.events[i]
		}
	}
	return Event{}
}

// afterRevision refuses to reach behind a revision without a word.
func afterRevision(revision Event) *Refusal {
	return &Refusal{Kind: NothingToUndo,
		What: fmt.Sprintf("the newest entry is a revision (entry %d of %s)", revision.Seq, revision.At.Format("2 Jan")),
		Hint: "revise with the former file to go back, or name the entry to take back with --entry"}
}

// entriesLike is the entry with that id, else with that number, else all whose
// ids begin so.
func (s State) entriesLike(typed string) []Entry {
	var byNumber, begin []Entry
	number, err := strconv.ParseUint(strings.TrimPrefix(typed, "#"), 10, 64)
	for _, e := range s.Entries {
		switch {
		case e.ID == typed:
			return []Entry{e}
		case err == nil && e.Seq == number:
			byNumber = append(byNumber, e)
		case strings.HasPrefix(e.ID, typed):
			begin = append(begin, e)
		}
	}
	if len(byNumber) > 0 {
		return byNumber
	}
	return begin
}

// noEntry is a text that is no entry, or an event that is none.
func (s State) noEntry(typed string) *Refusal {
	for _, ev := range s.events {
		if ev.ID != typed && strconv.FormatUint(ev.Seq, 10) != typed {
			continue
		}
		switch ev.Kind {
		case Booked, Revised:
			return &Refusal{Kind: NothingToUndo, What: "a booking is not undone", Hint: "revise the job instead"}
		case Parked:
			return &Refusal{Kind: NothingToUndo, What: "a parking counts nothing that could be taken back", Hint: "park --clear takes up what is parked"}
		case Undone:
			return &Refusal{Kind: NothingToUndo, What: "an undo is not undone", Hint: "log the work again"}
		}
	}
	var ids []string
	for _, e := range s.Entries {
		ids = append(ids, e.ID)
	}
	r := &Refusal{Kind: UnknownEntry, Near: Nearest(typed, ids), What: fmt.Sprintf("there is no entry %s", quoted(typed))}
	if len(r.Near) > 0 {
		r.What += "; " + thereIs(r.Near)
	} else {
		r.Hint = "log gives every entry a number and an id: either is meant, or the beginning of an id"
	}
	return r
}

// describe is an entry in a few words, by the part that was asked for last:
// "entry 7 (12 of tide in 80 chain-sew pairs)".
func (s State) describe(e Entry) string {
	switch {
	case e.Amendment != nil:
		return fmt.Sprintf("entry %d (%s)", e.Seq, e.Amendment.Words())
	case e.Measure != nil:
		return fmt.Sprintf("entry %d (a measure: %s)", e.Seq, e.Measure.Name)
	}
	more := len(e.Parts) - 1
	p := e.Parts[more]
	text := fmt.Sprintf("entry %d (%d of %s in %s", e.Seq, p.Count, p.Lot.Name, s.board.titleOf(p.Operation))
	if more > 0 {
		text += fmt.Sprintf(", and %d more %s", more, plural(more, "part"))
	}
	return text + ")"
}
