package cli

import (
	"context"
	"errors"
	"fmt"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/tick"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const tickLong = `tick fills the terminal with the row that you are working on: what to do with
its measurements, how to press, what is made and left in large figures, your
pace, and when chain and bobbin will be through. OP is an operation as log takes
it; without it, and without --colourway, work goes on where it can.

  space, enter      check off one; --key adds the key that a pedal types
  12 space          check off twelve; esc clears what was typed
  t                 take back the newest tick of this screen; where there is
                    none, the row's newest entry, asked for twice
  n, left arrow     the next row that can go on; the one before
  b                 a full bobbin went in
  p                 pause, and go on: time between is no work
  w                 write a note, kept with the job
  i                 the whole instruction, and back
  d, ctrl-c         done

The time from one tick to the next is work, up to the gap that time shows. The
first began when the screen was opened, or at the last key before it; opening
alone writes nothing.

A key that is held down counts once, and the screen says so. Where a terminal
cannot tell, presses of one key closer than --apart are taken for one. Every
tick is on disk before it shows, whichever way the screen is left.

Where input or output is no terminal it works line by line: an empty line is
one, a number is many, and back, next, bobbin, pause, go on, note TEXT and done
are the other keys. It answers one line an entry.`

const tickExample = `  # chain-piecing, tide first; n goes on to dune:
  quiltrun tick estuary-lap sew-pairs --colourway tide

  # where the work can go on, with a foot pedal that types the letter a:
  quiltrun tick estuary-lap --key a

  # from a script: two, then three, then the three taken back:
  printf '2\n3\nback\n' | quiltrun tick estuary-lap sew-pairs --catch-up`

// The bounds of --apart, in minutes: below, a bouncing switch would count twice; above, no
// hands are so slow.
const (
	leastApart planner.Minutes = 0
	mostApart  planner.Minutes = 5.0 / 60
)

// tickOptions are what tick was asked.
type tickOptions struct {
	job, operation string       // "": where the work can go on
	lot            *tracker.Lot // nil: any
	keys           []string
	apart          time.Duration
	catchUp        bool
	id             string // the beginning of the ids of piped entries, "": they are made
}

// newTick is the command tick.
func newTick(env *Env) *cobra.Command {
	opts := tickOptions{apart: tick.Apart}
	cmd := &cobra.Command{
		Use:               "tick JOB [OP]",
		Short:             "Check work off at the machine, hands free",
		Long:              tickLong,
		Example:           tickExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: env.completeTick,
		RunE: env.aboutJob(between(1, 2, "JOB", "OP"), operationWord, func(cmd *cobra.Command, args []string) error {
			if err := checkJob(args[0]); err != nil {
				return err
			}
			// Without OP there is nothing to join, and SitDown chooses.
			opts.job, opts.operation = args[0], strings.Join(args[1:], "")
			return runTick(cmd.Context(), env, opts)
		}),
	}
	flags := cmd.Flags()
	flags.Var(colourwayValue{&opts.lot}, "colourway", "begin with the colourway `NAME`")
	flags.Var(lotValue{&opts.lot}, "lot", "begin with this `LOT`, such as Kelp, or fabric:Kelp")
	flags.Var(keyValue{&opts.keys}, "key", "a `KEY` that checks off as space does; may be repeated")
	flags.Var(apartValue{&opts.apart}, "apart", "take presses closer than `TIME` for one (0.7s)")
	flags.BoolVar(&opts.catchUp, "catch-up", false, "log what comes before along, without times")
	flags.Var(idValue{&opts.id}, "id", "begin the ids of piped entries with `ID`, to count once")
	return cmd
}

// completeTick offers jobs, then their operations.
func (e *Env) completeTick(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if len(args) > 1 {
		return nil, noFiles
	}
	return e.completeLog(cmd, args, typed)
}

// runTick opens the screen, or reads lines where there is no terminal. Either is
// given the job as it is now; what others write meanwhile it reads by itself.
func runTick(ctx context.Context, env *Env, opts tickOptions) error {
	state, plan, err := env.jobAndPlan(ctx, opts.job)
	if err != nil {
		return err
	}
	row, err := state.SitDown(opts.operation, opts.lot)
	if err != nil {
		return err
	}
	env.sayDoubts(state) // before the screen covers it: it stands there again afterwards
	screen := tick.NewScreen(state, tick.NewGuide(plan), row.Operation, tick.Settings{
		Look: env.look(), Keys: opts.keys, Apart: opts.apart, CatchUp: opts.catchUp,
	})
	// Half a terminal is none: keys need one to come from, and the screen one to go to.
	if !env.InTerminal || !env.Draws {
		return env.tickLines(ctx, screen, opts.id, state)
	}
	switch {
	case env.given.json:
		return wrong("--json and the screen of tick do not go together").hint("send it lines through a pipe for an answer in JSON")
	case opts.id != "":
		return wrong("--id is for lines from a pipe: the keys of the screen make their own").hint("leave --id out")
	}
	screen.Say(doubtWords(state, env.Now(), env.User)) // the whole of it is behind the screen now
	return env.tickScreen(ctx, screen, state)
}

// doubtWords is one sentence about times in doubt, "" where none is. A forgotten clock
// that still runs takes in every tick, which then is in doubt too.
func doubtWords(state tracker.State, now time.Time, user string) string {
	doubts := state.Doubts(now)
	for _, d := range doubts {
		if d.Running() && d.By == user {
			return fmt.Sprintf("your clock has run since %s, and ticks count on it: d, then quiltrun time %s", d.From.Format("Mon 2 Jan 15:04"), state.Ledger.Job)
		}
	}
	switch len(doubts) {
	case 0:
		return ""
	case 1:
		return fmt.Sprintf("1 time at work is in doubt and not counted: see quiltrun time %s", state.Ledger.Job)
	}
	return fmt.Sprintf("%d times at work are in doubt and not counted: see quiltrun time %s", len(doubts), state.Ledger.Job)
}

// jobAndPlan is a booked job and its plan on the ledger's numbers. The log is let go
// before the plan is made, so that nobody waits for that.
func (e *Env) jobAndPlan(ctx context.Context, typed string) (state tracker.State, plan planner.Plan, err error) {
	err = e.read(ctx, func(opened *store.Store) (err error) {
		state, err = bookedState(opened, typed)
		return err
	})
	if err != nil {
		return state, plan, err
	}
	plan, err = bookedPlan(state)
	var broken *fileError
	if errors.As(err, &broken) {
		return state, planner.Plan{}, nil // a newer program finds fault with it; counts go on without words
	}
	return state, plan, err
}
