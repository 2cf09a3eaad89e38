package store_test

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// Figures are worth something on a real disk only: QUILTRUN_BENCH_DIR names a
// folder on one, and tmpfs does not count. With -benchtime 300x each of the
// comparisons is the median of 300 runs of either side, by turns.

func benchFolder(b *testing.B) string {
	b.Helper()
	folder, err := os.MkdirTemp(os.Getenv("QUILTRUN_BENCH_DIR"), "quiltrun-bench")
	require.NoError(b, err)
	b.Cleanup(func() { _ = os.RemoveAll(folder) })
	return folder
}

// byTurns runs two rivals by turns and reports their medians and the ratio.
func byTurns(b *testing.B, ours, raw func(i int) error) {
	b.Helper()
	var oursTook, rawTook []time.Duration
	timed := func(took *[]time.Duration, run func(int) error, i int) {
		begin := time.Now()
		err := run(i)
		*took = append(*took, time.Since(begin))
		require.NoError(b, err)
	}
	for i := 0; b.Loop(); i++ {
		timed(&rawTook, raw, i)
		timed(&oursTook, ours, i)
	}
	mine, theirs := median(oursTook), median(rawTook)
	b.ReportMetric(0, "ns/op") // the two sides together say nothing
	b.ReportMetric(float64(mine.Microseconds()), "store-µs")
	b.ReportMetric(float64(theirs.Microseconds()), "raw-µs")
	b.ReportMetric(float64(mine)/float64(theirs), "store/raw")
}

func median(took []time.Duration) time.Duration {
	slices.Sort(took)
	return took[len(took)/2]
}

// rawOptions are what both sides open bbolt with.
var rawOptions = &bbolt.Options{FreelistType: bbolt.FreelistMapType, Timeout: time.Second}

// rawPut writes bytes as plainly as bbolt can: one bucket, one key, one commit.
func rawPut(db *bbolt.DB, i int, data []byte) error {
	return db.Update(func(tx *bbolt.Tx) error {
		bucket, err := tx.CreateBucketIfNotExists([]byte("events"))
		if err != nil {
			return err
		}
		return bucket.Put(binary.BigEndian.AppendUint64(nil, uint64(i)), data)
	})
}

func entryBytes(b *testing.B) []byte {
	b.Helper()
	data, err := json.Marshal(entry("0190-0000"))
	require.NoError(b, err)
	return data
}

func putEntry(s *store.Store, job string) error {
	_, _, err := s.Append(job, func([]tracker.Event) (tracker.Event, error) { return entry("0190-0000"), nil })
	return err
}

// BenchmarkSync states what the disk takes to sync one changed page.
func BenchmarkSync(b *testing.B) {
	f, err := os.Create(filepath.Join(benchFolder(b), "page"))
	require.NoError(b, err)
	defer f.Close()
	page := make([]byte, 4096)
	var took []time.Duration
	for i := 0; b.Loop(); i++ {
		_, err := f.WriteAt(page, int64(i%16)*4096)
		require.NoError(b, err)
		begin := time.Now()
		require.NoError(b, f.Sync())
		took = append(took, time.Since(begin))
	}
	b.ReportMetric(0, "ns/op")
	b.ReportMetric(float64(median(took).Microseconds()), "fsync-µs")
}

// BenchmarkAppend compares an entry in an open log with a bare commit of the
// same bytes.
func BenchmarkAppend(b *testing.B) {
	folder := benchFolder(b)
	db, err := bbolt.Open(filepath.Join(folder, "raw.db"), 0o600, rawOptions)
	require.NoError(b, err)
	defer db.Close()
	s, err := store.OpenForWriting(filepath.Join(folder, "log.db"), store.Waiting{})
	require.NoError(b, err)
	defer s.Close()
	data := entryBytes(b)
	byTurns(b, func(int) error { return putEntry(s, job) }, func(i int) error { return rawPut(db, i, data) })
}

// BenchmarkWhole compares what one command does, open, append and close, with
// bare bbolt doing the same in a file of as many entries. Every run logs to a
// job of its own, which has so many entries already: they are read, since what
// may be logged depends on them.
func BenchmarkWhole(b *testing.B) {
	for _, before := range []int{0, 10, 100} {
		b.Run(fmt.Sprintf("after %d entries", before), func(b *testing.B) {
			const jobs = 300
			folder, data := benchFolder(b), entryBytes(b)
			path, rawPath := filepath.Join(folder, "log.db"), filepath.Join(folder, "raw.db")
			fill(b, path, rawPath, jobs, before)
			byTurns(b, func(i int) error {
				s, err := store.OpenForWriting(path, store.Waiting{})
				if err != nil {
					return err
				}
				return errors.Join(putEntry(s, jobName(i%jobs)), s.Close())
			}, func(i int) error {
				db, err := bbolt.Open(rawPath, 0o600, rawOptions)
				if err != nil {
					return err
				}
				return errors.Join(rawPut(db, jobs*before+i, data), db.Close())
			})
		})
	}
}

func jobName(i int) string { return fmt.Sprintf("job-%04d", i) }

// fill makes a log with so many entries of each job, and a bare file with as
// many in all.
func fill(b *testing.B, path, rawPath string, jobs, entries int) {
	b.Helper()
	s, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(b, err)
	db, err := bbolt.Open(rawPath, 0o600, rawOptions)
	require.NoError(b, err)
	data := entryBytes(b)
	for i := range jobs * entries {
		require.NoError(b, putEntry(s, jobName(i%jobs)))
		require.NoError(b, rawPut(db, i, data))
	}
	require.NoError(b, errors.Join(s.Close(), db.Close()))
}

// BenchmarkReadOneJob shows that a job costs the same to read whether it is
// alone in the log or beside a thousand others.
func BenchmarkReadOneJob(b *testing.B) {
	for _, others := range []int{0, 1000} {
		b.Run(fmt.Sprintf("beside %d", others), func(b *testing.B) {
			path := filepath.Join(benchFolder(b), "log.db")
			s, err := store.OpenForWriting(path, store.Waiting{})
			require.NoError(b, err)
			for i := range others {
				add(b, s, jobName(i), entry("a"))
			}
			for range 100 {
				add(b, s, job, entry("a"))
			}
			require.NoError(b, s.Close())
			s, err = store.OpenForReading(path, store.Waiting{})
			require.NoError(b, err)
			defer s.Close()
			for b.Loop() {
				events, err := s.Events(job)
				require.NoError(b, err)
				require.Len(b, events, 100)
			}
		})
	}
}
