package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const leftLong = `left says what remains of JOB per colourway and operation: what is done, what
is left, and the minutes it will take. Without JOB it says so for every booked
job.`

const leftExample = `  quiltrun left estuary-lap
  quiltrun left
  quiltrun left estuary-lap --json`

// leftOptions are what left was asked: one job by its id or a beginning of it,
// or "" for all.
type leftOptions struct{ job string }

// newLeft is the command left.
func newLeft(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "left [JOB]",
		Short:             "Say what remains, per colourway and operation",
		Long:              leftLong,
		Example:           leftExample,
		Args:              between(0, 1, "JOB"),
		ValidArgsFunction: env.completeJob,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return runLeft(cmd.Context(), env, leftOptions{})
			}
			if err := checkJob(args[0]); err != nil {
				return err
			}
			return runLeft(cmd.Context(), env, leftOptions{job: args[0]})
		},
	}
}

// runLeft reads progress and shows it; it changes nothing.
func runLeft(ctx context.Context, env *Env, opts leftOptions) error {
	var states []tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		if opts.job == "" {
			states, err = allStates(opened)
			return err
		}
		state, err := bookedState(opened, opts.job)
		states = []tracker.State{state}
		return err
	})
	switch {
	case err != nil:
		return err
	case env.given.json && opts.job == "":
		return render.LeftAllJSON(env.Out, states)
	case env.given.json:
		return render.LeftJSON(env.Out, states[0])
	}
	return render.Left(env.Out, states, env.look())
}
