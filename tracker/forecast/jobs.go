package forecast

import (
	"quiltrun/planner"
	"quiltrun/tracker"
)

// WorkOf is what remains of booked jobs, in the same order. A job whose last
// quilt is handed over was done on that day, even where some earlier row was
// never logged to its end: nobody goes on sewing at what the client has.
func WorkOf(states []tracker.State) []Work {
	jobs := make([]Work, len(states))
	for i, state := range states {
		ledger := state.Ledger
		jobs[i] = Work{Job: ledger.Job, Due: ledger.Due, Received: ledger.Received}
		if at, done := state.FinishedAt(); done {
			jobs[i].Done, jobs[i].DoneOn = true, planner.DateOf(at)
			continue
		}
		jobs[i].Tasks = tasksOf(state)
	}
	return jobs
}

// tasksOf is what remains of a job in route order, with what is away where it
// was sent out.
func tasksOf(state tracker.State) []Task {
	var tasks []Task
	away := state.Away()
	for _, rest := range state.Remaining() {
		for len(away) > 0 && away[0].Number <= rest.Number {
			tasks = append(tasks, awayTask(away[0]))
			away = away[1:]
		}
		tasks = append(tasks, Task{
			Key: rest.Key, Setup: rest.Operation.Setup, Unit: rest.Unit,
			SetupLeft: rest.Setup, Left: rest.Left, Wait: rest.Wait,
		})
	}
	for _, gone := range away {
		tasks = append(tasks, awayTask(gone))
	}
	return tasks
}

// awayTask is a row that is done and waited for, from the date on that the
// maker's clock showed.
func awayTask(gone tracker.Away) Task {
	return Task{Key: gone.Key, Wait: gone.Wait, Back: planner.DateOf(gone.Since).AddDays(gone.Wait)}
}

// WorkedOn is the time that went into all jobs on a date, which that day's hours no
// longer have. What nobody timed, somebody took back or the log doubts takes nothing from them.
// The date is the one that the maker's clock showed, whatever the zone of the
// machine is now.
func WorkedOn(date planner.Date, states []tracker.State) planner.Minutes {
	var worked planner.Minutes
	for _, state := range states {
		worked += state.WorkedOn(date)
	}
	return worked
}
