package forecast

import (
	"sort"

	"quiltrun/planner"
)

// horizon is how many days ahead a date is looked for: 50 years.
const horizon = 50 * 366

// slack is how many minutes may be left over at the end of a day without
// asking for another day: rounding errors of long sums, nothing a person sees.
const slack = 1e-6

// Calendar says how many minutes the maker works on every date. It is made by
// NewCalendar and never changes.
type Calendar struct {
	weeks []week      // ascending, of those from one day the last holds; the first also holds for all days before
	days  []singleDay // ascending
}

// week is the working week that holds from a day on until the next one does.
type week struct {
	from    day
	minutes [7]float64 // by time.Weekday
	first   [8]float64 // minutes of its first 0 … 7 days, counted from its day from
	before  float64    // worked from the first week's from to this one's, single days aside
}

// singleDay is one date with working time of its own.
type singleDay struct {
	on      day
	minutes float64
	gained  float64 // what all single days up to and including this one add to their weeks' minutes
}

// On is the working time on a date.
func (c Calendar) On(d planner.Date) planner.Minutes {
	return planner.Minutes(c.minutesOn(dayOf(d)))
}

// minutesOn is the working time on a day.
func (c Calendar) minutesOn(d day) float64 {
	if i := c.singleDaysBefore(d); i < len(c.days) && c.days[i].on == d {
		return c.days[i].minutes
	}
	return c.weekAt(d).minutes[d.weekday()]
}

// until is the working time from a fixed day of the calendar's own to the
// start of a day; negative before it. Only differences mean anything.
func (c Calendar) until(d day) float64 {
	w := c.weekAt(d)
	minutes := w.before + w.until(d)
	if i := c.singleDaysBefore(d); i > 0 {
		minutes += c.days[i-1].gained
	}
	return minutes
}

// weekAt is the working week that holds on a day. A Calendar that nobody made
// has no hours.
func (c Calendar) weekAt(d day) *week {
	if len(c.weeks) == 0 {
		return &week{}
	}
	after := sort.Search(len(c.weeks), func(i int) bool { return c.weeks[i].from > d })
	return &c.weeks[max(after-1, 0)]
}

// singleDaysBefore counts the single days that come before a day.
func (c Calendar) singleDaysBefore(d day) int {
	return sort.Search(len(c.days), func(i int) bool { return c.days[i].on >= d })
}

// until is what this week gives from its first day to the start of another;
// negative where that is earlier.
func (w *week) until(d day) float64 {
	days := int(d - w.from)
	whole, rest := days/7, days%7
	if rest < 0 {
		whole, rest = whole-1, rest+7
	}
	return float64(whole)*w.first[7] + w.first[rest]
}
