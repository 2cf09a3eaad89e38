package forecast

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

// dayJob is a textbook job: whole days of work and the day it is due, counted
// from 1.
type dayJob struct {
	name      string
	work, due int
}

// start is the textbook day 1, a Monday.
var start = planner.Date{Year: 2026, Month: 3, Day: 2}

// textbook books jobs of whole days, an hour each.
func textbook(jobs []dayJob) []Work {
	var list []Work
	for _, j := range jobs {
		list = append(list, Work{Job: j.name, Due: start.AddDays(j.due - 1),
			Tasks: []Task{exact("sew", planner.Minutes(60*j.work))}})
	}
	return list
}

// largestLateness is how many days the latest answer is late, at any
// confidence; negative where all are early.
func largestLateness(answers []Answer) int {
	latest := -1 << 30
	for _, a := range answers {
		latest = max(latest, a.Due.DaysUntil(a.P95))
	}
	return latest
}

// Published examples of the rule of the earliest due date, order, completion
// times and largest lateness. The last two are recomputed where the source
// prints only the data. With no spread the schedule is exact.
func TestPublishedEarliestDueDateSchedules(t *testing.T) {
	for _, c := range []struct {
		name     string
		jobs     []dayJob
		order    string
		ends     []int
		lateness int
	}{
		// An exam item on the rule.
		{"four jobs", []dayJob{{"A", 8, 14}, {"B", 5, 10}, {"C", 7, 12}, {"D", 9, 19}},
			"B C A D", []int{5, 12, 20, 29}, 10},
		// Heizer & Render, Operations Management, short-term scheduling.
		{"five jobs", []dayJob{{"A", 6, 8}, {"B", 2, 6}, {"C", 8, 18}, {"D", 3, 15}, {"E", 9, 23}},
			"B A D C E", []int{2, 8, 11, 19, 28}, 5},
		// Kleinberg & Tardos 2005, chapter 4.
		{"six jobs", []dayJob{{"1", 3, 6}, {"2", 2, 8}, {"3", 1, 9}, {"4", 4, 9}, {"5", 3, 14}, {"6", 2, 15}},
			"1 2 3 4 5 6", []int{3, 5, 6, 10, 13, 15}, 1},
		// A variant with tighter dates; the order 3 2 5 4 1 6 would be 7 days late.
		{"six jobs, tighter", []dayJob{{"1", 3, 6}, {"2", 2, 8}, {"3", 1, 9}, {"4", 4, 9}, {"5", 3, 10}, {"6", 2, 11}},
			"1 2 3 4 5 6", []int{3, 5, 6, 10, 13, 15}, 4},
		// A published exercise.
		{"two due first", []dayJob{{"A", 5, 8}, {"B", 3, 5}, {"C", 4, 12}, {"D", 7, 14}, {"E", 2, 11}},
			"B A E C D", []int{3, 8, 10, 14, 21}, 7},
	} {
		answers := when(0, start, 0, everyDay(60), textbook(c.jobs))
		var order []string
		var ends []int
		for _, a := range answers {
			order = append(order, a.Job)
			ends = append(ends, start.DaysUntil(a.P50)+1)
			assert.Equal(t, a.P50, a.P95, c.name+": exact times have one date")
		}
		assert.Equal(t, c.order, strings.Join(order, " "), c.name)
		assert.Equal(t, c.ends, ends, c.name)
		assert.Equal(t, c.lateness, largestLateness(answers), c.name)
	}
}

// The five jobs in a calendar of five-day weeks from Monday 3 June 2024
// (published exercise; the dates of completion recomputed).
func TestPublishedScheduleInWorkingDays(t *testing.T) {
	job := func(name string, days planner.Minutes, due string) Work {
		return Work{Job: name, Due: on(t, due), Tasks: []Task{exact("sew", 120*days)}}
	}
	answers := When(on(t, "2024-06-03"), 0, NewCalendar(nil), nil)
	assert.Empty(t, answers)
	answers = when(0, on(t, "2024-06-03"), 0, NewCalendar(nil), []Work{
		job("job1", 6, "2024-06-12"), job("job2", 2, "2024-06-10"), job("job3", 8, "2024-06-26"),
		job("job4", 3, "2024-06-21"), job("job5", 9, "2024-07-03")})
	var got []string
	for _, a := range answers {
		got = append(got, a.Job+" "+a.P80.String())
	}
	assert.Equal(t, []string{"job2 2024-06-04", "job1 2024-06-12", "job4 2024-06-17", "job3 2024-06-27",
		"job5 2024-07-10"}, got)
	late := answers[4]
	assert.Equal(t, planner.Minutes(5*120), NewCalendar(nil).Between(late.Due.AddDays(1), late.P80),
		"five working days late")
}

// No order of the jobs keeps the largest lateness smaller (Jackson): every
// other order is tried.
func TestNoOrderIsLessLate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		jobs := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) dayJob {
			return dayJob{"", rapid.IntRange(1, 9).Draw(t, "work"), rapid.IntRange(1, 30).Draw(t, "due")}
		}), 1, 5).Draw(t, "jobs")
		got := largestLateness(when(0, start, 0, everyDay(60), textbook(jobs)))
		if best := leastLateness(jobs, 0); got != best {
			t.Fatalf("largest lateness %d, and %d is possible", got, best)
		}
	})
}

// leastLateness is the least of the largest latenesses of all orders, begun
// when so many days are gone.
func leastLateness(jobs []dayJob, gone int) int {
	least := 1 << 30
	for i, j := range jobs {
		rest := append(append([]dayJob{}, jobs[:i]...), jobs[i+1:]...)
		largest := gone + j.work - j.due
		if len(rest) > 0 {
			largest = max(largest, leastLateness(rest, gone+j.work))
		}
		least = min(least, largest)
	}
	return least
}

func TestQueueOrderWithoutDates(t *testing.T) {
	early, later := on(t, "2026-03-02"), on(t, "2026-04-01")
	jobs := []Work{
		{Job: "tide", Received: later},
		{Job: "dune"},
		{Job: "kelp", Received: early},
		{Job: "cormorant", Due: later, Received: later},
		{Job: "saltmarsh", Due: later, Received: early},
		{Job: "estuary", Due: early, Done: true, DoneOn: early},
		{Job: "foam", Due: later, Received: early},
		{Job: "anchor"},
	}
	var order []string
	for _, a := range When(early, 0, NewCalendar(nil), jobs) {
		order = append(order, a.Job)
	}
	assert.Equal(t, []string{"estuary", "foam", "saltmarsh", "cormorant", "kelp", "tide", "anchor", "dune"}, order)
	assert.Equal(t, "tide", jobs[0].Job, "the caller's list keeps its order")
}
