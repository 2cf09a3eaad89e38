package store

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFoldersOfSyncServicesAreKnown(t *testing.T) {
	tests := []struct{ folder, service string }{
		{"Dropbox", "Dropbox"},
		{"Dropbox (Pilot Lane Library)", "Dropbox"},
		{"dropbox", "Dropbox"},
		{"OneDrive", "OneDrive"},
		{"OneDrive - Saltmarsh Surgery", "OneDrive"},
		{"Mobile Documents", "iCloud"},
		{"Nextcloud", "Nextcloud"},
		{"My Drive", "Google Drive"},
		{"quilts", ""},
		{"my driver", ""},
		{"megan", ""},
	}
	for _, test := range tests {
		t.Run(test.folder, func(t *testing.T) {
			assert.Equal(t, test.service, syncService(filepath.Join("home", test.folder)))
		})
	}
}

func TestALogDeepInASyncedFolderIsNoticed(t *testing.T) {
	room := t.TempDir()
	deep := filepath.Join(room, "OneDrive", "sewing", "2026")
	require.NoError(t, os.MkdirAll(deep, 0o700))
	kind, ok := Shared(filepath.Join(deep, "to", "be", "made", "log.db"))
	require.True(t, ok)
	assert.Equal(t, "in a folder that OneDrive copies between machines", kind)
}

func TestAFolderMarkedByItsServiceIsNoticed(t *testing.T) {
	room := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(room, ".stfolder"), 0o700))
	kind, ok := Shared(filepath.Join(room, "log.db"))
	require.True(t, ok)
	assert.Contains(t, kind, "Syncthing")
}

func TestALinkIntoASyncedFolderIsNoticed(t *testing.T) {
	room := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(room, "Nextcloud"), 0o700))
	path := filepath.Join(room, "Nextcloud", "log.db")
	require.NoError(t, os.WriteFile(path, nil, 0o600))
	require.NoError(t, os.Symlink(path, filepath.Join(room, "log.db")))
	_, ok := Shared(filepath.Join(room, "log.db"))
	assert.True(t, ok)
}

func TestAFolderOfOnesOwnIsNotWarnedOf(t *testing.T) {
	kind, ok := Shared(filepath.Join(t.TempDir(), "to-be-made", "log.db"))
	assert.False(t, ok, kind)
}
