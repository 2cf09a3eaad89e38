package forecast

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Hand-worked for one lognormal of mean 930 and the maker's spread s = 0.33395:
// 930·exp(z·s − s²/2) is 879.56, 1165.01 and 1523.44 minutes; at 90 a weekday
// that is 9.8, 12.9 and 16.9 evenings.
func TestDatesOfOneJob(t *testing.T) {
	answers := When(on(t, "2026-03-02"), 0, weekdays(90),
		[]Work{{Job: "estuary-lap", Due: on(t, "2026-03-18"), Tasks: []Task{exact("sew", 930)}}})
	require.Len(t, answers, 1)
	a := answers[0]
	assert.InDelta(t, 879.56, float64(a.Minutes.P50), 0.01)
	assert.InDelta(t, 1165.01, float64(a.Minutes.P80), 0.01)
	assert.InDelta(t, 1523.44, float64(a.Minutes.P95), 0.01)
	// 18 March is the 13th evening: 1170 minutes by its end.
	assert.InDelta(t, 0.5*math.Erfc(-(math.Log(1170/930.0)/makerSpread()+makerSpread()/2)/math.Sqrt2), *a.Chance, step)
	assert.Equal(t, Answer{Job: "estuary-lap", Due: on(t, "2026-03-18"), P50: on(t, "2026-03-13"),
		P80: on(t, "2026-03-18"), P95: on(t, "2026-03-24"), Chance: a.Chance, Minutes: a.Minutes}, a)
}

// Four blocks an hour, 62 left, 90 minutes on three evenings a week: hand-worked
// 930 / 90, the 11th evening.
func TestEveningsOfExactWork(t *testing.T) {
	evenings := NewCalendar([]tracker.Event{weekOf(planner.Date{}, 90, time.Monday, time.Wednesday, time.Friday)})
	answers := when(0, on(t, "2026-03-02"), 0, evenings, []Work{{Job: "dune",
		Tasks: []Task{{Key: "sew-units", Setup: planner.Span{Mean: 500}, Unit: planner.Span{Mean: 15}, Left: 62}}}})
	end := on(t, "2026-03-25")
	assert.Equal(t, []Answer{{Job: "dune", P50: end, P80: end, P95: end, Minutes: Quantiles{930, 930, 930}}}, answers,
		"setup is behind, no due date is no chance")
}

func TestSetupCountsOnceWhileItIsLeft(t *testing.T) {
	task := Task{Key: "press", Setup: planner.Span{Mean: 7}, Unit: planner.Span{Mean: 2}, SetupLeft: true, Left: 10}
	minutes := func(task Task) planner.Minutes {
		return when(0, start, 0, everyDay(60), []Work{{Job: "dune", Tasks: []Task{task}}})[0].Minutes.P80
	}
	assert.Equal(t, planner.Minutes(27), minutes(task))
	task.SetupLeft = false
	assert.Equal(t, planner.Minutes(20), minutes(task))
	task.SetupLeft, task.Left = true, 0
	assert.Equal(t, planner.Minutes(0), minutes(task), "nothing left needs no setup")
	task.Left = -3
	assert.Equal(t, planner.Minutes(0), minutes(task), "less than nothing is nothing")
}

func TestHoursThatAreGoneTodayDoNotCount(t *testing.T) {
	jobs := []Work{{Job: "dune", Tasks: []Task{exact("sew", 60)}}}
	assert.Equal(t, start, when(0, start, 0, everyDay(60), jobs)[0].P50)
	assert.Equal(t, start.AddDays(1), when(0, start, 1, everyDay(60), jobs)[0].P50)
	assert.Equal(t, start.AddDays(1), when(0, start, 300, everyDay(60), jobs)[0].P50, "overtime is not owed")
}

func TestAFinishedJobRepeatsItsRealDate(t *testing.T) {
	done := on(t, "2026-02-20")
	for due, want := range map[string]*float64{"2026-02-20": chanceOf(1), "2026-02-19": chanceOf(0), "": nil} {
		w := Work{Job: "tide", Done: true, DoneOn: done, Tasks: []Task{exact("sew", 99), waiting("quilt", 9)}}
		if due != "" {
			w.Due = on(t, due)
		}
		want := Answer{Job: "tide", Due: w.Due, P50: done, P80: done, P95: done, Chance: want}
		assert.Equal(t, []Answer{want}, When(start, 0, noHours(), []Work{w}), "even without hours")
	}
	behind := When(start, 0, everyDay(60), []Work{
		{Job: "tide", Due: start, Done: true, DoneOn: done, Tasks: []Task{exact("sew", 9999)}},
		{Job: "dune", Tasks: []Task{exact("sew", 1)}}})
	assert.Equal(t, start, behind[1].P95, "and delays nobody")
}

func TestNothingLeftIsToday(t *testing.T) {
	for name, tasks := range map[string][]Task{"no tasks": nil, "all done": {{Key: "sew", Unit: planner.Span{Mean: 5}, Wait: 42}}} {
		answers := When(start, 0, noHours(), []Work{
			{Job: "busy", Due: start.AddDays(-9), Tasks: []Task{exact("sew", 60)}},
			{Job: "over", Due: start, Tasks: tasks},
			{Job: "over-late", Due: start.AddDays(-1), Tasks: tasks}})
		assert.Equal(t, Answer{Job: "over", Due: start, P50: start, P80: start, P95: start, Chance: chanceOf(1)},
			answers[2], name)
		assert.Equal(t, Answer{Job: "over-late", Due: start.AddDays(-1), P50: start, P80: start, P95: start,
			Chance: chanceOf(0)}, answers[1], name)
	}
}

func TestWithoutHoursThereIsNoDate(t *testing.T) {
	for name, c := range map[string]Calendar{"all set to nothing": noHours(), "nobody made it": {}} {
		answers := When(start, 0, c, []Work{
			{Job: "dune", Tasks: []Task{exact("sew", 60)}},
			{Job: "tide", Due: start.AddDays(999), Tasks: []Task{exact("sew", 60)}}})
		for i := range answers {
			assert.Greater(t, float64(answers[i].Minutes.P95), 60.0)
			answers[i].Minutes = Quantiles{}
		}
		const never = "never: no working hours are set"
		assert.Equal(t, []Answer{{Job: "tide", Due: start.AddDays(999), Chance: chanceOf(0), Reason: never},
			{Job: "dune", Reason: never}}, answers, name)
	}
}

// Hours that end: the dates that there are stand, and the reason says from
// where on there are none. A job of mean 100 takes 95, 125 and 164 minutes.
func TestTooFewHoursAhead(t *testing.T) {
	for minutes, want := range map[planner.Minutes]string{
		90:  "never: the working hours set for the next 50 years do not suffice",
		100: "no date above 50 %: the working hours set for the next 50 years do not suffice",
		130: "no date above 80 %: the working hours set for the next 50 years do not suffice",
		170: "",
	} {
		last := start.AddDays(3)
		c := NewCalendar([]tracker.Event{weekOf(planner.Date{}, 0),
			{Kind: tracker.Hours, Days: []tracker.DateTime{{Date: last, Minutes: minutes}}}})
		a := When(start, 0, c, []Work{{Job: "dune", Due: start, Tasks: []Task{exact("sew", 100)}}})[0]
		assert.Equal(t, want, a.Reason)
		assert.Equal(t, minutes < 95, a.P50.IsZero(), minutes)
		assert.Equal(t, minutes < 125, a.P80.IsZero(), minutes)
		assert.Equal(t, minutes < 164, a.P95.IsZero(), minutes)
		assert.Equal(t, chanceOf(0), a.Chance)
	}
}

// With nothing logged yet every figure is the plan's, and finite.
func TestNothingLoggedYetGivesThePlansFigures(t *testing.T) {
	a := When(start, 0, NewCalendar(nil), []Work{{Job: "dune", Due: start.AddDays(30), Tasks: []Task{
		{Key: "sew", Unit: planner.Span{Mean: 15, Spread: 0.5}, Setup: planner.Span{Mean: 10, Spread: 0.3}, SetupLeft: true, Left: 20}}}})[0]
	var own load
	own.add("sew", 10, 0.3)
	own.add("sew", 300, 0.5)
	assert.Equal(t, quantiles(own.made(makerSpread())), a.Minutes)
	assert.False(t, math.IsNaN(*a.Chance))
	assert.False(t, a.P95.IsZero())
}

func TestADueDateThatIsGoneHasNoChance(t *testing.T) {
	a := When(start, 0, everyDay(600), []Work{{Job: "dune", Due: start.AddDays(-1), Tasks: []Task{exact("sew", 1)}}})[0]
	assert.Equal(t, chanceOf(0), a.Chance)
	assert.Equal(t, start, a.P95)
}

func TestExactWorkIsOnTimeOrNot(t *testing.T) {
	for due, want := range map[int]float64{0: 0, 1: 1, 2: 1} {
		a := when(0, start, 0, everyDay(60), []Work{{Job: "dune", Due: start.AddDays(due), Tasks: []Task{exact("sew", 120)}}})[0]
		assert.Equal(t, want, *a.Chance, due)
	}
}

// A slow presser is slow in every job: the second job's dates come from one
// factor for both. Independent factors would give 1704 minutes instead of 2009.
func TestOneKeyIsSlowInEveryJob(t *testing.T) {
	answers := when(0, start, 0, everyDay(1), []Work{
		{Job: "dune", Tasks: []Task{spread("press", 500, 0.5)}},
		{Job: "tide", Tasks: []Task{spread("press", 500, 0.5)}}})
	want := 1000 * math.Exp(1.644854*0.5-0.125)
	assert.InDelta(t, 2008.6, want, 0.1)
	assert.Equal(t, int(math.Ceil(want))-1, start.DaysUntil(answers[1].P95))
}

// Far out in the tail the two-moment match of a sum can fall below that of its
// first part. Nobody ends before those ahead, nor loses time by it.
func TestTheTailKeepsTheQueueInOrder(t *testing.T) {
	q := queue{clock: everyDay(60).clock(start, 0), jobs: bookings(0, []Work{
		{Job: "a", Tasks: []Task{spread("quilt", 100, 1.2)}},
		{Job: "b", Tasks: []Task{exact("sew", 20)}},
		{Job: "c", Tasks: []Task{spread("quilt", 6, 1.2)}}})}
	z := standardNormal(0.999999)
	first := q.jobs[0].stretches[0].through.at(z)
	require.Less(t, q.jobs[1].stretches[0].through.at(z), first, "or there is nothing to test")
	require.Greater(t, q.jobs[2].stretches[0].through.at(z), q.jobs[1].stretches[0].through.at(z))
	for i, m := range q.workOff(0.999999, 3) {
		assert.Equal(t, first, m.minutes, i)
	}
}
