package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"reflect"
	"strings"
	"sync"
	"time"

	"quiltrun/cmd/internal/render"
	"quiltrun/cmd/internal/tick"
	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// openLog is the log of one job while a screen is open on it: the file itself is
// opened only for moments.
type openLog struct {
	env   Env
	mu    sync.Mutex // one hand at a time: keys write, and a look comes by the clock
	state tracker.State
	seen  fileStamp // of the file as state was read from it

	// What the plan on the screen was made of.
	file  string
	prior planner.Prior
}

// fileStamp tells a file that was written to from one that was not.
type fileStamp struct {
	size int64
	at   time.Time
}

// stamp looks at the file without opening it.
func (l *openLog) stamp() fileStamp {
	path, err := l.env.storePath()
	if err != nil {
		return fileStamp{}
	}
	info, err := os.Stat(path)
	if err != nil {
		return fileStamp{}
	}
	return fileStamp{info.Size(), info.ModTime()}
}

// write makes an entry of a request. Somebody who has the log open is no trouble:
// the request is kept and sent again.
func (l *openLog) write(ctx context.Context, r tick.Request) tick.Answer {
	l.mu.Lock()
	defer l.mu.Unlock()
	made, err := l.env.appendAfter(ctx, l.state, func(s tracker.State) (tracker.Event, error) {
		l.state = s // as it is now, whatever comes of the request
		return r.Decide(s, l.env.User)
	})
	if err != nil {
		// All but a held log is final: the same request would fail again.
		var held *store.HeldError
		return tick.Answer{Request: r, State: l.state, Held: errors.As(err, &held), Trouble: inOneSentence(err)}
	}
	l.state = made.after
	return tick.Answer{Request: r, State: made.after, Event: made.event, Repeated: made.repeated}
}

// look reads what others have written since, if they have.
func (l *openLog) look(ctx context.Context) (tick.News, bool) {
	l.mu.Lock()
	defer l.mu.Unlock()
	// Size and time tell enough: who misses a change for a second sees it with the
	// next key, which reads the log in any case.
	now := l.stamp()
	if now == l.seen {
		return tick.News{}, false
	}
	path, err := l.env.openable(ctx)
	if err != nil {
		return tick.News{}, false
	}
	// A look waits for nobody, since a key may come at any moment.
	opened, err := store.OpenForReading(path, store.Waiting{Limit: completionWait})
	if err != nil {
		return tick.News{}, false // the next look may do better
	}
	defer opened.Close()
	// Only what is new is read, however long the log is.
	opened.Resume(l.state.Ledger.Job, l.state.Events())
	events, err := opened.Events(l.state.Ledger.Job)
	if err != nil {
		return tick.News{}, false
	}
	state, err := l.state.Through(events)
	if err != nil {
		return tick.News{}, false
	}
	l.seen, l.state = now, state
	return tick.News{State: state, Guide: l.guide()}, true
}

// guide is what the plan says now, nil where it is what it was, or where it cannot
// be made: the one before is better than none.
func (l *openLog) guide() *tick.Guide {
	prior := l.state.Prior()
	if l.file == l.state.File && reflect.DeepEqual(l.prior, prior) {
		return nil
	}
	l.file, l.prior = l.state.File, prior
	plan, err := bookedPlan(l.state)
	if err != nil {
		return nil
	}
	guide := tick.NewGuide(plan)
	return &guide
}

// inOneSentence is an error as a line of the screen has room for it.
func inOneSentence(err error) string {
	f := worded(err)
	return strings.Join(append([]string{f.what}, f.hints...), "; ")
}

// tickScreen runs the screen, and writes what it left unwritten.
func (e *Env) tickScreen(ctx context.Context, screen *tick.Screen, state tracker.State) error {
	words := make(chan string, 1)
	log := &openLog{env: *e, state: state, file: state.File, prior: state.Prior()}
	log.env.Err, log.env.Width, log.env.ErrTerminal = sentences(words), 0, false
	log.seen = log.stamp()
	err := tick.Run(ctx, screen, tick.Log{
		Write: func(r tick.Request) tick.Answer { return log.write(ctx, r) },
		Look:  func() (tick.News, bool) { return log.look(ctx) },
	}, tick.Terminal{
		In: e.In, Out: e.direct, Now: e.Now, Words: words,
		NewID: func() (string, error) { return newID(e.Random) },
	})
	// Whatever became of the screen, a fault of the terminal included, keys that were
	// pressed are written first and told of afterwards.
	rest := e.writeRest(ctx, screen, log)
	for _, line := range screen.Sitting() {
		fmt.Fprintln(e.Out, strings.Join(e.look().Fit(line, e.Width), "\n"))
	}
	if rest != nil {
		return rest
	}
	return err
}

// writeRest writes what still waited when the screen was left, and says how to
// enter what cannot be written even now: all that comes after an entry that has
// to wait waits too.
func (e *Env) writeRest(ctx context.Context, screen *tick.Screen, log *openLog) error {
	log.env.Err = e.Err // the screen is gone: waiting is said where all else is
	refusals := screen.Refusals()
	var unwritten []string
	held := false
	for _, r := range screen.Unwritten() {
		if !held {
			answer := log.write(ctx, r)
			if answer.Trouble == "" {
				screen.Answered(answer)
				continue
			}
			refusals = append(refusals, answer.Trouble)
			held = answer.Held
		}
		unwritten = append(unwritten, r.Command(log.state.Ledger.Job))
	}
	if len(refusals) == 0 {
		return nil
	}
	lost := failed("not all is in the log: %s", strings.Join(refusals, "; "))
	for _, call := range unwritten {
		lost.hint("to enter: %s", call)
	}
	return lost
}

// sentences sends lines that are meant for standard error to the screen, and
// drops what nobody has read yet: the newest counts.
type sentences chan string

func (s sentences) Write(data []byte) (int, error) {
	text := strings.TrimSpace(strings.TrimPrefix(string(bytes.TrimSpace(data)), "quiltrun: "))
	select {
	case s <- text:
	default:
	}
	return len(data), nil
}

// tickLines works line by line.
func (e *Env) tickLines(ctx context.Context, screen *tick.Screen, id string, state tracker.State) error {
	log := &openLog{env: *e, state: state}
	// Ids that go by the line make a script that is sent again count once.
	n := 0
	refused, err := tick.Lines(screen, tick.Piped{
		In: e.In, Now: e.Now,
		NewID: func() (string, error) {
			if n++; id != "" {
				return fmt.Sprintf("%s-%d", id, n), nil
			}
			return newID(e.Random)
		},
		Write: func(r tick.Request) tick.Answer { return log.write(ctx, r) },
		Wrote: func(a tick.Answer) error {
			if e.given.json {
				return render.TickedJSON(e.direct, a.State, a.Event, a.Repeated)
			}
			return render.Ticked(e.direct, a.State, a.Event, a.Repeated, e.look())
		},
		Refused: func(line int, words string) { e.say(fmt.Sprintf("quiltrun: line %d: %s", line, words)) },
		Moved: func(row tracker.Row) error {
			if e.given.json {
				return render.TurnedJSON(e.direct, state.Ledger.Job, row)
			}
			return render.Turned(e.direct, row, e.look())
		},
	})
	switch {
	case err != nil:
		return err
	case refused > 0:
		return failed("%s came to no entry; what was accepted is in the log", english.Count(refused, "line"))
	}
	return nil
}
