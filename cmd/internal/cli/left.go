package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const leftLong = `left says what remains of JOB: the next thing to do, then operation by operation
what is made and left, colourways side by side. --blocks says of every block
which operation it waits for and where it lies in the top.

Without JOB it is the job in use, where there is one, or else every booked job;
--all is every job in any case, and so is --json without JOB.`

const leftExample = `  quiltrun left estuary-lap
  quiltrun left estuary-lap --blocks
  quiltrun left --all
  quiltrun left estuary-lap --json`

// leftOptions are what left was asked: one job by its id or a beginning of it,
// or "" for the one in use or all.
type leftOptions struct {
	job         string
	blocks, all bool
}

// newLeft is the command left.
func newLeft(env *Env) *cobra.Command {
	var opts leftOptions
	cmd := &cobra.Command{
		Use:               "left [JOB]",
		Short:             "Say what remains, per colourway and operation",
		Long:              leftLong,
		Example:           leftExample,
		Args:              between(0, 1, "JOB"),
		ValidArgsFunction: env.completeJob,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				opts.job = args[0]
			}
			if opts.job != "" && opts.all {
				return wrong("left takes a JOB or --all, not both")
			}
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runLeft(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().BoolVar(&opts.blocks, "blocks", false, "say of every block which operation it waits for")
	cmd.Flags().BoolVar(&opts.all, "all", false, "every booked job, whichever is in use")
	return cmd
}

// runLeft reads progress and shows it; it changes nothing.
func runLeft(ctx context.Context, env *Env, opts leftOptions) error {
	var states []tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		states, err = opts.states(opened, env.given.json)
		return err
	})
	if err != nil {
		return err
	}
	env.sayDoubts(states...)
	return opts.show(env, states)
}

// states are the jobs that are asked for. Scripts that name no job get them all,
// whatever the maker has in use.
func (o leftOptions) states(opened *store.Store, script bool) ([]tracker.State, error) {
	job := o.job
	if job == "" && !o.all && !script {
		used, err := inUse(opened)
		if err != nil {
			return nil, err
		}
		job = used
	}
	return askedStates(opened, job)
}

// askedStates is one booked job, or all for "".
func askedStates(opened *store.Store, job string) ([]tracker.State, error) {
	if job == "" {
		return allStates(opened)
	}
	state, err := bookedState(opened, job)
	return []tracker.State{state}, err
}

// show writes the answer in the form that was asked for.
func (o leftOptions) show(env *Env, states []tracker.State) error {
	one := o.job != ""
	switch {
	case env.given.json && o.blocks && one:
		return render.LeftBlocksJSON(env.Out, states[0])
	case env.given.json && o.blocks:
		return render.LeftBlocksAllJSON(env.Out, states)
	case env.given.json && one:
		return render.LeftJSON(env.Out, states[0], env.Now())
	case env.given.json:
		return render.LeftAllJSON(env.Out, states, env.Now())
	case o.blocks:
		return render.LeftBlocks(env.Out, states, env.look())
	}
	return render.Left(env.Out, states, env.today(), env.look())
}
