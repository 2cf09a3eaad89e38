package main

import (
	"encoding/binary"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// The log that TestFiguresOfManyJobs makes.
const (
	manyJobs      = 1000
	eventsOfAJob  = 1000
	jobsOfACommit = 20
)

// TestFiguresOfManyJobs prints what left costs of one job among a thousand with a
// million events, against the same job alone. The logs are written once, straight
// into their buckets: a commit an entry would take the better part of an hour.
func TestFiguresOfManyJobs(t *testing.T) {
	if !*figures {
		return
	}
	dir := t.TempDir()
	quiltrun := build(t, dir, ".")
	events := busyJob(t)
	alone, among := filepath.Join(dir, "alone.db"), filepath.Join(dir, "among.db")
	writeJobs(t, alone, events, 500, 501)
	writeJobs(t, among, events, 0, manyJobs)
	info, err := os.Stat(among)
	require.NoError(t, err)
	t.Logf("%d jobs of %d events each: %d MB in %s", manyJobs, len(events), info.Size()>>20, dir)

	left := []string{"left", jobNumber(500), "--store"}
	ratio(t, "left of a job among a thousand / alone", command(t, quiltrun, append(left, among)...), command(t, quiltrun, append(left, alone)...))
	ratio(t, "stop with no clock among a thousand / version", func() { _ = exec.Command(quiltrun, "stop", "--store", among).Run() }, command(t, quiltrun, "--version"))
}

func jobNumber(n int) string { return fmt.Sprintf("sea-wall-%04d", n) }

// busyJob is the events of one job with so many entries in order of work, each of
// one count.
func busyJob(t *testing.T) []tracker.Event {
	data, err := os.ReadFile(filepath.Join(root, "testdata", "breakwater-400.yaml"))
	require.NoError(t, err)
	job, err := planner.Parse("breakwater-400.yaml", data)
	require.NoError(t, err)
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	ledger := tracker.Freeze(plan)
	begin := time.Date(2026, 11, 2, 9, 0, 0, 0, time.UTC)
	s, err := tracker.Fold([]tracker.Event{{Schema: tracker.EventSchema, ID: "booking", Seq: 1, At: begin, By: "kelp",
		Kind: tracker.Booked, Revision: 1, File: string(data), Ledger: &ledger}})
	require.NoError(t, err)
	for _, o := range ledger.Operations {
		for row, _ := s.Row(o.Key, o.Lot); row.Left() > 0; row, _ = s.Row(o.Key, o.Lot) { // what came before may have been logged along
			n := len(s.Events())
			if n == eventsOfAJob {
				return s.Events()
			}
			ev, err := s.Log(tracker.LogRequest{Operation: o.Key, Lot: &o.Lot, Counts: []tracker.CountAsked{{Number: 1}}, CatchUp: true, Ticked: true,
				ID: fmt.Sprintf("0190f3a2-7c1e-4f6a-9d3b-%012d", n), At: begin.Add(time.Duration(n) * time.Minute), By: "kelp"})
			require.NoError(t, err)
			ev.Seq = uint64(n) + 1
			s, err = s.With(ev)
			require.NoError(t, err)
		}
	}
	return s.Events()
}

// writeJobs makes a log with the jobs of the numbers from first up to before end.
func writeJobs(t *testing.T, path string, events []tracker.Event, first, end int) {
	opened, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(t, err)
	require.NoError(t, opened.Close())
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{FreelistType: bbolt.FreelistMapType})
	require.NoError(t, err)
	rows := make([][]byte, len(events))
	for i, ev := range events {
		rows[i], err = json.Marshal(ev)
		require.NoError(t, err)
	}
	for from := first; from < end; from += jobsOfACommit {
		require.NoError(t, db.Update(func(tx *bbolt.Tx) error {
			for n := from; n < min(end, from+jobsOfACommit); n++ {
				if err := writeJob(tx, jobNumber(n), events[0], rows); err != nil {
					return err
				}
			}
			return nil
		}))
	}
	require.NoError(t, db.Close())
}

func writeJob(tx *bbolt.Tx, id string, booked tracker.Event, rows [][]byte) error {
	ledger := *booked.Ledger
	ledger.Job = id
	booked.Ledger = &ledger
	first, err := json.Marshal(booked)
	if err != nil {
		return err
	}
	job, err := tx.Bucket([]byte("jobs")).CreateBucket([]byte(id))
	if err != nil {
		return err
	}
	bucket, err := job.CreateBucket([]byte("events"))
	if err != nil {
		return err
	}
	bucket.FillPercent = 1
	for i, row := range rows {
		if i == 0 {
			row = first
		}
		if err := bucket.Put(binary.BigEndian.AppendUint64(nil, uint64(i)+1), row); err != nil {
			return err
		}
	}
	return nil
}
