package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const useLong = `use puts a job in use, so that JOB can be left out of every command that takes
it. Where the first word that is written then may be both a job and something of
the job in use, the command is refused and names both: nothing is guessed. With
--none no job is in use; without JOB it says which one is.

It lasts until another is put in use, in every shell that has the same store.
left --json without JOB is every booked job all the same, since scripts read it;
next without JOB is every job too, and stop whichever clock runs.`

const useExample = `  quiltrun use estuary-lap
  quiltrun log seam-test 1 --took 12m
  quiltrun use --none`

// useOptions are what use was asked. Job "" is none, or only to be told.
type useOptions struct {
	job, id string
	none    bool
}

// newUse is the command use.
func newUse(env *Env) *cobra.Command {
	var opts useOptions
	cmd := &cobra.Command{
		Use:               "use [JOB]",
		Short:             "Put a job in use, so that JOB can be left out",
		Long:              useLong,
		Example:           useExample,
		Args:              between(0, 1, "JOB"),
		ValidArgsFunction: env.completeJob,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				opts.job = args[0]
			}
			if opts.none && opts.job != "" {
				return wrong("use takes a JOB or --none, not both")
			}
			if err := checkJob(opts.job); err != nil {
				return err
			}
			if opts.job == "" && !opts.none {
				return showInUse(cmd.Context(), env)
			}
			return runUse(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().BoolVar(&opts.none, "none", false, "no job is in use")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runUse appends to the maker's own events. A job that is in use already is not
// put so again, so that a habit does not fill the log.
func runUse(ctx context.Context, env *Env, opts useOptions) error {
	event, err := env.newEvent(tracker.InUse, opts.id)
	if err != nil {
		return err
	}
	opened, err := env.writing(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	if !opts.none {
		if event.Target, err = bookedID(opened, opts.job); err != nil {
			return err
		}
	}
	event, repeated, err := opened.Append("", func(events []tracker.Event) (tracker.Event, error) {
		return usedOnce(events, event)
	})
	if err != nil {
		return err
	}
	if env.given.json {
		return render.UsedJSON(env.Out, event, repeated)
	}
	return render.Used(env.Out, event, env.look())
}

// usedOnce is the stored event of the same id where there is one that says the
// same, or the newest where that says the same without having been sent again.
func usedOnce(events []tracker.Event, event tracker.Event) (tracker.Event, error) {
	newest := tracker.Event{}
	for _, stored := range events {
		if stored.ID == event.ID {
			return stored, stored.SentAgain(event)
		}
		if stored.Kind == tracker.InUse {
			newest = stored
		}
	}
	if newest.Seq != 0 && newest.Target == event.Target {
		return newest, nil
	}
	return event, nil
}

// showInUse says which job is in use.
func showInUse(ctx context.Context, env *Env) error {
	var event tracker.Event
	err := env.read(ctx, func(opened *store.Store) (err error) {
		event, _, err = opened.NewestOwn(tracker.InUse)
		return err
	})
	switch {
	case err != nil:
		return err
	case env.given.json:
		return render.InUseJSON(env.Out, event.Target)
	}
	return render.InUse(env.Out, event.Target, env.look())
}
