package cli

import (
	"context"
	"slices"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

const bookLong = `book takes a job on: it plans the job file and keeps the file and the plan's
operations, counts and block ids in the store. From then on work is checked off
against them with log.

Where its cloth would come from more than one dye lot of the shelf, it says so.

A file without "received:" is received today. A job that is booked already is
refused; revise changes it.`

const bookExample = `  quiltrun book examples/estuary-lap.yaml
  quiltrun book examples/harbour-pair.yaml --today 2026-11-02 --id pair-1`

// bookOptions are what book was asked.
type bookOptions struct{ file, id string }

// newBook is the command book.
func newBook(env *Env) *cobra.Command {
	var opts bookOptions
	cmd := &cobra.Command{
		Use:               "book FILE",
		Short:             "Take a job on",
		Long:              bookLong,
		Example:           bookExample,
		Args:              between(1, 1, "FILE"),
		ValidArgsFunction: completeFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.file = args[0]
			return runBook(cmd.Context(), env, opts)
		},
	}
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runBook plans the job before it opens the store: a job that cannot be made
// touches nothing.
func runBook(ctx context.Context, env *Env, opts bookOptions) error {
	file, job, err := env.jobToBook(opts.file)
	if err != nil {
		return err
	}
	if job, err = file.received(job, env.today()); err != nil {
		return err
	}
	plan, err := file.plan(job, planner.Prior{})
	if err != nil {
		return err
	}
	event, err := env.newEvent(tracker.Booked, opts.id)
	if err != nil {
		return err
	}
	ledger := tracker.Freeze(plan)
	event.Revision, event.File, event.Ledger = ledger.Revision, string(file.data), &ledger
	made, err := env.bookJob(ctx, job.ID, event)
	if err != nil {
		return err
	}
	warnings := render.LotWarnings(env.needsNow(ctx, job.ID))
	if env.given.json {
		return render.BookedJSON(env.Out, made.event, made.repeated, warnings)
	}
	return render.Booked(env.Out, made.event, made.repeated, warnings, env.look())
}

// needsNow is where a job's cloth comes from, as the shelf is now. What is booked is
// booked: a shelf that cannot be read is told by the commands that are about it.
func (e *Env) needsNow(ctx context.Context, job string) []shelf.Need {
	var needs []shelf.Need
	err := e.read(ctx, func(opened *store.Store) error {
		maker, err := opened.MakerEvents()
		if err != nil || !slices.ContainsFunc(maker, func(ev tracker.Event) bool { return ev.Kind == tracker.Shelved }) {
			return err
		}
		stock, err := shelfAfter(opened, maker)
		for _, n := range stock.Needs {
			if n.Job == job {
				needs = append(needs, n)
			}
		}
		return err
	})
	if err != nil {
		return nil
	}
	return needs
}

// jobToBook reads a job file that book or revise was given. Neither takes the
// id of a booked job, whose stored file would say nothing new.
func (e *Env) jobToBook(name string) (jobFile, planner.Job, error) {
	if !isFile(name) {
		return jobFile{}, planner.Job{}, wrong("%q is not a job file", name).
			hint("a job file has a / in its name or ends in .yaml: ./%s", name)
	}
	file, err := e.readJobFile(name)
	if err != nil {
		return file, planner.Job{}, err
	}
	job, err := file.parse()
	return file, job, err
}

// bookJob appends the booking, unless the job is booked already: its counts are
// on the wall, and only revise may change them.
func (e *Env) bookJob(ctx context.Context, id string, event tracker.Event) (entry, error) {
	opened, err := e.creating(ctx)
	if err != nil {
		return entry{}, err
	}
	defer opened.Close()
	return appendTo(opened, id, func(state tracker.State) (tracker.Event, error) {
		if stored, ok := state.Repeated(event.ID); ok {
			return stored, stored.SentAgain(event)
		}
		if state.Booked() {
			return tracker.Event{}, failed("%s is booked already", id).
				hint("to change it: quiltrun revise FILE").
				hint("to make it again, give the file another id after job:")
		}
		return event, nil
	})
}
