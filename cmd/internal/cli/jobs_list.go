package cli

import (
	"cmp"
	"context"
	"slices"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const jobsLong = `jobs lists every booked job, the one that is due first on top: whose it is, how
many of its blocks are made, the work left, what comes next, and where its
things lie if it is parked.`

const jobsExample = `  quiltrun jobs
  quiltrun jobs --json`

// newJobs is the command jobs.
func newJobs(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "jobs",
		Short:             "List the booked jobs",
		Long:              jobsLong,
		Example:           jobsExample,
		Args:              between(0, 0),
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE:              func(cmd *cobra.Command, _ []string) error { return runJobs(cmd.Context(), env) },
	}
}

// runJobs reads every job; it changes nothing. What is handed over comes last.
func runJobs(ctx context.Context, env *Env) error {
	var states []tracker.State
	var used string
	err := env.read(ctx, func(opened *store.Store) (err error) {
		if states, err = allStates(opened); err == nil {
			used, err = inUse(opened)
		}
		return err
	})
	if err != nil {
		return err
	}
	slices.SortStableFunc(states, func(a, b tracker.State) int {
		return cmp.Or(cmp.Compare(handedOver(a), handedOver(b)), tracker.CompareDue(a.Ledger.Due, b.Ledger.Due))
	})
	env.sayDoubts(states...)
	if env.given.json {
		return render.JobsJSON(env.Out, states, used, env.today())
	}
	return render.Jobs(env.Out, states, used, env.today(), env.look())
}

// handedOver is 1 for a job whose quilts are all in the client's hands.
func handedOver(s tracker.State) int {
	if _, done := s.FinishedAt(); done {
		return 1
	}
	return 0
}
