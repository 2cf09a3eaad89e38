package store

import (
	"errors"
	"slices"

	"go.etcd.io/bbolt"
)

// WarnOnce says whether the note, such as a warning about the place of the
// file, is still to be given: whether it is the first time for this file. That
// it was given is stored together with the next entry, at no cost of its own;
// if none follows, it is the first time again.
//
// On a log opened for reading it is never the first time, since nothing could
// be stored.
func (s *Store) WarnOnce(note string) (first bool) {
	if !s.writing || slices.Contains(s.notes, note) {
		return false
	}
	given := true
	err := s.view(func(tx *bbolt.Tx) error {
		given = tx.Bucket(metaName).Get(noteKey(note)) != nil
		return nil
	})
	if err != nil || given {
		return false
	}
	s.notes = append(s.notes, note)
	return true
}

func (s *Store) writeNotes(tx *bbolt.Tx) error {
	var err error
	for _, note := range s.notes {
		err = errors.Join(err, tx.Bucket(metaName).Put(noteKey(note), []byte("given")))
	}
	return err
}

func noteKey(note string) []byte { return []byte(noteStem + note) }
