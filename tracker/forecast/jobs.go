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
		for _, rest := range state.Remaining() {
			jobs[i].Tasks = append(jobs[i].Tasks, Task{
				Key: rest.Key, Setup: rest.Operation.Setup, Unit: rest.Unit,
				SetupLeft: rest.Setup, Left: rest.Left, Wait: rest.Wait,
			})
		}
	}
	return jobs
}

// WorkedOn is the time logged on a date in all jobs, which that day's hours no
// longer have. What nobody timed or somebody took back takes nothing from them.
// The date is the one that the maker's clock showed, whatever the zone of the
// machine is now.
func WorkedOn(date planner.Date, states []tracker.State) planner.Minutes {
	var worked planner.Minutes
	for _, state := range states {
		for _, entry := range state.Entries {
			if !entry.Standing() || planner.DateOf(entry.At) != date {
				continue
			}
			for _, part := range entry.Parts {
				if part.Minutes != nil {
					worked += *part.Minutes
				}
			}
		}
	}
	return worked
}
