package cli

import (
	"errors"
	"slices"
	"strings"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// longestDay bounds the working time of one day.
const longestDay planner.Minutes = 24 * 60

// longestStretch bounds a range of dates, in days. What goes on for longer
// than a year is a working week.
const longestStretch = 366

// worktime is what one call of hours sets: days of the week from a date on,
// and single dates.
type worktime struct {
	week []tracker.DayTime
	days []tracker.DateTime
}

// parseWorktime reads settings such as mon-fri=2h, sat,sun=4h30m and
// 2026-12-24..2027-01-02=0. Days hold from the date from on.
func parseWorktime(args []string, from planner.Date) (worktime, error) {
	var set worktime
	for _, arg := range args {
		left, right, found := strings.Cut(arg, "=")
		if !found {
			return worktime{}, wrong("%q has no time", arg).hint("write it like mon-fri=2h or 2026-12-24=0")
		}
		minutes, err := parseDayTime(arg, right)
		if err != nil {
			return worktime{}, err
		}
		for _, item := range strings.Split(left, ",") {
			if err := set.add(arg, strings.TrimSpace(item), minutes, from); err != nil {
				return worktime{}, err
			}
		}
	}
	// The event is the same whatever the order of the words, so that the same
	// hours sent again under one id are the same entry.
	set.sort()
	return set, set.checkTwice()
}

// parseDayTime reads the working time of one day. Its hint speaks of hours,
// which is what somebody who types a bare number here means.
func parseDayTime(arg, text string) (planner.Minutes, error) {
	minutes, err := parseSpan(text, longestDay)
	var reason *spanError
	switch {
	case !errors.As(err, &reason):
		return minutes, err
	case reason.over:
		return 0, wrong("%q: a day has 24 hours", arg)
	}
	return 0, wrong("%q: %s", arg, reason.what).hint("%s", strings.Replace(reason.say, "m for minutes", "h for hours", 1))
}

// add sets one item of a list: a date or a stretch of them, which begin with a
// digit, or days of the week.
func (w *worktime) add(arg, item string, minutes planner.Minutes, from planner.Date) error {
	if item != "" && item[0] >= '0' && item[0] <= '9' {
		dates, err := parseDates(arg, item)
		for _, date := range dates {
			w.days = append(w.days, tracker.DateTime{Date: date, Minutes: minutes})
		}
		return err
	}
	days, err := parseDays(arg, item)
	for _, day := range days {
		w.week = append(w.week, tracker.DayTime{From: from, Day: day, Minutes: minutes})
	}
	return err
}

// parseDates reads one date or both ends of a stretch.
func parseDates(arg, item string) ([]planner.Date, error) {
	first, last, isRange := strings.Cut(item, "..")
	if !isRange {
		last = first
	}
	start, err := planner.ParseDate(first)
	if err != nil {
		return nil, wrong("%q: %v", arg, err)
	}
	end, err := planner.ParseDate(last)
	if err != nil {
		return nil, wrong("%q: %v", arg, err)
	}
	length := start.DaysUntil(end) + 1
	switch {
	case length < 1:
		return nil, wrong("%q ends before it begins", item).hint("write the earlier date first: %s..%s", end, start)
	case length > longestStretch:
		return nil, wrong("%q is %d days, more than a year", item, length).
			hint("for good, set the days of the week instead, such as mon-fri=2h")
	}
	dates := make([]planner.Date, length)
	for i := range dates {
		dates[i] = start.AddDays(i)
	}
	return dates, nil
}

// parseDays reads one day of the week or both ends of a stretch, which may run
// over the weekend: fri-mon.
func parseDays(arg, item string) ([]time.Weekday, error) {
	first, last, isRange := strings.Cut(item, "-")
	if !isRange {
		last = first
	}
	start, err := parseDay(arg, first)
	if err != nil {
		return nil, err
	}
	end, err := parseDay(arg, last)
	if err != nil {
		return nil, err
	}
	days := []time.Weekday{start}
	for day := start; day != end; {
		day = (day + 1) % 7
		days = append(days, day)
	}
	return days, nil
}

// parseDay reads a day's name or a beginning of it that is no other's.
func parseDay(arg, name string) (time.Weekday, error) {
	lower := strings.ToLower(strings.TrimSpace(name))
	if len(lower) >= 2 {
		for day := time.Sunday; day <= time.Saturday; day++ {
			if strings.HasPrefix(strings.ToLower(day.String()), lower) {
				return day, nil
			}
		}
	}
	return 0, wrong("%q: %q is neither a day nor a date", arg, name).
		hint("days are mon, tue, wed, thu, fri, sat, sun; dates are like 2026-12-24")
}

// sort puts days from Monday on and dates in order.
func (w *worktime) sort() {
	slices.SortStableFunc(w.week, func(a, b tracker.DayTime) int { return int(a.Day+6)%7 - int(b.Day+6)%7 })
	slices.SortStableFunc(w.days, func(a, b tracker.DateTime) int { return b.Date.DaysUntil(a.Date) })
}

// checkTwice refuses a day or date that one call sets more than once: which of
// the two is meant is not for the program to guess.
func (w worktime) checkTwice() error {
	for i := range w.week[min(1, len(w.week)):] {
		if w.week[i].Day == w.week[i+1].Day {
			return wrong("%s is set twice", w.week[i].Day)
		}
	}
	for i := range w.days[min(1, len(w.days)):] {
		if w.days[i].Date == w.days[i+1].Date {
			return wrong("%s is set twice", w.days[i].Date)
		}
	}
	return nil
}
