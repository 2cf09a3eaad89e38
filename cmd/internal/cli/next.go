package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

const nextLong = `next says what can be done now, across all booked jobs or for JOB alone. The job
that is due first comes first, jobs without a date last, and each goes by its
route; what shares a set-up (the place, and there thread, foot or tool) goes
along with the first of it, other jobs' too. What cannot go on is named with
what holds it up.

With --for it is what fits into that time: counts are taken as they fit, and
what they make possible is reckoned with. A test block comes before the run that
waits for it. Times are those of the table until your own batches set the pace.`

const nextExample = `  quiltrun next
  quiltrun next --for 45m
  quiltrun next --at iron
  quiltrun next estuary-lap --for 1h30m --json`

// longestSitting bounds --for: nobody has more than a day.
const longestSitting planner.Minutes = 24 * 60

// nextOptions are what next was asked.
type nextOptions struct {
	job string // "": all
	tracker.AgendaRequest
}

// newNext is the command next.
func newNext(env *Env) *cobra.Command {
	var opts nextOptions
	cmd := &cobra.Command{
		Use:               "next [JOB]",
		Short:             "Say what can be done now, in the time there is",
		Long:              nextLong,
		Example:           nextExample,
		Args:              between(0, 1, "JOB"),
		ValidArgsFunction: env.completeJob,
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 1 {
				opts.job = args[0]
			}
			if err := checkJob(opts.job); err != nil {
				return err
			}
			return runNext(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().Var(sittingValue{&opts.For}, "for", "only what fits into this `TIME`, such as 45m")
	cmd.Flags().Var(placeValue{&opts.At}, "at", "only what is done at this `PLACE`, such as iron")
	return cmd
}

// runNext reads all jobs that are asked for; it changes nothing.
func runNext(ctx context.Context, env *Env, opts nextOptions) error {
	var states []tracker.State
	err := env.read(ctx, func(opened *store.Store) (err error) {
		states, err = askedStates(opened, opts.job)
		return err
	})
	if err != nil {
		return err
	}
	env.sayDoubts(states...)
	opts.Today = env.today()
	agenda := tracker.NewAgenda(states, opts.AgendaRequest)
	if env.given.json {
		return render.NextJSON(env.Out, states, opts.AgendaRequest, agenda)
	}
	return render.Next(env.Out, states, opts.AgendaRequest, agenda, env.look())
}

// sittingValue is the option --for: how much time there is.
type sittingValue struct{ to *planner.Minutes }

func (v sittingValue) String() string { return "" }
func (v sittingValue) Type() string   { return "TIME" }

// Set reads the time.
func (v sittingValue) Set(text string) error {
	minutes, err := someTime("--for", text, longestSitting, "leave --for out to see all that can go on")
	if err != nil {
		return err
	}
	*v.to = minutes
	return nil
}

// places are the places of work as --at takes them.
var places = []string{
	string(planner.CuttingTable), string(planner.Machine), string(planner.Iron),
	string(planner.DesignWall), string(planner.Frame), string(planner.Hand),
}

// placeValue is the option --at: a place of work, or a beginning that only one
// has.
type placeValue struct{ to *planner.Place }

func (v placeValue) String() string { return "" }
func (v placeValue) Type() string   { return "PLACE" }

// Set finds the place.
func (v placeValue) Set(text string) error {
	typed := strings.ToLower(strings.ReplaceAll(strings.TrimSpace(text), "-", " "))
	var found []string
	for _, place := range places {
		if typed != "" && strings.HasPrefix(place, typed) {
			found = append(found, place)
		}
	}
	if len(found) == 1 {
		*v.to = planner.Place(found[0])
		return nil
	}
	return wrong("--at %q is no place of work", text).didYouMean(typed, places, "places are "+strings.Join(places, ", "))
}
