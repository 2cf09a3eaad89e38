package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
)

const whenLong = `when says on which dates the booked jobs will be done, with 50, 80 and 95 %
confidence, and the chance that each is done by its due date. It spreads the
remaining minutes over the working hours that hours sets, in order of due date.`

const whenExample = `  quiltrun when
  quiltrun when --today 2026-12-01
  quiltrun when --json`

// newWhen is the command when, which takes nothing but the options of all.
func newWhen(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "when",
		Short:             "Say on which dates the booked jobs will be done",
		Long:              whenLong,
		Example:           whenExample,
		Args:              between(0, 0),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE:              func(cmd *cobra.Command, _ []string) error { return runWhen(cmd.Context(), env) },
	}
}

// runWhen folds every booked job and asks the forecast. A store that is not
// there has no jobs and no hours of its own, which is an answer too.
func runWhen(ctx context.Context, env *Env) error {
	opened, err := env.reading(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	states, err := allStates(opened)
	if err != nil {
		return err
	}
	maker, err := opened.MakerEvents()
	if err != nil {
		return err
	}
	today := env.today()
	answers := forecast.When(today, workedOn(today, states), forecast.NewCalendar(maker), workOf(states))
	if env.given.json {
		return render.WhenJSON(env.Out, today, answers)
	}
	return render.When(env.Out, today, answers, env.look())
}

// workedOn is the time logged for a date, which today's hours no longer have.
// Entries that nobody timed take nothing from them. The date is the one that
// the maker's clock showed, whatever the zone of the machine is now.
func workedOn(date planner.Date, states []tracker.State) planner.Minutes {
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

// workOf is what remains of every job, as the forecast takes it. A job whose
// last quilt is handed over is done on that day, even where some earlier row
// was never logged to its end.
func workOf(states []tracker.State) []forecast.Work {
	jobs := make([]forecast.Work, len(states))
	for i, state := range states {
		ledger := state.Ledger
		jobs[i] = forecast.Work{Job: ledger.Job, Due: ledger.Due, Received: ledger.Received}
		if at, done := state.FinishedAt(); done {
			jobs[i].Done, jobs[i].DoneOn = true, planner.DateOf(at)
			continue
		}
		for _, rest := range state.Remaining() {
			jobs[i].Tasks = append(jobs[i].Tasks, forecast.Task{
				Key: rest.Key, Setup: rest.Operation.Setup, Unit: rest.Unit,
				SetupLeft: rest.Setup, Left: rest.Left, Wait: rest.Wait,
			})
		}
	}
	return jobs
}
