package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/planner/cloth"
)

const cutLong = `cut shows how the job sheet cuts each fabric, all its pieces together: blocks,
borders, binding, spares and backing. It lists the ruler cuts in the order to
make them: what to stack, how often the ruler is laid on and what that makes;
how much cloth it takes beside plain strips of each size, how little any plan
could take, what to buy, and which leftovers are of use. Nothing is stored.

Lengths for backing panels and lengthwise borders come first, then strips across
the cloth, then pieces off the strips. With --nested straight cuts come in any
order, which may save cloth and takes more ruler work; to plan the whole job so,
write cutting: {style: nested} in its file. With the name of a FABRIC it is that
fabric alone. "quiltrun draw JOB cutting" draws it.`

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
	style := opts.style(plan.Job)
	cuts := make([]planner.FabricCut, len(needs))
	for i, need := range needs {
		cuts[i].Need = need
		if cuts[i].Plan, err = planner.CutPlan(plan.Job, need, style); err != nil {
			return failed("%s cannot be planned: %v", need.Fabric.Name, err)
		}
	}
	if env.given.json {
		return render.CuttingJSON(env.Out, plan.Job, style, cuts)
	}
	return render.Cutting(env.Out, plan.Job, cuts, env.look())
}

// style is that of the job, or any order of cuts where that is asked for.
func (o cutOptions) style(job planner.Job) cloth.Style {
	if o.nested || job.Cutting.Style == cloth.Nested {
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
	return nil, noFabric(o.fabric, names)
}
