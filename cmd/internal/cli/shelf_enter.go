package cli

import (
	"context"
	"slices"
	"strings"

	"quiltrun/cmd/internal/render"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

// enterShelf appends an entry of the shelf and shows what it did. Decide says what
// is entered, of the shelf as it is while nobody else can change it.
func (e *Env) enterShelf(ctx context.Context, id, reason string, decide func(shelf.Shelf) (tracker.Shelf, error)) error {
	if err := plainUTF8("--reason", reason, "leave --reason out"); err != nil {
		return err
	}
	return e.appendShelf(ctx, tracker.Shelved, id, func(stock shelf.Shelf, event tracker.Event) (tracker.Event, error) {
		entry, err := decide(stock)
		if err != nil {
			return event, err
		}
		if err := stock.Check(entry); err != nil {
			return event, err
		}
		event.Shelf, event.Reason = &entry, reason
		return event, nil
	})
}

// appendShelf is one commit to the maker's own log. The jobs are read before it,
// under the same lock.
func (e *Env) appendShelf(ctx context.Context, kind tracker.Kind, id string, decide func(shelf.Shelf, tracker.Event) (tracker.Event, error)) error {
	event, err := e.newEvent(kind, id)
	if err != nil {
		return err
	}
	opened, err := e.creating(ctx)
	if err != nil {
		return err
	}
	defer opened.Close()
	states, err := allStates(opened)
	if err != nil {
		return err
	}
	var all []tracker.Event
	event, repeated, err := opened.Append("", func(events []tracker.Event) (tracker.Event, error) {
		all = events
		at := slices.IndexFunc(events, func(stored tracker.Event) bool { return stored.ID == event.ID })
		before := events
		if at >= 0 {
			before = events[:at] // sent again, it means what it meant then
		}
		stock, err := shelf.Fold(before, states)
		if err != nil {
			return event, unreadableShelf(err)
		}
		sent, err := decide(stock, event)
		switch {
		case at >= 0 && err != nil:
			return event, events[at].SentAgain(tracker.Event{})
		case at >= 0:
			return events[at], events[at].SentAgain(sent)
		}
		return sent, err
	})
	if err != nil {
		return err
	}
	if !repeated {
		all = append(all, event)
	}
	return e.showEntered(opened, all, event, repeated)
}

// showEntered shows an entry and its item as it is now.
func (e *Env) showEntered(opened *store.Store, maker []tracker.Event, event tracker.Event, repeated bool) error {
	stock, err := shelfAfter(opened, maker)
	if err != nil {
		return err
	}
	if e.given.json {
		return render.ShelvedJSON(e.Out, stock, event, repeated)
	}
	return render.Shelved(e.Out, stock, event, repeated, e.look())
}

// textOf is arguments as one text: names and measures need no quotes.
func textOf(args []string) string { return strings.Join(strings.Fields(strings.Join(args, " ")), " ") }
