package store_test

import (
	"os"
	"path/filepath"
	"sync/atomic"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/tracker/store"
)

func TestALogInUseIsReportedAfterAShortWait(t *testing.T) {
	path := logPath(t)
	openToWrite(t, path)
	for mode, open := range openings {
		t.Run(mode, func(t *testing.T) {
			said := 0
			_, err := open(path, store.Waiting{Limit: time.Second, Say: func(text string) {
				said++
				assert.Contains(t, text, path)
			}})
			var held *store.HeldError
			require.ErrorAs(t, err, &held)
			assert.False(t, held.Mute)
			assert.Contains(t, err.Error(), path)
			assert.Contains(t, err.Error(), "phone page")
			assert.Equal(t, 1, said, "one word while waiting")
		})
	}
}

func TestTheUsualWaitIsAFewSeconds(t *testing.T) {
	path := logPath(t)
	openToWrite(t, path)
	_, err := store.OpenForWriting(path, store.Waiting{})
	var held *store.HeldError
	require.ErrorAs(t, err, &held)
	assert.Greater(t, held.Waited, time.Second)
	assert.Less(t, held.Waited, 10*time.Second, "nobody is left waiting without a word")
}

func TestAShortWaitIsNotWorthAWord(t *testing.T) {
	path := logPath(t)
	filled(t, path, 1)
	s, err := store.OpenForWriting(path, store.Waiting{Say: func(string) { t.Error("nobody held the log") }})
	require.NoError(t, err)
	require.NoError(t, s.Close())
}

func TestReadersDoNotExcludeEachOther(t *testing.T) {
	path := logPath(t)
	filled(t, path, 1)
	openToRead(t, path)
	s, err := store.OpenForReading(path, store.Waiting{Limit: time.Millisecond})
	require.NoError(t, err)
	require.NoError(t, s.Close())
}

func TestAWaitingWriterGetsItsTurn(t *testing.T) {
	path := logPath(t)
	first := openToWrite(t, path)
	s, err := store.OpenForWriting(path, store.Waiting{Limit: patient, Say: func(string) {
		add(t, first, job, entry("a"))
		require.NoError(t, first.Close())
	}})
	require.NoError(t, err)
	add(t, s, job, entry("b"))
	require.NoError(t, s.Close())
	assert.Equal(t, []string{"a", "b"}, ids(t, path, job))
}

// While a command waits for the lock a copy may be restored over the file. The
// lock that it then gets is the old file's, where an entry would be lost.
func TestAFileReplacedWhileWaitingIsNoticed(t *testing.T) {
	notOnWindows(t, "an open file cannot be replaced there")
	path := logPath(t)
	copied := filepath.Join(t.TempDir(), "copy.db")
	filled(t, copied, 3)
	first := openToWrite(t, path)
	add(t, first, job, entry("old"))

	var asked atomic.Bool
	s, err := store.OpenForWriting(path, store.Waiting{Limit: patient, Say: func(string) {
		asked.Store(true)
		go func() {
			time.Sleep(100 * time.Millisecond) // by now the other waits again, with the old file open
			assert.NoError(t, os.Rename(copied, path))
			assert.NoError(t, first.Close())
		}()
	}})
	require.NoError(t, err)
	require.True(t, asked.Load())
	add(t, s, job, entry("new"))
	require.NoError(t, s.Close())
	assert.Equal(t, []string{"a", "b", "c", "new"}, ids(t, path, job))
}

func TestAFileRemovedWhileWaitingIsNoticed(t *testing.T) {
	notOnWindows(t, "an open file cannot be removed there")
	path := logPath(t)
	first := openToWrite(t, path)
	s, err := store.OpenForWriting(path, store.Waiting{Limit: patient, Say: func(string) {
		go func() {
			time.Sleep(100 * time.Millisecond)
			assert.NoError(t, os.Remove(path))
			assert.NoError(t, first.Close())
		}()
	}})
	require.NoError(t, err)
	add(t, s, job, entry("new"))
	require.NoError(t, s.Close())
	assert.Equal(t, []string{"new"}, ids(t, path, job))
}
