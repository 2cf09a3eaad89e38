package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

const undoLong = `undo takes back the newest entry of JOB that still stands, or the one that
--entry names. The entry stays in the log, marked as undone; nothing is erased.

An entry that later work rests on is refused, and the later ones are named. A
revision is not taken back: revise with the former file. What was logged before
it is taken back only where --entry names it, and so are a note and a bobbin.`

const undoExample = `  quiltrun undo estuary-lap

  # an entry by its own id, which log showed:
  quiltrun undo estuary-lap --entry monday-pairs`

// undoOptions are what undo was asked. Entry "" is the newest that stands.
type undoOptions struct{ job, entry, id string }

// newUndo is the command undo.
func newUndo(env *Env) *cobra.Command {
	var opts undoOptions
	cmd := &cobra.Command{
		Use:               "undo JOB",
		Short:             "Take back an entry",
		Long:              undoLong,
		Example:           undoExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeJob,
		RunE: env.aboutJob(between(1, 1, "JOB"), nil, func(cmd *cobra.Command, args []string) error {
			opts.job = args[0]
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runUndo(cmd.Context(), env, opts)
		}),
	}
	cmd.Flags().StringVar(&opts.entry, "entry", "", "take back the entry with this `ID`")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runUndo appends the event that takes an entry back. Whether that can be done
// is for the tracker to say, which knows what rests on the entry.
func runUndo(ctx context.Context, env *Env, opts undoOptions) error {
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) {
		return state.Undo(opts.entry, id, env.Now(), env.User)
	})
	if err != nil {
		return err
	}
	if env.given.json {
		return render.UndoneJSON(env.Out, made.after, made.event, made.repeated)
	}
	env.sayDoubts(made.after)
	return render.Undone(env.Out, made.after, made.event, made.repeated, env.look())
}
