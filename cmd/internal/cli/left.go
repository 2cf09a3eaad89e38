package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
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
			// An empty word is a script's unset variable, not a wish for all jobs.
			if args[0] == "" {
				return wrong("the name of the job is empty")
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
	if opts.job == "" {
		return leftOfAll(ctx, env)
	}
	_, state, err := env.bookedState(ctx, opts.job)
	if err != nil {
		return err
	}
	if env.given.json {
		return render.LeftJSON(env.Out, state)
	}
	return render.Left(env.Out, []tracker.State{state}, env.look())
}

// leftOfAll shows every booked job, in order of their ids.
func leftOfAll(ctx context.Context, env *Env) error {
	opened, err := env.reading(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	states, err := allStates(opened)
	if err != nil {
		return err
	}
	if env.given.json {
		return render.LeftAllJSON(env.Out, states)
	}
	return render.Left(env.Out, states, env.look())
}
