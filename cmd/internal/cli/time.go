package cli

import (
	"context"
	"fmt"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const timeLong = `time shows who was at work on JOB, when, at what and how long: what ticks tell,
what a clock showed between start and stop, and what was told with --took. Times
that cannot be right, or that nobody would work, are kept and not counted until
you have said how long they were.

With ENTRY, the number or id that stands before a time, it puts that time right:
TIME is how long it really took (45m), --end when work ended (18:30). It puts
right what an entry was said to have taken, too.

Minutes are those of all persons; where several worked side by side, the time
in which somebody was at work is told apart. --gap and --longest set, from then
on, what is taken for work: 10m and 4h where nobody sets them.`

const timeExample = `  quiltrun time estuary-lap
  quiltrun time estuary-lap 2 --end 18:30
  quiltrun time estuary-lap 2 1h20m
  quiltrun time estuary-lap --gap 15m --longest 6h`

// timeOptions are what time was asked.
type timeOptions struct {
	job, entry string // entry "": show the times, or set limits
	took       *planner.Minutes
	end        endAsked
	limits     tracker.Limits
	id         string
}

// newTime is the command time.
func newTime(env *Env) *cobra.Command {
	var opts timeOptions
	cmd := &cobra.Command{
		Use:               "time JOB [ENTRY TIME]",
		Short:             "Show the time at work, or put one right",
		Long:              timeLong,
		Example:           timeExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeTime,
		RunE: env.aboutJob(between(1, 3, "JOB", "ENTRY", "TIME"), timeWord, func(cmd *cobra.Command, args []string) error {
			if err := opts.fill(args); err != nil {
				return err
			}
			return runTime(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.Var(endValue{&opts.end}, "end", "work ended at this `TIME`, such as 18:30")
	flags.Var(limitValue{"gap", &opts.limits.Gap}, "gap", "the longest `TIME` between two ticks that is work")
	flags.Var(limitValue{"longest", &opts.limits.Quiet}, "longest", "the longest `TIME` a clock may run with nothing logged")
	registerID(flags, &opts.id)
	return cmd
}

// timeWord is the ownWords of time, whose ENTRY follows JOB.
func timeWord(s tracker.State, args []string) string {
	if sitting, found, err := s.Sitting(args[0]); found && err == nil {
		return fmt.Sprintf("the time of entry %d", sitting.Seq)
	}
	for _, e := range s.Entries {
		if e.ID == args[0] || fmt.Sprint(e.Seq) == args[0] {
			return fmt.Sprintf("the entry %d", e.Seq)
		}
	}
	return ""
}

// limitValue is the option --gap or --longest.
type limitValue struct {
	name string
	to   **planner.Minutes
}

func (v limitValue) String() string { return "" }
func (v limitValue) Type() string   { return "TIME" }

// Set reads the limit.
func (v limitValue) Set(text string) error {
	minutes, err := spanOption("--"+v.name, text, longestDay)
	if err != nil {
		return err
	}
	*v.to = &minutes
	return nil
}

// fill reads the arguments and sees that they go together.
func (o *timeOptions) fill(args []string) error {
	o.job = args[0]
	if err := checkJob(o.job); err != nil {
		return err
	}
	sets := o.limits != tracker.Limits{}
	if len(args) == 1 {
		switch {
		case o.end.given:
			return wrong("--end needs ENTRY: the time that it ends").hint("quiltrun time %s shows the numbers", o.job)
		case o.id != "" && !sets:
			return wrong("--id is for what is put right: time only shows here")
		}
		return nil
	}
	o.entry = args[1]
	switch {
	case sets:
		return wrong("--gap and --longest are for all times of a job: leave %q out", o.entry)
	case len(args) == 3 && o.end.given:
		return wrong("time takes how long it was or --end, not both")
	case len(args) == 2 && !o.end.given:
		return wrong("how long did it take?").hint("quiltrun time %s %s 45m, or --end 18:30", o.job, o.entry)
	case len(args) == 3:
		minutes, err := spanOption("TIME", args[2], longestWork)
		o.took = &minutes
		return err
	}
	return nil
}

// runTime shows the times, or appends what puts one right.
func runTime(ctx context.Context, env *Env, opts timeOptions) error {
	if opts.entry == "" && opts.limits == (tracker.Limits{}) {
		return showTimes(ctx, env, opts.job)
	}
	id, err := env.entryID(opts.id)
	if err != nil {
		return err
	}
	now := env.Now()
	made, err := env.appendEntry(ctx, opts.job, func(state tracker.State) (tracker.Event, error) {
		if opts.entry == "" {
			return state.SetLimits(opts.limits, id, now, env.User)
		}
		r := tracker.SettleRequest{Entry: opts.entry, Took: opts.took, ID: id, At: now, By: env.User}
		if sitting, found, err := asItWas(state, id).Sitting(opts.entry); opts.end.given && err == nil {
			if !found {
				sitting.From = now
			}
			r.End = opts.end.after(sitting.From, now.Location())
		}
		return state.Settle(r)
	})
	if err != nil {
		return err
	}
	sitting := sittingAt(made.after, now, made.event.Target)
	if env.given.json {
		return render.ClockedJSON(env.Out, made.after, made.event, sitting, now, made.repeated)
	}
	env.sayDoubts(made.after)
	return render.Settled(env.Out, made.after, made.event, sitting, made.repeated, env.look())
}

// showTimes shows who was at work.
func showTimes(ctx context.Context, env *Env, job string) error {
	var state tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, job)
		return err
	})
	if err != nil {
		return err
	}
	if env.given.json {
		return render.TimesJSON(env.Out, state, env.Now())
	}
	return render.Times(env.Out, state, env.Now(), env.look())
}

// completeTime offers jobs, then the times that are in doubt, and the others.
func (e *Env) completeTime(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	state, words := e.glanceWords(cmd.Context(), args)
	if len(args) == 0 {
		return e.completeJob(cmd, args, typed)
	}
	if words > 0 {
		return nil, noFiles
	}
	var numbers []string
	for _, sitting := range state.Doubts(e.Now()) {
		numbers = append(numbers, fmt.Sprint(sitting.Seq))
	}
	return fitting(numbers, typed), noFiles | cobra.ShellCompDirectiveKeepOrder
}
