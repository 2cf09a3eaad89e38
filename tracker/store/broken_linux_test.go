package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"

	"quiltrun/tracker"
)

// After a failing write it is open what the disk holds, so that nothing may be
// built on it. The disk fails here in that the log's descriptor is exchanged
// for one that cannot be written.
func TestAfterAFailedWriteNothingMoreIsWritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.db")
	s, err := OpenForWriting(path, Waiting{})
	require.NoError(t, err)
	calls := 0
	log := func() error {
		_, _, err := s.Append("estuary-lap", func([]tracker.Event) (tracker.Event, error) {
			calls++
			return tracker.Event{Schema: tracker.EventSchema, ID: "a"}, nil
		})
		return err
	}
	require.NoError(t, log())

	readOnly, err := os.Open(path)
	require.NoError(t, err)
	defer readOnly.Close()
	require.NoError(t, unix.Dup3(int(readOnly.Fd()), int(s.file.Fd()), unix.O_CLOEXEC))
	failed := log()
	require.ErrorIs(t, failed, unix.EBADF)
	assert.Contains(t, failed.Error(), path+" did not take the entry")
	assert.Equal(t, failed, log())
	assert.Equal(t, 2, calls, "the third entry was not even decided on")
	require.NoError(t, s.Close())

	s, err = OpenForWriting(path, Waiting{})
	require.NoError(t, err)
	defer s.Close()
	events, err := s.Events("estuary-lap")
	require.NoError(t, err)
	assert.Len(t, events, 1)
}
