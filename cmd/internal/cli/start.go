package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

const startLong = `start begins work at an operation of JOB: from then on a clock runs for you
until stop, or until you start something else of the job. Nobody sits at two
machines: while your clock runs in another job, start is refused, or stops that
one at this moment with --stop-others. What is logged
meanwhile counts as done in that time, and of its lot where none is named; an
entry with --took keeps its own time, and the clock does not count it again.

A clock that runs for hours with nothing logged is not believed: the next
command of the job asks, and what it shows is not counted until you have said
how long it was (see quiltrun time).`

const startExample = `  quiltrun start estuary-lap sew-pairs --colourway tide
  quiltrun log estuary-lap sew-pairs 10 --colourway tide
  quiltrun stop`

// startOptions are what start was asked.
type startOptions struct {
	job, operation string
	lot            *tracker.Lot
	stopOthers     bool
	reason, id     string
}

// newStart is the command start.
func newStart(env *Env) *cobra.Command {
	var opts startOptions
	cmd := &cobra.Command{
		Use:               "start JOB OP",
		Short:             "Begin work: a clock runs until stop",
		Long:              startLong,
		Example:           startExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeOperation,
		RunE: env.aboutJob(between(2, 2, "JOB", "OP"), operationWord, func(cmd *cobra.Command, args []string) error {
			opts.job, opts.operation = args[0], args[1]
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runStart(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.Var(lotValue{&opts.lot}, "lot", "work at this `LOT`, such as Kelp, or fabric:Kelp")
	flags.Var(colourwayValue{&opts.lot}, "colourway", "work at the colourway `NAME`")
	flags.BoolVar(&opts.stopOthers, "stop-others", false, "stop your clocks in other jobs at this moment")
	flags.StringVar(&opts.reason, "reason", "", "keep a `NOTE` with the entry")
	registerID(flags, &opts.id)
	return cmd
}

// runStart appends the event and says what runs now.
func runStart(ctx context.Context, env *Env, opts startOptions) error {
	if err := plainUTF8("--reason", opts.reason, "leave --reason out"); err != nil {
		return err
	}
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	opened, err := env.writing(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	job, err := bookedID(opened, opts.job)
	if err != nil {
		return err
	}
	now := env.Now()
	made, stopped, err := env.startAlone(opened, job, tracker.StartRequest{
		Operation: opts.operation, Lot: opts.lot, Reason: opts.reason, ID: id, At: now, By: env.User,
	}, opts.stopOthers)
	if err != nil {
		return err
	}
	if len(stopped) > 0 {
		env.say("quiltrun: your clock in " + strings.Join(stopped, ", ") + " is stopped")
	}
	if env.given.json {
		return render.ClockedJSON(env.Out, made.after, made.event, sittingAt(made.after, now, made.event.ID), now, made.repeated)
	}
	env.sayDoubts(made.after)
	return render.Started(env.Out, asItWas(made.after, made.event.ID), made.after, made.event, made.repeated, env.look())
}

// completeOperation offers jobs, then operations.
func (e *Env) completeOperation(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if len(args) > 1 {
		return nil, noFiles
	}
	return e.completeLog(cmd, args, typed)
}
