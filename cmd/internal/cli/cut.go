package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/tracker"
)

const cutLong = `cut plans the cutting of each fabric, all its pieces together, and lists the
ruler cuts in the order to make them: what to stack, what each cut makes, how
much cloth it takes beside the job sheet's plain strips, how little any plan
could take, and which leftovers are of use. Nothing is stored.

Strips are cut across the cloth first, then pieces off the strips. With --nested
straight cuts come in any order, which may save cloth and takes more ruler work.
With the name of a FABRIC it is that fabric alone. Backing is not in it.`

const cutExample = `  quiltrun cut examples/estuary-lap.yaml
  quiltrun cut examples/gull-cot.yaml Morning --nested
  quiltrun cut estuary-lap Sea holly --json`

// cutOptions are what cut was asked: whose fabrics, which of them, and how.
type cutOptions struct {
	of     string
	fabric string // "": every fabric
	nested bool
}

// newCut is the command cut. A name of several words needs no quotes.
func newCut(env *Env) *cobra.Command {
	var opts cutOptions
	cmd := &cobra.Command{
		Use:               "cut FILE|JOB [FABRIC]",
		Short:             "Plan the cutting of each fabric, cut by cut",
		Long:              cutLong,
		Example:           cutExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeFileOrJob,
		RunE: env.aboutJob(between(1, -1, "FILE"), wordsOf("the fabric", fabrics), func(cmd *cobra.Command, args []string) error {
			opts.of, opts.fabric = args[0], strings.Join(args[1:], " ")
			return runCut(cmd.Context(), env, opts)
		}),
	}
	cmd.Flags().BoolVar(&opts.nested, "nested", false, "straight cuts in any order: less cloth, more ruler work")
	return cmd
}

// runCut shows how fabrics are cut; nothing is stored.
func runCut(ctx context.Context, env *Env, opts cutOptions) error {
	plan, err := env.planOf(ctx, opts.of)
	if err != nil {
		return err
	}
	needs, err := opts.choose(plan)
	if err != nil {
		return err
	}
	cuts := make([]planner.FabricCut, len(needs))
	for i, need := range needs {
		cuts[i].Need = need
		if cuts[i].Plan, err = planner.CutPlan(need, opts.style(), plan.Job.Units); err != nil {
			return failed("%s cannot be planned: %v", need.Fabric.Name, err)
		}
	}
	if env.given.json {
		return render.CuttingJSON(env.Out, plan.Job, opts.style(), cuts)
	}
	return render.Cutting(env.Out, plan.Job, cuts, env.look())
}

func (o cutOptions) style() cloth.Style {
	if o.nested {
		return cloth.Nested
	}
	return cloth.Simple
}

// choose picks the fabric that was named, or all.
func (o cutOptions) choose(plan planner.Plan) ([]planner.FabricNeed, error) {
	if o.fabric == "" {
		return plan.Fabrics, nil
	}
	var names []string
	for i, need := range plan.Fabrics {
		if need.Fabric.Name == o.fabric {
			return plan.Fabrics[i : i+1], nil
		}
		names = append(names, need.Fabric.Name)
	}
	f := failed("there is no fabric %q", o.fabric)
	if near := tracker.Nearest(o.fabric, names); len(near) > 0 {
		return nil, f.hint("did you mean %s?", strings.Join(near, " or "))
	}
	return nil, f.hint("fabrics are %s", shortList(names))
}
