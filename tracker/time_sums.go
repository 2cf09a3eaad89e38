package tracker

import (
	"slices"
	"time"

	"quiltrun/planner"
)

// Working is the names of those whose clock runs, in order.
func (s State) Working() []string {
	var names []string
	for name, w := range s.timing.workers {
		if w.clock {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// AtWork is the sitting of somebody whose clock runs.
func (s State) AtWork(by string) (Sitting, bool) {
	w := s.timing.workers[by]
	if !w.clock {
		return Sitting{}, false
	}
	return s.timing.sittings[w.open-1], true
}

// lotAtWork is the lot that somebody's clock runs for, where counts of the same
// operation name none: whoever said what they are at need not say it again. Nil
// where no clock of theirs runs for it.
func (s State) lotAtWork(by, key string, counts []CountAsked) *Lot {
	w := s.timing.workers[by]
	if !w.clock || w.row.key != key || len(counts) == 0 || counts[0].Lot != "" {
		return nil
	}
	return &w.row.lot
}

// Limits is what is taken for work in this job.
func (s State) Limits() (gap, quiet planner.Minutes) {
	if !s.Booked() {
		return UsualGap, UsualQuiet
	}
	return s.timing.limits.gap, s.timing.limits.quiet
}

// Sittings is every time that somebody was at work on the job, in the order in
// which it began, as it looks now: a clock that runs too long is doubted.
func (s State) Sittings(now time.Time) []Sitting {
	all := slices.Clone(s.timing.sittings)
	for i := range all {
		if all[i].Running() {
			s.soFar(&all[i], now)
		}
	}
	return all
}

// soFar shows a running sitting as it looks now.
func (s State) soFar(sitting *Sitting, now time.Time) {
	w := s.timing.workers[sitting.By]
	sitting.Doubt = w.doubt
	if w.from.IsZero() { // in a pause
		return
	}
	if w.back(now) {
		sitting.Doubt = ClockSetBack
		return
	}
	if now.After(w.from) {
		sitting.add(Span{w.from, now}, w.row, 0)
	}
	w.sign(now)
	if sitting.Doubt == "" && w.tooQuiet(s.timing.limits.quiet) {
		w.forgot(sitting, s.timing.limits.quiet)
	}
}

// Doubts is the sittings that wait for a word of the maker's, in the order in
// which they began.
func (s State) Doubts(now time.Time) []Sitting {
	return slices.DeleteFunc(s.Sittings(now), func(sitting Sitting) bool { return sitting.Doubt == "" })
}

// WorkedTime is working time added up: Minutes of all persons, and Elapsed, in
// which somebody was at work whoever it was. Where two work side by side Elapsed
// is the less. Of times that were told rather than seen, each is one
// person's.
type WorkedTime struct {
	Minutes, Elapsed planner.Minutes
	Ripping          planner.Minutes // of both, what went into taking apart again
}

// Worked is all time that went into the job, as far as the log knows and nobody
// doubts.
func (s State) Worked() WorkedTime {
	var sum WorkedTime
	var spans []Span
	for i := range s.timing.sittings {
		sitting := &s.timing.sittings[i]
		if !sitting.Counted() {
			continue
		}
		minutes := sitting.Minutes()
		sum.Minutes += minutes
		if sitting.Settled != nil {
			sum.Elapsed += minutes
			continue
		}
		spans = append(spans, sitting.Spans...)
	}
	sum.Elapsed += union(spans)
	for _, e := range s.Entries {
		told := s.Told(e)
		sum.Minutes += told
		sum.Elapsed += told
		if e.Kind == Ripped && e.Standing() {
			sum.Ripping += told
		}
	}
	return sum
}

// Told is the minutes that were said of an entry that stands: with it, or of it
// later. 0 where nobody said.
func (s State) Told(e Entry) planner.Minutes {
	if !e.Standing() {
		return 0
	}
	if said := s.timing.settled[e.ID].parts; !e.Ticked && len(said) == len(e.Parts) {
		return saidMinutes(said)
	}
	return saidMinutes(e.Parts)
}

// union is how long at least one of the spans lasts. The spans are put in order.
func union(spans []Span) planner.Minutes {
	slices.SortFunc(spans, func(a, b Span) int { return a.From.Compare(b.From) })
	var sum planner.Minutes
	var upTo time.Time
	for _, s := range spans {
		if s.From.Before(upTo) {
			s.From = upTo
		}
		if s.To.After(s.From) {
			sum += s.Minutes()
			upTo = s.To
		}
	}
	return sum
}

// WorkedOn is the minutes that went into the job on a date, whoever worked. A
// sitting past midnight gives each day its own; days begin when the clock of
// whoever began it showed midnight. What was told counts on the date of its
// entry.
func (s State) WorkedOn(date planner.Date) planner.Minutes {
	var sum planner.Minutes
	for i := range s.timing.sittings {
		if sitting := &s.timing.sittings[i]; sitting.Counted() {
			sum += sitting.on(date, sitting.From.Location())
		}
	}
	for _, e := range s.Entries {
		if planner.DateOf(e.At) == date {
			sum += s.Told(e)
		}
	}
	return sum
}

// on is the minutes of a sitting on a date of a zone. What was said of one as a
// whole is taken from its beginning on, and what it was beyond its spans counts
// on its first day.
func (s Sitting) on(date planner.Date, zone *time.Location) planner.Minutes {
	begin := time.Date(date.Year, date.Month, date.Day, 0, 0, 0, 0, zone)
	day := Span{begin, time.Date(date.Year, date.Month, date.Day+1, 0, 0, 0, 0, zone)}
	rest := s.Minutes()
	var sum planner.Minutes
	for _, span := range s.Spans {
		if span.Minutes() > rest {
			span.To = span.From.Add(durationOf(rest))
		}
		rest -= span.Minutes()
		sum += span.within(day)
	}
	if rest > 0 && s.Settled != nil && planner.DateOf(s.From.In(zone)) == date {
		sum += rest
	}
	return sum
}

// within is how long a span is of another.
func (s Span) within(other Span) planner.Minutes {
	if s.From.Before(other.From) {
		s.From = other.From
	}
	if s.To.After(other.To) {
		s.To = other.To
	}
	return max(0, s.Minutes())
}

// DayMinutes is the minutes of a sitting on one date.
type DayMinutes struct {
	Date    planner.Date
	Minutes planner.Minutes
}

// Days shares a sitting's minutes out over the dates that it touches, in a zone.
func (s Sitting) Days(zone *time.Location) []DayMinutes {
	var days []DayMinutes
	last := planner.DateOf(later(s.From, s.To).In(zone))
	for date := planner.DateOf(s.From.In(zone)); date.DaysUntil(last) >= 0; date = date.AddDays(1) {
		if minutes := s.on(date, zone); minutes > 0 {
			days = append(days, DayMinutes{date, minutes})
		}
	}
	return days
}
