package store_test

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// call is a system call that ended well, with the file that it was about: the
// one behind its descriptor or the last one that it names.
type call struct{ name, file string }

// What a power cut leaves is what was synced before it. So the order of the
// system calls shows it: an entry is acknowledged only when it has been synced,
// and the first one only when the names of the file and its folder have been.
func TestNothingIsAcknowledgedBeforeItIsOnTheDisk(t *testing.T) {
	path := logPath(t)
	calls := traced(t, path, "3")
	folder := filepath.Dir(path)
	made := index(calls, call{"linkat", path}, 0)
	require.Positive(t, made, "the file is created by a link")

	var acknowledged []int
	for at := index(calls, call{"write", "1"}, 0); at >= 0; at = index(calls, call{"write", "1"}, at+1) {
		acknowledged = append(acknowledged, at)
	}
	require.Len(t, acknowledged, 3)
	first := acknowledged[0]

	assertSynced(t, calls[:made], func(file string) bool { return strings.HasSuffix(file, ".new") })
	assert.Positive(t, index(calls[:first], call{"fsync", folder}, made), "the name of the file is synced")
	mkdir := index(calls, call{"mkdirat", folder}, 0)
	require.GreaterOrEqual(t, mkdir, 0)
	assert.Positive(t, index(calls[:first], call{"fsync", filepath.Dir(folder)}, mkdir), "the name of the folder is synced")
	for i, at := range acknowledged {
		assertSynced(t, calls[:at], func(file string) bool { return file == path })
		if i > 0 {
			between := calls[acknowledged[i-1]:at]
			assert.Equal(t, 2, count(between, call{"fdatasync", path}),
				"an entry costs one commit, which is two syncs: of the pages, then of the page that makes them count")
		}
	}
}

// assertSynced asserts that a file was written, and synced after that.
func assertSynced(t *testing.T, calls []call, meant func(file string) bool) {
	t.Helper()
	written, synced := -1, -1
	for i, c := range calls {
		switch {
		case !meant(c.file):
		case c.name == "pwrite64":
			written = i
		case c.name == "fdatasync" || c.name == "fsync":
			synced = i
		}
	}
	require.NotEqual(t, -1, written)
	assert.Greater(t, synced, written)
}

func index(calls []call, want call, from int) int {
	for i := from; i < len(calls); i++ {
		if calls[i] == want {
			return i
		}
	}
	return -1
}

func count(calls []call, want call) (n int) {
	for _, c := range calls {
		if c == want {
			n++
		}
	}
	return n
}

// traced logs entries in a child process under strace, and gives its calls in
// the order in which they ended.
func traced(t *testing.T, path, entries string) []call {
	t.Helper()
	strace, err := exec.LookPath("strace")
	if err != nil && os.Getenv("QUILTRUN_CI") != "1" {
		t.Skip("strace is not installed; QUILTRUN_CI=1 makes this a failure")
	}
	require.NoError(t, err)
	trace := filepath.Join(t.TempDir(), "trace")
	cmd := child(strace, "log", "-f", "-y", "-o", trace,
		"-e", "trace=mkdirat,linkat,pwrite64,write,fsync,fdatasync", os.Args[0], path, job, entries)
	out, err := cmd.CombinedOutput()
	require.NoError(t, err, string(out))
	return parseTrace(string(must(os.ReadFile(trace))))
}

var (
	traceLine = regexp.MustCompile(`^(\d+) +(?:<\.\.\. )?(\w+)(.*)$`)
	traceFile = regexp.MustCompile(`^\((\d+)<([^>]*)>`) // a descriptor and what is behind it
	traceName = regexp.MustCompile(`"([^"]*)"`)
)

// parseTrace reads the output of strace -f -y. A call that another thread
// interrupts has two lines, and only the first one says what it is about.
func parseTrace(text string) []call {
	begun := map[string]string{} // by process
	var calls []call
	for line := range strings.Lines(text) {
		m := traceLine.FindStringSubmatch(strings.TrimSpace(line))
		if m == nil {
			continue
		}
		process, name, rest := m[1], m[2], m[3]
		switch {
		case strings.HasSuffix(rest, "<unfinished ...>"):
			begun[process] = rest
			continue
		case strings.Contains(line, " resumed>"):
			rest = begun[process] + rest
		}
		if !strings.Contains(rest, " = -1 ") {
			calls = append(calls, call{name, fileOf(rest)})
		}
	}
	return calls
}

// fileOf is the file that a call's arguments are about; standard output is "1".
func fileOf(arguments string) string {
	if m := traceFile.FindStringSubmatch(arguments); m != nil {
		if m[1] == "1" {
			return "1"
		}
		return m[2]
	}
	names := traceName.FindAllStringSubmatch(arguments, -1)
	if len(names) == 0 {
		return ""
	}
	return names[len(names)-1][1]
}
