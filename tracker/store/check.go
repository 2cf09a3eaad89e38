package store

import (
	"fmt"

	"go.etcd.io/bbolt"
)

// Check reads the whole log at path and says what is wrong with it, one
// sentence a fault; none means that every entry can be read and that the file's
// own book-keeping adds up. A file that is not there has no faults. The error
// says why the file could not be checked at all.
func Check(path string, wait Waiting) (faults []string, err error) {
	s, err := OpenForReading(path, wait)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	if err := s.readAll(); err != nil {
		return []string{err.Error()}, nil
	}
	err = s.view(func(tx *bbolt.Tx) error {
		for fault := range tx.Check() {
			faults = append(faults, fmt.Sprintf("%s: %v", path, fault))
		}
		return nil
	})
	return faults, err
}

// readAll reads every entry. It comes before bbolt's own check, which works in
// a goroutine of its own and could bring the program down where a page points
// to nowhere.
func (s *Store) readAll() error {
	jobs, err := s.Jobs()
	if err != nil {
		return err
	}
	for _, job := range append(jobs, "") {
		if _, err := s.Events(job); err != nil {
			return err
		}
	}
	return nil
}
