package main

import (
	"bufio"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// TestEveryModuleStandsInTheLicenceList keeps go.mod and the tables of
// DEVELOPERS.md together, both ways.
func TestEveryModuleStandsInTheLicenceList(t *testing.T) {
	listed := map[string]bool{}
	doc, err := os.ReadFile(filepath.Join(root, "DEVELOPERS.md"))
	require.NoError(t, err)
	for _, row := range regexp.MustCompile(`(?m)^\| ([a-z]+[a-z.]*\.[a-z]+/\S+)[^|]*\|[^|]+\| [A-Z]`).FindAllStringSubmatch(string(doc), -1) {
		listed[row[1]] = true
	}
	required := map[string]bool{}
	for _, module := range modules(t) {
		required[module] = true
		assert.True(t, listed[module], "%s has no row with its licence in DEVELOPERS.md", module)
	}
	for module := range listed {
		assert.True(t, required[module], "%s stands in DEVELOPERS.md and is not used", module)
	}
}

// modules are the modules that go.mod requires.
func modules(t *testing.T) []string {
	t.Helper()
	file, err := os.Open(filepath.Join(root, "go.mod"))
	require.NoError(t, err)
	defer file.Close()
	var names []string
	for lines := bufio.NewScanner(file); lines.Scan(); {
		fields := strings.Fields(lines.Text())
		if len(fields) >= 2 && strings.HasPrefix(fields[1], "v") && strings.Contains(fields[0], "/") {
			names = append(names, fields[0])
		}
	}
	require.NotEmpty(t, names)
	return names
}
