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

	"quiltrun/tracker"
)

// TestFiguresOfManyJobs prints what an answer about one job costs where a thousand
// jobs have a thousand entries each, beside the same job alone. It judges nothing:
// run it with -figures -v.
func TestFiguresOfManyJobs(t *testing.T) {
	if !*figures {
		return
	}
	dir := t.TempDir()
	quiltrun := build(t, dir, ".")
	alone, crowd := filepath.Join(dir, "alone.db"), filepath.Join(dir, "crowd.db")
	lap := filepath.Join(root, "examples", "estuary-lap.yaml")
	require.NoError(t, exec.Command(quiltrun, "book", lap, "--store", alone).Run())
	noteMuch(t, alone, "estuary-lap", 999)
	data, err := os.ReadFile(alone)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(crowd, data, 0o600))
	addJobs(t, crowd, "estuary-lap", 999)
	info, err := os.Stat(crowd)
	require.NoError(t, err)
	t.Logf("a log of 1,000 jobs and 1,000,000 entries: %d MB", info.Size()>>20)
	for _, of := range [][]string{{"left"}, {"history"}, {"left", "--blocks"}} {
		call := func(store string) func() {
			return command(t, quiltrun, append(of, "estuary-lap", "--store", store)...)
		}
		ratio(t, fmt.Sprintf("%v of a job among 1,000 / alone", of), call(crowd), call(alone))
	}
}

// noteMuch gives a job so many notes.
func noteMuch(t *testing.T, path, job string, n int) {
	db, err := bbolt.Open(path, 0o600, nil)
	require.NoError(t, err)
	defer db.Close()
	require.NoError(t, db.Update(func(tx *bbolt.Tx) error {
		events := tx.Bucket([]byte("jobs")).Bucket([]byte(job)).Bucket([]byte("events"))
		for i := range n {
			seq := uint64(i) + 2
			data, err := json.Marshal(tracker.Event{Schema: 1, ID: fmt.Sprintf("n%d", i), Seq: seq, At: time.Unix(1_790_000_000, 0).UTC(),
				By: "kelp", Kind: tracker.Noted, Revision: 1, Reason: "the blue box is on the upper board behind the door"})
			if err != nil {
				return err
			}
			if err := events.Put(binary.BigEndian.AppendUint64(nil, seq), data); err != nil {
				return err
			}
		}
		return nil
	}))
}

// addJobs puts so many jobs beside one, each with the same entries.
func addJobs(t *testing.T, path, job string, n int) {
	db, err := bbolt.Open(path, 0o600, &bbolt.Options{NoSync: true, FreelistType: bbolt.FreelistMapType})
	require.NoError(t, err)
	defer db.Close()
	for i := range n {
		require.NoError(t, db.Update(func(tx *bbolt.Tx) error {
			jobs := tx.Bucket([]byte("jobs"))
			from := jobs.Bucket([]byte(job)).Bucket([]byte("events"))
			made, err := jobs.CreateBucket(fmt.Appendf(nil, "mat-%04d", i))
			if err != nil {
				return err
			}
			to, err := made.CreateBucket([]byte("events"))
			if err != nil {
				return err
			}
			return from.ForEach(to.Put)
		}))
	}
	require.NoError(t, db.Sync())
}
