package store

import (
	"errors"
	"time"
)

// Waiting says how long to wait for a log that another process has open.
type Waiting struct {
	// Limit is the longest wait; 0 means 2 s.
	Limit time.Duration
	// Say, if not nil, is called once with a sentence for the person when the
	// wait gets noticeable, after about 200 ms.
	Say func(string)
}

const (
	usualLimit = 2 * time.Second
	noticeable = 200 * time.Millisecond
	// grace is how much longer than asked a network disk may take to answer at
	// all. They are known to sit on a lock request whatever its time limit.
	grace = time.Second
)

var (
	errLocked   = errors.New("another process holds the lock")
	errReplaced = errors.New("another file took the path while waiting")
	errMute     = errors.New("the disk does not answer")
)

// open tries until it has the log, meets an error that waiting cannot mend, or
// has waited long enough.
func open(path string, wait Waiting, write bool) (*Store, error) {
	if wait.Limit <= 0 {
		wait.Limit = usualLimit
	}
	try := attempt
	if onNetwork(path) {
		try = func(path string, timeout time.Duration, write bool) (*Store, error) {
			return within(timeout+grace, func() (*Store, error) { return attempt(path, timeout, write) })
		}
	}
	begin := time.Now()
	said := wait.Say == nil
	for {
		span := wait.Limit - time.Since(begin)
		if !said {
			span = min(span, noticeable)
		}
		span = max(span, time.Millisecond) // for bbolt 0 is for ever
		s, err := try(path, span, write)
		waited := time.Since(begin)
		switch {
		case errors.Is(err, errMute):
			return nil, &HeldError{Path: path, Waited: waited, Mute: true}
		case !errors.Is(err, errLocked) && !errors.Is(err, errReplaced):
			return s, err
		case waited >= wait.Limit-lockPoll:
			return nil, &HeldError{Path: path, Waited: waited}
		}
		if !said && errors.Is(err, errLocked) {
			said = true
			wait.Say("waiting for another quiltrun command, or the phone page, to let go of " + path)
		}
	}
}

// within runs work and waits for it at most for limit; then the answer is
// errMute, and a log that is opened too late is closed again.
func within(limit time.Duration, work func() (*Store, error)) (*Store, error) {
	type outcome struct {
		store *Store
		err   error
	}
	done := make(chan outcome, 1)
	go func() {
		s, err := work()
		done <- outcome{s, err}
	}()
	timer := time.NewTimer(limit)
	defer timer.Stop()
	select {
	case o := <-done:
		return o.store, o.err
	case <-timer.C:
		go func() {
			if o := <-done; o.store != nil {
				_ = o.store.Close() // nobody is left to tell
			}
		}()
		return nil, errMute
	}
}
