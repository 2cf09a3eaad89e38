package tracker

import (
	"cmp"
	"math"
	"slices"

	"quiltrun/planner"
)

// Task is so many counts of a row of one job that can be made. Minutes is their
// expected time, setting up aside.
type Task struct {
	Job, Title string
	Due        planner.Date
	Doable
	Count   int
	Minutes planner.Minutes
}

// Batch is tasks that share one set-up, of one job or of several. Minutes
// is the expected time of all of it, with the longest set-up that is still to come
// counted once.
type Batch struct {
	Setup
	Tasks        []Task
	SetupMinutes planner.Minutes
	Minutes      planner.Minutes
}

// JobHeld is what is held up in one job.
type JobHeld struct {
	Job  string
	Held []Held
}

// AgendaRequest is what somebody wants to do: at a place, "" for any, and in the
// time that there is, 0 for no limit.
type AgendaRequest struct {
	For   planner.Minutes
	At    planner.Place
	Today planner.Date
}

// Agenda is what can be done now. Longer are the tasks of which not even one
// count fits into the time.
type Agenda struct {
	Batches []Batch
	Longer  []Task
	Held    []JobHeld
	Minutes planner.Minutes
}

// NewAgenda finds what to do in jobs that are booked. The job that is due first
// comes first, jobs without a date last, and each goes by its route; what shares
// a set-up goes along with the first of it, other jobs' too. Where there is a
// time, counts are taken as they fit, and what they make possible is reckoned
// with: pairs that are sewn can be pressed in the same hour.
func NewAgenda(states []State, r AgendaRequest) Agenda {
	p := newPlannedWork(states, r)
	a := Agenda{Held: p.heldUp()}
	if r.For > 0 {
		a.Longer = p.longer()
		p.fill()
	} else {
		p.takeAll()
	}
	for i := range p.batches {
		b := &p.batches[i]
		a.Minutes += b.Minutes
	}
	a.Batches = p.batches
	return a
}

// plannedWork is an agenda in the making.
type plannedWork struct {
	AgendaRequest
	jobs    []jobWork
	batches []Batch
	spent   planner.Minutes
}

// jobWork is one job with what was planned of it already done on its board, and
// what can go on there.
type jobWork struct {
	*outlook
	job, title string
	due        planner.Date
	can        []Doable
	held       []Held
}

// newPlannedWork puts the jobs in order.
func newPlannedWork(states []State, r AgendaRequest) *plannedWork {
	p := &plannedWork{AgendaRequest: r}
	for _, s := range states {
		if _, handedOver := s.FinishedAt(); !s.Booked() || handedOver {
			continue
		}
		j := jobWork{outlook: s.outlook(r.Today), job: s.Ledger.Job, title: s.Ledger.Title, due: s.Ledger.Due}
		j.can, j.held = j.prospect()
		p.jobs = append(p.jobs, j)
	}
	slices.SortStableFunc(p.jobs, func(a, b jobWork) int { return cmp.Or(CompareDue(a.due, b.due), cmp.Compare(a.job, b.job)) })
	return p
}

// CompareDue orders due dates: the earliest first, none last.
func CompareDue(a, b planner.Date) int {
	switch {
	case a == b:
		return 0
	case a.IsZero() || !b.IsZero() && b.Before(a):
		return 1
	}
	return -1
}

// tasks is everything that can go on at the place, in order.
func (p *plannedWork) tasks() []Task {
	var all []Task
	for _, j := range p.jobs {
		for _, d := range j.can {
			if p.At == "" || d.Place == p.At {
				all = append(all, Task{Job: j.job, Title: j.title, Due: j.due, Doable: d})
			}
		}
	}
	return all
}

// heldUp is what cannot go on at the place.
func (p *plannedWork) heldUp() []JobHeld {
	var all []JobHeld
	for _, j := range p.jobs {
		held := slices.DeleteFunc(slices.Clone(j.held), func(h Held) bool { return p.At != "" && h.Place != p.At })
		if len(held) > 0 {
			all = append(all, JobHeld{j.job, held})
		}
	}
	return all
}

// takeAll takes everything that can go on.
func (p *plannedWork) takeAll() {
	for _, t := range p.tasks() {
		at := slices.IndexFunc(p.batches, func(b Batch) bool { return b.Setup == t.SharedSetup() })
		if at < 0 {
			at = len(p.batches)
			p.batches = append(p.batches, Batch{Setup: t.SharedSetup()})
		}
		p.batches[at].take(t, t.Room)
	}
}

// longer is the tasks of which one count takes longer than there is.
func (p *plannedWork) longer() []Task {
	var all []Task
	for _, t := range p.tasks() {
		if t.Doable.Minutes(1) > p.For {
			t.Count, t.Minutes = 1, t.Unit.Mean
			all = append(all, t)
		}
	}
	return all
}

// fill takes what fits, set-up by set-up. Each round looks anew, since what was
// taken makes other work possible.
func (p *plannedWork) fill() {
	for {
		t, n := p.fitting()
		if n == 0 {
			return
		}
		b := p.batch(t.SharedSetup())
		before := b.Minutes
		b.take(t, n)
		p.spent += b.Minutes - before
		p.make(t, n)
	}
}

// fitting is the first task that fits into the rest of the time and how many of
// its counts do; work of the set-up that is up comes first.
func (p *plannedWork) fitting() (Task, int) {
	tasks := p.tasks()
	if len(p.batches) > 0 {
		now := p.batches[len(p.batches)-1].Setup
		slices.SortStableFunc(tasks, func(a, b Task) int {
			return cmp.Compare(btoi(a.SharedSetup() != now), btoi(b.SharedSetup() != now))
		})
	}
	for _, t := range tasks {
		if n := p.fits(t); n > 0 && p.worthwhile(t, n) {
			return t, n
		}
	}
	return Task{}, 0
}

// leastSitting is the time for which another set-up is not begun.
const leastSitting planner.Minutes = 5

// worthwhile keeps a rest of the time from being filled with a minute of this and
// a minute of that: another set-up is begun for leastSitting, or to make all that
// can be made of something.
func (p *plannedWork) worthwhile(t Task, n int) bool {
	last := len(p.batches) - 1
	return last < 0 || p.batches[last].Setup == t.SharedSetup() || n == t.Room || planner.Minutes(n)*t.Unit.Mean >= leastSitting
}

// btoi puts what holds after what does not.
func btoi(holds bool) int {
	if holds {
		return 1
	}
	return 0
}

// rounding keeps a count from being lost to the last bits of a sum.
const rounding planner.Minutes = 1e-9

// fits is how many counts of a task fit into what is left of the time.
func (p *plannedWork) fits(t Task) int {
	rest := p.For - p.spent - t.SetupMinutes()
	if len(p.batches) > 0 {
		if b := p.batches[len(p.batches)-1]; b.Setup == t.SharedSetup() {
			rest = p.For - p.spent - max(0, t.SetupMinutes()-b.SetupMinutes)
		}
	}
	switch {
	case rest < 0:
		return 0
	case t.Unit.Mean <= 0:
		return t.Room
	}
	return min(t.Room, int(math.Floor(float64((rest+rounding)/t.Unit.Mean))))
}

// batch is the one that is being worked on, a new one where that needs another
// set-up.
func (p *plannedWork) batch(s Setup) *Batch {
	if last := len(p.batches) - 1; last < 0 || p.batches[last].Setup != s {
		p.batches = append(p.batches, Batch{Setup: s})
	}
	return &p.batches[len(p.batches)-1]
}

// make puts what was planned on the job's board, as if it were done.
func (p *plannedWork) make(t Task, n int) {
	at := slices.IndexFunc(p.jobs, func(j jobWork) bool { return j.job == t.Job })
	j := &p.jobs[at]
	j.tallies[j.index[rowKey{t.Key, t.Lot}]].put(n, nil)
	j.can, _ = j.prospect()
}

// take adds counts of a task; those of one row make one task.
func (b *Batch) take(t Task, n int) {
	t.Count, t.Minutes = n, planner.Minutes(n)*t.Unit.Mean
	b.SetupMinutes = max(b.SetupMinutes, t.SetupMinutes())
	at := slices.IndexFunc(b.Tasks, func(have Task) bool { return have.Job == t.Job && have.Key == t.Key && have.Lot == t.Lot })
	if at < 0 {
		b.Tasks = append(b.Tasks, t)
	} else {
		b.Tasks[at].Count += n
		b.Tasks[at].Minutes += t.Minutes
	}
	b.Minutes = b.SetupMinutes
	for _, have := range b.Tasks {
		b.Minutes += have.Minutes
	}
}
