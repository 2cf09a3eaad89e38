package cli

import (
	"context"
	"slices"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// entry is an event as the store has it now, and the job after it.
type entry struct {
	event    tracker.Event
	repeated bool // it was there before
	after    tracker.State
}

// newEvent is an event of now, by this maker. An id that was not given is made.
func (e *Env) newEvent(kind tracker.Kind, id string) (tracker.Event, error) {
	id, err := e.entryID(id)
	return tracker.Event{
		Schema: tracker.EventSchema, ID: id, At: e.Now(), By: e.User, Kind: kind,
	}, err
}

// warnShared says once, when the first entry is made, that a log on a network
// or in a synced folder may come to harm.
func (e *Env) warnShared(opened *store.Store, path string) {
	kind, shared := store.Shared(path)
	if !shared || !opened.WarnOnce("shared place") {
		return
	}
	e.say("quiltrun: warning: the log " + path + " lies on " + kind)
	e.hints("two machines that write it at once can damage it",
		"keep it on this machine's own disk: --store FILE, or XDG_DATA_HOME")
}

// sameEntry refuses an id that comes a second time with another content: an
// entry sent twice counts once, two entries must not pass for one.
func sameEntry(stored, event tracker.Event) error {
	if stored.Kind == event.Kind && stored.File == event.File &&
		slices.Equal(stored.Week, event.Week) && slices.Equal(stored.Days, event.Days) {
		return nil
	}
	return failed("the id %s was used before, for another entry", stored.ID).
		hint("give every entry an id of its own, or leave --id out")
}

// appendEntry adds an entry to a booked job: decide says which, from what the
// job looks like while nobody else can change it.
func (e *Env) appendEntry(ctx context.Context, typed string, decide func(tracker.State) (tracker.Event, error)) (entry, error) {
	opened, err := e.writing(ctx)
	if err != nil {
		return entry{}, err
	}
	defer opened.Close()
	id, err := bookedID(opened, typed)
	if err != nil {
		return entry{}, err
	}
	return appendTo(opened, id, decide)
}

// appendTo adds an event to a job's own and says what the job is like then.
func appendTo(opened *store.Store, id string, decide func(tracker.State) (tracker.Event, error)) (entry, error) {
	var before tracker.State
	event, repeated, err := opened.Append(id, func(events []tracker.Event) (_ tracker.Event, err error) {
		if before, err = folded(id, events); err != nil {
			return tracker.Event{}, err
		}
		return decide(before)
	})
	if err != nil || repeated {
		return entry{event, repeated, before}, err
	}
	after, err := before.With(event)
	return entry{event, repeated, after}, err
}
