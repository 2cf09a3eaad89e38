package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestTheREADMEShowsTheScreenAsItIs holds the screen in the README against the one
// that the tests of the screen keep.
func TestTheREADMEShowsTheScreenAsItIs(t *testing.T) {
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	screen, err := os.ReadFile(filepath.Join(root, "cmd", "internal", "tick", "testdata", "chain-80x24.golden"))
	require.NoError(t, err)
	_, shown, _ := strings.Cut(string(readme), fence+"text\n")
	shown, _, _ = strings.Cut(shown, fence)
	assert.Equal(t, string(screen), shown)
}
