package store

import (
	"bytes"
	"encoding/json"
	"slices"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// Resume says which events of a job its caller read of this log before, all of
// them from the first on. From then on Events and Append read only what came
// since, and give it behind these: a screen that stays open needs the whole
// history but once. Events must not be changed afterwards.
//
// What is stored under the last one's number is compared with it, byte by byte.
// Where that is another event, or none, another log lies in the file's place, and
// everything is read anew.
func (s *Store) Resume(job string, events []tracker.Event) {
	if s.resumed == nil {
		s.resumed = map[string][]tracker.Event{}
	}
	s.resumed[job] = slices.Clip(events)
}

// since gives a job's events from those that were resumed on, and false where
// they are not the beginning of what is stored.
func (s *Store) since(tx *bbolt.Tx, job string) ([]tracker.Event, bool, error) {
	known := s.resumed[job]
	bucket := eventsOf(tx, job)
	if len(known) == 0 || bucket == nil {
		return nil, false, nil
	}
	last := uint64(len(known))
	data, err := json.Marshal(known[last-1])
	if err != nil || !bytes.Equal(data, bucket.Get(seqKey(last))) {
		return nil, false, nil
	}
	events, err := s.readFrom(bucket, job, known)
	return events, true, err
}
