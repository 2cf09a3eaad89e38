package cli

import (
	"context"
	"time"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

const noteLong = `note keeps a note about JOB in its log, where history shows it with its time.
TEXT is one argument: put it into quotes. It counts nothing and changes nothing.`

const noteExample = `  quiltrun note estuary-lap "the wrack prints are cut off grain"

  # of the job in use:
  quiltrun use estuary-lap
  quiltrun note "new needle, size 80"`

// newNote is the command note.
func newNote(env *Env) *cobra.Command {
	var opts remarkOptions
	cmd := &cobra.Command{
		Use:               "note JOB TEXT",
		Short:             "Keep a note about a job",
		Long:              noteLong,
		Example:           noteExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeJob,
		RunE: env.aboutJob(oneText(2, 2), loneText, func(cmd *cobra.Command, args []string) error {
			opts.job, opts.text = args[0], args[1]
			return runRemark(cmd.Context(), env, opts, tracker.State.Note)
		}),
	}
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// remarkOptions are words about a job that note or park was given.
type remarkOptions struct{ job, text, id string }

// oneText counts the arguments of a command that takes JOB and a text. Who
// forgets the quotes is told.
func oneText(least, most int) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) > most {
			return asUsed(cmd, wrong("%s takes one text, and got more words", cmd.Name()).hint("put it into quotes"))
		}
		return between(least, most, "JOB", "TEXT")(cmd, args)
	}
}

// remark is the event that the tracker makes of words about a job.
type remark func(s tracker.State, text, id string, at time.Time, by string) (tracker.Event, error)

// runRemark appends words about a job, and says what they are known by.
func runRemark(ctx context.Context, env *Env, opts remarkOptions, make remark) error {
	if err := checkJob(opts.job); err != nil {
		return err
	}
	if err := plainUTF8("the text", opts.text, "type it again"); err != nil {
		return err
	}
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) {
		return make(state, opts.text, id, env.Now(), env.User)
	})
	if err != nil {
		return err
	}
	env.sayDoubts(made.after)
	if env.given.json {
		return render.RemarkedJSON(env.Out, made.after, made.event, made.repeated)
	}
	return render.Remarked(env.Out, made.after, made.event, made.repeated, env.look())
}
