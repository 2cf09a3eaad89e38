package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const stopLong = `stop stops your clock: that of JOB, or the one that runs where no JOB is named,
however long ago it was started. --end says that work ended earlier than now: a
time of day is the first such moment after it began.`

const stopExample = `  quiltrun stop estuary-lap --end 18:30

  # wherever it runs:
  quiltrun start estuary-lap seam-test
  quiltrun stop`

// stopOptions are what stop was asked.
type stopOptions struct {
	job string // "": the one in which the clock runs
	end endAsked
	id  string
}

// newStop is the command stop.
func newStop(env *Env) *cobra.Command {
	var opts stopOptions
	cmd := &cobra.Command{
		Use:               "stop [JOB]",
		Short:             "Stop the clock that start began",
		Long:              stopLong,
		Example:           stopExample,
		Args:              between(0, 1, "JOB"),
		ValidArgsFunction: env.completeJob,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.job = strings.Join(args, "")
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runStop(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().Var(endValue{&opts.end}, "end", "work ended at this `TIME`, such as 18:30")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// runStop appends the event and says how long it was.
func runStop(ctx context.Context, env *Env, opts stopOptions) error {
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	opened, err := env.writing(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	job, err := env.jobToStop(opened, opts)
	if err != nil {
		return err
	}
	now := env.Now()
	made, err := appendTo(opened, job, func(state tracker.State) (tracker.Event, error) {
		sitting, _ := asItWas(state, id).AtWork(env.User)
		return state.Stop(id, opts.end.after(sitting.From, now.Location()), now, env.User)
	})
	if err != nil {
		return err
	}
	was, _ := asItWas(made.after, made.event.ID).AtWork(made.event.By)
	sitting := sittingAt(made.after, now, was.ID)
	if env.given.json {
		return render.ClockedJSON(env.Out, made.after, made.event, sitting, now, made.repeated)
	}
	env.sayDoubts(made.after)
	return render.Stopped(env.Out, made.after, made.event, sitting, made.repeated, env.look())
}

// jobToStop is the job whose clock is meant: the one that was named, else the only
// one in which the maker's clock runs.
func (e *Env) jobToStop(opened *store.Store, opts stopOptions) (string, error) {
	if opts.job != "" {
		return bookedID(opened, opts.job)
	}
	running, err := e.running(opened, opts.id)
	if err != nil {
		return "", err
	}
	switch len(running) {
	case 1:
		return running[0], nil
	case 0:
		return "", failed("no clock of yours runs").hint("start one with: quiltrun start JOB OP").hint("or say how long it took with log and --took")
	}
	return "", failed("your clock runs in %s", strings.Join(running, ", ")).hint("say which: quiltrun stop %s", running[0])
}

// running is the jobs in which the maker's clock runs. Where the entry was sent
// before, it is the job that has it.
func (e *Env) running(opened *store.Store, id string) ([]string, error) {
	if id != "" {
		job, err := jobWith(opened, id)
		if job != "" || err != nil {
			return []string{job}, err
		}
	}
	started, err := opened.Clocks(e.User)
	if err != nil {
		return nil, err
	}
	var running []string
	for _, job := range started {
		state, err := stateOf(opened, job)
		if err != nil {
			return nil, err
		}
		if _, ok := state.AtWork(e.User); ok {
			running = append(running, job)
		}
	}
	return running, nil
}

// jobWith is the job with a clock that has an entry of the id, "" where none has.
func jobWith(opened *store.Store, id string) (string, error) {
	jobs, err := opened.Clocked()
	if err != nil {
		return "", err
	}
	for _, job := range jobs {
		state, err := stateOf(opened, job)
		if err != nil {
			return "", err
		}
		if _, sent := state.Repeated(id); sent {
			return job, nil
		}
	}
	return "", nil
}
