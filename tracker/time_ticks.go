package tracker

import (
	"time"

	"quiltrun/planner"
)

// work takes in what an entry says of the time in which it was done: a tick is the
// end of a piece of work that began with the one before it, a time that was told
// goes before any that a clock shows, and of any other entry nothing is known but
// that somebody was there.
func (f *folding) work(w *worker, ev *Event) {
	told := saidMinutes(ev.Parts)
	switch {
	case told > 0:
		f.told(w, ev, told)
	case w.clock:
		f.onClock(w, ev)
	case ev.Ticked && ev.Kind == Logged:
		f.tick(w, ev)
	case ev.Kind == Logged:
		f.afterClock(w, ev)
	}
}

// told leaves out of the time under way what an entry says that it took.
func (f *folding) told(w *worker, ev *Event, took planner.Minutes) {
	switch {
	case w.clock:
		if !w.from.IsZero() && ev.At.After(w.from) {
			if own := minutesOf(ev.At.Sub(w.from)) - took; own > 0 {
				f.run(w, w.from.Add(durationOf(own)), w.row)
			}
			w.from = ev.At
		} else {
			f.run(w, ev.At, w.row)
		}
		w.sign(ev.At)
	case !w.from.IsZero():
		w.open = 0
		w.began(ev.At)
	}
}

// onClock gives the time since the worker's last moment to the row of a tick
// where that is near enough, else to the row that the clock was started for.
func (f *folding) onClock(w *worker, ev *Event) {
	s := &f.sittings[w.open-1]
	row := w.row
	if ev.Ticked && !w.from.IsZero() && minutesOf(ev.At.Sub(w.from)) <= f.limits.gap {
		row = ev.lastRow()
	}
	if ev.Ticked {
		f.run(w, ev.At, row)
	}
	w.sign(ev.At)
	if ev.Kind == Logged {
		for _, p := range ev.Parts {
			s.share(rowKey{p.Operation, p.Lot}, p.Count, 0)
		}
	}
}

// tick counts the time since the tick before it, or since work was begun. Of a
// first tick that nothing came before, and after a gap that is no work, it is known
// only where the screen saw the maker sit down.
func (f *folding) tick(w *worker, ev *Event) {
	row := ev.lastRow()
	count := ev.Parts[len(ev.Parts)-1].Count
	if w.from.IsZero() || minutesOf(ev.At.Sub(w.from)) > f.limits.gap {
		w.open = 0
		begun, known := f.begun(w, ev)
		w.began(begun)
		if !known {
			w.row = row
			return
		}
	}
	switch {
	case w.back(ev.At):
		f.open(w, Sitting{ID: ev.ID, Seq: ev.Seq, By: ev.By, Ticks: true, From: w.from, To: ev.At, Doubt: ClockSetBack})
		f.extend(w, Span{ev.At, ev.At}, row, count)
		w.from, w.doubt = ev.At, ClockSetBack
	default:
		span := Span{w.from, later(w.from, ev.At)}
		if w.open == 0 {
			f.open(w, Sitting{ID: ev.ID, Seq: ev.Seq, By: ev.By, Ticks: true, From: span.From, Doubt: w.doubt})
		}
		f.extend(w, span, row, count)
		w.from = span.To
	}
	w.row = row
	if w.doubt != "" && !w.from.Before(w.upTo) { // from here on the clock shows new times
		w.doubt, w.open = "", 0
	}
}

// begun is when the work up to a tick began that no tick came before: when the
// screen saw its maker, or from the last word that the log has of the same person
// after that, so that no minute counts twice. It is the tick's own moment, and not
// known, where the screen saw nobody within the gap, where clocks went back, and
// where more is checked off than can have been made since.
func (f *folding) begun(w *worker, ev *Event) (at time.Time, known bool) {
	if ev.Since == nil || minutesOf(ev.At.Sub(*ev.Since)) > f.limits.gap {
		return ev.At, false
	}
	at = later(*ev.Since, w.seen)
	row, inRoute := f.board.index[ev.lastRow()]
	took := Span{at, ev.At}.Minutes()
	if took <= 0 || inRoute && f.board.rows[row].TooQuick(ev.Parts[len(ev.Parts)-1].Count, took) {
		return ev.At, false
	}
	return at, true
}

// open puts a sitting down that ticks tell of. What the maker said of it counts at
// once.
func (f *folding) open(w *worker, s Sitting) {
	if said, ok := f.settled[s.ID]; ok {
		s.settle(said)
		for _, share := range s.Shares {
			f.gain(rowKey{share.Operation, share.Lot}, share.Minutes, 0)
		}
	}
	f.sittings = append(f.sittings, s)
	w.open = len(f.sittings)
}

// extend adds a piece of work to a sitting that ticks tell of.
func (f *folding) extend(w *worker, span Span, row rowKey, count int) {
	s := &f.sittings[w.open-1]
	s.To = span.To
	switch {
	case s.Settled != nil:
		s.share(row, count, 0)
		f.gain(row, 0, count)
	case s.Doubt != "":
		s.add(span, row, count)
	default:
		s.add(span, row, count)
		f.gain(row, span.Minutes(), count)
		w.counted(span.To)
	}
}

// afterClock puts counts that are logged without a time to the clock that was
// stopped before, where it ran for them.
func (f *folding) afterClock(w *worker, ev *Event) {
	if w.late == 0 {
		return
	}
	s := &f.sittings[w.late-1]
	for _, p := range ev.Parts {
		row := rowKey{p.Operation, p.Lot}
		if !s.took(row) {
			continue
		}
		s.share(row, p.Count, 0)
		if s.Counted() {
			f.gain(row, 0, p.Count)
		}
	}
}
