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
			err = &DamagedError{Path: path, Fault: noSense, Err: fmt.Errorf("%v", p)}
		}
	}()
	return work()
}

// blame words an error of work on the file: what, where the system complained,
// and otherwise damage, since then the file's own content is at fault.
func blame(path, what string, err error) error {
	var damaged *DamagedError
	var system syscall.Errno
	switch {
	case errors.As(err, &damaged):
		return err
	case errors.As(err, &system):
		return fmt.Errorf("the log %s: %s: %w", path, what, err)
	}
	return &DamagedError{Path: path, Fault: noSense, Err: err}
}
