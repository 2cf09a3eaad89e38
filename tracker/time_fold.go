package tracker

import (
	"errors"
	"fmt"
	"maps"
	"slices"
	"time"

	"quiltrun/planner"
)

// timing is what a fold knows of working time.
type timing struct {
	limits   limits
	settled  map[string]word   // by the id of what the maker put right; the newest word counts
	workers  map[string]worker // by name
	sittings []Sitting         // in the order in which they were opened
}

// newTiming is the timing before the first event.
func newTiming(settled map[string]word) timing {
	return timing{limits: limits{UsualGap, UsualQuiet}, settled: settled, workers: map[string]worker{}}
}

// forked is a timing to go on from without harm to this one.
func (t timing) forked() timing {
	t.workers, t.sittings = maps.Clone(t.workers), slices.Clone(t.sittings)
	return t
}

// effort is the time that went into a row.
type effort struct {
	minutes planner.Minutes // of making
	timed   int             // the counts that were made in it
	ripping planner.Minutes // of taking apart again
}

// keepTime takes in what an event says of working time.
func (f *folding) keepTime(ev *Event) error {
	if err := timeSound(ev); err != nil {
		return err
	}
	f.limits = f.limits.after(ev.Limits)
	w := f.workers[ev.By]
	switch ev.Kind {
	case Started:
		f.begin(&w, ev)
	case Paused:
		f.pause(&w, ev.At)
	case Resumed:
		f.resume(&w, ev)
	case Stopped:
		f.stop(&w, ev)
	case Settled:
		f.close(ev)
		return nil
	case Logged, Recount, Ripped, Spoilt:
		f.work(&w, ev)
	}
	w.seen = later(w.seen, ev.At)
	f.workers[ev.By] = w
	return nil
}

// timeSound checks what an event says of working time by itself.
func timeSound(ev *Event) error {
	if ev.Kind == Started && len(ev.Parts) == 0 {
		return errors.New("it does not say what was begun")
	}
	if ev.Kind == Settled && ev.Target == "" && ev.Limits == nil {
		return errors.New("it does not say which time it puts right")
	}
	if ev.Kind == Started || ev.Kind == Settled {
		for _, p := range ev.Parts {
			if p.Minutes != nil && !(*p.Minutes >= 0) {
				return fmt.Errorf("its minutes of %s are below 0", p.Operation)
			}
		}
	}
	return ev.Limits.sound()
}

// lastRow is the row that an event is about; what was caught up with comes before
// it.
func (ev *Event) lastRow() rowKey {
	p := ev.Parts[len(ev.Parts)-1]
	return rowKey{p.Operation, p.Lot}
}

// begin starts a clock, or opens a screen for ticks. Whoever begins one thing has
// stopped another.
func (f *folding) begin(w *worker, ev *Event) {
	if ev.Ticked && w.clock {
		w.sign(ev.At)
		return
	}
	f.finish(w, ev.At, false)
	w.row, w.late = ev.lastRow(), 0
	w.began(ev.At)
	if ev.Ticked {
		return
	}
	w.clock, w.mark, w.quiet = true, ev.At, 0
	f.sittings = append(f.sittings, Sitting{ID: ev.ID, Seq: ev.Seq, By: ev.By, From: ev.At, Shares: []Share{{Operation: w.row.key, Lot: w.row.lot}}})
	w.open = len(f.sittings)
}

// pause keeps what was done until then.
func (f *folding) pause(w *worker, at time.Time) {
	switch {
	case w.clock:
		f.run(w, at, w.row)
		w.sign(at)
		w.from = time.Time{}
	case !w.from.IsZero():
		f.trail(w, at)
		w.rest()
	}
}

// trail counts the time since the last tick to the row that was under way.
func (f *folding) trail(w *worker, at time.Time) {
	if gap := at.Sub(w.from); w.open > 0 && gap > 0 && minutesOf(gap) <= f.limits.gap {
		f.extend(w, Span{w.from, at}, w.row, 0)
	}
}

// resume goes on, at the row that is named or at the one before.
func (f *folding) resume(w *worker, ev *Event) {
	if len(ev.Parts) > 0 {
		w.row = ev.lastRow()
	}
	if !w.clock {
		w.open = 0
		w.began(ev.At)
		return
	}
	if w.from.IsZero() {
		doubt := w.doubt
		if ev.At.Before(w.mark.Add(-slip)) {
			doubt = ClockSetBack
		}
		w.from, w.doubt, w.mark = later(w.mark, ev.At), doubt, ev.At
	}
}

// stop ends what the worker was at, at the end that was said where one was.
func (f *folding) stop(w *worker, ev *Event) {
	switch {
	case !w.clock:
		f.pause(w, ev.At)
		return
	case ev.End != nil:
		f.finish(w, *ev.End, true)
	default:
		f.finish(w, ev.At, false)
	}
	f.sittings[w.late-1].Ended = ev.Seq
}

// run gives the time since the worker's last moment to a row.
func (f *folding) run(w *worker, at time.Time, row rowKey) {
	switch {
	case w.from.IsZero():
		return
	case w.back(at):
		w.doubt, w.from = ClockSetBack, at
	case at.After(w.from):
		f.sittings[w.open-1].add(Span{w.from, at}, row, 0)
		w.from = at
	}
}

// finish ends a running clock. An end that somebody said is not doubted for being
// late.
func (f *folding) finish(w *worker, at time.Time, said bool) {
	if !w.clock {
		w.rest()
		return
	}
	if !said || !w.back(at) {
		f.run(w, at, w.row)
	}
	if !w.from.IsZero() { // not in a pause
		w.sign(at)
	}
	s := &f.sittings[w.open-1]
	s.To = at
	if s.Doubt = w.doubt; s.Doubt == "" && !said && w.tooQuiet(f.limits.quiet) {
		w.forgot(s, f.limits.quiet)
	}
	if s.Doubt == "" && !said { // a clock set back in a pause takes no work away
		s.To = later(s.To, s.worked())
	}
	f.countIn(w, s)
	w.late = w.open
	w.rest()
}

// forgot doubts a clock. The earlier end that it offers is the last sign of work
// before the clock was forgotten, else as long as one may run with nothing
// logged.
func (w *worker) forgot(s *Sitting, quiet planner.Minutes) {
	s.Doubt, s.Quiet, s.Offer = ClockForgotten, w.quietFrom, w.quietFrom
	if !w.quietFrom.After(s.From) {
		s.Offer = s.From.Add(durationOf(quiet))
	}
}

// countIn adds a sitting that has come to its end to its rows, unless it is in
// doubt.
func (f *folding) countIn(w *worker, s *Sitting) {
	if said, ok := f.settled[s.ID]; ok {
		s.settle(said)
	}
	if !s.Counted() {
		return
	}
	for _, share := range s.Shares {
		row := rowKey{share.Operation, share.Lot}
		f.gain(row, share.Minutes, s.timed(row, f.board))
	}
	if s.Settled != nil {
		return
	}
	w.counted(s.To)
	for _, span := range s.Spans { // which end later, where the clock was set back in a pause
		w.counted(span.To)
	}
}

// gain adds to what went into a row, whether it is in the route now or not.
func (f *folding) gain(row rowKey, minutes planner.Minutes, counts int) {
	if at, ok := f.board.index[row]; ok {
		f.effort[at].minutes += minutes
		f.effort[at].timed += counts
		return
	}
	f.aside = maps.Clone(f.aside)
	kept := f.aside[row]
	kept.effort.minutes += minutes
	kept.effort.timed += counts
	f.aside[row] = kept
}

// close ends the sitting that the maker has put right: whatever comes after it is
// another.
func (f *folding) close(ev *Event) {
	at := slices.IndexFunc(f.sittings, func(s Sitting) bool { return s.ID == ev.Target })
	if at < 0 {
		return
	}
	s := f.sittings[at]
	w := f.workers[s.By]
	if w.open != at+1 {
		return
	}
	if w.clock {
		end := s.From.Add(durationOf(saidMinutes(ev.Parts)))
		if ev.End != nil {
			end = *ev.End
		}
		f.finish(&w, end, true)
	} else {
		w.open = 0
	}
	f.workers[s.By] = w
}

// saidMinutes is the minutes of all parts.
func saidMinutes(parts []Part) planner.Minutes {
	var sum planner.Minutes
	for _, p := range parts {
		if p.Minutes != nil {
			sum += *p.Minutes
		}
	}
	return sum
}

// renameTimes puts rows under the names that their colourways bear now.
func (f *folding) renameTimes(names map[string]string) {
	for who, w := range f.workers {
		w.row = w.row.renamed(names)
		f.workers[who] = w
	}
	for i := range f.sittings {
		shares := slices.Clone(f.sittings[i].Shares)
		for j, s := range shares {
			row := rowKey{s.Operation, s.Lot}.renamed(names)
			shares[j].Lot = row.lot
		}
		f.sittings[i].Shares = shares
	}
}
