package tracker

import (
	"slices"
	"strings"
	"time"
	"unicode/utf8"
)

// The kinds of event that are said beside the work and count nothing.
const (
	Noted  Kind = "note"   // Reason is what was noted
	Parked Kind = "park"   // Reason is where things lie until the work goes on
	Bobbin Kind = "bobbin" // a full bobbin went in
)

// longestNote bounds a note, in bytes: it is read at arm's length.
const longestNote = 1000

// Note is the event that keeps a sentence with the job. It is refused where there
// is none, or none that can be kept as text. An id that the job has already is
// answered as by Log.
func (s State) Note(text, id string, at time.Time, by string) (Event, error) {
	return s.remark(Noted, strings.TrimSpace(text), id, at, by)
}

// NewBobbin is the event that a full bobbin went in.
func (s State) NewBobbin(id string, at time.Time, by string) (Event, error) {
	return s.remark(Bobbin, "", id, at, by)
}

// remark is an event that counts nothing.
func (s State) remark(kind Kind, text, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.remark(kind, text, id, at, by) })
	}
	switch {
	case text == "" && kind != Bobbin:
		return Event{}, &Refusal{Kind: BadText, What: "there is nothing in the note", Hint: "write what is to be remembered"}
	case len(text) > longestNote:
		return Event{}, &Refusal{Kind: BadText, What: "the note is too long", Hint: "make two of it"}
	case !utf8.ValidString(text):
		return Event{}, &Refusal{Kind: BadText, What: "the note is not UTF-8 text", Hint: "write it anew"}
	}
	ev := s.event(kind, id, at, by)
	ev.Reason = text
	return ev, nil
}

// Newest is the newest event of a kind, false where there is none.
func (s State) Newest(kind Kind) (Event, bool) {
	for _, ev := range slices.Backward(s.events) {
		if ev.Kind == kind {
			return ev, true
		}
	}
	return Event{}, false
}

// SinceBobbin is what was logged since the newest bobbin went in and was not
// taken back, false where no bobbin was ever noted.
func (s State) SinceBobbin() ([]Part, bool) {
	bobbin, ok := s.Newest(Bobbin)
	if !ok {
		return nil, false
	}
	var parts []Part
	for _, e := range s.Entries {
		if e.Kind == Logged && e.Standing() && e.Seq > bobbin.Seq {
			parts = append(parts, e.Parts...)
		}
	}
	return parts, true
}
