package cli

import (
	"context"
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const compareLong = `compare shows what other values in a job file would change: size, blocks, cloth,
hours, backing, batting, binding and thread, side by side with the job as it is.
Nothing is changed or stored.

KEY is a value's path in the job file, shortened where that is plain: across,
down, square, offset, quantity, seam, tide.offset, borders.1.width. Several
changes go together; several values of one, 5 or 6 or 7, stand side by side.
Where another number of blocks fits the layout, the colourways keep their
proportions: each gets the whole number of its share, then the largest
remainders one more each, the first in the file before others.

Of a booked job it also says what would be left, with all that is logged.`

const compareExample = `  # one more column and one more row:
  quiltrun compare examples/estuary-lap.yaml across=5 down=6

  # three sizes of square, side by side:
  quiltrun compare estuary-lap square=6 or 6 1/2 or 7 1/2

  # another offset in one colourway, a wider outer border:
  quiltrun compare estuary-lap tide.offset=1 1/8 borders.2.width=4`

// mostCompared bounds how many alternatives stand side by side.
const mostCompared = 6

// compareOptions are what compare was asked: a job and the values of each key.
type compareOptions struct {
	of     string
	values []keyValues
}

// keyValues is a key and the values that it is to have, one after another.
type keyValues struct {
	key   string
	texts string // as typed: parted once the job's units are known
}

// newCompare is the command compare. A value of several words needs no quotes.
func newCompare(env *Env) *cobra.Command {
	own := func(_ tracker.State, args []string) string {
		if strings.Contains(args[0], "=") {
			return "a change"
		}
		return ""
	}
	return &cobra.Command{
		Use:               "compare JOB|FILE KEY=VALUE...",
		Short:             "Show what another size or value would change",
		Long:              compareLong,
		Example:           compareExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeCompare,
		RunE: env.aboutJob(between(2, -1, "JOB", "KEY=VALUE"), own, func(cmd *cobra.Command, args []string) error {
			opts := compareOptions{of: args[0]}
			if err := opts.fill(args[1:]); err != nil {
				return err
			}
			return runCompare(cmd.Context(), env, opts)
		}),
	}
}

// completeCompare offers jobs, then the keys that are changed most.
func (e *Env) completeCompare(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if len(args) == 0 {
		return e.completeFileOrJob(cmd, args, typed)
	}
	keys := []string{"across=", "down=", "square=", "offset=", "quantity=", "seam=", "borders.1.width="}
	if !isFile(args[0]) {
		for _, name := range e.glanceJob(cmd.Context(), args[:1]).Ledger.Colourways {
			keys = append(keys, name+".blocks=", name+".offset=")
		}
	}
	return fitting(keys, typed), noFiles | cobra.ShellCompDirectiveNoSpace
}

// fill reads the changes: a word without = goes on with the value before it.
func (o *compareOptions) fill(words []string) error {
	for _, word := range words {
		key, value, isChange := strings.Cut(word, "=")
		switch {
		case isChange && (key == "" || strings.TrimSpace(value) == ""):
			return wrong("%q is no change", word).hint("write KEY=VALUE, such as across=5")
		case isChange:
			o.values = append(o.values, keyValues{key, value})
		case len(o.values) == 0:
			return wrong("%q is no change", word).hint("write KEY=VALUE, such as across=5")
		default:
			o.values[len(o.values)-1].texts += " " + word
		}
	}
	return nil
}

// alternatives is every set of changes: each key with each of its values.
func (o compareOptions) alternatives(u measure.Unit) ([][]planner.Change, error) {
	all := [][]planner.Change{nil}
	for _, kv := range o.values {
		var more [][]planner.Change
		for _, before := range all {
			for _, text := range parted(kv.texts, u) {
				more = append(more, append(slices.Clone(before), planner.Change{Key: kv.key, Value: text}))
			}
		}
		if all = more; len(all) > mostCompared {
			return nil, wrong("that makes %d alternatives, and %d stand side by side", len(all), mostCompared).hint("compare fewer values at a time")
		}
	}
	return all, nil
}

// parted is the values of one key: parted by "or", or by commas. In centimetres
// a comma between digits is a decimal one, and only a comma with a blank parts.
func parted(text string, u measure.Unit) []string {
	if strings.HasPrefix(text, "[") || strings.HasPrefix(text, "{") {
		return []string{text}
	}
	comma := ","
	if u == measure.Centimetres {
		comma = ", "
	}
	var values []string
	for part := range strings.SplitSeq(strings.ReplaceAll(text, comma, " or "), " or ") {
		if part = strings.TrimSpace(part); part != "" {
			values = append(values, part)
		}
	}
	return values
}

// runCompare plans the job as it is and with each set of changes.
func runCompare(ctx context.Context, env *Env, opts compareOptions) error {
	c, err := env.compared(ctx, opts.of)
	if err != nil {
		return err
	}
	alternatives, err := opts.alternatives(c.base.Job.Units)
	if err != nil {
		return err
	}
	shown := render.Comparison{Base: render.Compared{Plan: c.base, Left: c.left}}
	for _, changes := range alternatives {
		other, err := c.with(changes)
		if err != nil && len(alternatives) == 1 {
			return err
		}
		other.Problem = err
		shown.Others = append(shown.Others, other)
	}
	if env.given.json {
		return render.ComparedJSON(env.Out, shown)
	}
	return render.ShowComparison(env.Out, shown, env.look())
}

// comparing is a job that is compared with itself.
type comparing struct {
	file  jobFile
	base  planner.Plan
	prior planner.Prior
	left  *tracker.State // nil for a job file
}

// compared reads the job to compare: a file, or a booked job with its log.
func (e *Env) compared(ctx context.Context, of string) (comparing, error) {
	var c comparing
	var err error
	if isFile(of) {
		if c.file, err = e.readJobFile(of); err != nil {
			return c, err
		}
		job, err := c.file.parse()
		if err != nil {
			return c, err
		}
		c.base, err = c.file.plan(job, planner.Prior{})
		return c, err
	}
	var state tracker.State
	err = e.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, of)
		return err
	})
	if err != nil {
		return c, err
	}
	c.file, c.prior, c.left = bookedFile(state), state.Prior(), &state
	c.base, err = bookedPlan(state)
	return c, err
}

// with plans the job with some values changed, and works out what would be left
// of it.
func (c comparing) with(changes []planner.Change) (render.Compared, error) {
	other := render.Compared{Changes: changes}
	altered, err := planner.ParseAltered(c.file.name, c.file.data, changes)
	if err != nil {
		return other, unalterable(changes, err)
	}
	prior := c.prior
	if slices.ContainsFunc(changes, func(change planner.Change) bool { return change.Key == "seam" }) {
		prior.Amend.Seam = 0 // another seam than the measured one is asked for
	}
	altered.Job.Received = c.base.Job.Received
	if other.Plan, err = planner.Make(altered.Job, prior); err != nil {
		return other, unalterable(changes, err)
	}
	other.Spread = altered.Spread
	if c.left == nil {
		return other, nil
	}
	ledger := tracker.Refreeze(c.left.Ledger, other.Plan)
	event := tracker.Event{Schema: tracker.EventSchema, ID: "compare", Seq: c.left.LastSeq() + 1, Kind: tracker.Revised, File: c.left.File, Ledger: &ledger}
	after, err := c.left.With(event)
	other.Left = &after
	return other, err
}

// unalterable words what is wrong with changed values. Where in the file they
// would stand helps nobody: they do not stand there.
func unalterable(changes []planner.Change, err error) error {
	var problems planner.Problems
	if !errors.As(err, &problems) {
		return err
	}
	var with []string
	for _, change := range changes {
		with = append(with, change.String())
	}
	f := failed("with %s: %s", strings.Join(with, " "), problems[0].What)
	if problems[0].Hint != "" {
		f.hint("%s", problems[0].Hint)
	}
	said := []string{problems[0].What}
	for _, p := range problems[1:] {
		if !slices.Contains(said, p.What) { // what colourways share is wrong once
			said = append(said, p.What)
			f.hint("and %s", p.What)
		}
	}
	if strings.HasPrefix(problems[0].What, "the map ") {
		f.hint("a map holds one layout: add order=diagonal")
	}
	return f
}
