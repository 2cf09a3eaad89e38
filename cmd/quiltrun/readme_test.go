package main

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/cmd/internal/cli"
)

var readmeUpdate = flag.Bool("readme", false, "write what the commands in the READMEs print into them")

const fence = "```"

// TestTheREADMEsTellWhatTheProgramPrints runs every command shown in console
// blocks of the two READMEs, in order and each against one store, and compares
// what they print. "…" alone on a line stands for lines left out. With -readme the
// blocks are written anew, long answers cut where they were cut before.
func TestTheREADMEsTellWhatTheProgramPrints(t *testing.T) {
	top, err := filepath.Abs(root)
	require.NoError(t, err)
	t.Chdir(top)
	for _, path := range []string{"README.md", filepath.Join("examples", "README.md")} {
		data, err := os.ReadFile(path)
		require.NoError(t, err)
		parts := strings.Split(string(data), fence)
		require.Greater(t, len(parts), 6, "%s shows commands", path)
		env := readmeEnv(t)
		for i, part := range parts {
			block, ok := strings.CutPrefix(part, "console\n")
			if i%2 == 0 || !ok {
				continue
			}
			got := runBlock(t, env, block)
			if *readmeUpdate {
				parts[i] = "console\n" + got
			} else {
				assert.Equal(t, block, got)
			}
		}
		if *readmeUpdate {
			require.NoError(t, os.WriteFile(path, []byte(strings.Join(parts, fence)), 0o644))
		}
	}
}

func readmeEnv(t *testing.T) cli.Env {
	return cli.Env{
		In: strings.NewReader(""), Width: 80, Unicode: true,
		Now:      func() time.Time { return time.Date(2026, 11, 25, 19, 30, 0, 0, time.UTC) },
		DataDir:  t.TempDir(),
		User:     "maker",
		Random:   rand.NewChaCha8([32]byte{}),
		Revision: func() string { return "unknown" },
	}
}

// runBlock runs the block's commands and gives the block as it should read.
func runBlock(t *testing.T, env cli.Env, block string) string {
	t.Helper()
	var got strings.Builder
	for _, shown := range strings.Split(strings.TrimPrefix(block, "$ "), "\n$ ") {
		line, want, _ := strings.Cut(strings.TrimSuffix(shown, "\n")+"\n", "\n")
		require.True(t, strings.HasPrefix(line, "quiltrun "), line)
		var out bytes.Buffer
		env.Out, env.Err = &out, &out
		cli.Main(env, words(strings.TrimPrefix(line, "quiltrun ")))
		got.WriteString("$ " + line + "\n" + elide(out.String(), want))
	}
	return got.String()
}

// elide leaves out of the answer what the README leaves out: from the line
// after the one before "…" up to the line after it.
func elide(answer, shown string) string {
	before, after, cut := strings.Cut(shown, "…\n")
	if !cut {
		return answer
	}
	head := strings.Count(before, "\n")
	tail := strings.Count(after, "\n")
	lines := strings.SplitAfter(answer, "\n")
	lines = lines[:len(lines)-1]
	if head+tail >= len(lines) {
		return answer
	}
	return strings.Join(lines[:head], "") + "…\n" + strings.Join(lines[len(lines)-tail:], "")
}

// TestTheREADMEListsEveryCommand holds the table of commands against the
// program's own help, both ways.
func TestTheREADMEListsEveryCommand(t *testing.T) {
	data, err := os.ReadFile(filepath.Join(root, "README.md"))
	require.NoError(t, err)
	_, table, _ := strings.Cut(string(data), "## Commands")
	table, _, _ = strings.Cut(table, "Everywhere:")
	var listed []string
	for _, row := range regexp.MustCompile("(?m)^\\| `([a-z]+)").FindAllStringSubmatch(table, -1) {
		listed = append(listed, row[1])
	}
	var out bytes.Buffer
	env := readmeEnv(t)
	env.Out = &out
	require.Zero(t, cli.Main(env, []string{"--help"}))
	var live []string
	for _, row := range regexp.MustCompile(`(?m)^    ([a-z]+) {2,}[A-Z]`).FindAllStringSubmatch(out.String(), -1) {
		if row[1] != "help" && row[1] != "completion" {
			live = append(live, row[1])
		}
	}
	assert.ElementsMatch(t, live, listed)
}

// words parts a command line at blanks outside quotes.
func words(line string) []string {
	var out []string
	for i, part := range strings.Split(line, `"`) {
		if i%2 == 1 {
			out = append(out, part)
			continue
		}
		out = append(out, strings.Fields(part)...)
	}
	return out
}
