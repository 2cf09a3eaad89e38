package store

import (
	"bytes"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// clockStem begins the keys that name the jobs in which a clock was ever started:
// whoever looks for one that runs need not go through all jobs.
var clockStem = []byte("clock:")

// noteClock keeps that a clock was started in a job, in the transaction that
// starts it.
func noteClock(tx *bbolt.Tx, job string, ev tracker.Event) error {
	if ev.Kind != tracker.Started || ev.Ticked {
		return nil
	}
	meta, key := tx.Bucket(metaName), append(bytes.Clone(clockStem), job...)
	if meta.Get(key) != nil {
		return nil
	}
	return meta.Put(key, []byte{1})
}

// Clocked gives the ids of the jobs in which a clock was ever started, in the order
// of their bytes.
func (s *Store) Clocked() ([]string, error) {
	var jobs []string
	err := s.view(func(tx *bbolt.Tx) error {
		cursor := tx.Bucket(metaName).Cursor()
		for key, _ := cursor.Seek(clockStem); bytes.HasPrefix(key, clockStem); key, _ = cursor.Next() {
			jobs = append(jobs, string(key[len(clockStem):]))
		}
		return nil
	})
	return jobs, err
}

// Clocks gives those of the clocked jobs in which somebody's clock may run: the
// newest that they started or stopped is a start. It reads each job from the
// newest event backwards and no farther than that.
func (s *Store) Clocks(by string) ([]string, error) {
	clocked, err := s.Clocked()
	if err != nil {
		return nil, err
	}
	var jobs []string
	err = s.view(func(tx *bbolt.Tx) error {
		for _, job := range clocked {
			started, err := s.startedLast(tx, job, by)
			if err != nil {
				return err
			}
			if started {
				jobs = append(jobs, job)
			}
		}
		return nil
	})
	return jobs, err
}

// startedLast reports whether the newest that somebody started or stopped in a job
// is a start.
func (s *Store) startedLast(tx *bbolt.Tx, job, by string) (bool, error) {
	bucket := eventsOf(tx, job)
	if bucket == nil {
		return false, nil
	}
	cursor := bucket.Cursor()
	for key, data := cursor.Last(); key != nil; key, data = cursor.Prev() {
		if !ofKind(data, tracker.Started) && !ofKind(data, tracker.Stopped) {
			continue
		}
		ev, err := decode(data)
		if err != nil {
			seq, _ := seqOf(key)
			return false, s.badEntry(job, seq, "cannot be read", err)
		}
		if ev.By == by && !ev.Ticked {
			return ev.Kind == tracker.Started, nil
		}
	}
	return false, nil
}

// ofKind tells an event's kind by its bytes: no text in one holds a quote that is
// not escaped.
func ofKind(data []byte, kind tracker.Kind) bool {
	_, rest, found := bytes.Cut(data, []byte(`"kind":"`))
	return found && bytes.HasPrefix(rest, []byte(kind)) && bytes.HasPrefix(rest[len(kind):], []byte(`"`))
}
