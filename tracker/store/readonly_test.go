package store_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file that may only be read is read as ever, and says so when it is to be
// written. For the superuser no file is read-only, so that the test asks a
// child process without its powers.
func TestAReadOnlyLogCanBeReadAndSaysThatItCannotBeWritten(t *testing.T) {
	folder, err := os.MkdirTemp("", "quiltrun-readonly")
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, os.RemoveAll(folder)) })
	require.NoError(t, os.Chmod(folder, 0o755))
	path := filepath.Join(folder, "log.db")
	filled(t, path, 1)
	require.NoError(t, os.Chmod(path, 0o444))
	before := pictureOf(t, path)

	cmd := child(programFor(t, folder), "readonly", path)
	dropPowers(cmd)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	assert.Contains(t, string(out), path+" is read-only")
	assert.Contains(t, string(out), "--store")
	assert.Equal(t, before, pictureOf(t, path))
}

// programFor copies the test program to where everybody may run it.
func programFor(t *testing.T, folder string) string {
	t.Helper()
	program := filepath.Join(folder, filepath.Base(os.Args[0]))
	require.NoError(t, os.WriteFile(program, must(os.ReadFile(os.Args[0])), 0o755))
	return program
}
