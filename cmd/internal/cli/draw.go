package cli

import (
	"context"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/draw"
	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

const drawLong = `draw writes drawings of a job as SVG files, which any browser shows and prints:
the whole top with the ids of its blocks, and for each colourway how its block
is made step by step, with the way that every seam is pressed. Asked for, it
draws how each fabric is cut: every piece with its size, the cuts with their
numbers, what is left over hatched.

Say top for the top alone, block and a colourway for one block, cutting for all
fabrics or for one; where the run has several quilts, a number after top picks
one. A file that is no drawing of quiltrun's is never written over.`

const drawExample = `  quiltrun draw examples/estuary-lap.yaml
  quiltrun draw examples/estuary-lap.yaml top --out - > top.svg
  quiltrun draw estuary-lap block tide --out drawings
  quiltrun draw estuary-lap cutting Foam`

// drawOptions are what draw was asked: whose drawings, which of them, and where
// they go.
type drawOptions struct {
	of   string
	what []string // "top", "top" and a number, "block" and a colourway, "cutting" and a fabric, or nothing
	out  string   // a folder; "": the current one; "-": standard output
}

// newDraw is the command draw.
func newDraw(env *Env) *cobra.Command {
	var opts drawOptions
	cmd := &cobra.Command{
		Use:               "draw FILE|JOB [top [QUILT] | block NAME | cutting [FABRIC]]",
		Short:             "Draw the top, its blocks step by step, and the cutting",
		Long:              drawLong,
		Example:           drawExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeDraw,
		RunE: env.aboutJob(between(1, -1, "FILE"), drawWords, func(cmd *cobra.Command, args []string) error {
			opts.of, opts.what = args[0], args[1:]
			return runDraw(cmd.Context(), env, opts)
		}),
	}
	cmd.Flags().StringVar(&opts.out, "out", "", "write into `FOLDER`, or with - to standard output")
	_ = cmd.MarkFlagDirname("out") // fails only for an option that is not there
	return cmd
}

// drawWords is what the first word of draw may be beside FILE or JOB.
func drawWords(_ tracker.State, args []string) string {
	if args[0] == "top" || args[0] == "block" || args[0] == "cutting" {
		return "the " + args[0]
	}
	return ""
}

// completeDraw offers what each argument of draw may be.
func (e *Env) completeDraw(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	switch {
	case len(args) == 0:
		return e.completeFileOrJob(cmd, args, typed)
	case len(args) == 1:
		return fitting([]string{"top", "block", "cutting"}, typed), noFiles
	case len(args) == 2 && args[1] == "block" && !isFile(args[0]):
		return fitting(colourways(e.glanceJob(cmd.Context(), args[:1]).Ledger), typed), noFiles
	}
	return nil, noFiles
}

// runDraw makes every drawing before it writes the first.
func runDraw(ctx context.Context, env *Env, opts drawOptions) error {
	if opts.out == "-" && env.given.json {
		return wrong("--json lists the files that are written, and --out - writes none").hint("leave one of them out")
	}
	plan, err := env.planOf(ctx, opts.of)
	if err != nil {
		return err
	}
	chosen, err := opts.choose(plan)
	if err != nil {
		return err
	}
	if opts.out == "-" {
		return drawOne(env.Out, plan, chosen)
	}
	files, err := drawn(plan, chosen, opts.out)
	if err != nil {
		return err
	}
	for _, f := range files {
		if err := f.write(); err != nil {
			return err
		}
	}
	return showDrawn(env, plan.Job.ID, files)
}

// choose picks the drawings that were asked for.
func (o drawOptions) choose(plan planner.Plan) ([]draw.Drawing, error) {
	all := draw.List(plan)
	switch {
	case len(o.what) == 0:
		return all, nil
	case o.what[0] == "cutting":
		return chooseCutting(plan, strings.Join(o.what[1:], " "))
	case len(o.what) > 2:
		return nil, wrong("draw does not take %q", o.what[2])
	case o.what[0] == "top":
		return chooseTop(all, plan, o.what[1:])
	case o.what[0] == "block":
		return chooseBlock(all, plan, o.what[1:])
	}
	f := wrong("draw does not know %q", o.what[0])
	if slices.ContainsFunc(plan.Colourways, func(c planner.ColourwayPlan) bool { return c.Name == o.what[0] }) {
		return nil, f.hint("for the block of that colourway: block %s", o.what[0])
	}
	return nil, f.hint("say top, block and a colourway, or cutting")
}

// chooseTop picks all tops, or the one of a quilt.
func chooseTop(all []draw.Drawing, plan planner.Plan, which []string) ([]draw.Drawing, error) {
	tops := all[:plan.Job.Quantity]
	if len(which) == 0 {
		return tops, nil
	}
	n, err := strconv.Atoi(which[0])
	if err != nil || n < 1 || n > len(tops) {
		return nil, failed("there is no quilt %s: the run is %s", which[0], english.Count(len(tops), "quilt"))
	}
	return tops[n-1 : n], nil
}

// chooseBlock picks all blocks, or the one of a colourway.
func chooseBlock(all []draw.Drawing, plan planner.Plan, which []string) ([]draw.Drawing, error) {
	blocks := all[plan.Job.Quantity:]
	if len(which) == 0 {
		return blocks, nil
	}
	var names []string
	for i, b := range blocks {
		if b.Colourway == which[0] {
			return blocks[i : i+1], nil
		}
		names = append(names, b.Colourway)
	}
	return nil, noColourway(which[0], names)
}

// chooseCutting picks the cutting of all fabrics, or the drawing that one is in.
func chooseCutting(plan planner.Plan, fabric string) ([]draw.Drawing, error) {
	all := draw.CuttingList(plan)
	if fabric == "" {
		if len(all) == 0 {
			return nil, failed("nothing is cut for this job")
		}
		return all, nil
	}
	if _, err := (cutOptions{fabric: fabric}).choose(plan); err != nil {
		return nil, err
	}
	for i, d := range all {
		if slices.Contains(d.Fabrics, fabric) {
			return all[i : i+1], nil
		}
	}
	return nil, failed("nothing is cut from %s", fabric)
}

// drawOne writes the one drawing that standard output has room for.
func drawOne(w io.Writer, plan planner.Plan, chosen []draw.Drawing) error {
	if len(chosen) != 1 {
		return failed("standard output takes one drawing, and these are %d", len(chosen)).
			hint("say which: top, top and the number of a quilt, block and a colourway, or cutting and a fabric")
	}
	return chosen[0].Draw(w, plan)
}
