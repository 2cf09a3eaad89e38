package forecast

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Published week dates: the ISO 8601 summaries' standard rows. Only the number
// of the day in its week (1 Monday, 7 Sunday) matters here.
func TestWeekdayOfPublishedWeekDates(t *testing.T) {
	for date, number := range map[string]int{
		"1996-12-30": 1, "1997-01-05": 7, "2000-01-02": 7, "2005-01-01": 6, "2005-01-02": 7,
		"2006-12-31": 7, "2007-12-31": 1, "2008-12-29": 1, "2009-12-31": 4, "2010-01-03": 7,
		"2012-12-31": 1, "2013-12-30": 1, "2014-12-29": 1, "2020-12-31": 4, "2024-12-30": 1,
		"2026-12-31": 4, "2027-01-04": 1,
		"2000-01-01": 6, "1970-01-01": 4, "1969-12-28": 7, // common knowledge; the last hand-worked
	} {
		assert.Equal(t, time.Weekday(number%7), dayOf(on(t, date)).weekday(), date)
	}
}

func TestDaysAreCountedAcrossLeapDays(t *testing.T) {
	// Gregorian rule: 1900 and 2100 have no leap day, 2000, 2024, 2028 and 2400 have.
	for _, c := range []struct {
		year int
		days day
	}{{1900, 1}, {2000, 2}, {2023, 1}, {2024, 2}, {2028, 2}, {2100, 1}, {2400, 2}} {
		last, first := planner.Date{Year: c.year, Month: 2, Day: 28}, planner.Date{Year: c.year, Month: 3, Day: 1}
		assert.Equal(t, c.days, dayOf(first)-dayOf(last), c.year)
		assert.Equal(t, first, dayOf(first).date())
	}
	// 400 years have 146097 days (published).
	assert.Equal(t, day(146097), dayOf(on(t, "2400-03-01"))-dayOf(on(t, "2000-03-01")))
}

func TestUntilToldOtherwiseTwoHoursOnWeekdays(t *testing.T) {
	c := NewCalendar(nil)
	monday := on(t, "2026-03-02")
	want := []planner.Minutes{120, 120, 120, 120, 120, 0, 0}
	for i, minutes := range want {
		assert.Equal(t, minutes, c.On(monday.AddDays(i)), monday.AddDays(i).String())
	}
	assert.Equal(t, planner.Minutes(600), c.Between(monday, monday.AddDays(6)))
}

func TestLaterEntriesHoldFromTheirDate(t *testing.T) {
	mondays := func(from string, minutes planner.Minutes) tracker.Event {
		return tracker.Event{Kind: tracker.Hours, Week: []tracker.DayTime{
			{From: on(t, from), Day: time.Monday, Minutes: minutes}}}
	}
	january, february, march := mondays("2026-01-05", 90), mondays("2026-02-02", 30), mondays("2026-03-02", 60)
	for _, c := range []struct {
		name   string
		events []tracker.Event
		want   [4]planner.Minutes // last Monday before all, then the first from each date on
	}{
		{"in order of date", []tracker.Event{january, february, march}, [4]planner.Minutes{120, 90, 30, 60}},
		{"a later entry overrules what was set for after it", []tracker.Event{january, march, february},
			[4]planner.Minutes{120, 90, 30, 30}},
		{"the last entry has the last word", []tracker.Event{march, february, january}, [4]planner.Minutes{120, 90, 90, 90}},
		{"the same date twice", []tracker.Event{february, mondays("2026-02-02", 45)}, [4]planner.Minutes{120, 120, 45, 45}},
	} {
		cal := NewCalendar(c.events)
		var got [4]planner.Minutes
		for i, d := range []string{"2025-12-29", "2026-01-05", "2026-02-02", "2026-03-02"} {
			got[i] = cal.On(on(t, d))
		}
		assert.Equal(t, c.want, got, c.name)
		assert.Equal(t, planner.Minutes(120), cal.On(on(t, "2026-03-03")), c.name+": other days stay")
	}
}

func TestSingleDatesGoBeforeTheirWeek(t *testing.T) {
	day, next := on(t, "2026-03-04"), on(t, "2026-03-05")
	c := NewCalendar([]tracker.Event{
		{Kind: tracker.Hours, Days: []tracker.DateTime{{Date: next, Minutes: 300}, {Date: day, Minutes: 10}}},
		holiday(day),
		weekOf(on(t, "2026-03-02"), 60, time.Wednesday, time.Thursday),
	})
	assert.Equal(t, planner.Minutes(0), c.On(day), "the later entry for the date, though the week came after")
	assert.Equal(t, planner.Minutes(300), c.On(next))
	assert.Equal(t, planner.Minutes(60), c.On(day.AddDays(7)))
	assert.Equal(t, planner.Minutes(420), c.Between(day, day.AddDays(8)), "0 + 300 + 60 + 60")
}

func TestEntriesThatWereUndoneDoNotCount(t *testing.T) {
	off := weekOf(planner.Date{}, 0)
	off.ID = "a"
	c := NewCalendar([]tracker.Event{off, {Kind: tracker.Undone, ID: "b", Target: "a"}, {Kind: tracker.Booked}})
	assert.Equal(t, NewCalendar(nil), c)
}

func TestNoDayIsLongerThanADay(t *testing.T) {
	monday := on(t, "2026-03-02")
	for given, want := range map[planner.Minutes]planner.Minutes{-5: 0, 0: 0, 0.5: 0.5, 1440: 1440, 1441: 1440} {
		c := NewCalendar([]tracker.Event{{Kind: tracker.Hours,
			Week: []tracker.DayTime{{Day: time.Monday, Minutes: given}, {Day: 9, Minutes: 60}},
			Days: []tracker.DateTime{{Date: monday.AddDays(1), Minutes: given}}}})
		assert.Equal(t, want, c.On(monday))
		assert.Equal(t, want, c.On(monday.AddDays(1)))
	}
	assert.Equal(t, planner.Minutes(0), Calendar{}.On(monday), "a calendar that nobody made")
}

// Working days of published calendar programs' own tests, Monday to Friday and
// counted with both ends.
func TestBetweenCountsPublishedWorkingDays(t *testing.T) {
	may := []string{"2015-05-14", "2015-05-25"}
	for _, c := range []struct {
		from, to string
		off      []string
		days     planner.Minutes
	}{
		{"2017-01-01", "2017-01-31", nil, 22},
		{"2017-01-01", "2017-01-31", []string{"2017-01-02"}, 21},
		{"2015-04-13", "2015-04-17", may, 5},
		{"2015-05-11", "2015-05-15", may, 4},
		{"2015-05-25", "2015-05-29", may, 4},
		{"2015-05-29", "2015-05-25", may, 0},      // backwards: no time
		{"2015-05-26", "2015-05-26", nil, 1},      // one day
		{"2026-12-28", "2027-01-03", nil, 5},      // week 53 of 2026, hand-worked
		{"2024-02-26", "2024-03-01", nil, 5},      // over a leap day, hand-worked
		{"1969-12-29", "1970-01-04", nil, 5},      // hand-worked
		{"2000-01-01", "2399-12-31", nil, 104355}, // 20871 weeks of five (published: 146097 days = 20871 weeks)
	} {
		var events []tracker.Event
		for _, d := range c.off {
			events = append(events, holiday(on(t, d)))
		}
		got := NewCalendar(events).Between(on(t, c.from), on(t, c.to))
		assert.Equal(t, c.days*120, got, c.from+" "+c.to)
	}
}

func TestFinish(t *testing.T) {
	evenings := NewCalendar([]tracker.Event{weekOf(planner.Date{}, 90, time.Monday, time.Wednesday, time.Friday)})
	for _, c := range []struct {
		name       string
		calendar   Calendar
		start      string
		used, work planner.Minutes
		want       string
	}{
		// 62 blocks at a quarter of an hour on three evenings: 930 / 90, the 11th evening.
		{"eleven evenings", evenings, "2026-03-02", 0, 62 * 15, "2026-03-25"},
		// Published: 25 April 2017 plus ten working days, the start not counted.
		{"ten working days on", weekdays(60), "2017-04-25", 60, 600, "2017-05-09"},
		// Gregorian calendar: 31 January 2024 plus 30 days is 1 March.
		{"over a leap day", everyDay(1), "2024-01-31", 1, 30, "2024-03-01"},
		// The rest is hand-worked.
		{"exactly the day", weekdays(60), "2026-03-02", 0, 60, "2026-03-02"},
		{"a minute more", weekdays(60), "2026-03-02", 0, 61, "2026-03-03"},
		{"the rest of the day", weekdays(60), "2026-03-02", 45, 15, "2026-03-02"},
		{"over the weekend", weekdays(60), "2026-03-06", 30, 31, "2026-03-09"},
		{"begun on a Sunday", weekdays(60), "2026-03-08", 0, 1, "2026-03-09"},
		{"overtime takes nothing from tomorrow", weekdays(60), "2026-03-02", 500, 60, "2026-03-03"},
		{"nothing to do", weekdays(60), "2026-03-08", 0, 0, "2026-03-08"},
		{"nothing to do, no hours", noHours(), "2026-03-08", 0, 0, "2026-03-08"},
		{"into week 53 and a new year", weekdays(60), "2026-12-31", 0, 120, "2027-01-01"},
		{"five hundred weeks", weekdays(60), "2026-03-02", 0, 500 * 5 * 60, "2035-09-28"},
	} {
		got, ok := c.calendar.Finish(on(t, c.start), c.used, c.work)
		assert.True(t, ok, c.name)
		assert.Equal(t, c.want, got.String(), c.name)
	}
}

// Six hundred times a fifth of a minute is a little more than two hours in
// floating point: such a rest asks for no further day.
func TestRoundingErrorsTakeNoDay(t *testing.T) {
	fifths := planner.Minutes(0)
	for range 600 {
		fifths += 0.2
	}
	require.Greater(t, fifths, planner.Minutes(120), "or there is nothing to test")
	got, ok := weekdays(120).Finish(on(t, "2026-03-02"), 0, fifths)
	assert.True(t, ok)
	assert.Equal(t, "2026-03-02", got.String())
}

func TestFinishWithoutHoursAheadIsNever(t *testing.T) {
	start := on(t, "2026-03-02")
	off := weekOf(planner.Date{}, 0)
	for name, c := range map[string]Calendar{
		"no hours":                noHours(),
		"nobody made it":          {},
		"only days that are gone": NewCalendar([]tracker.Event{off, {Kind: tracker.Hours, Days: []tracker.DateTime{{Date: start.AddDays(-1), Minutes: 600}}}}),
		"too few":                 NewCalendar([]tracker.Event{off, {Kind: tracker.Hours, Days: []tracker.DateTime{{Date: start.AddDays(9), Minutes: 599}}}}),
		"in a hundred years":      NewCalendar([]tracker.Event{off, weekOf(on(t, "2126-01-01"), 60, time.Monday)}),
	} {
		got, ok := c.Finish(start, 0, 600)
		assert.False(t, ok, name)
		assert.True(t, got.IsZero(), name)
	}
}
