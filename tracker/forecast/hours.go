package forecast

import (
	"maps"
	"math"
	"slices"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// usualWeek is the maker's week until told otherwise: two hours on weekdays.
var usualWeek = [7]float64{
	time.Monday: 120, time.Tuesday: 120, time.Wednesday: 120, time.Thursday: 120, time.Friday: 120,
}

// NewCalendar makes the working calendar of the maker's entries of hours, given
// in the order in which they were made; other kinds of event are passed over,
// and so are entries that were undone. A later entry for a day of the week
// holds from its date on, whatever earlier ones said of the time after it. A
// single date goes before its week, and a later entry for it before an earlier
// one. A day has 0 to 1440 minutes: more is read as 1440, less as 0.
func NewCalendar(events []tracker.Event) Calendar {
	hours := standingHours(events)
	c := Calendar{weeks: weeksOf(lastingChanges(hours))}
	c.days = c.singleDaysOf(hours)
	return c
}

// standingHours are the entries of hours that nobody has undone.
func standingHours(events []tracker.Event) []tracker.Event {
	undone := map[string]bool{}
	for _, e := range events {
		if e.Kind == tracker.Undone {
			undone[e.Target] = true
		}
	}
	var standing []tracker.Event
	for _, e := range events {
		if e.Kind == tracker.Hours && !undone[e.ID] {
			standing = append(standing, e)
		}
	}
	return standing
}

// change is a new working time for one day of the week from a day on.
type change struct {
	from    day
	weekday time.Weekday
	minutes float64
}

// lastingChanges are the changes of the week that still say something, by
// date: those that no later entry takes back from the same date or an earlier
// one on.
func lastingChanges(hours []tracker.Event) []change {
	var overruled [7]day
	for i := range overruled {
		overruled[i] = never
	}
	var lasting []change
	for _, e := range slices.Backward(hours) {
		for _, w := range slices.Backward(e.Week) {
			from := dayOf(w.From)
			if w.Day < time.Sunday || w.Day > time.Saturday || from >= overruled[w.Day] {
				continue
			}
			overruled[w.Day] = from
			lasting = append(lasting, change{from, w.Day, dayMinutes(w.Minutes)})
		}
	}
	slices.SortFunc(lasting, func(a, b change) int { return int(a.from - b.from) })
	return lasting
}

// weeksOf are the working weeks that changes, by date, make of the usual one:
// one more per change, so that of those from one date the last is complete.
func weeksOf(changes []change) []week {
	weeks := []week{{minutes: usualWeek}}
	if len(changes) > 0 {
		weeks[0].from = changes[0].from
	}
	for _, c := range changes {
		next := week{from: c.from, minutes: weeks[len(weeks)-1].minutes}
		next.minutes[c.weekday] = c.minutes
		weeks = append(weeks, next)
	}
	sumUp(weeks)
	return weeks
}

// sumUp fills in the running sums of weeks whose minutes are set.
func sumUp(weeks []week) {
	for i := range weeks {
		w := &weeks[i]
		for n := range 7 {
			w.first[n+1] = w.first[n] + w.minutes[(w.from+day(n)).weekday()]
		}
		if i > 0 {
			w.before = weeks[i-1].before + weeks[i-1].until(w.from)
		}
	}
}

// singleDaysOf are the dates with working time of their own, by date.
func (c Calendar) singleDaysOf(hours []tracker.Event) []singleDay {
	minutes := map[day]float64{}
	for _, e := range hours {
		for _, d := range e.Days {
			minutes[dayOf(d.Date)] = dayMinutes(d.Minutes)
		}
	}
	gained := 0.0
	var days []singleDay
	for _, on := range slices.Sorted(maps.Keys(minutes)) {
		gained += minutes[on] - c.weekAt(on).minutes[on.weekday()]
		days = append(days, singleDay{on, minutes[on], gained})
	}
	return days
}

// dayMinutes is working time that fits a day.
func dayMinutes(m planner.Minutes) float64 {
	const most = 24 * 60
	if math.IsNaN(float64(m)) {
		return 0
	}
	return min(max(float64(m), 0), most)
}
