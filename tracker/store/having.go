package store

import (
	"bytes"

	"go.etcd.io/bbolt"

	"quiltrun/tracker"
)

// JobsWith gives the ids of the jobs in which an event of the kind was ever
// logged, in the order of their bytes. It looks at the bytes of the events and
// reads none of them, so that it may name a job more, though never one less.
func (s *Store) JobsWith(kind tracker.Kind) ([]string, error) {
	mark := []byte(`"kind":"` + string(kind) + `"`)
	var jobs []string
	err := s.view(func(tx *bbolt.Tx) error {
		return tx.Bucket(jobsName).ForEachBucket(func(id []byte) error {
			events := eventsOf(tx, string(id))
			if events == nil {
				return nil
			}
			cursor := events.Cursor()
			for key, data := cursor.Last(); key != nil; key, data = cursor.Prev() {
				if bytes.Contains(data, mark) {
					jobs = append(jobs, string(id))
					break
				}
			}
			return nil
		})
	})
	return jobs, err
}
