package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const historyLong = `history tells what happened to JOB, newest last: each entry's number and id,
when and by whom, what was done in how much time, and whether it was taken back.
undo takes the number or a beginning of the id.

It can be narrowed down to an operation, a colourway or another lot, a block and
days. A block's history has the entries that counted at it, named or not.`

const historyExample = `  quiltrun history estuary-lap
  quiltrun history estuary-lap --last 5
  quiltrun history estuary-lap --op sew-pairs --colourway tide
  quiltrun history estuary-lap --block tide-03 --from 2026-11-02`

// historyOptions are what history was asked. Dates are as they were typed.
type historyOptions struct {
	job      string
	from, to string
	last     int // 0: all
	tracker.HistoryRequest
}

// newHistory is the command history.
func newHistory(env *Env) *cobra.Command {
	var opts historyOptions
	cmd := &cobra.Command{
		Use:               "history JOB",
		Short:             "Tell what happened to a job, entry by entry",
		Long:              historyLong,
		Example:           historyExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeJob,
		RunE: env.aboutJob(between(1, 1, "JOB"), nil, func(cmd *cobra.Command, args []string) error {
			opts.job = args[0]
			if err := opts.fill(); err != nil {
				return err
			}
			return runHistory(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.IntVar(&opts.last, "last", 0, "the newest `N` of them")
	flags.StringVar(&opts.Operation, "op", "", "entries of this `OP`, or of a run of them")
	flags.Var(colourwayValue{&opts.Lot}, "colourway", "entries of the colourway `NAME`")
	flags.Var(lotValue{&opts.Lot}, "lot", "entries of this `LOT`, such as Kelp, or fabric:Kelp")
	flags.StringVar(&opts.Block, "block", "", "entries that counted at this `BLOCK`, such as tide-03")
	flags.StringVar(&opts.from, "from", "", "from this `DATE` on")
	flags.StringVar(&opts.to, "to", "", "up to this `DATE`")
	return cmd
}

// fill reads what does not depend on the job.
func (o *historyOptions) fill() (err error) {
	if err := checkJob(o.job); err != nil {
		return err
	}
	if o.last < 0 {
		return wrong("--last %d is no number of entries", o.last)
	}
	if o.from != "" {
		if o.From, err = planner.ParseDate(o.from); err != nil {
			return wrong("--from %v", err)
		}
	}
	if o.to != "" {
		if o.To, err = planner.ParseDate(o.to); err != nil {
			return wrong("--to %v", err)
		}
	}
	if !o.From.IsZero() && !o.To.IsZero() && o.To.Before(o.From) {
		return wrong("--to %s is before --from %s", o.to, o.from)
	}
	return nil
}

// runHistory reads the job's log and tells it; it changes nothing.
func runHistory(ctx context.Context, env *Env, opts historyOptions) error {
	var state tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, opts.job)
		return err
	})
	if err != nil {
		return err
	}
	told, err := state.History(opts.HistoryRequest)
	if err != nil {
		return err
	}
	env.sayDoubts(state)
	if opts.last > 0 {
		told = told[max(0, len(told)-opts.last):]
	}
	if env.given.json {
		return render.HistoryJSON(env.Out, state, told)
	}
	return render.History(env.Out, state, told, env.look())
}
