package store

import (
	"fmt"
	"time"
)

// HeldError says that the log could not be had in time. Mute is set when the
// disk did not even say who holds it, as network disks may.
type HeldError struct {
	Path   string
	Waited time.Duration
	Mute   bool
}

func (e *HeldError) Error() string {
	if e.Mute {
		return fmt.Sprintf("the log %s did not answer within %.1f s: "+
			"see whether it lies on a network or plug-in disk that is away, then try again",
			e.Path, e.Waited.Seconds())
	}
	return fmt.Sprintf("the log %s is in use by another quiltrun command or by the phone page (waited %.1f s): "+
		"let it finish or close it, then try again",
		e.Path, e.Waited.Seconds())
}

// DamagedError says that the file cannot be read as a log: it is damaged, or it
// never was one. Fault is a few plain words on how that shows; Err, if not nil,
// is what the file's library said.
type DamagedError struct {
	Path  string
	Fault string
	Err   error
}

func (e *DamagedError) Error() string {
	return fmt.Sprintf("%s is damaged or is not a quiltrun log (%s): "+
		"restore a copy of it, or name another file with --store", e.Path, e.Fault)
}

func (e *DamagedError) Unwrap() error { return e.Err }

// ReadOnlyError says that the log can be read but not written.
type ReadOnlyError struct {
	Path string
	Err  error
}

func (e *ReadOnlyError) Error() string {
	return fmt.Sprintf("the log %s is read-only, so nothing can be added to it, though what it says can be shown: "+
		"make the file writable, or name another with --store", e.Path)
}

func (e *ReadOnlyError) Unwrap() error { return e.Err }

// NewerError says that a newer program wrote the file, or an entry in it.
type NewerError struct {
	Path         string
	Schema, Know int // the file's, and the highest that this program knows
}

func (e *NewerError) Error() string {
	return fmt.Sprintf("the log %s was written by a newer quiltrun (schema %d; this one knows %d): "+
		"use the newer program; nothing has been changed", e.Path, e.Schema, e.Know)
}

// FolderError says that a folder cannot hold the log.
type FolderError struct {
	Folder string
	Fault  string
	Err    error
}

func (e *FolderError) Error() string {
	return fmt.Sprintf("the folder %s cannot hold the log (%s): "+
		"put that right, or name a file elsewhere with --store", e.Folder, e.Fault)
}

func (e *FolderError) Unwrap() error { return e.Err }
