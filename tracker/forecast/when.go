package forecast

import (
	"fmt"
	"math"
	"slices"

	"quiltrun/planner"
)

// levels are the confidences of the dates that are shown.
var levels = [3]float64{0.50, 0.80, 0.95}

// Answer is when one job will be done. A date that is zero does not exist, and
// Reason says why; otherwise Reason is empty.
type Answer struct {
	Job           string
	Due           planner.Date
	P50, P80, P95 planner.Date
	Chance        *float64 // of being on time, 0 to 1, within 0.00001; nil without a due date
	Minutes       Quantiles
	Reason        string
}

// Quantiles are a job's own remaining minutes at the confidences of the dates.
type Quantiles struct {
	P50, P80, P95 planner.Minutes
}

// When answers for every job, in the order in which they are worked off, from
// today on, of whose hours workedToday are gone. A job that is done repeats its
// real date. A job with nothing left that nobody handed over has today's.
func When(today planner.Date, workedToday planner.Minutes, cal Calendar, jobs []Work) []Answer {
	return when(makerSpread(), today, workedToday, cal, jobs)
}

// makerSpread is the spread of a maker's pace about the table's: a factor of
// three from the 5 to the 95 % quantile.
func makerSpread() float64 {
	return math.Log(3) / (2 * standardNormal(0.95))
}

// when is When for makers who differ by another spread; with 0 here and in
// every span the times are exact.
func when(maker float64, today planner.Date, workedToday planner.Minutes, cal Calendar, jobs []Work) []Answer {
	q := queue{clock: cal.clock(today, workedToday), jobs: bookings(maker, jobs)}
	var ends [3][]moment
	for l, p := range levels {
		ends[l] = slices.Clone(q.workOff(p, len(q.jobs)))
	}
	answers := make([]Answer, 0, len(q.jobs))
	for i := range q.jobs {
		var days [3]day
		for l := range levels {
			days[l] = q.dayOf(ends[l][i])
		}
		answers = append(answers, q.answer(i, days))
	}
	return answers
}

// answer words what the days at the three levels say of job i.
func (q *queue) answer(i int, ends [3]day) Answer {
	job := q.jobs[i]
	if job.Done {
		return job.realDate()
	}
	// In the gap that a waiting job leaves, a higher level can end sooner: the
	// other quilt comes back later there. The later day stands.
	ends[1] = max(ends[0], ends[1])
	ends[2] = max(ends[1], ends[2])
	a := Answer{Job: job.Job, Due: job.Due, Minutes: quantiles(job.own), Reason: q.reason(ends)}
	a.P50, a.P80, a.P95 = ends[0].date(), ends[1].date(), ends[2].date()
	if !job.Due.IsZero() {
		chance := q.chance(i, ends)
		a.Chance = &chance
	}
	return a
}

// realDate is the answer for a job that is done.
func (w Work) realDate() Answer {
	a := Answer{Job: w.Job, Due: w.Due, P50: w.DoneOn, P80: w.DoneOn, P95: w.DoneOn}
	if !w.Due.IsZero() {
		chance := 0.0
		if earlier(w.DoneOn, w.Due) <= 0 {
			chance = 1
		}
		a.Chance = &chance
	}
	return a
}

// quantiles are a distribution's minutes at the three levels.
func quantiles(d lognormal) Quantiles {
	at := func(p float64) planner.Minutes { return planner.Minutes(d.at(standardNormal(p))) }
	return Quantiles{P50: at(levels[0]), P80: at(levels[1]), P95: at(levels[2])}
}

// reason says why a date is missing; nothing where none is.
func (q *queue) reason(ends [3]day) string {
	const tooFew = "the working hours set for the next 50 years do not suffice"
	switch {
	case ends[2] != never:
		return ""
	case q.clock.start(q.clock.today+horizon) <= slack:
		return "never: no working hours are set"
	case ends[0] == never:
		return "never: " + tooFew
	case ends[1] == never:
		return fmt.Sprintf("no date above %.0f %%: %s", 100*levels[0], tooFew)
	default:
		return fmt.Sprintf("no date above %.0f %%: %s", 100*levels[1], tooFew)
	}
}
