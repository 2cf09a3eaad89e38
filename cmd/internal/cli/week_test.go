package cli

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

var firstOfDecember = planner.Date{Year: 2026, Month: time.December, Day: 1}

func on(month time.Month, day int) planner.Date {
	year := 2026
	if month < time.July {
		year = 2027
	}
	return planner.Date{Year: year, Month: month, Day: day}
}

func from(day time.Weekday, minutes planner.Minutes) tracker.DayTime {
	return tracker.DayTime{From: firstOfDecember, Day: day, Minutes: minutes}
}

func TestWorktimeThatIsSet(t *testing.T) {
	for _, c := range []struct {
		args []string
		want worktime
	}{
		{[]string{"mon=2h"}, worktime{week: []tracker.DayTime{from(time.Monday, 120)}}},
		{[]string{"MONDAY=2h"}, worktime{week: []tracker.DayTime{from(time.Monday, 120)}}},
		{[]string{"wed-fri=90m"}, worktime{week: []tracker.DayTime{
			from(time.Wednesday, 90), from(time.Thursday, 90), from(time.Friday, 90)}}},
		// A stretch over the weekend, shown from Monday on.
		{[]string{"sat-mon=1h"}, worktime{week: []tracker.DayTime{
			from(time.Monday, 60), from(time.Saturday, 60), from(time.Sunday, 60)}}},
		{[]string{"sun=0", "tu,th=4h30m"}, worktime{week: []tracker.DayTime{
			from(time.Tuesday, 270), from(time.Thursday, 270), from(time.Sunday, 0)}}},
		{[]string{"2026-12-24=0"}, worktime{days: []tracker.DateTime{{Date: on(time.December, 24)}}}},
		{[]string{"2026-12-31..2027-01-02=30m"}, worktime{days: []tracker.DateTime{
			{Date: on(time.December, 31), Minutes: 30}, {Date: on(time.January, 1), Minutes: 30}, {Date: on(time.January, 2), Minutes: 30}}}},
		{[]string{"fri,2026-12-08=5h"}, worktime{
			week: []tracker.DayTime{from(time.Friday, 300)},
			days: []tracker.DateTime{{Date: on(time.December, 8), Minutes: 300}}}},
		{nil, worktime{}},
	} {
		got, err := parseWorktime(c.args, firstOfDecember)
		require.NoError(t, err, c.args)
		assert.Equal(t, c.want, got, c.args)
	}
}

func TestWorktimeThatIsRefused(t *testing.T) {
	for _, c := range []struct {
		arg  string
		want fault
	}{
		{"mon-fri", fault{exitWrong, `"mon-fri" has no time`, []string{"write it like mon-fri=2h or 2026-12-24=0"}}},
		{"mon=2", fault{exitWrong, `"mon=2": "2" has no unit`, []string{"say 2h for hours"}}},
		{"mon=", fault{exitWrong, `"mon=": "" is not a length of time`, []string{"write it like 35m, 1h20m or 90s"}}},
		{"mon=25h", fault{exitWrong, `"mon=25h": a day has 24 hours`, nil}},
		{"moonday=2h", fault{exitWrong, `"moonday=2h": "moonday" is neither a day nor a date`,
			[]string{"days are mon, tue, wed, thu, fri, sat, sun; dates are like 2026-12-24"}}},
		{"t=2h", fault{exitWrong, `"t=2h": "t" is neither a day nor a date`,
			[]string{"days are mon, tue, wed, thu, fri, sat, sun; dates are like 2026-12-24"}}},
		{"mon,=2h", fault{exitWrong, `"mon,=2h": "" is neither a day nor a date`,
			[]string{"days are mon, tue, wed, thu, fri, sat, sun; dates are like 2026-12-24"}}},
		{"2026-02-30=0", fault{exitWrong, `"2026-02-30=0": "2026-02-30" is not a calendar date: write it as year-month-day, such as 2027-02-12`, nil}},
		{"2026-12-24..2026-12-20=0", fault{exitWrong, `"2026-12-24..2026-12-20" ends before it begins`,
			[]string{"write the earlier date first: 2026-12-20..2026-12-24"}}},
		{"2026-01-01..2027-12-31=0", fault{exitWrong, `"2026-01-01..2027-12-31" is 730 days, more than a year`,
			[]string{"for good, set the days of the week instead, such as mon-fri=2h"}}},
		{"mon,sat-tue=2h", fault{exitWrong, "Monday is set twice", nil}},
		{"2026-12-24,2026-12-23..2026-12-25=0", fault{exitWrong, "2026-12-24 is set twice", nil}},
	} {
		_, err := parseWorktime([]string{c.arg}, firstOfDecember)
		var got *fault
		require.ErrorAs(t, err, &got, c.arg)
		assert.Equal(t, c.want, *got, c.arg)
	}
}

func FuzzWorktimeNeverSetsADayTwice(f *testing.F) {
	for _, arg := range []string{"mon-fri=2h", "sat,sun=4h30m", "2026-12-24..2027-01-02=0", "fri-mon=1h", "=", "a=b", "-=1h", "..=1h"} {
		f.Add(arg)
	}
	f.Fuzz(func(t *testing.T, arg string) {
		set, err := parseWorktime([]string{arg}, firstOfDecember)
		if err != nil {
			var words *fault
			require.ErrorAs(t, err, &words)
			return
		}
		days := map[time.Weekday]bool{}
		for _, day := range set.week {
			assert.False(t, days[day.Day], arg)
			days[day.Day] = true
		}
		dates := map[planner.Date]bool{}
		for _, date := range set.days {
			assert.False(t, dates[date.Date], arg)
			dates[date.Date] = true
		}
	})
}
