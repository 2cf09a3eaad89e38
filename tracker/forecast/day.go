package forecast

import (
	"math"
	"time"

	"quiltrun/planner"
)

// day counts the days from 1 January 1970, for arithmetic on dates.
type day int

// never comes after every day.
const never day = math.MaxInt

// dayOf is the number of a date of the years 0 to 9999, and for none one before
// them all.
func dayOf(d planner.Date) day {
	const secondsADay = 24 * 60 * 60
	midnight := time.Date(d.Year, d.Month, d.Day, 0, 0, 0, 0, time.UTC).Unix()
	return day(midnight / secondsADay)
}

// date is the calendar date of a day; none for never.
func (d day) date() planner.Date {
	if d == never {
		return planner.Date{}
	}
	return planner.Date{Year: 1970, Month: time.January, Day: 1}.AddDays(int(d))
}

// weekday is the day of the week. Day 0 was a Thursday.
func (d day) weekday() time.Weekday {
	w := (int(d) + int(time.Thursday)) % 7
	if w < 0 {
		w += 7
	}
	return time.Weekday(w)
}
