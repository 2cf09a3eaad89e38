package cli

import (
	"context"
	"fmt"
	"reflect"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const reviseLong = `revise plans a booked job anew from its changed job file, and says what is
different. The id after "job:" says which job it is.

What is on the wall stays: no operation and no block gets another number, new
ones take free numbers, and what is no longer needed is retired. Work that was
logged keeps counting. A renamed colourway says "was: OLD" in the file. A seam
that was measured and planned with goes on counting in place of the file's,
unless --file-seam says otherwise.`

const reviseExample = `  quiltrun revise examples/estuary-lap.yaml
  quiltrun revise examples/estuary-lap.yaml --today 2026-11-20 --json`

// reviseOptions are what revise was asked.
type reviseOptions struct {
	file, id string
	fileSeam bool // forget a measured seam
}

// newRevise is the command revise.
func newRevise(env *Env) *cobra.Command {
	var opts reviseOptions
	cmd := &cobra.Command{
		Use:               "revise FILE",
		Short:             "Plan a booked job anew from its changed file",
		Long:              reviseLong,
		Example:           reviseExample,
		Args:              between(1, 1, "FILE"),
		ValidArgsFunction: completeFile,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.file = args[0]
			return runRevise(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().BoolVar(&opts.fileSeam, "file-seam", false, "sew with the job file's seam again, not a measured one")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runRevise plans the job while the store is locked, since the numbers and
// block ids that it has to keep are those of that moment.
func runRevise(ctx context.Context, env *Env, opts reviseOptions) error {
	file, job, err := env.jobToBook(opts.file)
	if err != nil {
		return err
	}
	event, err := env.newEvent(tracker.Revised, opts.id)
	if err != nil {
		return err
	}
	if opts.fileSeam {
		event.Amendment = &tracker.Amendment{FileSeam: true}
	}
	r := revising{file: file, job: job, event: event}
	made, err := env.reviseJob(ctx, &r)
	if err != nil {
		return err
	}
	env.sayDoubts(made.after)
	if made.repeated && made.event.ID != event.ID && !env.given.json {
		_, err := fmt.Fprintf(env.Out, "%s: nothing to revise, the file is the one of entry %d\n", job.ID, made.event.Seq)
		return err
	}
	changed := changes(r.was.Dealt(), *made.event.Ledger, made.after, r.plans(made))
	changed = append(changed, endedSwaps(r.was.Amendments(), *made.event.Ledger)...)
	if env.given.json {
		return render.RevisedJSON(env.Out, made.event, made.repeated, changed)
	}
	return render.Revised(env.Out, made.event, made.repeated, changed, env.look())
}

// revising is a job file on its way to become a booked job's new plan.
type revising struct {
	file  jobFile
	job   planner.Job
	event tracker.Event
	was   tracker.State // the job as it was planned before
	plan  planner.Plan  // the new one, once it is made
}

// plans are those of the former and the new file. There are none where a stored
// file, booked long ago, cannot be planned any more: the ledgers then say what
// is different.
func (r *revising) plans(made entry) *plans {
	old, err := bookedPlan(r.was)
	if err != nil {
		return nil
	}
	now := r.plan
	if made.repeated {
		then, err := r.was.With(made.event)
		if err != nil {
			return nil
		}
		if now, err = bookedPlan(then); err != nil {
			return nil
		}
	}
	return &plans{old: old, now: now, after: made.after}
}

// reviseJob finds the job by its whole id: a file that says so little as its
// beginning is another job's.
func (e *Env) reviseJob(ctx context.Context, r *revising) (entry, error) {
	opened, err := e.writing(ctx)
	if err != nil {
		return entry{}, err
	}
	defer opened.Close()
	events, err := opened.Events(r.job.ID)
	if err != nil {
		return entry{}, err
	}
	if len(events) == 0 {
		return entry{}, notBooked(opened, r.job.ID, r.file.name)
	}
	for i, event := range events {
		if event.ID == r.event.ID && i > 0 {
			events = events[:i] // it was sent before, and replaced what there was then
			break
		}
	}
	if r.was, err = folded(r.job.ID, events); err != nil {
		return entry{}, err
	}
	return appendTo(opened, r.job.ID, r.decide)
}

// notBooked refuses to revise what was never booked, with near ids.
func notBooked(opened *store.Store, id, file string) error {
	ids, err := opened.Jobs()
	if err != nil {
		return err
	}
	return refused(tracker.NoSuchJob(id, ids)).hint("to take it on: quiltrun book %s", file)
}

// decide makes the event that revises a job. A file that changes nothing is
// the newest booking or revision again.
func (r *revising) decide(state tracker.State) (tracker.Event, error) {
	if stored, ok := state.Repeated(r.event.ID); ok {
		return stored, stored.SentAgain(tracker.Event{Kind: tracker.Revised, File: string(r.file.data), Amendment: r.event.Amendment})
	}
	job, err := r.file.received(r.job, state.Ledger.Received)
	if err != nil {
		return tracker.Event{}, err
	}
	prior := state.Prior()
	if r.event.Amendment != nil {
		prior.Amend.Seam = 0
	}
	plan, err := r.file.plan(job, prior)
	if err != nil {
		return tracker.Event{}, err
	}
	r.plan = plan
	ledger := tracker.Refreeze(state.Dealt(), plan)
	if string(r.file.data) == state.File && sameLedger(ledger, state.Dealt()) && prior.Amend.Seam == state.Amendments().Seam {
		return state.Planned(), nil
	}
	event := r.event
	event.Revision, event.File, event.Ledger = ledger.Revision, string(r.file.data), &ledger
	return event, nil
}

// sameLedger compares two ledgers by all but their revision.
func sameLedger(a, b tracker.Ledger) bool {
	b.Revision = a.Revision
	return reflect.DeepEqual(a, b)
}

// endedSwaps says which blocks no longer lie in each other's places, since one of
// them is retired.
func endedSwaps(amended planner.Amendments, now tracker.Ledger) []string {
	var said []string
	for _, s := range amended.Swaps {
		for _, b := range now.Blocks {
			if b.Retired && (b.ID == s.A || b.ID == s.B) {
				said = append(said, fmt.Sprintf("%s and %s no longer lie in each other's places: %s is retired", s.A, s.B, b.ID))
				break
			}
		}
	}
	return said
}
