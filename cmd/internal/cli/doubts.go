package cli

import (
	"fmt"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
)

// mostDoubts is how many doubtful times are named one by one.
const mostDoubts = 3

// sayDoubts says on standard error which times of jobs wait for a word of the
// maker's. Scripts find them in the answer.
func (e *Env) sayDoubts(states ...tracker.State) {
	if e.given.json {
		return
	}
	for _, state := range states {
		doubts := state.Doubts(e.Now())
		for i, doubt := range doubts {
			if i == mostDoubts {
				e.say(fmt.Sprintf("quiltrun: %d more; quiltrun time %s shows all", len(doubts)-i, state.Ledger.Job))
				break
			}
			what, do := render.DoubtWords(state, doubt)
			e.say("quiltrun: " + what)
			e.hints(do)
		}
	}
}

// endValue is the option --end: a time of day, or a whole time with date and
// offset.
type endValue struct{ to *endAsked }

// endAsked is an end as it was typed: a time of day means the first such moment
// after work began.
type endAsked struct {
	given  bool
	at     time.Time // zero where only the time of day was given
	hour   int
	minute int
}

func (v endValue) String() string { return "" }
func (v endValue) Type() string   { return "TIME" }

// Set reads the end.
func (v endValue) Set(text string) error {
	if day, err := time.Parse("15:04", text); err == nil {
		*v.to = endAsked{given: true, hour: day.Hour(), minute: day.Minute()}
		return nil
	}
	at, err := time.Parse(time.RFC3339, text)
	if err != nil {
		return wrong("--end %q is not a time of day", text).hint("write it like 18:30, or 2026-11-02T18:30:00+01:00")
	}
	*v.to = endAsked{given: true, at: at}
	return nil
}

// after is the end that is meant of work that began at a moment, nil where none was
// given. The time of day is that of the maker's own zone.
func (a endAsked) after(from time.Time, zone *time.Location) *time.Time {
	if !a.given {
		return nil
	}
	end := a.at
	if end.IsZero() {
		from = from.In(zone)
		end = time.Date(from.Year(), from.Month(), from.Day(), a.hour, a.minute, 0, 0, zone)
		if end.Before(from) {
			end = time.Date(from.Year(), from.Month(), from.Day()+1, a.hour, a.minute, 0, 0, zone)
		}
	}
	return &end
}

// asItWas is the job as a request that came before saw it: an end means the same
// when it is sent again.
func asItWas(state tracker.State, id string) tracker.State {
	if _, sent := state.Repeated(id); !sent {
		return state
	}
	before, err := state.Before(id)
	if err != nil {
		return state
	}
	return before
}

// sittingAt is the sitting with an id, nil where there is none.
func sittingAt(state tracker.State, now time.Time, id string) *tracker.Sitting {
	for _, sitting := range state.Sittings(now) {
		if sitting.ID == id {
			return &sitting
		}
	}
	return nil
}
