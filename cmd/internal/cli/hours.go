package cli

import (
	"context"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/render"
	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/forecast"
	"quiltrun/tracker/store"
)

const hoursLong = `hours shows the working hours that when reckons with, or sets them. Until they
are set they are two hours on weekdays.

  DAYS=TIME   days of the week, from today or from --from on: mon, mon-fri,
              sat,sun; a stretch may run over the weekend, such as fri-mon
  DATES=TIME  single dates, in place of their weekday: 2026-12-24,
              2026-12-24..2027-01-02

TIME is like 2h, 4h30m or 90m; 0 is a day off. A later call goes before an
earlier one.`

const hoursExample = `  quiltrun hours
  quiltrun hours mon-fri=2h sat=4h30m --from 2026-12-01
  quiltrun hours 2026-12-24..2027-01-02=0`

// hoursOptions are what hours was asked, as it was typed: what days of the week
// hold from depends on the date.
type hoursOptions struct {
	settings []string // none: show
	from     string   // "": today
	id       string
}

// newHours is the command hours.
func newHours(env *Env) *cobra.Command {
	var opts hoursOptions
	cmd := &cobra.Command{
		Use:               "hours [DAYS=TIME|DATES=TIME ...]",
		Short:             "Show or set the working hours",
		Long:              hoursLong,
		Example:           hoursExample,
		Args:              cobra.ArbitraryArgs,
		ValidArgsFunction: cobra.NoFileCompletions,
		RunE: func(cmd *cobra.Command, args []string) error {
			opts.settings = args
			return runHours(cmd.Context(), env, opts)
		},
	}
	cmd.Flags().StringVar(&opts.from, "from", "", "`DATE` from which days of the week hold (default today)")
	registerID(cmd.Flags(), &opts.id)
	return cmd
}

// asked is the hours that were asked for on a date. A date in --from that no day
// of the week uses would be passed over in silence, so it is refused.
func (o hoursOptions) asked(today planner.Date) (worktime, error) {
	start := today
	if o.from != "" {
		var err error
		if start, err = planner.ParseDate(o.from); err != nil {
			return worktime{}, wrong("--from %v", err)
		}
	}
	set, err := parseWorktime(o.settings, start)
	if err == nil && o.from != "" && len(set.week) == 0 {
		return set, wrong("--from says from when days of the week hold, and none is set").
			hint("such as: quiltrun hours mon-fri=2h --from %s", o.from)
	}
	return set, err
}

// runHours sets the hours and shows them, or only shows them. Hours are the
// maker's own: they belong to no job and may be set before any is booked.
func runHours(ctx context.Context, env *Env, opts hoursOptions) error {
	set, err := opts.asked(env.today())
	if err != nil {
		return err
	}
	if len(opts.settings) == 0 {
		return showHours(ctx, env)
	}
	event, err := env.newEvent(tracker.Hours, opts.id)
	if err != nil {
		return err
	}
	event.Week, event.Days = set.week, set.days
	opened, err := env.creating(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	var all []tracker.Event
	event, repeated, err := opened.Append("", func(events []tracker.Event) (tracker.Event, error) {
		all = events
		return opts.onceOnly(events, event)
	})
	if err != nil {
		return err
	}
	if !repeated {
		all = append(all, event)
	}
	calendar := forecast.NewCalendar(all)
	if env.given.json {
		return render.HoursSetJSON(env.Out, env.today(), calendar, event, repeated)
	}
	return render.Hours(env.Out, env.today(), calendar, env.look())
}

// showHours reads the hours without making a store.
func showHours(ctx context.Context, env *Env) error {
	var events []tracker.Event
	err := env.read(ctx, func(opened *store.Store) (err error) {
		events, err = opened.MakerEvents()
		return err
	})
	if err != nil {
		return err
	}
	calendar := forecast.NewCalendar(events)
	if env.given.json {
		return render.HoursJSON(env.Out, env.today(), calendar)
	}
	return render.Hours(env.Out, env.today(), calendar, env.look())
}

// onceOnly is the stored event of the same id, where there is one that says the
// same, or else the new one. Words sent again on a later day mean what they
// meant on the first.
func (o hoursOptions) onceOnly(events []tracker.Event, event tracker.Event) (tracker.Event, error) {
	for _, stored := range events {
		if stored.ID != event.ID {
			continue
		}
		set, err := o.asked(planner.DateOf(stored.At))
		if err != nil {
			return event, err
		}
		event.Week, event.Days = set.week, set.days
		return stored, stored.SentAgain(event)
	}
	return event, nil
}
