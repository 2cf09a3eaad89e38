package store

import (
	"errors"
	"fmt"
	"runtime/debug"
	"syscall"
)

// noSense is the fault of a file whose pages contradict each other.
const noSense = "a part of it makes no sense"

// guard runs work on the file and turns a panic into a DamagedError. bbolt
// panics on pages that make no sense, and a page that the file is too short to
// hold faults on access, since the file is mapped into memory. No code of a
// caller may run inside work: its own bugs are no damage to the file.
func guard(path string, work func() error) (err error) {
	defer debug.SetPanicOnFault(debug.SetPanicOnFault(true))
	defer func() {
		if p := recover(); p != nil {
			err = &DamagedError{Path: path, Fault: noSense, Err: &stumble{p}}
		}
	}()
	return work()
}

// stumble is a panic of bbolt's. After one it may still hold its own locks, and
// whatever is asked of it next may wait for them for ever.
type stumble struct{ cause any }

func (s *stumble) Error() string { return fmt.Sprint(s.cause) }

// guarded is guard for an open log. After a stumble nothing runs any more.
func (s *Store) guarded(work func() error) error {
	if s.stumbled != nil {
		return s.stumbled
	}
	err := guard(s.path, work)
	var stumble *stumble
	if errors.As(err, &stumble) {
		s.stumbled = err
	}
	return err
}

// blame words an error of work on the file: what the log did not do, where the
// system complained, and otherwise damage, since then the file's own content is
// at fault.
func blame(path, what string, err error) error {
	var damaged *DamagedError
	var system syscall.Errno
	switch {
	case errors.As(err, &damaged):
		return err
	case errors.As(err, &system):
		return fmt.Errorf("the log %s %s: %w", path, what, err)
	}
	return &DamagedError{Path: path, Fault: noSense, Err: err}
}
