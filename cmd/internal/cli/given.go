package cli

import (
	"time"

	"github.com/spf13/pflag"

	"quiltrun/planner"
)

// given are the options that every command takes, as they were typed.
type given struct {
	store string // "": the usual file
	json  bool
	today string // "": the clock's
	now   string // "": the clock's
}

// register adds the options to the root, from where every command has them.
func (g *given) register(flags *pflag.FlagSet) {
	flags.StringVar(&g.store, "store", "", "keep jobs and entries in `FILE` instead of the usual one")
	flags.BoolVar(&g.json, "json", false, "write every figure as JSON, for a script to read")
	flags.StringVar(&g.today, "today", "", "take `DATE` for today, such as 2026-11-02")
	flags.StringVar(&g.now, "now", "", "take `TIME` for now, such as 2026-11-02T19:30:00+01:00")
}

// fixClock makes the clock show what --today and --now say.
func (e *Env) fixClock() error {
	switch {
	case e.given.now != "":
		return e.fixNow()
	case e.given.today != "":
		return e.fixToday()
	}
	return nil
}

// fixNow stops the clock at a time with an offset, which is taken for the
// maker's own zone: the date is the one that its text shows.
func (e *Env) fixNow() error {
	now, err := time.Parse(time.RFC3339, e.given.now)
	if err != nil {
		return wrong("--now %q is not a time with its date and offset", e.given.now).
			hint("write it like 2026-11-02T19:30:00+01:00")
	}
	if e.given.today != "" {
		day, err := parseToday(e.given.today)
		if err != nil {
			return err
		}
		if day != planner.DateOf(now) {
			return wrong("--today %s and --now %s name different days", e.given.today, e.given.now).
				hint("leave --today out: --now sets it too")
		}
	}
	e.Now = func() time.Time { return now }
	return nil
}

// fixToday stops the clock at noon of the day, the hour farthest from both of
// its ends: the date stays the date in whatever zone it is read.
func (e *Env) fixToday() error {
	day, err := parseToday(e.given.today)
	if err != nil {
		return err
	}
	noon := time.Date(day.Year, day.Month, day.Day, 12, 0, 0, 0, e.Now().Location())
	e.Now = func() time.Time { return noon }
	return nil
}

// parseToday reads --today.
func parseToday(text string) (planner.Date, error) {
	day, err := planner.ParseDate(text)
	if err != nil {
		return planner.Date{}, wrong("--today %v", err)
	}
	return day, nil
}
