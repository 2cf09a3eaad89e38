package cli

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"time"

	"quiltrun/tracker/store"
)

// waitLimit is how long a command waits for a store that another has open.
const waitLimit = 2 * time.Second

// storePath is the file that jobs and entries are kept in.
func (e *Env) storePath() (string, error) {
	switch {
	case e.given.store != "":
		return e.given.store, nil
	case e.DataDir == "":
		return "", failed("there is no folder to keep the store in").hint("name a file for it: --store FILE")
	}
	return filepath.Join(e.DataDir, "quiltrun", "quiltrun.db"), nil
}

// read has the store read, and lets go of it before an answer is made of it:
// nobody can write meanwhile. A store that is not there reads as empty.
func (e *Env) read(ctx context.Context, look func(*store.Store) error) error {
	path, err := e.openable(ctx)
	if err != nil {
		return err
	}
	opened, err := store.OpenForReading(path, e.waiting())
	if err != nil {
		return err
	}
	defer opened.Close()
	return look(opened)
}

// creating opens the store to write, and makes it where there is none.
func (e *Env) creating(ctx context.Context) (*store.Store, error) {
	path, err := e.openable(ctx)
	if err != nil {
		return nil, err
	}
	opened, err := store.OpenForWriting(path, e.waiting())
	if err == nil {
		e.warnShared(opened, path)
	}
	return opened, err
}

// writing opens a store to write that must be there: a mistyped path is not to
// become a new store.
func (e *Env) writing(ctx context.Context) (*store.Store, error) {
	opened, err := e.writingAgain(ctx)
	if err == nil {
		e.warnShared(opened, opened.Path())
	}
	return opened, err
}

// writingAgain is writing for who had it open before, and was warned then of
// the place where it lies.
func (e *Env) writingAgain(ctx context.Context) (*store.Store, error) {
	path, err := e.openable(ctx)
	if err != nil {
		return nil, err
	}
	if _, err := os.Stat(path); errors.Is(err, fs.ErrNotExist) {
		return nil, failed("no job is booked yet: there is no log %s", path).
			hint("take a job on with: quiltrun book FILE").hint("or name another store with --store FILE")
	}
	return store.OpenForWriting(path, e.waiting())
}

// openable is the path to open, unless the call is over already.
func (e *Env) openable(ctx context.Context) (string, error) {
	if err := ctx.Err(); err != nil {
		return "", err
	}
	return e.storePath()
}

// waiting says how long to wait for the store, and where to say so.
func (e *Env) waiting() store.Waiting {
	return store.Waiting{Limit: waitLimit, Say: func(words string) { e.say("quiltrun: " + words) }}
}
