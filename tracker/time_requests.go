package tracker

import (
	"fmt"
	"time"
)

// StartRequest is work that somebody begins at a moment.
type StartRequest struct {
	Operation string // as typed: number, key, or a beginning of one
	Lot       *Lot   // nil: the one with work left
	Ticked    bool   // only ticks are going to tell how long it lasts: no clock runs
	Limits    *Limits
	ID        string // made by the sender
	At        time.Time
	By        string
	Reason    string
}

// Start is the event that records that somebody began. It is refused with a
// *Refusal where the row is not to be known from it, or where that clock runs
// already. Whoever has another clock running in this job stops it so.
func (s State) Start(r StartRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Start(r) })
	}
	row, err := s.rowAsked(r.Operation, r.Lot)
	if err != nil {
		return Event{}, err
	}
	o := s.board.rows[row]
	if w := s.timing.workers[r.By]; w.clock && !r.Ticked && w.row == (rowKey{o.Key, o.Lot}) {
		since := s.timing.sittings[w.open-1].From
		return Event{}, &Refusal{Kind: RunsAlready, Hint: "stop it first",
			What: fmt.Sprintf("the clock runs already for %s of %s, since %s", o.Title(), o.Lot.Name, since.Format("15:04 on Mon 2 Jan"))}
	}
	ev := s.event(Started, r.ID, r.At, r.By)
	ev.Ticked, ev.Limits, ev.Reason = r.Ticked, r.Limits, r.Reason
	ev.Parts = []Part{{Operation: o.Key, Lot: o.Lot}}
	return ev, nil
}

// rowAsked is the one row that an operation and a lot mean. Without a lot it is
// the only one, or the only one with work left.
func (s State) rowAsked(operation string, lot *Lot) (int, error) {
	key, err := s.operation(operation)
	if err != nil {
		return 0, err
	}
	run := []string{key}
	lots := s.lotsOf(run)
	switch open := s.withWork(run, lots); {
	case lot != nil:
		named, err := s.namedLot(*lot, run, lots)
		if err != nil {
			return 0, err
		}
		lots = []Lot{named}
	case len(lots) > 1 && len(open) == 0:
		return 0, s.noneLeft(run, sharesOf(lots))
	case len(lots) > 1 && len(open) > 1:
		return 0, s.whatIsLeft(WhichLot, fmt.Sprintf("which %s?", commonKind(open)), run, open)
	case len(open) == 1:
		lots = open
	}
	row, _ := s.find(key, lots[0])
	return row, nil
}

// Pause is the event that records that somebody who is at work does something
// else for a while.
func (s State) Pause(id string, at time.Time, by string) (Event, error) {
	return s.moment(Paused, id, at, by)
}

// Resume is the event that records that somebody goes on with what they did
// before a pause.
func (s State) Resume(id string, at time.Time, by string) (Event, error) {
	return s.moment(Resumed, id, at, by)
}

// moment is an event that says nothing but that it happened.
func (s State) moment(kind Kind, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.moment(kind, id, at, by) })
	}
	return s.event(kind, id, at, by), nil
}

// Stop is the event that stops the clock of whoever sends it, or what their
// ticks tell of: now, or at an earlier end. It is refused where they have nothing
// under way, where the end is still to come, and where it is before the
// beginning or before something that was checked off.
func (s State) Stop(id string, end *time.Time, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Stop(id, end, at, by) })
	}
	w := s.timing.workers[by]
	if !w.clock && (w.from.IsZero() || minutesOf(at.Sub(w.from)) > s.timing.limits.gap) {
		return Event{}, s.nothingRuns(by)
	}
	if end != nil {
		from := w.from
		if w.clock {
			from = later(s.timing.sittings[w.open-1].worked(), w.from)
		}
		if err := possibleEnd(*end, from, at); err != nil {
			return Event{}, err
		}
	}
	ev := s.event(Stopped, id, at, by)
	ev.End = end
	return ev, nil
}

// nothingRuns refuses to stop what does not run, and says whose clock does.
func (s State) nothingRuns(by string) *Refusal {
	r := &Refusal{Kind: NothingRuns, What: "no clock runs in " + s.Ledger.Job, Hint: "start one first, or say how long it took with log and --took"}
	for _, name := range s.Working() {
		if name != by {
			r.Near = append(r.Near, name)
		}
	}
	if len(r.Near) > 0 {
		r.What = fmt.Sprintf("no clock of yours runs in %s; %s at work", s.Ledger.Job, andList(r.Near)+" "+isOrAre(len(r.Near)))
	}
	return r
}

// possibleEnd checks an end that somebody said, by what went before it and by the
// present time.
func possibleEnd(end, from, now time.Time) error {
	const form = "15:04 on Mon 2 Jan"
	switch {
	case end.After(now):
		return &Refusal{Kind: BadTime, Hint: "say an end that is past",
			What: fmt.Sprintf("the end, %s, is still to come: it is %s now", end.Format(form), now.In(end.Location()).Format(form))}
	case end.Before(from):
		return &Refusal{Kind: BadTime, Hint: "say a later end, or how long it took",
			What: fmt.Sprintf("the end, %s, is before %s, when work was still going on", end.Format(form), from.In(end.Location()).Format(form))}
	}
	return nil
}
