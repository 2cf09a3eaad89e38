package forecast

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// sentOut is a job whose top leaves after so many exact minutes, is away for 42
// days and then wants six hours of binding.
func sentOut(job string, due planner.Date, before planner.Minutes) Work {
	return Work{Job: job, Due: due, Tasks: []Task{
		exact("pack", before), waiting("wait", 42), exact("bind", 360)}}
}

// exactEnds are the dates of exact jobs worked off from a date on, by job.
func exactEnds(today planner.Date, c Calendar, jobs ...Work) map[string]string {
	ends := map[string]string{}
	for _, a := range when(0, today, 0, c, jobs) {
		ends[a.Job] = a.P50.String()
	}
	return ends
}

// Quilting sent out for six weeks, due Friday 18 December 2026, then six hours
// of binding at an hour and a half a day (hand-worked: binding takes 15 to 18
// December, so the quilt is back by the 14th and leaves by 2 November; leaving
// on 10 November it is back on 22 December and bound on the 28th).
func TestQuiltingSentOut(t *testing.T) {
	due := on(t, "2026-12-18")
	for _, c := range []struct {
		leaves, bound string
		chance        float64
	}{
		{"2026-11-02", "2026-12-18", 1},
		{"2026-11-03", "2026-12-21", 0},
		{"2026-11-10", "2026-12-28", 0},
	} {
		a := when(0, on(t, c.leaves), 0, weekdays(90), []Work{sentOut("tide", due, 90)})[0]
		assert.Equal(t, c.bound, a.P50.String(), c.leaves)
		assert.Equal(t, chanceOf(c.chance), a.Chance, c.leaves)
		assert.Equal(t, planner.Minutes(450), a.Minutes.P50, "waiting is no work")
	}
	late := on(t, "2026-12-28")
	assert.Equal(t, 10, due.DaysUntil(late))
}

// The 42 days use no sewing hours: another commission goes on in them. All
// hand-worked at an hour and a half on weekdays from Tuesday 10 November; the
// first top leaves that day and is bound from 23 to 28 December.
func TestOtherJobsGoOnWhileOneWaits(t *testing.T) {
	today, due := on(t, "2026-11-10"), on(t, "2026-12-18")
	first := sentOut("tide", due, 90)
	second := func(evenings planner.Minutes) Work {
		return Work{Job: "dune", Due: due.AddDays(60), Tasks: []Task{exact("sew", 90*evenings)}}
	}
	for evenings, end := range map[planner.Minutes]string{
		1:  "2026-11-11", // the day after the first top left
		30: "2026-12-22", // the last evening before the first quilt's binding
		31: "2026-12-29", // the first after it
	} {
		assert.Equal(t, map[string]string{"tide": "2026-12-28", "dune": end},
			exactEnds(today, weekdays(90), first, second(evenings)))
	}
}

// Two quilts that come back on the same day are bound one after the other: four
// evenings from 23 December, then four from the 29th.
func TestTwoReturnsOnOneDay(t *testing.T) {
	due := on(t, "2026-12-18")
	assert.Equal(t, map[string]string{"tide": "2026-12-28", "dune": "2027-01-01"},
		exactEnds(on(t, "2026-11-10"), weekdays(90), sentOut("tide", due, 45), sentOut("dune", due.AddDays(1), 45)))
}

// The job that is due first goes first again on its return, also in the midst
// of another; one due later does not hold it up.
func TestAReturnTakesItsTurn(t *testing.T) {
	short := func(job string, due planner.Date) Work {
		return Work{Job: job, Due: due, Tasks: []Task{exact("wash", 60), waiting("dry", 1), exact("bind", 60)}}
	}
	long := func(job string, due planner.Date) Work {
		return Work{Job: job, Due: due, Tasks: []Task{exact("sew", 600)}}
	}
	// Hand-worked, an hour a day from day 1: washed 1, dry 2, bound 3; the other 2, 4 … 12.
	assert.Equal(t, map[string]string{"tide": "2026-03-04", "dune": "2026-03-13"},
		exactEnds(start, everyDay(60), short("tide", start), long("dune", start.AddDays(1))))
	// The other way round: 1 … 10, then washed 11, dry 12, bound 13.
	assert.Equal(t, map[string]string{"dune": "2026-03-11", "tide": "2026-03-14"},
		exactEnds(start, everyDay(60), short("tide", start.AddDays(1)), long("dune", start)))
}

func TestWaitsAreCounted(t *testing.T) {
	// Hand-worked at an hour a day from 2 March.
	for _, c := range []struct {
		name  string
		tasks []Task
		want  string
	}{
		{"nothing but waiting", []Task{waiting("wait", 10)}, "2026-03-12"},
		{"back on the last day", []Task{exact("pack", 60), waiting("wait", 10)}, "2026-03-12"},
		{"work begins the day after", []Task{exact("pack", 60), waiting("wait", 10), exact("bind", 60)}, "2026-03-13"},
		{"a wait after its own work", []Task{{Key: "pack", Unit: planner.Span{Mean: 60}, Left: 2, Wait: 10}, exact("bind", 60)}, "2026-03-14"},
		{"lots wait together, the longest", []Task{exact("pack", 60), waiting("wait", 7), waiting("wait", 10), waiting("wait", 2),
			exact("bind", 60)}, "2026-03-13"},
		{"two waits in turn", []Task{waiting("wait", 10), waiting("dry", 2), exact("bind", 60)}, "2026-03-15"},
		{"a wait that is over", []Task{exact("pack", 60), {Key: "wait", Wait: 10}, exact("bind", 60)}, "2026-03-03"},
		{"what is done between two waits", []Task{waiting("wait", 10), {Key: "trim", Unit: planner.Span{Mean: 60}}, exact("bind", 60)}, "2026-03-13"},
	} {
		assert.Equal(t, map[string]string{"tide": c.want},
			exactEnds(start, everyDay(60), Work{Job: "tide", Tasks: c.tasks}), c.name)
	}
}

// Only waiting needs no hours; work behind it does.
func TestWaitingWithoutHours(t *testing.T) {
	answers := When(start, 0, noHours(), []Work{
		{Job: "away", Due: start.AddDays(10), Tasks: []Task{waiting("wait", 10)}},
		{Job: "bound", Tasks: []Task{waiting("wait", 10), exact("bind", 60)}},
		{Job: "packed", Tasks: []Task{exact("pack", 60), waiting("wait", 10), exact("bind", 60)}}})
	back := start.AddDays(10)
	assert.Equal(t, Answer{Job: "away", Due: back, P50: back, P80: back, P95: back, Chance: chanceOf(1)}, answers[0])
	for _, a := range answers[1:] {
		assert.Equal(t, "never: no working hours are set", a.Reason, a.Job)
	}
}

// longSaturday is an hour a day and so many minutes on Saturday 7 March 2026.
func longSaturday(minutes planner.Minutes) Calendar {
	return NewCalendar([]tracker.Event{
		weekOf(planner.Date{}, 60, time.Sunday, time.Monday, time.Tuesday, time.Wednesday, time.Thursday,
			time.Friday, time.Saturday),
		{Kind: tracker.Hours, Days: []tracker.DateTime{{Date: start.AddDays(5), Minutes: minutes}}}})
}

// Packing takes 59.7 minutes at 50 % and 64.9 at 80 %: the quilt leaves on
// Monday or Tuesday and wants all of Saturday or Sunday on. So the other job,
// seven hours, gets Saturday at 80 % and is done, and at 50 % is done on the
// Tuesday after (hand-worked). What is shown does not go backwards.
func TestALaterReturnBringsNoEarlierDate(t *testing.T) {
	jobs := []Work{
		{Job: "tide", Due: start, Tasks: []Task{spread("pack", 60, 0.1), waiting("wait", 4), exact("bind", 600)}},
		{Job: "dune", Due: start.AddDays(6), Tasks: []Task{exact("sew", 420)}}}
	q := queue{clock: longSaturday(600).clock(start, 0), jobs: bookings(0, jobs)}
	require.Equal(t, "2026-03-10", q.dayOf(q.workOff(0.5, 2)[1]).date().String())
	require.Equal(t, "2026-03-07", q.dayOf(q.workOff(0.8, 2)[1]).date().String())

	dune := when(0, start, 0, longSaturday(600), jobs)[1]
	assert.Equal(t, [3]string{"2026-03-10", "2026-03-10", "2026-03-10"},
		[3]string{dune.P50.String(), dune.P80.String(), dune.P95.String()})
	assert.Less(t, *dune.Chance, 0.5)
}

// Here the quilt leaves on Tuesday from 45 % on, so that the other job is on
// time at 50 % though it was late at 40 %. Its chance stands by the date shown.
func TestTheChanceStandsByTheDates(t *testing.T) {
	dune := when(0, start, 0, longSaturday(300), []Work{
		{Job: "tide", Due: start, Tasks: []Task{spread("pack", 61.06, 0.1), waiting("wait", 4), exact("bind", 300)}},
		{Job: "dune", Due: start.AddDays(5), Tasks: []Task{spread("sew", 420, 0.5)}}})[1]
	require.Equal(t, dune.Due, dune.P50)
	require.True(t, dune.Due.Before(dune.P80))
	assert.GreaterOrEqual(t, *dune.Chance, 0.5)
	assert.Less(t, *dune.Chance, 0.8)
}
