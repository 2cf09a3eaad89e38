package tracker

import (
	"slices"
	"time"

	"quiltrun/planner"
)

// Sitting is a time that somebody was at work on the job, as the log tells it.
type Sitting struct {
	ID     string    // of the event that opened it, by which it is settled
	Seq    uint64    // that event's number
	By     string    // who was at work
	Ticks  bool      // it was told by ticks; else by start and stop
	From   time.Time // with the offset of who began
	To     time.Time // zero while it runs
	Spans  []Span    // what of it was work: ascending, pauses between them
	Shares []Share   // what it was spent on
	Doubt  Doubt     // why it is not counted, "" where it is
	Offer  time.Time // of a forgotten clock, an earlier end; zero: none
	Quiet  time.Time // of a forgotten clock, when it fell quiet: its beginning, or the last sign of work
	Ended  uint64    // the number of the event that stopped the clock, 0 for none

	// Settled is what the maker said that it took, nil where nobody had to.
	Settled *planner.Minutes
}

// Span is a stretch of time from one instant to a later one.
type Span struct{ From, To time.Time }

// Minutes is how long a span is, whatever clocks on the wall show at its ends.
func (s Span) Minutes() planner.Minutes { return minutesOf(s.To.Sub(s.From)) }

// Share is what a sitting gave to one row. Count is what was checked off of it
// in that time, where the log says so.
type Share struct {
	Operation string
	Lot       Lot
	Count     int
	Minutes   planner.Minutes
}

// Doubt says why a time is kept and not counted. Doubts may grow; a doubt never
// changes its meaning.
type Doubt string

// The doubts.
const (
	ClockForgotten Doubt = "clock forgotten" // it ran too long with nothing logged
	ClockSetBack   Doubt = "clock set back"  // the computer's clock showed a time that it had shown before
)

// Running reports that the sitting goes on.
func (s Sitting) Running() bool { return s.To.IsZero() }

// Counted reports that the sitting's minutes are among those of its rows.
func (s Sitting) Counted() bool { return !s.Running() && s.Doubt == "" }

// Minutes is how long the sitting was: what was said, else what its spans add up
// to. Never below 0.
func (s Sitting) Minutes() planner.Minutes {
	if s.Settled != nil {
		return *s.Settled
	}
	var sum planner.Minutes
	for _, span := range s.Spans {
		sum += span.Minutes()
	}
	return sum
}

// worked is up to when the sitting was work, its beginning where none was.
func (s Sitting) worked() time.Time {
	if last := len(s.Spans) - 1; last >= 0 {
		return s.Spans[last].To
	}
	return s.From
}

// add puts a span at the end of the sitting and gives its minutes to a row.
// Nothing that another sitting shares is changed.
func (s *Sitting) add(span Span, row rowKey, count int) {
	if last := len(s.Spans) - 1; last >= 0 && s.Spans[last].To.Equal(span.From) {
		s.Spans = slices.Clone(s.Spans)
		s.Spans[last].To = span.To
	} else if span.To.After(span.From) {
		s.Spans = append(slices.Clip(s.Spans), span)
	}
	s.share(row, count, span.Minutes())
}

// share adds to what a row was given.
func (s *Sitting) share(row rowKey, count int, minutes planner.Minutes) {
	s.Shares = slices.Clone(s.Shares)
	for i := range s.Shares {
		if (rowKey{s.Shares[i].Operation, s.Shares[i].Lot}) == row {
			s.Shares[i].Count += count
			s.Shares[i].Minutes += minutes
			return
		}
	}
	s.Shares = append(s.Shares, Share{row.key, row.lot, count, minutes})
}

// timed is how many counts of a row the sitting's minutes say something of: no more
// than can be made in them. The rest lay there before, and was checked off at one
// stroke.
func (s *Sitting) timed(row rowKey, on *board) int {
	at, inRoute := on.index[row]
	for _, share := range s.Shares {
		if (rowKey{share.Operation, share.Lot}) != row || share.Minutes <= 0 {
			continue
		}
		if inRoute && on.rows[at].TooQuick(share.Count, share.Minutes) {
			return int(share.Minutes / (on.rows[at].Unit.Mean * quickest))
		}
		return share.Count
	}
	return 0
}

// took reports that a row has some of the sitting's time.
func (s *Sitting) took(row rowKey) bool {
	return slices.ContainsFunc(s.Shares, func(share Share) bool {
		return share.Minutes > 0 && rowKey{share.Operation, share.Lot} == row
	})
}

// cut ends the sitting at a moment. A time after its last span was work too, if the
// maker says so.
func (s *Sitting) cut(end time.Time) {
	spans := slices.Clone(s.Spans)
	for i := range spans {
		if spans[i].To.After(end) || i == len(spans)-1 {
			spans[i].To = end
		}
	}
	s.Spans = slices.DeleteFunc(spans, func(span Span) bool { return !span.To.After(span.From) })
	s.To = end
}

// settle makes what was said the sitting's minutes.
func (s *Sitting) settle(said word) {
	var sum planner.Minutes
	s.Shares = slices.Clone(s.Shares)
	for i := range s.Shares {
		s.Shares[i].Minutes = 0
	}
	for _, p := range said.parts {
		if p.Minutes != nil {
			s.share(rowKey{p.Operation, p.Lot}, 0, *p.Minutes)
			sum += *p.Minutes
		}
	}
	if said.end != nil && said.end.After(s.From) {
		s.cut(*said.end)
	}
	s.Settled, s.Doubt, s.Offer, s.Quiet = &sum, "", time.Time{}, time.Time{}
}
