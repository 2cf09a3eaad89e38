package store_test

import (
	"os"
	"path/filepath"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// The job that most tests log to, and two beside it.
const (
	job   = "estuary-lap"
	other = "saltmarsh-cot"
	third = "dune-king"
)

// patient is a wait that no slow machine outlasts.
const patient = time.Minute

// logPath is where a test's log is to be, in a folder that is still to be made.
// At the end of the test the file must be consistent.
func logPath(t testing.TB) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "data", "log.db")
	t.Cleanup(func() { checkFile(t, path) })
	return path
}

func checkFile(t testing.TB, path string) {
	t.Helper()
	faults, err := store.Check(path, store.Waiting{})
	require.NoError(t, err)
	require.Empty(t, faults)
}

// openToWrite and openToRead open a log and close it at the end of the test.
func openToWrite(t testing.TB, path string) *store.Store {
	t.Helper()
	s, err := store.OpenForWriting(path, store.Waiting{Limit: patient})
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, s.Close()) })
	return s
}

func openToRead(t testing.TB, path string) *store.Store {
	t.Helper()
	s, err := store.OpenForReading(path, store.Waiting{Limit: patient})
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, s.Close()) })
	return s
}

// entry is an event as a log command makes it: 12 pairs of the tide colourway,
// 35 minutes.
func entry(id string) tracker.Event {
	minutes := planner.Minutes(35)
	return tracker.Event{
		Schema: tracker.EventSchema, ID: id, By: "Maren", Kind: tracker.Logged, Revision: 1,
		At: time.Date(2026, 11, 24, 14, 5, 0, 0, time.FixedZone("", 3600)),
		Parts: []tracker.Part{{
			Operation: "sew-pairs", Lot: tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"},
			Count: 12, Minutes: &minutes,
		}},
	}
}

// add appends an event to a job.
func add(t testing.TB, s *store.Store, job string, ev tracker.Event) tracker.Event {
	t.Helper()
	stored, repeated, err := s.Append(job, func([]tracker.Event) (tracker.Event, error) { return ev, nil })
	require.NoError(t, err)
	require.False(t, repeated)
	return stored
}

// filled makes a log with n entries of the job, and closes it.
func filled(t testing.TB, path string, n int) {
	t.Helper()
	s, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(t, err)
	for i := range n {
		add(t, s, job, entry(string(rune('a'+i%26))))
	}
	require.NoError(t, s.Close())
}

// ids are the ids of a job's events in a file, in order.
func ids(t testing.TB, path, job string) []string {
	t.Helper()
	s, err := store.OpenForReading(path, store.Waiting{Limit: patient})
	require.NoError(t, err)
	events, err := s.Events(job)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	var ids []string
	for _, ev := range events {
		ids = append(ids, ev.ID)
	}
	return ids
}

// picture is everything about a file that reading must not change.
type picture struct {
	bytes    string
	modified time.Time
	mode     os.FileMode
}

func pictureOf(t testing.TB, path string) picture {
	t.Helper()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	info, err := os.Stat(path)
	require.NoError(t, err)
	return picture{string(data), info.ModTime(), info.Mode()}
}

func notOnWindows(t *testing.T, why string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("on Windows: " + why)
	}
}
