package forecast

import (
	"fmt"
	"testing"
	"time"

	"pgregory.net/rapid"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// anyHours draws entries of hours: weeks from several dates on, and single days.
func anyHours(t *rapid.T) []tracker.Event {
	var events []tracker.Event
	for range rapid.IntRange(0, 3).Draw(t, "entries") {
		e := tracker.Event{Kind: tracker.Hours}
		for range rapid.IntRange(0, 5).Draw(t, "week days") {
			e.Week = append(e.Week, tracker.DayTime{
				From:    start.AddDays(rapid.IntRange(-60, 60).Draw(t, "from")),
				Day:     time.Weekday(rapid.IntRange(0, 6).Draw(t, "day")),
				Minutes: planner.Minutes(rapid.IntRange(0, 300).Draw(t, "minutes"))})
		}
		for range rapid.IntRange(0, 3).Draw(t, "single days") {
			e.Days = append(e.Days, tracker.DateTime{
				Date:    start.AddDays(rapid.IntRange(-10, 60).Draw(t, "date")),
				Minutes: planner.Minutes(rapid.IntRange(0, 600).Draw(t, "minutes"))})
		}
		events = append(events, e)
	}
	return events
}

// anyTask draws a task; waits only where they are wanted.
func anyTask(t *rapid.T, waits bool) Task {
	span := func(most int) planner.Span {
		return planner.Span{
			Mean:   planner.Minutes(rapid.IntRange(0, most).Draw(t, "mean")),
			Spread: rapid.Float64Range(0, 1.5).Draw(t, "spread")}
	}
	task := Task{
		Key:   rapid.SampledFrom([]string{"cut", "sew", "press", "bind"}).Draw(t, "key"),
		Setup: span(60), Unit: span(30), SetupLeft: rapid.Bool().Draw(t, "setup left"),
		Left: rapid.IntRange(0, 40).Draw(t, "left")}
	if waits && rapid.IntRange(0, 3).Draw(t, "waits") == 0 {
		task.Wait = rapid.IntRange(1, 30).Draw(t, "wait")
		if rapid.Bool().Draw(t, "away") {
			task.Left, task.Back = 0, start.AddDays(rapid.IntRange(-5, 40).Draw(t, "back"))
		}
	}
	return task
}

// anyJobs draws a queue, some of it done, some without a due date.
func anyJobs(t *rapid.T, waits bool) []Work {
	var jobs []Work
	for i := range rapid.IntRange(1, 5).Draw(t, "jobs") {
		w := Work{Job: fmt.Sprint("job-", i)}
		if rapid.IntRange(0, 4).Draw(t, "due given") > 0 {
			w.Due = start.AddDays(rapid.IntRange(-5, 120).Draw(t, "due"))
		}
		if rapid.IntRange(0, 7).Draw(t, "done") == 0 {
			w.Done, w.DoneOn = true, start.AddDays(-rapid.IntRange(0, 30).Draw(t, "done on"))
		}
		for range rapid.IntRange(0, 6).Draw(t, "tasks") {
			w.Tasks = append(w.Tasks, anyTask(t, waits))
		}
		jobs = append(jobs, w)
	}
	return jobs
}

// notAfter reports that a date is not after another; none is after all.
func notAfter(a, b planner.Date) bool { return earlier(a, b) <= 0 }

func TestBetweenIsTheSumOfItsDays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := NewCalendar(anyHours(t))
		from := start.AddDays(rapid.IntRange(-90, 90).Draw(t, "first"))
		days := rapid.IntRange(0, 120).Draw(t, "days")
		want := planner.Minutes(0)
		for i := range days + 1 {
			want += c.On(from.AddDays(i))
		}
		if got := c.Between(from, from.AddDays(days)); got != want {
			t.Fatalf("want %v minutes, got %v", want, got)
		}
	})
}

func TestFinishIsWhereTheDaysAreUsedUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := NewCalendar(anyHours(t))
		used := planner.Minutes(rapid.IntRange(0, 400).Draw(t, "used"))
		work := planner.Minutes(rapid.IntRange(0, 9000).Draw(t, "work"))
		left, want := work, start
		left -= max(c.On(start)-used, 0)
		for days := 1; left > 0; days++ {
			if days > 20000 {
				want = planner.Date{}
				break
			}
			want = start.AddDays(days)
			left -= c.On(want)
		}
		got, ok := c.Finish(start, used, work)
		if got != want || ok == want.IsZero() {
			t.Fatalf("want %v, got %v, %v", want, got, ok)
		}
	})
}

func TestDaysAndDatesRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(-800, 80000).Draw(t, "days")
		date := start.AddDays(n)
		if d := dayOf(date); d != dayOf(start)+day(n) || d.date() != date || d.weekday() != date.Weekday() {
			t.Fatalf("%v is day %d, %v, a %v", date, d, d.date(), d.weekday())
		}
	})
}

func TestDatesAndChanceNeverContradictEachOther(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, jobs := NewCalendar(anyHours(t)), anyJobs(t, true)
		for _, a := range When(start, 30, c, jobs) {
			if !notAfter(a.P50, a.P80) || !notAfter(a.P80, a.P95) {
				t.Fatalf("dates out of order: %+v", a)
			}
			if a.Minutes.P50 > a.Minutes.P80 || a.Minutes.P80 > a.Minutes.P95 {
				t.Fatalf("minutes out of order: %+v", a)
			}
			if (a.Reason != "") != a.P95.IsZero() {
				t.Fatalf("a reason where there is a date, or none where there is none: %+v", a)
			}
			if (a.Chance == nil) != a.Due.IsZero() {
				t.Fatalf("a chance without a due date, or none with one: %+v", a)
			}
			if a.Chance == nil {
				continue
			}
			for i, date := range []planner.Date{a.P50, a.P80, a.P95} {
				if notAfter(date, a.Due) != (*a.Chance >= levels[i]) {
					t.Fatalf("%v %% by %v, due %v, chance %v", 100*levels[i], date, a.Due, *a.Chance)
				}
			}
			if *a.Chance < 0 || *a.Chance > 1 {
				t.Fatalf("chance %v", *a.Chance)
			}
		}
	})
}

// Without waits the chance is the confidence at which the date turns late.
func TestTheDateAtTheChanceIsOnTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, jobs := NewCalendar(anyHours(t)), anyJobs(t, false)
		q := queue{clock: c.clock(start, 0), jobs: bookings(makerSpread(), jobs)}
		for i, a := range When(start, 0, c, jobs) {
			if a.Chance == nil || a.Reason != "" || q.jobs[i].Done || *a.Chance <= 0 || *a.Chance >= 1 {
				continue
			}
			if by := q.dayOf(q.workOff(*a.Chance, i+1)[i]); by > dayOf(a.Due) {
				t.Fatalf("late at its own chance: %+v, by %v", a, by.date())
			}
			if by := q.dayOf(q.workOff(min(*a.Chance+2*step, sure), i+1)[i]); by <= dayOf(a.Due) {
				t.Fatalf("on time at more than its chance: %+v, by %v", a, by.date())
			}
		}
	})
}

func TestMoreWorkNeverGivesAnEarlierDate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, jobs := NewCalendar(anyHours(t)), anyJobs(t, false)
		before := When(start, 0, c, jobs)
		at := rapid.IntRange(0, len(jobs)-1).Draw(t, "job")
		jobs[at].Tasks = append(jobs[at].Tasks, anyTask(t, false))
		noneEarlier(t, before, When(start, 0, c, jobs))
	})
}

func TestMoreHoursNeverGiveALaterDate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events, jobs := anyHours(t), anyJobs(t, false)
		noneEarlier(t, When(start, 0, moreHours(t, events), jobs), When(start, 0, NewCalendar(events), jobs))
	})
}

// The job that is due first holds both also where it waits: nobody is before it.
func TestTheFirstJobWaitsNoLongerForMoreHoursOrLessWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		events, jobs := anyHours(t), anyJobs(t, true)[:1]
		c := NewCalendar(events)
		before := When(start, 0, c, jobs)
		noneEarlier(t, When(start, 0, moreHours(t, events), jobs), before)
		jobs[0].Tasks = append(jobs[0].Tasks, anyTask(t, true))
		noneEarlier(t, before, When(start, 0, c, jobs))
	})
}

// moreHours is the calendar of the same entries with more time on one date.
func moreHours(t *rapid.T, events []tracker.Event) Calendar {
	date := start.AddDays(rapid.IntRange(-3, 60).Draw(t, "longer day"))
	minutes := NewCalendar(events).On(date) + planner.Minutes(rapid.IntRange(1, 300).Draw(t, "longer by"))
	return NewCalendar(append(events[:len(events):len(events)],
		tracker.Event{Kind: tracker.Hours, Days: []tracker.DateTime{{Date: date, Minutes: minutes}}}))
}

// noneEarlier fails where an answer of the second list is earlier than in the
// first.
func noneEarlier(t *rapid.T, first, second []Answer) {
	for i, a := range first {
		b := second[i]
		if !notAfter(a.P50, b.P50) || !notAfter(a.P80, b.P80) || !notAfter(a.P95, b.P95) {
			t.Fatalf("earlier than %+v: %+v", a, b)
		}
	}
}
