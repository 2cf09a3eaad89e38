package store

import (
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A network disk is known to sit on a lock request whatever its time limit.
func TestADiskThatDoesNotAnswerIsGivenUp(t *testing.T) {
	answer := make(chan *Store)
	_, err := within(time.Millisecond, func() (*Store, error) { return <-answer, nil })
	require.ErrorIs(t, err, errMute)

	late, err := OpenForWriting(filepath.Join(t.TempDir(), "log.db"), Waiting{})
	require.NoError(t, err)
	path := late.path
	answer <- late
	s, err := OpenForWriting(path, Waiting{Limit: time.Minute})
	require.NoError(t, err, "a log that is opened too late is closed again")
	require.NoError(t, s.Close())
}

func TestADiskWithoutHardLinksIsRefused(t *testing.T) {
	noLinks := func(from, to string) error { return &os.LinkError{Op: "link", Old: from, New: to, Err: syscall.EPERM} }
	err := place("a", filepath.Join("card", "log.db"), noLinks)
	var folder *FolderError
	require.ErrorAs(t, err, &folder)
	assert.Equal(t, "card", folder.Folder)
	assert.Contains(t, err.Error(), "hard links")
}

func TestSomebodyElsesNewLogIsAsGood(t *testing.T) {
	taken := func(from, to string) error { return &os.LinkError{Op: "link", Old: from, New: to, Err: syscall.EEXIST} }
	assert.NoError(t, place("a", "log.db", taken))
}

func TestFoldersSayWhyTheyCannotBeWritten(t *testing.T) {
	tests := []struct {
		system error
		says   string
	}{
		{errReadOnlyDisk, "its disk is read-only"},
		{syscall.EACCES, "you may not write there"},
		{syscall.ENOSPC, "no space left"},
	}
	for _, test := range tests {
		err := folderError("shed", &fs.PathError{Op: "open", Path: "shed", Err: test.system})
		assert.Contains(t, err.Error(), "shed")
		assert.Contains(t, err.Error(), test.says)
		assert.ErrorIs(t, err, test.system)
	}
}

func TestAReadOnlyDiskMakesAReadOnlyLog(t *testing.T) {
	path := filepath.Join(t.TempDir(), "log.db")
	require.NoError(t, os.WriteFile(path, []byte("kept"), 0o600))
	err := refusal(path, &fs.PathError{Op: "open", Path: path, Err: errReadOnlyDisk}, true)
	var readOnly *ReadOnlyError
	require.ErrorAs(t, err, &readOnly)
	assert.Contains(t, err.Error(), path)
}
