package forecast

// queue is the jobs in the order they are worked off, with the clock running.
type queue struct {
	clock clock
	jobs  []booking
	diary diary
	ends  []moment // what workOff returned last
}

// moment is a point in the future: so many working minutes from now, but not
// before a day.
type moment struct {
	minutes   float64
	notBefore day
}

// dayOf is the day of a moment.
func (q *queue) dayOf(m moment) day {
	if m.notBefore == never {
		return never
	}
	return max(m.notBefore, q.clock.dayAt(m.minutes))
}

// workOff works the first n jobs off at confidence p and gives the moment at
// which each ends. The moments are good until the next call.
func (q *queue) workOff(p float64, n int) []moment {
	z := standardNormal(p)
	worked := 0.0
	q.diary.clear()
	q.ends = q.ends[:0]
	for i := range q.jobs[:n] {
		var end moment
		end, worked = q.workOffJob(&q.jobs[i], z, worked)
		q.ends = append(q.ends, end)
	}
	return q.ends
}

// workOffJob books one job behind those before it, which together took so many
// minutes, and returns the moment it ends and the minutes with it.
func (q *queue) workOffJob(job *booking, z, worked float64) (moment, float64) {
	from, end := 0.0, moment{notBefore: q.clock.today}
	for _, s := range job.stretches {
		through := max(worked, s.through.at(z))
		if s.work && end.notBefore != never {
			end.minutes = q.diary.book(from, through-worked)
		}
		worked = through
		switch left := q.dayOf(end); {
		case s.wait > 0 && left == never:
			end.notBefore = never
		case s.wait > 0:
			end = moment{notBefore: max(left+day(s.wait), s.back)}
			from = q.clock.start(end.notBefore + 1)
		case s.back >= q.clock.today:
			end.notBefore = max(end.notBefore, s.back)
			from = max(from, q.clock.start(s.back+1))
		}
	}
	return end, worked
}
