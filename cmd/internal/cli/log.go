package cli

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

const logLong = `log checks work off. JOB is a booked job, OP an operation by its number, its key
or its name on the wall, or a beginning that only one has; or a run of them:
sew-pairs..press-pairs. COUNT is a number in what the operation counts, with or
without its word (12, 12 pairs), or

  N blocks          as many counts as N blocks need
  all               the rest of the lot
  tide=12 dune=8    per colourway, in one entry; time is shared out

Where more than one lot has work left, say which with --colourway or --lot.
Counts go to the lowest blocks with room; --block names others. An entry that is
more than remains, or that a block is not ready for, is refused.`

const logExample = `  # the seam test, twelve minutes with setting up:
  quiltrun log estuary-lap seam-test 1 --took 12m

  # stacks for all blocks of tide, and the cutting before them, not timed:
  quiltrun log estuary-lap kit all --colourway tide --catch-up

  # ten pairs chain-sewn, then those of four blocks pressed:
  quiltrun log estuary-lap sew-pairs 10 --colourway tide --took 35m
  quiltrun log estuary-lap press-pairs 4 blocks --colourway tide --took 20m

  # the test block alone, through several operations:
  quiltrun log estuary-lap sew-units..press-units 1 block --block tide-01

  # two colourways in one entry:
  quiltrun log estuary-lap kit dune=5 wrack=2 --catch-up --reason 'Sunday'`

// longestWork bounds --took. An entry is a sitting or a few, not a year.
const longestWork planner.Minutes = 1000 * 60

// logOptions are what log was asked. What depends on the job, such as which
// operation a beginning means, is left as it was typed.
type logOptions struct {
	job       string // id or a beginning of it
	operation string // number, key, a beginning, or a run of them
	counts    []tracker.CountAsked
	lot       *tracker.Lot     // nil: the one lot with work left
	blocks    []string         // none: the lowest with room
	took      *planner.Minutes // of the whole entry; nil: not timed
	catchUp   bool
	reason    string
	id        string // "": one is made
}

// newLog is the command log. Its COUNT may be missing as far as the command
// line goes: what is left then is for the tracker to say.
func newLog(env *Env) *cobra.Command {
	var opts logOptions
	cmd := &cobra.Command{
		Use:               "log JOB OP COUNT...",
		Short:             "Check work off",
		Long:              logLong,
		Example:           logExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeLog,
		RunE: env.aboutJob(env.logArgs, operationWord, func(cmd *cobra.Command, args []string) error {
			if err := opts.fill(args); err != nil {
				return err
			}
			return runLog(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.Var(tookValue{&opts.took}, "took", "`TIME` of the whole entry with setting up, such as 35m")
	flags.BoolVar(&opts.catchUp, "catch-up", false, "log what comes before it along, without times")
	flags.StringArrayVar(&opts.blocks, "block", nil, "count for this `BLOCK`, such as tide-03; may be repeated")
	flags.Var(lotValue{&opts.lot}, "lot", "count for this `LOT`, such as Kelp, or fabric:Kelp")
	flags.Var(colourwayValue{&opts.lot}, "colourway", "count for the colourway `NAME`")
	flags.StringVar(&opts.reason, "reason", "", "keep a `NOTE` with the entry")
	registerID(flags, &opts.id)
	cmd.SetFlagErrorFunc(minusCount)
	return cmd
}

// logArgs counts the arguments. Who leaves the operation out is told which can
// go on.
func (e *Env) logArgs(cmd *cobra.Command, args []string) error {
	err := between(2, -1, "JOB", "OP", "COUNT")(cmd, args)
	var f *fault
	if len(args) != 1 || args[0] == "" || isFile(args[0]) || !errors.As(err, &f) {
		return err
	}
	next := e.canGoOn(cmd.Context(), args[0])
	if len(next) == 0 {
		return err
	}
	f = wrong("log needs OP: what was done in %s? These can go on", args[0])
	for _, operation := range next {
		f.hint("%s", operation)
	}
	return f.hint("usage: %s", usedLine(cmd))
}

// canGoOn is the next operations of a job that can go on, none where that cannot
// be had at once: the call is wrong in any case.
func (e *Env) canGoOn(ctx context.Context, job string) []string {
	const most = 5
	var next []string
	for _, row := range e.glanceJob(ctx, []string{job}).Next(most) {
		next = append(next, fmt.Sprintf("%s: %s left", rowName(row.Operation), english.Count(row.Left(), string(row.CountedIn))))
	}
	return next
}

// fill reads the arguments. What is wrong with them is wrong on any store.
func (o *logOptions) fill(args []string) (err error) {
	if err := checkJob(args[0]); err != nil {
		return err
	}
	if err := plainUTF8("--reason", o.reason, "leave --reason out"); err != nil {
		return err
	}
	o.job, o.operation = args[0], args[1]
	if len(args) > 2 {
		o.counts, err = tracker.ParseCounts(args[2:])
	}
	return asWrong(err)
}

// plainUTF8 refuses a text that the log, which is kept as UTF-8, would store as
// something else: the same entry sent again would pass for another one.
func plainUTF8(what, text, instead string) error {
	if utf8.ValidString(text) {
		return nil
	}
	return wrong("%s %q is not UTF-8 text", what, text).hint("write it anew, or %s", instead)
}

// asWrong makes an error one of the command line alone.
func asWrong(err error) error {
	if err == nil {
		return nil
	}
	f := hinted(err)
	f.status = exitWrong
	return f
}

// minusCount reads an option that begins with a digit as what it is meant for:
// a count below zero, which is refused as such.
func minusCount(cmd *cobra.Command, err error) error {
	var unknown *pflag.NotExistError
	if errors.As(err, &unknown) {
		if letters := unknown.GetSpecifiedShortnames(); strings.IndexAny(letters, ".0123456789") == 0 {
			_, err := tracker.ParseCounts([]string{"-" + letters})
			return asWrong(err)
		}
	}
	return flagFault(cmd, err)
}

// runLog has the tracker decide, appends its event and shows where the work
// stands then. The answer comes after the entry is on disk, never before.
func runLog(ctx context.Context, env *Env, opts logOptions) error {
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) {
		return state.Log(tracker.LogRequest{
			Operation: opts.operation, Counts: opts.counts, Lot: opts.lot, Blocks: opts.blocks,
			Took: opts.took, CatchUp: opts.catchUp, Reason: opts.reason,
			ID: id, At: env.Now(), By: env.User,
		})
	})
	if err != nil {
		return err
	}
	if env.given.json {
		return render.LoggedJSON(env.Out, made.after, made.event, made.repeated)
	}
	env.sayDoubts(made.after)
	return render.Logged(env.Out, made.after, made.event, made.repeated, env.look())
}
