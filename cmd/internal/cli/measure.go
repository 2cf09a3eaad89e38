package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const measureLong = `measure takes what a sewn piece measures, raw edge to raw edge, and says what it
should be, what seam that tells of, over how many seams, how far off a block and
the made quilt would be, and what to do, in what order.

STEP is a step of the block's recipe or an operation, by its number, its key or
a beginning that only one has: what was sewn last. three-strips is the standard
first piece, seam-test in the route. SIZE is a width, or W x H; of several
pieces, such as 30 of 6 1/2, 2 of 6 1/4. Blocks that came out too small get
both ways out, trimming all or making some again, with what each costs.

With a JOB the measure is kept, for each person and machine, and a seam that
drifts is said before the chain is through. With a FILE nothing is stored. JOB
alone lists what was measured. --replan plans the job with the measured seam:
cut sizes stay, finished sizes follow.`

const measureExample = `  # the three strips of the seam test, a little narrow:
  quiltrun measure estuary-lap three-strips 3 7/16 --machine window

  # a four-patch before it is recut; nothing is stored for a file:
  quiltrun measure examples/estuary-lap.yaml units 13 3/8 x 13 3/8

  # two blocks came out small:
  quiltrun measure estuary-lap square-up 12 1/4 --block tide-01 --block dune-02

  # plan with the seam as it is sewn:
  quiltrun measure estuary-lap three-strips 3 7/16 --replan

  # what was measured so far:
  quiltrun measure estuary-lap`

// measureOptions are what measure was asked. Sizes and tolerance are text until
// the job's units are known.
type measureOptions struct {
	of, step, sizes string
	tolerance       string // "": the usual one
	machine         string
	moved           bool
	blocks          []string
	lot             *tracker.Lot // a colourway
	replan          bool
	reason, id      string
}

// newMeasure is the command measure. A size of several words needs no quotes.
func newMeasure(env *Env) *cobra.Command {
	var opts measureOptions
	cmd := &cobra.Command{
		Use:               "measure JOB|FILE [STEP SIZE...]",
		Short:             "Say what a measured piece tells of seam, block and quilt",
		Long:              measureLong,
		Example:           measureExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeMeasure,
		RunE: env.aboutJob(measureArgs, pieceWord, func(cmd *cobra.Command, args []string) error {
			if opts.of = args[0]; len(args) == 1 {
				return runMeasured(cmd.Context(), env, opts)
			}
			opts.step, opts.sizes = args[1], strings.Join(args[2:], " ")
			return runMeasure(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.StringVar(&opts.machine, "machine", "", "`NAME` of the machine; without it, as you measured last")
	flags.BoolVar(&opts.moved, "moved", false, "needle or guide were moved: the trend begins anew")
	flags.StringVar(&opts.tolerance, "tolerance", "", "`LENGTH` that a block may be off: 1/8 in or 0.3 cm")
	flags.StringArrayVar(&opts.blocks, "block", nil, "`BLOCK` that was measured, tide-03; may be repeated")
	flags.Var(colourwayValue{&opts.lot}, "colourway", "the colourway `NAME` whose piece it is")
	flags.BoolVar(&opts.replan, "replan", false, "plan the job anew with the measured seam")
	flags.StringVar(&opts.reason, "reason", "", "keep a `NOTE` with the entry")
	registerID(flags, &opts.id)
	return cmd
}

// measureArgs counts the arguments: one, or three and more.
func measureArgs(cmd *cobra.Command, args []string) error {
	least := 3
	if len(args) < 2 {
		least = 1
	}
	if err := between(least, -1, "JOB", "STEP", "SIZE")(cmd, args); err != nil {
		return err
	}
	if len(args) == 1 && isFile(args[0]) {
		return asUsed(cmd, wrong("measure needs STEP and SIZE for a file: nothing is stored of it"))
	}
	if len(args) < 2 {
		return nil
	}
	return checkSizes(strings.Join(args[2:], " "))
}

// pieceWord is what may be measured of the job in use: a piece, or an operation.
func pieceWord(s tracker.State, args []string) string {
	if plan, err := bookedPlan(s); err == nil {
		if near := beginning(planner.Measurable(plan), args[0]); len(near) > 0 {
			return "the piece " + near[0]
		}
	}
	return operationWord(s, args)
}

// completeMeasure offers jobs, then what can be measured of one.
func (e *Env) completeMeasure(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	switch {
	case len(args) == 0:
		return e.completeFileOrJob(cmd, args, typed)
	case len(args) > 1:
		return nil, noFiles
	}
	var plan planner.Plan
	var err error
	if isFile(args[0]) {
		plan, err = e.planOf(cmd.Context(), args[0])
	} else if state := e.glanceJob(cmd.Context(), args); state.Booked() {
		plan, err = bookedPlan(state)
	}
	if err != nil || len(plan.Colourways) == 0 {
		return nil, noFiles
	}
	return fitting(planner.Measurable(plan), typed), noFiles
}

// runMeasure works out what a measure says, and keeps it where it is a booked
// job's.
func runMeasure(ctx context.Context, env *Env, opts measureOptions) error {
	if isFile(opts.of) {
		return measureFile(ctx, env, opts)
	}
	event, err := env.newEvent(tracker.Measured, opts.id)
	if err != nil {
		return err
	}
	m := &measuring{opts: opts, event: event}
	made, err := env.appendEntry(ctx, opts.of, m.decide)
	if err != nil {
		return err
	}
	r := m.report(made)
	env.sayDoubts(made.after)
	if env.given.json {
		return render.MeasuredJSON(env.Out, r)
	}
	return render.Measured(env.Out, r, env.look())
}

// measureFile answers for a job file, of which nothing is kept.
func measureFile(ctx context.Context, env *Env, opts measureOptions) error {
	if opts.replan {
		return wrong("--replan plans a booked job anew, and %s is a file", opts.of).hint("book it first: quiltrun book %s", opts.of)
	}
	plan, err := env.planOf(ctx, opts.of)
	if err != nil {
		return err
	}
	ledger := tracker.Freeze(plan)
	state, err := tracker.Fold([]tracker.Event{{Schema: tracker.EventSchema, ID: "file", Seq: 1, Kind: tracker.Booked, Ledger: &ledger}})
	if err != nil {
		return err
	}
	m := &measuring{opts: opts, plan: plan}
	if _, err := m.look(state); err != nil {
		return err
	}
	if env.given.json {
		return render.MeasuredJSON(env.Out, m.answer)
	}
	return render.Measured(env.Out, m.answer, env.look())
}

// runMeasured lists what was measured of a job.
func runMeasured(ctx context.Context, env *Env, opts measureOptions) error {
	if err := checkJob(opts.of); err != nil {
		return err
	}
	var state tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, opts.of)
		return err
	})
	if err != nil {
		return err
	}
	env.sayDoubts(state)
	if env.given.json {
		return render.MeasurementsJSON(env.Out, state)
	}
	return render.Measurements(env.Out, state, env.look())
}
