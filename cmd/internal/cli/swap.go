package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
)

const swapLong = `swap records that two blocks of JOB have changed places on the floor, so that
maps, drawings and row labels go on showing where everything lies. The turn of a
place stays with the place; how a block is pressed stays with the block. Where
seams that were planned to nest clash then, swap says at which joins, and which
blocks to press by another card.

A swap stands through a revision of the job, and undo takes it back.`

const swapExample = `  quiltrun swap estuary-lap tide-03 dune-04

  # back again:
  quiltrun undo estuary-lap`

// swapOptions are what swap was asked: two block ids as typed.
type swapOptions struct{ job, one, other, id string }

// newSwap is the command swap.
func newSwap(env *Env) *cobra.Command {
	var opts swapOptions
	cmd := &cobra.Command{
		Use:               "swap JOB BLOCK BLOCK",
		Short:             "Note that two blocks changed places",
		Long:              swapLong,
		Example:           swapExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeSwap,
		RunE: env.aboutJob(between(3, 3, "JOB", "BLOCK", "BLOCK"), wordsOf("the block", blockIDs), func(cmd *cobra.Command, args []string) error {
			opts.job, opts.one, opts.other = args[0], args[1], args[2]
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runSwap(cmd.Context(), env, opts)
		}),
	}
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// completeSwap offers a job, then its blocks.
func (e *Env) completeSwap(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	state, words := e.glanceWords(cmd.Context(), args)
	blocks := fitting(blockIDs(state.Ledger), typed)
	switch {
	case len(args) == 0:
		jobs, _ := e.completeJob(cmd, args, typed)
		return append(jobs, blocks...), noFiles
	case words < 2:
		return blocks, noFiles
	}
	return nil, noFiles
}

// runSwap appends the event of an exchange and shows the rows that it touches.
func runSwap(ctx context.Context, env *Env, opts swapOptions) error {
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) {
		return state.Swap(opts.one, opts.other, id, env.Now(), env.User)
	})
	if err != nil {
		return err
	}
	swapped, err := swappedRows(made)
	if err != nil {
		return err
	}
	env.sayDoubts(made.after)
	if env.given.json {
		return render.SwappedJSON(env.Out, swapped)
	}
	return render.Swapped(env.Out, swapped, env.look())
}

// swappedRows is what an exchange comes to at its time, whatever was exchanged since.
// A stored file, booked long ago, that cannot be planned any more leaves the seams out.
func swappedRows(made entry) (render.SwappedBlocks, error) {
	before, err := made.after.Before(made.event.ID)
	if err != nil {
		return render.SwappedBlocks{}, err
	}
	stored := made.event
	if stored.Seq == 0 { // as the store has numbered it
		stored, _ = made.after.Repeated(made.event.ID)
	}
	after, err := before.With(stored)
	if err != nil {
		return render.SwappedBlocks{}, err
	}
	s := render.SwappedBlocks{Event: stored, Repeated: made.repeated, After: after}
	was, err := bookedPlan(before)
	if err != nil {
		return s, nil
	}
	if is, err := bookedPlan(after); err == nil {
		effect := planner.Swapped(was, is, stored.Amendment.Swap.A, stored.Amendment.Swap.B)
		s.Plan, s.Effect = &is, &effect
	}
	return s, nil
}
