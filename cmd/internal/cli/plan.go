package cli

import (
	"context"
	"errors"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const planLong = `plan works a job file out and shows the whole job sheet: sizes, cutting list,
operations with counts and times, materials, cautions. Nothing is stored.

With the id of a booked job in place of FILE it shows that job's sheet again,
with the operation numbers and block ids that are on the wall.`

const planExample = `  quiltrun plan examples/estuary-lap.yaml
  quiltrun plan - < examples/estuary-lap.yaml
  quiltrun plan estuary-lap --json`

// planOptions are what plan was asked: a job file or the id of a booked job.
type planOptions struct{ of string }

// newPlan is the command plan.
func newPlan(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "plan FILE|JOB",
		Short:             "Show the whole job sheet of a job file",
		Long:              planLong,
		Example:           planExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeFileOrJob,
		RunE: env.aboutJob(between(1, 1, "FILE"), nil, func(cmd *cobra.Command, args []string) error {
			return runPlan(cmd.Context(), env, planOptions{of: args[0]})
		}),
	}
}

// runPlan shows a plan; nothing is stored.
func runPlan(ctx context.Context, env *Env, opts planOptions) error {
	plan, err := env.planOf(ctx, opts.of)
	if err != nil {
		return err
	}
	if env.given.json {
		return render.PlanJSON(env.Out, plan)
	}
	return render.Sheet(env.Out, plan, env.look())
}

// planOf plans a file without a look at the store: the same file gives the same
// sheet on every machine, whatever is booked there.
func (e *Env) planOf(ctx context.Context, name string) (planner.Plan, error) {
	if !isFile(name) {
		return e.planBooked(ctx, name)
	}
	file, err := e.readJobFile(name)
	if err != nil {
		return planner.Plan{}, err
	}
	job, err := file.parse()
	if err != nil {
		return planner.Plan{}, err
	}
	return file.plan(job, planner.Prior{})
}

// planBooked plans the job file that was stored with a booked job, on the
// ledger's numbers.
func (e *Env) planBooked(ctx context.Context, typed string) (planner.Plan, error) {
	var state tracker.State
	err := e.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, typed)
		return err
	})
	var refusal *tracker.Refusal
	switch {
	case errors.As(err, &refusal):
		return planner.Plan{}, refused(refusal).hint("a job file has a / in its name or ends in .yaml: ./%s", typed)
	case err != nil:
		return planner.Plan{}, err
	}
	return bookedPlan(state)
}

// bookedPlan plans the job file that was stored with a booked job, on its
// ledger's numbers and with what was amended since.
func bookedPlan(state tracker.State) (planner.Plan, error) {
	file := bookedFile(state)
	job, err := file.parse()
	if err != nil {
		return planner.Plan{}, err
	}
	job.Received = state.Ledger.Received
	return file.plan(job, state.Prior())
}

// bookedFile is the job file that was stored with a booked job.
func bookedFile(state tracker.State) jobFile {
	return jobFile{"the booked file of " + state.Ledger.Job, []byte(state.File)}
}
