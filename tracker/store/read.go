package store

import (
	"encoding/json"
	"fmt"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// Jobs gives the ids of all jobs that were ever booked, in the order of their
// bytes.
func (s *Store) Jobs() ([]string, error) {
	var jobs []string
	err := s.view(func(tx *bbolt.Tx) error {
		return tx.Bucket(jobsName).ForEachBucket(func(id []byte) error {
			jobs = append(jobs, string(id))
			return nil
		})
	})
	return jobs, err
}

// Events gives the events of one job in the order in which they were logged,
// and none for a job that was never booked. It reads that job's bucket alone,
// so its cost does not depend on how many other jobs there are.
func (s *Store) Events(job string) ([]tracker.Event, error) {
	var events []tracker.Event
	err := s.view(func(tx *bbolt.Tx) (err error) {
		events, err = s.read(tx, job)
		return err
	})
	return events, err
}

// MakerEvents gives what the maker has set for all jobs, in the order in which
// it was set.
func (s *Store) MakerEvents() ([]tracker.Event, error) { return s.Events("") }

// NewestOwn gives the newest of the maker's own events of a kind, false where
// there is none such. It reads from the newest backwards and no farther than that.
func (s *Store) NewestOwn(kind tracker.Kind) (ev tracker.Event, found bool, err error) {
	err = s.view(func(tx *bbolt.Tx) error {
		cursor := eventsOf(tx, "").Cursor()
		for key, data := cursor.Last(); key != nil; key, data = cursor.Prev() {
			var head struct{ Kind tracker.Kind }
			if err := json.Unmarshal(data, &head); err != nil {
				seq, _ := seqOf(key)
				return s.badEntry("", seq, "cannot be read", err)
			}
			if head.Kind == kind {
				found = true
				ev, err = decode(data)
				return err
			}
		}
		return nil
	})
	return ev, found, err
}

// read gives the events of a job, or the maker's for "".
func (s *Store) read(tx *bbolt.Tx, job string) ([]tracker.Event, error) {
	if events, ok, err := s.since(tx, job); ok {
		return events, err
	}
	bucket := eventsOf(tx, job)
	if bucket == nil {
		return nil, nil
	}
	return s.readFrom(bucket, job, nil)
}

// readFrom gives the events of a bucket, of which the first are known.
func (s *Store) readFrom(bucket *bbolt.Bucket, job string, events []tracker.Event) ([]tracker.Event, error) {
	cursor := bucket.Cursor()
	for key, data := cursor.Seek(seqKey(uint64(len(events)) + 1)); key != nil; key, data = cursor.Next() {
		want := uint64(len(events)) + 1
		if seq, err := seqOf(key); err != nil || seq != want {
			return nil, s.badEntry(job, want, "is missing", err)
		}
		ev, err := decode(data)
		switch {
		case err == nil && ev.Schema > tracker.EventSchema:
			return nil, &NewerError{Path: s.path, Schema: ev.Schema, Know: tracker.EventSchema}
		case err != nil || ev.Seq != want:
			return nil, s.badEntry(job, want, "cannot be read", err)
		}
		events = append(events, ev)
	}
	return events, nil
}

// badEntry says which entry of which job is not as it was written.
func (s *Store) badEntry(job string, seq uint64, what string, err error) error {
	whose := "job " + job
	if job == "" {
		whose = "the maker's own"
	}
	return &DamagedError{Path: s.path, Fault: fmt.Sprintf("entry %d of %s %s", seq, whose, what), Err: err}
}

// decode reads a stored event. It copies: nothing of it points into the file.
// A field that this program does not know is passed over.
func decode(data []byte) (tracker.Event, error) {
	var ev tracker.Event
	err := json.Unmarshal(data, &ev)
	return ev, err
}
