package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
	"quiltrun/tracker/store"
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
	var states []tracker.State
	var maker []tracker.Event
	err := env.read(ctx, func(opened *store.Store) (err error) {
		if states, err = allStates(opened); err != nil {
			return err
		}
		maker, err = opened.MakerEvents()
		return err
	})
	if err != nil {
		return err
	}
	env.sayDoubts(states...)
	today := env.today()
	answers := forecast.When(today, forecast.WorkedOn(today, states), forecast.NewCalendar(maker), forecast.WorkOf(states))
	if env.given.json {
		return render.WhenJSON(env.Out, today, answers)
	}
	return render.When(env.Out, today, answers, env.look())
}
