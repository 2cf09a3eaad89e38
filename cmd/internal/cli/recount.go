package cli

import (
	"context"
	"io"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

const recountLong = `recount sets an operation to what lies on the table, whatever was logged. COUNT
is all that there is: a number, N blocks, all or 0; or per colourway: tide=77.
With --block it is what that block has.

Where that is less than the log says, the missing counts are left again, and so
is what follows them as far as it cannot have been done. If they turn up,
recount once more: what was counted before stays in the log.`

const recountExample = `  # 5 units are logged and 4 lie there:
  quiltrun recount estuary-lap sew-units 4 --colourway tide

  # one of the two pairs of a block is gone:
  quiltrun recount estuary-lap sew-pairs 1 --block tide-03`

const ripLong = `rip puts work that was taken apart again back to what is left. COUNT is how many
were ripped: a number, N blocks or all; the last ones, or those of --block.

What was sewn from them is left again too; what came before stays made. The time
that it took to sew them stays spent. --took is the time of ripping: it is kept
apart, and is no part of the pace of sewing.`

const ripExample = `  # two rows of eight that were joined the wrong way, and to each other:
  quiltrun rip estuary-lap sew-top-rows 15 --took 40m

  quiltrun rip estuary-lap sew-units 1 --block tide-03 --reason 'upside down'`

// lowerOptions are what recount, rip or scrap was asked.
type lowerOptions struct {
	job, operation string
	counts         []tracker.CountAsked
	lot            *tracker.Lot
	block          string
	reason, id     string
}

// register adds the options that all have.
func (o *lowerOptions) register(cmd *cobra.Command, block string) {
	flags := cmd.Flags()
	flags.StringVar(&o.block, "block", "", block+" `BLOCK`, such as tide-03")
	flags.Var(lotValue{&o.lot}, "lot", "count for this `LOT`, such as Kelp, or fabric:Kelp")
	flags.Var(colourwayValue{&o.lot}, "colourway", "count for the colourway `NAME`")
	flags.StringVar(&o.reason, "reason", "", "keep a `NOTE` with the entry")
	registerID(flags, &o.id)
	cmd.SetFlagErrorFunc(minusCount)
}

// fill reads the arguments.
func (o *lowerOptions) fill(args []string, parse func([]string) ([]tracker.CountAsked, error)) (err error) {
	if err := checkJob(args[0]); err != nil {
		return err
	}
	if err := plainUTF8("--reason", o.reason, "leave --reason out"); err != nil {
		return err
	}
	o.job, o.operation = args[0], args[1]
	if o.counts, err = parse(args[2:]); err == nil && o.block != "" && len(o.counts) > 1 {
		return wrong("--block takes one count, and got %d", len(o.counts))
	}
	return asWrong(err)
}

// newRecount is the command recount.
func newRecount(env *Env) *cobra.Command {
	var opts lowerOptions
	cmd := &cobra.Command{
		Use:               "recount JOB OP COUNT...",
		Short:             "Set the log to what lies on the table",
		Long:              recountLong,
		Example:           recountExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeLog,
		RunE: env.aboutJob(between(2, -1, "JOB", "OP", "COUNT"), operationWord, func(cmd *cobra.Command, args []string) error {
			if err := opts.fill(args, tracker.ParseFound); err != nil {
				return err
			}
			return runLower(cmd.Context(), env, opts, render.Recounted, func(state tracker.State, id string) (tracker.Event, error) {
				return state.Recount(tracker.RecountRequest{
					Operation: opts.operation, Counts: opts.counts, Lot: opts.lot, Block: opts.block, Reason: opts.reason,
					ID: id, At: env.Now(), By: env.User,
				})
			})
		}),
	}
	opts.register(cmd, "what is there of this")
	return cmd
}

// newRip is the command rip.
func newRip(env *Env) *cobra.Command {
	var opts lowerOptions
	var request tracker.RipRequest
	cmd := &cobra.Command{
		Use:               "rip JOB OP COUNT...",
		Short:             "Put back work that was taken apart again",
		Long:              ripLong,
		Example:           ripExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeLog,
		RunE: env.aboutJob(between(2, -1, "JOB", "OP", "COUNT"), operationWord, func(cmd *cobra.Command, args []string) error {
			if err := opts.fill(args, tracker.ParseCounts); err != nil {
				return err
			}
			return runLower(cmd.Context(), env, opts, render.Ripped, func(state tracker.State, id string) (tracker.Event, error) {
				r := request
				r.Operation, r.Counts, r.Lot, r.Block, r.Reason = opts.operation, opts.counts, opts.lot, opts.block, opts.reason
				r.ID, r.At, r.By = id, env.Now(), env.User
				return state.Rip(r)
			})
		}),
	}
	opts.register(cmd, "the ripped counts are of this")
	cmd.Flags().Var(tookValue{&request.Took}, "took", "`TIME` of ripping, such as 40m")
	return cmd
}

// lowered shows an entry that took counts off.
type lowered = func(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool, look render.Look) error

// runLower appends the event and shows what is left again by it.
func runLower(ctx context.Context, env *Env, opts lowerOptions, show lowered, decide func(tracker.State, string) (tracker.Event, error)) error {
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) { return decide(state, id) })
	if err != nil {
		return err
	}
	before, err := made.after.Before(made.event.ID)
	switch {
	case err != nil:
		return err
	case env.given.json:
		return render.LoweredJSON(env.Out, before, made.after, made.event, made.repeated)
	}
	env.sayDoubts(made.after)
	return show(env.Out, before, made.after, made.event, made.repeated, env.look())
}
