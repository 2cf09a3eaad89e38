package forecast

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// on reads a date.
func on(t *testing.T, text string) planner.Date {
	t.Helper()
	d, err := planner.ParseDate(text)
	require.NoError(t, err)
	return d
}

// weekOf is an entry that gives the named days of the week so many minutes from
// a date on, and the other days none.
func weekOf(from planner.Date, minutes planner.Minutes, days ...time.Weekday) tracker.Event {
	e := tracker.Event{Kind: tracker.Hours}
	for d := time.Sunday; d <= time.Saturday; d++ {
		e.Week = append(e.Week, tracker.DayTime{From: from, Day: d})
	}
	for _, d := range days {
		e.Week[d].Minutes = minutes
	}
	return e
}

// everyDay is a calendar with the same minutes on all days.
func everyDay(minutes planner.Minutes) Calendar {
	return NewCalendar([]tracker.Event{weekOf(planner.Date{}, minutes, time.Sunday, time.Monday,
		time.Tuesday, time.Wednesday, time.Thursday, time.Friday, time.Saturday)})
}

// weekdays is a calendar with the same minutes from Monday to Friday.
func weekdays(minutes planner.Minutes) Calendar {
	return NewCalendar([]tracker.Event{weekOf(planner.Date{}, minutes, time.Monday, time.Tuesday,
		time.Wednesday, time.Thursday, time.Friday)})
}

// noHours is the calendar of a maker who has set all hours to nothing.
func noHours() Calendar { return everyDay(0) }

// holiday is an entry that takes one date off.
func holiday(d planner.Date) tracker.Event {
	return tracker.Event{Kind: tracker.Hours, Days: []tracker.DateTime{{Date: d}}}
}

// exact is a task that takes exactly so many minutes in the exact model.
func exact(key string, minutes planner.Minutes) Task {
	return Task{Key: key, Unit: planner.Span{Mean: minutes}, Left: 1}
}

// spread is a task of so many expected minutes with a spread of its own.
func spread(key string, minutes planner.Minutes, spread float64) Task {
	return Task{Key: key, Unit: planner.Span{Mean: minutes, Spread: spread}, Left: 1}
}

// waiting is a row of the route that is nothing but waiting.
func waiting(key string, days int) Task { return Task{Key: key, Left: 1, Wait: days} }

// chanceOf is a chance as an answer holds it.
func chanceOf(p float64) *float64 { return &p }

// Between is the working time from one date to another, both included; 0 where
// to is earlier than from.
func (c Calendar) Between(from, to planner.Date) planner.Minutes {
	first, last := dayOf(from), dayOf(to)
	if last < first {
		return 0
	}
	return planner.Minutes(c.until(last+1) - c.until(first))
}

// Finish is the date on which work is done that begins on start, where used
// minutes of the start day are gone already. No work is done at once. False
// means that the hours of the next 50 years do not suffice.
func (c Calendar) Finish(start planner.Date, used, work planner.Minutes) (planner.Date, bool) {
	end := c.clock(start, used).dayAt(float64(work))
	return end.date(), end != never
}
