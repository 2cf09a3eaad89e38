package forecast

// step is how near the chance is brought to its true value.
const step = 1e-5

// sure is the confidence from which on nothing is told apart from certainty.
const sure = 1 - 1e-9

// chance is the greatest confidence at which job i ends by its due date. Given
// the days at the three levels, it lies between the last level that is on time
// and the first that is late.
func (q *queue) chance(i int, ends [3]day) float64 {
	due := dayOf(q.jobs[i].Due)
	early, late := 0.0, 1.0
	for l, p := range levels {
		if ends[l] > due {
			late = p
			break
		}
		early = p
	}
	onTime := func(p float64) bool { return q.dayOf(q.workOff(p, i+1)[i]) <= due }
	if late == 1 && onTime(sure) {
		return 1
	}
	for late-early > step {
		middle := (early + late) / 2
		if onTime(middle) {
			early = middle
		} else {
			late = middle
		}
	}
	return early
}
