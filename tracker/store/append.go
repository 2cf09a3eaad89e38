package store

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// Append adds one event to a job, or to the maker's own for job "". decide is
// called once, with the job's events so far, and says what to add; it must not
// change what it is given, nor append anything itself. Since the file is
// locked, nothing can come between the events that it sees and the one that it
// adds.
//
// The event gets the next sequence number and is given back as it was stored.
// When Append returns without an error the event is on the disk.
//
// Where decide finds that the event was logged before, it gives back the stored
// one, which has its number already: then nothing is added, and repeated is
// set. Where decide fails nothing is added, and its error is returned as it is.
//
// Any other error means that the event is not acknowledged, though after a
// failing disk it may be there all the same; sent again with the same id, it
// counts once.
func (s *Store) Append(job string, decide func(events []tracker.Event) (tracker.Event, error)) (ev tracker.Event, repeated bool, err error) {
	switch {
	case s.closed:
		return ev, false, errClosed
	case !s.writing:
		return ev, false, &ReadOnlyError{Path: s.path}
	case s.broken != nil:
		return ev, false, s.broken
	}
	var tx *bbolt.Tx
	err = s.guarded(func() (err error) {
		tx, err = s.db.Begin(true)
		return err
	})
	if err != nil {
		return ev, false, err
	}
	defer s.rollBack(tx)
	events, err := s.history(tx, job)
	if err != nil {
		return ev, false, err
	}
	ev, err = decide(slices.Clip(events))
	switch {
	case err != nil:
		return tracker.Event{}, false, err
	case ev.Seq != 0:
		return ev, true, s.confirm(ev, len(events))
	}
	ev.Seq = uint64(len(events)) + 1
	ev, data, err := encode(ev)
	if err != nil {
		return ev, false, err
	}
	if err := s.commit(tx, job, ev, data); err != nil {
		return ev, false, err
	}
	s.remember(job, events, ev)
	return ev, false, nil
}

// history gives a job's events, read from the file at most once.
func (s *Store) history(tx *bbolt.Tx, job string) ([]tracker.Event, error) {
	if events, ok := s.known[job]; ok {
		return events, nil
	}
	var events []tracker.Event
	err := s.guarded(func() (err error) {
		events, err = s.read(tx, job)
		return err
	})
	if err == nil {
		s.remember(job, events)
	}
	return events, err
}

// remember keeps a job's events for the next entry. Of those that were resumed
// nothing is kept: to copy them would cost more than to read what is new.
func (s *Store) remember(job string, events []tracker.Event, added ...tracker.Event) {
	if len(s.resumed[job]) == 0 {
		s.known[job] = append(events, added...)
	}
}

// commit writes the event, and the notes that were given since, in one
// transaction.
func (s *Store) commit(tx *bbolt.Tx, job string, ev tracker.Event, data []byte) error {
	err := s.guarded(func() error {
		bucket, err := makeEventsOf(tx, job)
		if err != nil {
			return err
		}
		if err := errors.Join(bucket.Put(seqKey(ev.Seq), data), noteClock(tx, job, ev), s.writeNotes(tx)); err != nil {
			return err
		}
		return tx.Commit()
	})
	if err == nil {
		s.notes = nil
		return nil
	}
	s.broken = blame(s.path, "did not take the entry, see whether its disk is full", err)
	return s.broken
}

// confirm makes sure that an event that is acknowledged again is on the disk:
// the process that wrote it may have been killed before it was.
func (s *Store) confirm(ev tracker.Event, last int) error {
	if ev.Seq > uint64(last) {
		return fmt.Errorf("entry %d was to be repeated, but there are only %d", ev.Seq, last)
	}
	if err := s.guarded(s.db.Sync); err != nil {
		return blame(s.path, "did not confirm the entry", err)
	}
	return nil
}

// rollBack ends a transaction that was not committed.
func (s *Store) rollBack(tx *bbolt.Tx) {
	// An error says that it was committed, or that bbolt stumbled: both are
	// known by now.
	_ = s.guarded(tx.Rollback)
}

// encode gives an event's stored form, and the event as that form reads. What
// cannot be read back is never written.
func encode(ev tracker.Event) (tracker.Event, []byte, error) {
	data, err := json.Marshal(ev)
	if err != nil {
		return ev, nil, fmt.Errorf("the entry cannot be stored: %w", err)
	}
	stored, err := decode(data)
	if err != nil {
		return ev, nil, fmt.Errorf("the entry could not be read again if it were stored: %w", err)
	}
	return stored, data, nil
}
