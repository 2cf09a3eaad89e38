package cli

import (
	"context"
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

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// BenchmarkTick compares one tick of a screen that stays open, from the key to
// the entry on disk and the state after it, with bare bbolt that opens a file of
// as many entries, writes the same bytes and closes it. The job is a quilt of
// 400 blocks. As in the store's benchmarks QUILTRUN_BENCH_DIR names a folder on
// a real disk, and the figures are medians of runs by turns.
func BenchmarkTick(b *testing.B) {
	for _, before := range []int{100, 1000} {
		b.Run(fmt.Sprintf("after %d ticks", before), func(b *testing.B) {
			bench := tickBenchAfter(b, before)
			var ours, raw []time.Duration
			for b.Loop() {
				if bench.n == benchPieces { // all is cut: go on in a new log
					bench = tickBenchAfter(b, before)
				}
				raw = append(raw, timed(b, bench.raw))
				ours = append(ours, timed(b, bench.tick))
			}
			slices.Sort(ours)
			slices.Sort(raw)
			mine, theirs := ours[len(ours)/2], raw[len(raw)/2]
			b.ReportMetric(0, "ns/op")
			b.ReportMetric(float64(mine.Microseconds()), "tick-µs")
			b.ReportMetric(float64(theirs.Microseconds()), "raw-µs")
			b.ReportMetric(float64(mine)/float64(theirs), "tick/raw")
		})
	}
}

// benchPieces is how many counts the job has of what is ticked.
const benchPieces = 2000

// tickBenchAfter is a screen after so many ticks.
func tickBenchAfter(b *testing.B, before int) *tickBench {
	bench := newTickBench(b)
	for range before {
		require.NoError(b, bench.tick())
		require.NoError(b, bench.raw())
	}
	return bench
}

func timed(b *testing.B, run func() error) time.Duration {
	begin := time.Now()
	err := run()
	took := time.Since(begin)
	require.NoError(b, err)
	return took
}

// tickBench is a booked job on a screen, and a bare file beside it.
type tickBench struct {
	env     Env
	state   tracker.State
	rawPath string
	n       int
	last    []byte
}

func newTickBench(b *testing.B) *tickBench {
	folder, err := os.MkdirTemp(os.Getenv("QUILTRUN_BENCH_DIR"), "quiltrun-bench")
	require.NoError(b, err)
	b.Cleanup(func() { _ = os.RemoveAll(folder) })
	t := &tickBench{rawPath: filepath.Join(folder, "raw.db")}
	t.env = Env{User: "Runa", Now: time.Now, given: given{store: filepath.Join(folder, "log.db")}}
	file := jobFile{"wall.yaml", wallSized()}
	job, err := file.parse()
	require.NoError(b, err)
	plan, err := file.plan(job, planner.Prior{})
	require.NoError(b, err)
	ledger := tracker.Freeze(plan)
	booked := tracker.Event{Schema: 1, ID: "booked", At: time.Now(), Kind: tracker.Booked, Revision: 1, File: string(file.data), Ledger: &ledger}
	opened, err := store.OpenForWriting(t.env.given.store, store.Waiting{})
	require.NoError(b, err)
	made, err := appendTo(opened, ledger.Job, func(tracker.State) (tracker.Event, error) { return booked, nil })
	require.NoError(b, errors.Join(err, opened.Close()))
	t.state = made.after
	t.last, err = json.Marshal(made.event)
	require.NoError(b, err)
	require.NoError(b, t.raw())
	return t
}

// tick checks off one count.
func (t *tickBench) tick() error {
	t.n++
	made, err := t.env.appendAfter(context.Background(), t.state, func(s tracker.State) (tracker.Event, error) {
		return s.Log(tracker.LogRequest{
			Operation: "cut", Lot: &tracker.Lot{Name: "Foam"}, Counts: []tracker.CountAsked{{Number: 1}},
			ID: fmt.Sprintf("0190f3a2-%08d", t.n), At: time.Now(), By: "Runa", Ticked: true, CatchUp: t.n == 1,
		})
	})
	if err != nil {
		return err
	}
	t.state = made.after
	t.last, err = json.Marshal(made.event)
	return err
}

// raw writes the bytes of the newest event as plainly as bbolt can.
func (t *tickBench) raw() error {
	db, err := bbolt.Open(t.rawPath, 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType, Timeout: time.Second})
	if err != nil {
		return err
	}
	err = db.Update(func(tx *bbolt.Tx) error {
		bucket, err := tx.CreateBucketIfNotExists([]byte("events"))
		if err != nil {
			return err
		}
		return putNext(bucket, t.last)
	})
	return errors.Join(err, db.Close())
}

func putNext(bucket *bbolt.Bucket, data []byte) error {
	n, err := bucket.NextSequence()
	if err != nil {
		return err
	}
	return bucket.Put(binary.BigEndian.AppendUint64(nil, n), data)
}
