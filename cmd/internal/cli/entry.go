package cli

import (
	"context"

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
	place, shared := store.Shared(path)
	if !shared || !opened.WarnOnce("shared place") {
		return
	}
	e.say("quiltrun: warning: the log " + path + " lies " + place)
	e.hints("two machines that write it at once can damage it",
		"keep it on this machine's own disk: --store FILE, or XDG_DATA_HOME")
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

// appendAfter adds an entry to a job whose state the caller has from before, as a
// screen does that stays open: only what others logged meanwhile is read.
func (e *Env) appendAfter(ctx context.Context, known tracker.State, decide func(tracker.State) (tracker.Event, error)) (entry, error) {
	opened, err := e.writingAgain(ctx)
	if err != nil {
		return entry{}, err
	}
	defer opened.Close()
	return appendOn(opened, known.Ledger.Job, known, decide)
}

// appendTo adds an event to a job's own and says what the job is like then.
func appendTo(opened *store.Store, id string, decide func(tracker.State) (tracker.Event, error)) (entry, error) {
	return appendOn(opened, id, tracker.State{}, decide)
}

// appendOn is appendTo for who knows the job as it was. The event is folded in
// before it is stored: an entry that cannot be read back would shut the maker
// out of the whole job.
func appendOn(opened *store.Store, id string, known tracker.State, decide func(tracker.State) (tracker.Event, error)) (entry, error) {
	var after tracker.State
	opened.Resume(id, known.Events())
	event, repeated, err := opened.Append(id, func(events []tracker.Event) (event tracker.Event, err error) {
		if after, err = through(id, known, events); err != nil {
			return event, err
		}
		if event, err = decide(after); err != nil || event.Seq != 0 {
			return event, err
		}
		numbered := event
		numbered.Seq = uint64(len(events)) + 1 // as the store is going to
		if after, err = after.With(numbered); err != nil {
			return event, failed("the entry was not stored, since it could not be read back: %v", err).
				hint("this is a fault in the program; the log is as it was")
		}
		return event, nil
	})
	return entry{event, repeated, after}, err
}
