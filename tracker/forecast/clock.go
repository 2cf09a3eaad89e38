package forecast

import (
	"sort"

	"quiltrun/planner"
)

// clock counts working minutes from a moment on: the calendar laid end to end.
type clock struct {
	calendar Calendar
	today    day
	gone     float64 // minutes of the calendar that are gone
}

// clock starts on a date on which used minutes were worked already. Working
// longer than the calendar has for the day takes nothing from the days after.
func (c Calendar) clock(today planner.Date, used planner.Minutes) clock {
	d := dayOf(today)
	spent := min(max(float64(used), 0), c.minutesOn(d))
	return clock{calendar: c, today: d, gone: c.until(d) + spent}
}

// start is how many working minutes there are before a day after today begins.
func (c clock) start(d day) float64 {
	return c.calendar.until(d) - c.gone
}

// dayAt is the day on which so many minutes are worked off: today for none,
// never where the hours up to the horizon do not suffice.
func (c clock) dayAt(minutes float64) day {
	if minutes <= slack {
		return c.today
	}
	days := sort.Search(horizon, func(i int) bool {
		return c.start(c.today+day(i)+1) >= minutes-slack
	})
	if days == horizon {
		return never
	}
	return c.today + day(days)
}
