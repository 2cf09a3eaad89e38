package main

import (
	"errors"
	"io"
	"os"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/sys/unix"
)

// onTerminal runs quiltrun on a terminal so many columns wide and gives back
// what it wrote there, standard error among it.
func onTerminal(t *testing.T, columns uint16, env []string, args ...string) string {
	control, terminal := openTerminal(t, columns)
	cmd := quiltrun(env, args...)
	cmd.Stdin, cmd.Stdout, cmd.Stderr = terminal, terminal, terminal
	require.NoError(t, cmd.Start())
	require.NoError(t, terminal.Close())
	shown, err := io.ReadAll(control)
	// A terminal that its last writer has left answers with this error.
	if !errors.Is(err, syscall.EIO) {
		require.NoError(t, err)
	}
	_ = cmd.Wait() // an exit code is not what is looked at here
	return strings.ReplaceAll(string(shown), "\r\n", "\n")
}

// openTerminal makes a pair of pseudo-terminals (pts(4)).
func openTerminal(t *testing.T, columns uint16) (control, terminal *os.File) {
	control, err := os.OpenFile("/dev/ptmx", os.O_RDWR, 0)
	if err != nil {
		if os.Getenv("QUILTRUN_CI") == "1" {
			t.Fatal(err)
		}
		t.Skip("there are no pseudo-terminals here: ", err)
	}
	t.Cleanup(func() { _ = control.Close() })
	fd := int(control.Fd())
	require.NoError(t, unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0))
	number, err := unix.IoctlGetInt(fd, unix.TIOCGPTN)
	require.NoError(t, err)
	require.NoError(t, unix.IoctlSetWinsize(fd, unix.TIOCSWINSZ, &unix.Winsize{Row: 24, Col: columns}))
	terminal, err = os.OpenFile("/dev/pts/"+strconv.Itoa(number), os.O_RDWR|unix.O_NOCTTY, 0)
	require.NoError(t, err)
	return control, terminal
}

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

// widest is the widest line of a text, escapes aside.
func widest(text string) (line string) {
	for _, l := range strings.Split(escapes.ReplaceAllString(text, ""), "\n") {
		if displaywidth.String(l) > displaywidth.String(line) {
			line = l
		}
	}
	return line
}

func TestOutputFitsItsTerminal(t *testing.T) {
	env := append(home(t), "TERM=xterm-256color", "LANG=C.UTF-8")
	require.NoError(t, quiltrun(env, "book", "cove.yaml", "--today", "2026-11-02").Run())
	require.NoError(t, quiltrun(env, "book", "odd.yaml").Run())
	for _, columns := range []uint16{40, 80, 132} {
		for _, args := range [][]string{
			{"plan", "cove.yaml"}, {"plan", "odd.yaml"}, {"plan", "examples/lighthouse-king.yaml"},
			{"left"}, {"left", "--blocks"}, {"next"}, {"next", "--for", "2h"}, {"jobs"}, {"history", "cove"}, {"when"}, {"hours"},
		} {
			shown := onTerminal(t, columns, env, args...)
			line := widest(shown)
			assert.LessOrEqual(t, displaywidth.String(line), int(columns), "%v on %d columns: %s", args, columns, line)
			assert.Greater(t, len(shown), 50, "%v", args)
		}
	}
}

func TestColourFollowsTheTerminal(t *testing.T) {
	env := append(home(t), "TERM=xterm-256color", "LANG=C.UTF-8")
	for _, c := range []struct {
		name string
		set  string
		want bool
	}{
		{"a terminal has colour", "NO_COLOR=", true},
		{"NO_COLOR takes it away", "NO_COLOR=1", false},
		{"a dumb terminal has none", "TERM=dumb", false},
	} {
		shown := onTerminal(t, 80, append(env, c.set), "plan", "cove.yaml")
		assert.Equal(t, c.want, strings.Contains(shown, "\x1b["), c.name)
	}
}

func TestErrorsShowALongLineRoundItsFault(t *testing.T) {
	env := append(home(t), "TERM=xterm-256color", "LANG=C.UTF-8")
	long := "job: cove-mat\nblock: {make: four-patch, square: 5, print: [" + strings.Repeat("Kelp, ", 40) + "Kelp], grund: Foam}\n"
	require.NoError(t, os.WriteFile(homeOf(env)+"/long.yaml", []byte(long), 0o600))
	shown := onTerminal(t, 80, env, "plan", "long.yaml")
	lines := strings.Split(shown, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "   2 | ...") {
			assert.LessOrEqual(t, displaywidth.String(line), 80)
			assert.Equal(t, "g", string(line[strings.Index(lines[i+1], "^")]), "the caret points at grund")
			return
		}
	}
	t.Fatalf("no excerpt is shown:\n%s", shown)
}
