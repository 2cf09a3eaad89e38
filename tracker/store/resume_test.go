package store_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// readOnce is the events of the job, read by somebody who keeps them.
func readOnce(t testing.TB, path string) []tracker.Event {
	t.Helper()
	s, err := store.OpenForReading(path, store.Waiting{})
	require.NoError(t, err)
	events, err := s.Events(job)
	require.NoError(t, err)
	require.NoError(t, s.Close())
	return events
}

func TestWhoKnowsTheHistoryReadsOnlyWhatCameSince(t *testing.T) {
	path := logPath(t)
	filled(t, path, 5)
	known := readOnce(t, path)
	known[1].Reason = "kept by the reader, not by the file" // so that one sees which is given

	s := openToWrite(t, path)
	s.Resume(job, known)
	var seen []tracker.Event
	for _, id := range []string{"x", "y"} {
		_, _, err := s.Append(job, func(events []tracker.Event) (tracker.Event, error) {
			seen = events
			return entry(id), nil
		})
		require.NoError(t, err)
		assert.Equal(t, known, seen[:5])
	}
	assert.Len(t, seen, 6)
	assert.Equal(t, "x", seen[5].ID, "what was added is among them")

	events, err := s.Events(job)
	require.NoError(t, err)
	assert.Len(t, events, 7)
	assert.Equal(t, known, events[:5])
	own, err := s.Events(other)
	require.NoError(t, err)
	assert.Empty(t, own)
}

func TestAnotherLogInTheFilesPlaceIsReadAnew(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "log.db")
	filled(t, path, 3)
	copied := filepath.Join(folder, "copy.db")
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(copied, data, 0o600))
	s, err := store.OpenForWriting(path, store.Waiting{})
	require.NoError(t, err)
	add(t, s, job, entry("d"))
	require.NoError(t, s.Close())
	known := readOnce(t, path)

	for name, then := range map[string]func(*store.Store){
		"shorter":                 func(*store.Store) {},
		"another entry in place":  func(s *store.Store) { add(t, s, job, entry("other")) },
		"the same id, other work": func(s *store.Store) { ev := entry("d"); ev.Parts[0].Count = 3; add(t, s, job, ev) },
	} {
		back := filepath.Join(folder, "back.db")
		require.NoError(t, os.WriteFile(back, data, 0o600))
		s, err := store.OpenForWriting(back, store.Waiting{})
		require.NoError(t, err)
		then(s)
		want, err := s.Events(job)
		require.NoError(t, err)
		s.Resume(job, known)
		got, err := s.Events(job)
		require.NoError(t, err)
		assert.Equal(t, want, got, name)
		require.NoError(t, s.Close())
	}
}

// Two hands log by turns, each resuming on what it knew: both see all.
func TestResumedHistoriesAreWholeWhoeverWritesMeanwhile(t *testing.T) {
	folder := t.TempDir()
	rapid.Check(t, func(t *rapid.T) {
		path := filepath.Join(folder, "log.db")
		require.NoError(t, os.RemoveAll(path))
		known := map[string][]tracker.Event{}
		var want []string
		for range rapid.IntRange(1, 12).Draw(t, "entries") {
			hand := rapid.SampledFrom([]string{"Runa", "Maren"}).Draw(t, "hand")
			s, err := store.OpenForWriting(path, store.Waiting{Limit: patient})
			require.NoError(t, err)
			s.Resume(job, known[hand])
			ev := entry(rapid.StringMatching(`[a-z0-9]{1,8}`).Draw(t, "id"))
			want = append(want, ev.ID)
			ev, _, err = s.Append(job, func(events []tracker.Event) (tracker.Event, error) {
				known[hand] = events
				return ev, nil
			})
			require.NoError(t, err)
			known[hand] = append(known[hand], ev)
			require.Equal(t, want, idsOf(t, known[hand]))
			require.NoError(t, s.Close())
		}
	})
}
