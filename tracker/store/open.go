package store

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"time"

	"go.etcd.io/bbolt"
	bolterrors "go.etcd.io/bbolt/errors"

	"quiltrun/tracker"
)

// lockPoll is how often bbolt asks for the lock. It gives up that much before
// its time is over rather than overrun it.
const lockPoll = 50 * time.Millisecond

// options are what every log is opened with. Everything that bears on
// durability is left as bbolt has it.
func options(timeout time.Duration) *bbolt.Options {
	return &bbolt.Options{Timeout: timeout, FreelistType: bbolt.FreelistMapType}
}

// attempt opens the log once, waiting for its lock for at most timeout.
func attempt(path string, timeout time.Duration, write bool) (*Store, error) {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		if err := strayLink(path); err != nil {
			return nil, err
		}
		if !write {
			return &Store{path: path}, nil
		}
		if err := create(path); err != nil {
			return nil, err
		}
		info, err = os.Stat(path)
	}
	if err != nil {
		return nil, refusal(path, err, write)
	}
	// Opening a pipe would wait for ever, and bbolt would turn an empty file
	// into an empty log.
	if !info.Mode().IsRegular() {
		return nil, &DamagedError{Path: path, Fault: "it is not a file"}
	}
	if info.Size() == 0 {
		return nil, &DamagedError{Path: path, Fault: "it is empty"}
	}
	s := &Store{path: path, writing: write, known: map[string][]tracker.Event{}}
	if err := s.lock(timeout); err != nil {
		return nil, err
	}
	if err := s.settle(); err != nil {
		_ = s.Close() // what settle found matters more
		return nil, err
	}
	return s, nil
}

// lock opens the file and gets its lock.
func (s *Store) lock(timeout time.Duration) error {
	o := options(timeout)
	o.ReadOnly = !s.writing
	o.OpenFile = func(name string, flag int, mode os.FileMode) (*os.File, error) {
		f, err := os.OpenFile(name, flag&^os.O_CREATE, mode)
		s.file = f
		return f, err
	}
	err := guard(s.path, func() (err error) {
		s.db, err = bbolt.Open(s.path, 0o600, o)
		return err
	})
	if err == nil {
		return nil
	}
	s.db = nil
	if s.file != nil {
		// Where bbolt panicked it has left the file open and locked.
		_ = release(s.file)
	}
	return refusal(s.path, err, s.writing)
}

// settle checks, now that nobody can change it, that the file is the one that
// path names and that it is a whole log.
func (s *Store) settle() error {
	held, err := s.file.Stat()
	if err != nil {
		return refusal(s.path, err, s.writing)
	}
	if named, err := os.Stat(s.path); err != nil || !os.SameFile(held, named) {
		return errReplaced
	}
	fresh := false
	err = s.view(func(tx *bbolt.Tx) error {
		if err := recognise(s.path, tx, held.Size()); err != nil {
			return err
		}
		fresh = blank(tx)
		return nil
	})
	if err != nil || !s.writing || !fresh {
		return err
	}
	// Before the first entry is acknowledged the file's name must be on the
	// disk too. Whoever made the file may have been killed before it saw to it.
	return syncHome(s.path)
}

// refusal words an error met in opening the file.
func refusal(path string, err error, write bool) error {
	switch {
	case errors.Is(err, bolterrors.ErrTimeout):
		return errLocked
	case errors.Is(err, fs.ErrNotExist):
		return errReplaced
	case errors.Is(err, syscall.ENOTDIR):
		return &FolderError{Folder: filepath.Dir(path), Fault: "it is not a folder", Err: err}
	case write && denied(err) && readable(path):
		return &ReadOnlyError{Path: path, Err: err}
	}
	return blame(path, "cannot be opened", err)
}

// denied says that a file or disk may not be written.
func denied(err error) bool {
	return errors.Is(err, fs.ErrPermission) || errors.Is(err, errReadOnlyDisk)
}

func readable(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	_ = f.Close()
	return true
}

// strayLink refuses a path that leads over a link to something that is not
// there, as when the disk with the log is not plugged in. To take that for an
// empty log would mislead, and nothing can be created behind the link.
func strayLink(path string) error {
	for at := path; ; at = filepath.Dir(at) {
		target, err := os.Readlink(at)
		if err == nil {
			if _, err := os.Stat(at); err == nil {
				return nil
			}
			return &FolderError{Folder: filepath.Dir(path), Fault: fmt.Sprintf("%s is a link to %s, which is not there", at, target)}
		}
		if !errors.Is(err, fs.ErrNotExist) || at == filepath.Dir(at) {
			return nil
		}
	}
}
