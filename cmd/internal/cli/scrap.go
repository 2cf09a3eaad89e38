package cli

import (
	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

const scrapLong = `scrap puts back what is spoilt beyond use, and all that it was made of: the
operations before it are left again for those blocks, and their pieces have to
be cut anew. COUNT is how many are spoilt: a number, N blocks or all; the last
ones, or those of --block. Of cut pieces it is those that no block has taken.

Pieces that were planned as spare are used before more cloth is. What was sewn
from the spoilt ones is left again too. Of work on whole quilts it is not known
which pieces are spoilt: scrap the blocks, or rip the joins.`

const scrapExample = `  # a unit was cut through: its pairs and their pieces are made anew
  quiltrun scrap estuary-lap sew-units 1 --block tide-03 --reason 'cut through'

  # two pieces that lie on the table are stained:
  quiltrun scrap estuary-lap cut 2 --lot Marram`

// newScrap is the command scrap.
func newScrap(env *Env) *cobra.Command {
	var opts lowerOptions
	cmd := &cobra.Command{
		Use:               "scrap JOB OP COUNT...",
		Short:             "Put back what is spoilt, to be made anew",
		Long:              scrapLong,
		Example:           scrapExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeLog,
		RunE: env.aboutJob(between(2, -1, "JOB", "OP", "COUNT"), operationWord, func(cmd *cobra.Command, args []string) error {
			if err := opts.fill(args, tracker.ParseCounts); err != nil {
				return err
			}
			return runLower(cmd.Context(), env, opts, render.Scrapped, func(state tracker.State, id string) (tracker.Event, error) {
				return state.Scrap(tracker.ScrapRequest{
					Operation: opts.operation, Counts: opts.counts, Lot: opts.lot, Block: opts.block, Reason: opts.reason,
					ID: id, At: env.Now(), By: env.User,
				})
			})
		}),
	}
	opts.register(cmd, "the spoilt counts are of this")
	return cmd
}
