package store

import (
	"errors"
	"os"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// Store is an open log. It holds the file's lock until Close: shared for
// reading, alone for writing. It is for one goroutine at a time.
type Store struct {
	path    string
	file    *os.File
	db      *bbolt.DB // nil where there is no file: an empty log, for reading
	writing bool
	closed  bool

	// known holds what Append has read and written. The lock keeps it true.
	known map[string][]tracker.Event
	// resumed holds what the caller had read before. It is compared each time.
	resumed map[string][]tracker.Event
	notes   []string // to be written with the next entry
	// broken is why a commit failed. What the disk then holds is uncertain, so
	// that nothing more is written through this Store. stumbled is set when
	// bbolt panicked; then nothing is read either.
	broken   error
	stumbled error
}

// OpenForReading opens the log at path. Many readers may have it open at once,
// and none while there is a writer. A file that is not there is an empty log;
// nothing is created, and an existing file is left as it is to the byte.
//
// It fails with a HeldError, a DamagedError, a NewerError or a FolderError.
func OpenForReading(path string, wait Waiting) (*Store, error) {
	return open(path, wait, false)
}

// OpenForWriting opens the log at path for this Store alone, and creates it
// where it is not there: owner-only, in a folder that is owner-only where it
// had to be made, and never in place of a file that somebody else created in
// the meantime.
//
// It fails as OpenForReading does, or with a ReadOnlyError.
func OpenForWriting(path string, wait Waiting) (*Store, error) {
	return open(path, wait, true)
}

// Path is the file's path, as it was opened.
func (s *Store) Path() string { return s.path }

// errClosed keeps a log that was closed from being taken for an empty one.
var errClosed = errors.New("the log is closed already")

// Close lets go of the file. It loses nothing: every entry is on the disk
// already.
func (s *Store) Close() error {
	if s.closed || s.db == nil {
		s.closed = true
		return nil
	}
	s.closed = true
	if s.stumbled != nil {
		return release(s.file)
	}
	return guard(s.path, s.db.Close)
}

// view runs read in a read transaction. Without a file there is nothing to
// read, and read does not run.
func (s *Store) view(read func(*bbolt.Tx) error) error {
	if s.closed {
		return errClosed
	}
	if s.db == nil {
		return nil
	}
	return s.guarded(func() error { return s.db.View(read) })
}
