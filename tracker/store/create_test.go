package store_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/tracker/store"
)

func TestReadingAMissingLogIsReadingAnEmptyOne(t *testing.T) {
	path := logPath(t)
	s := openToRead(t, path)
	for _, read := range []func() (int, error){
		func() (int, error) { jobs, err := s.Jobs(); return len(jobs), err },
		func() (int, error) { events, err := s.Events(job); return len(events), err },
		func() (int, error) { events, err := s.MakerEvents(); return len(events), err },
	} {
		n, err := read()
		require.NoError(t, err)
		assert.Zero(t, n)
	}
	assert.NoDirExists(t, filepath.Dir(path), "a mistyped path must not create anything")
}

func TestANewLogIsForItsOwnerAlone(t *testing.T) {
	notOnWindows(t, "there are no such file modes there; what a user's folder holds is that user's own")
	path := filepath.Join(filepath.Dir(logPath(t)), "deeper", "log.db")
	require.NoError(t, openToWrite(t, path).Close())
	for at, want := range map[string]os.FileMode{
		path:                             0o600,
		filepath.Dir(path):               0o700,
		filepath.Dir(filepath.Dir(path)): 0o700,
	} {
		info, err := os.Stat(at)
		require.NoError(t, err)
		assert.Equal(t, want, info.Mode().Perm(), at)
	}
}

func TestCreatingLeavesNothingElseBehind(t *testing.T) {
	path := logPath(t)
	require.NoError(t, openToWrite(t, path).Close())
	require.NoError(t, openToWrite(t, path).Close())
	left, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, left, 1)
	assert.Equal(t, "log.db", left[0].Name())
}

// Several first commands at once, each a process of its own: all are right
// about having logged, and nobody's file replaces another's.
func TestWritersWhoCreateTheLogTogetherLoseNothing(t *testing.T) {
	const writers, entries = 4, 5
	for range 10 {
		path := logPath(t)
		var running []func() error
		for range writers {
			cmd := child(os.Args[0], "log", path, job, "5")
			var complaint bytes.Buffer
			cmd.Stderr = &complaint
			require.NoError(t, cmd.Start())
			running = append(running, func() error {
				err := cmd.Wait()
				assert.Empty(t, complaint.String())
				return err
			})
		}
		for _, wait := range running {
			require.NoError(t, wait())
		}
		assert.Len(t, ids(t, path, job), writers*entries)
	}
}

func TestAFolderThatCannotHoldTheLogIsNamed(t *testing.T) {
	notOnWindows(t, "links need special rights there")
	room := t.TempDir()
	inTheWay := filepath.Join(room, "tin")
	require.NoError(t, os.WriteFile(inTheWay, []byte("pins"), 0o600))
	stray, strayFolder := filepath.Join(room, "stray.db"), filepath.Join(room, "stray")
	require.NoError(t, os.Symlink(filepath.Join(room, "away", "log.db"), stray))
	require.NoError(t, os.Symlink(filepath.Join(room, "away"), strayFolder))
	tests := []struct{ name, path, says string }{
		{"a file where a folder is wanted", filepath.Join(inTheWay, "log.db"), "not a folder"},
		{"a link to a disk that is away", stray, "away"},
		{"a linked folder on a disk that is away", filepath.Join(strayFolder, "quilts", "log.db"), "away"},
	}
	for _, test := range tests {
		for mode, open := range openings {
			t.Run(mode+"/"+test.name, func(t *testing.T) {
				_, err := open(test.path, store.Waiting{})
				var folder *store.FolderError
				require.ErrorAs(t, err, &folder)
				assert.Contains(t, err.Error(), test.says)
				assert.Contains(t, err.Error(), "--store")
			})
		}
	}
}

func TestALinkToALogIsFollowed(t *testing.T) {
	notOnWindows(t, "links need special rights there")
	path := logPath(t)
	filled(t, path, 1)
	link := filepath.Join(t.TempDir(), "link.db")
	require.NoError(t, os.Symlink(path, link))
	add(t, openToWrite(t, link), job, entry("b"))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&os.ModeSymlink, "the link is still a link")
}

func TestALogInTheFolderAtHandNeedsNoFolderName(t *testing.T) {
	t.Chdir(t.TempDir())
	add(t, openToWrite(t, "log.db"), job, entry("a"))
	assert.True(t, strings.HasPrefix(string(must(os.ReadFile("log.db"))[16:20]), "\xed\xda\x0c\xed"),
		"a bbolt file has this mark in its first page (bbolt's own source, little-endian)")
}
