package forecast

import (
	"cmp"
	"slices"

	"quiltrun/planner"
)

// Task is what remains of one row of a job's route.
type Task struct {
	Key       string
	Setup     planner.Span // counted where SetupLeft
	Unit      planner.Span // per count
	SetupLeft bool
	Left      int // counts; a task with none left is over, its wait too unless Back says when it ends
	Wait      int // calendar days after it in which the job rests, without work

	Back planner.Date // of a task with none left: when what was sent out is expected; none where nothing is away
}

// Work is one booked job: its remaining tasks in route order, or the date on
// which it was done.
type Work struct {
	Job      string
	Due      planner.Date
	Received planner.Date
	Done     bool
	DoneOn   planner.Date
	Tasks    []Task
}

// inQueue compares two jobs by Jackson's rule: due date, then the date
// received, then id. A date that is not given comes after every other.
func inQueue(a, b Work) int {
	return cmp.Or(
		earlier(a.Due, b.Due),
		earlier(a.Received, b.Received),
		cmp.Compare(a.Job, b.Job),
	)
}

// earlier compares dates, none last.
func earlier(a, b planner.Date) int {
	return cmp.Compare(dayOrNever(a), dayOrNever(b))
}

// dayOrNever is the day of a date, and never for none.
func dayOrNever(d planner.Date) day {
	if d.IsZero() {
		return never
	}
	return dayOf(d)
}

// leg is the part of a job's work between two waits, the days it waits
// afterwards, and the day before which what is away already is not back.
type leg struct {
	tasks []Task
	wait  int
	back  planner.Date
}

// legs parts the remaining tasks at their waits. The lots of one operation wait
// together: the longest counts, and the last that is away.
func legs(tasks []Task) []leg {
	list := []leg{{}}
	waiting := ""
	for _, t := range tasks {
		away := t.Left <= 0 && !t.Back.IsZero()
		if t.Left <= 0 && !away {
			continue
		}
		if waiting != "" && t.Key != waiting {
			list, waiting = append(list, leg{}), ""
		}
		last := &list[len(list)-1]
		if away {
			waiting = t.Key
			if last.back.Before(t.Back) {
				last.back = t.Back
			}
			continue
		}
		last.tasks = append(last.tasks, t)
		if t.Wait > last.wait {
			last.wait, waiting = t.Wait, t.Key
		}
	}
	return list
}

// stretch is a leg as the queue sees it.
type stretch struct {
	through lognormal // everything in the queue up to and including this leg
	work    bool
	wait    int
	back    day // before today where nothing is away
}

// booking is one job in the queue.
type booking struct {
	Work
	own       lognormal // the job's own remaining minutes
	stretches []stretch
}

// bookings queue the jobs up; done ones stand in their place without work.
func bookings(maker float64, jobs []Work) []booking {
	var ahead load
	list := make([]booking, 0, len(jobs))
	for _, w := range slices.SortedStableFunc(slices.Values(jobs), inQueue) {
		if w.Done {
			w.Tasks = nil
		}
		b, own := booking{Work: w}, load{}
		for _, l := range legs(w.Tasks) {
			before := own.mean
			for _, t := range l.tasks {
				t.onto(&own)
				t.onto(&ahead)
			}
			b.stretches = append(b.stretches, stretch{ahead.made(maker), own.mean > before, l.wait, dayOf(l.back)})
		}
		b.own = own.made(maker)
		list = append(list, b)
	}
	return list
}

// onto puts a task's remaining minutes on a load.
func (t Task) onto(l *load) {
	if t.SetupLeft {
		l.add(t.Key, float64(t.Setup.Mean), t.Setup.Spread)
	}
	l.add(t.Key, float64(t.Left)*float64(t.Unit.Mean), t.Unit.Spread)
}
