package cli

import (
	"slices"
	"strings"
	"time"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// startAlone appends the start of a clock, which nobody has two of: the maker's
// clocks in other jobs are stopped at that moment where that was asked, else the
// start is refused and they are named. Nothing is stopped for a start that is
// refused itself. Stopped is the jobs whose clocks were.
func (e *Env) startAlone(opened *store.Store, job string, r tracker.StartRequest, stop bool) (made entry, stopped []string, err error) {
	state, err := stateOf(opened, job)
	if err != nil {
		return entry{}, nil, err
	}
	if ev, err := state.Start(r); err != nil {
		return entry{}, nil, err
	} else if ev.Seq == 0 { // not sent before
		if stopped, err = e.stopOthers(opened, job, r.At, stop); err != nil {
			return entry{}, nil, err
		}
	}
	made, err = appendTo(opened, job, func(state tracker.State) (tracker.Event, error) { return state.Start(r) })
	return made, stopped, err
}

// stopOthers stops the maker's clocks in all jobs but one, or refuses to.
func (e *Env) stopOthers(opened *store.Store, job string, at time.Time, stop bool) ([]string, error) {
	running, err := e.running(opened, "")
	if err != nil {
		return nil, err
	}
	running = slices.DeleteFunc(running, func(other string) bool { return other == job })
	if len(running) > 0 && !stop {
		return nil, failed("your clock runs in %s, and nobody sits at two machines", strings.Join(running, ", ")).
			hint("stop it first: quiltrun stop %s", running[0]).hint("or start with --stop-others, which stops it now")
	}
	for _, other := range running {
		id, err := e.entryID("")
		if err != nil {
			return nil, err
		}
		if _, err := appendTo(opened, other, func(state tracker.State) (tracker.Event, error) {
			return state.Stop(id, nil, at, e.User)
		}); err != nil {
			return nil, err
		}
	}
	return running, nil
}
