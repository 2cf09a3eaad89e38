package main

import (
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"go.etcd.io/bbolt"
	"golang.org/x/sys/unix"
)

// patience is how long a test waits for what has to come, on a machine that has much
// else to do.
const patience = time.Minute

// sitting is quiltrun tick on a terminal of its own.
type sitting struct {
	t                 *testing.T
	env               []string
	cmd               *exec.Cmd
	control, terminal *os.File
	before            *unix.Termios
	mu                sync.Mutex
	out               strings.Builder // what was written to the terminal
	ended             chan error
}

// sitDown opens the screen on the chain-sewing of tide and waits until it shows.
func sitDown(t *testing.T, env []string, args ...string) *sitting {
	s := &sitting{t: t, env: env, ended: make(chan error, 1)}
	s.control, s.terminal = openTerminal(t, 80)
	require.NoError(t, unix.SetNonblock(int(s.control.Fd()), true)) // so that it can be closed while it is read
	s.before = s.termios()
	s.cmd = quiltrun(env, append([]string{"tick", "estuary-lap", "sew-pairs", "--catch-up"}, args...)...)
	s.cmd.Stdin, s.cmd.Stdout, s.cmd.Stderr = s.terminal, s.terminal, s.terminal
	s.cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true, Setctty: true}
	require.NoError(t, s.cmd.Start())
	t.Cleanup(func() { _ = s.cmd.Process.Kill() }) // it is over already, unless the test failed
	go func() { s.ended <- s.cmd.Wait() }()
	go s.read()
	s.shows("take back")
	require.NotEqual(t, s.before, s.termios(), "the screen has set the terminal")
	return s
}

// read collects what is written to the terminal.
func (s *sitting) read() {
	buffer := make([]byte, 4096)
	for {
		n, err := s.control.Read(buffer)
		s.mu.Lock()
		s.out.Write(buffer[:n])
		s.mu.Unlock()
		if err != nil {
			return
		}
	}
}

func (s *sitting) output() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.out.String()
}

// shows waits until the terminal was sent a text.
func (s *sitting) shows(text string) {
	s.t.Helper()
	require.Eventually(s.t, func() bool { return strings.Contains(s.output(), text) }, patience, 5*time.Millisecond, "%q in %q", text, s.output())
}

// press types keys, as the terminal sends them.
func (s *sitting) press(keys string) {
	s.t.Helper()
	_, err := io.WriteString(s.control, keys)
	require.NoError(s.t, err)
}

// made waits until so many pairs of tide are in the log.
func (s *sitting) made(n int) {
	s.t.Helper()
	require.Eventually(s.t, func() bool { return pairsMade(s.t, s.env) == n }, patience, 20*time.Millisecond)
}

func (s *sitting) termios() *unix.Termios {
	s.t.Helper()
	state, err := unix.IoctlGetTermios(int(s.terminal.Fd()), unix.TCGETS)
	require.NoError(s.t, err)
	return state
}

// over waits for the program's end and gives its exit code, -1 for a signal.
func (s *sitting) over() int {
	s.t.Helper()
	select {
	case err := <-s.ended:
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			return exit.ExitCode()
		}
		require.NoError(s.t, err)
	case <-time.After(patience):
		s.t.Fatalf("it does not end: %q", s.output())
	}
	return 0
}

// leftSane sees that the terminal is what it was before the screen.
func (s *sitting) leftSane() {
	s.t.Helper()
	sane := func() bool {
		out := s.output()
		return last(out, "\x1b[?1049l") > last(out, "\x1b[?1049h") && // the alternate screen
			last(out, "\x1b[?25h") > last(out, "\x1b[?25l") && // the cursor
			last(out, "\x1b[?2004l") >= last(out, "\x1b[?2004h") && // pasting
			last(out, "\x1b[<") > last(out, "\x1b[>1") && // the keyboard
			assert.ObjectsAreEqual(s.before, s.termios())
	}
	require.Eventually(s.t, sane, patience, 5*time.Millisecond, "%q", s.output())
}

func last(text, part string) int { return strings.LastIndex(text, part) }

// pairsMade is what the log says of the chain-sewing of tide.
func pairsMade(t *testing.T, env []string) int {
	out, err := quiltrun(env, "left", "estuary-lap", "--json").Output()
	require.NoError(t, err)
	var job struct {
		Lots []struct {
			Lot        string
			Operations []struct {
				Key  string
				Done int
			}
		}
	}
	require.NoError(t, json.Unmarshal(out, &job))
	for _, lot := range job.Lots {
		for _, o := range lot.Operations {
			if lot.Lot == "tide" && o.Key == "sew-pairs" {
				return o.Done
			}
		}
	}
	t.Fatal("left does not speak of pairs of tide")
	return 0
}

// workshop is a home with the estuary lap quilt booked.
func workshop(t *testing.T) []string {
	env := append(home(t), "TERM=xterm-256color", "LANG=C.UTF-8")
	require.NoError(t, quiltrun(env, "book", "examples/estuary-lap.yaml", "--today", "2026-11-02").Run())
	return env
}

// TestTickLeavesNothingBehindWhicheverWayItIsLeft: what was ticked is in the log,
// and the terminal is as it was.
func TestTickLeavesNothingBehindWhicheverWayItIsLeft(t *testing.T) {
	signal := func(sig syscall.Signal) func(*sitting) {
		return func(s *sitting) { require.NoError(s.t, s.cmd.Process.Signal(sig)) }
	}
	for _, c := range []struct {
		name  string
		leave func(*sitting)
		code  int
	}{
		{"its key", func(s *sitting) { s.press("d") }, 0},
		{"ctrl-c", func(s *sitting) { s.press("\x03") }, 0},
		{"asked to end", signal(syscall.SIGTERM), 0},
		{"hung up", signal(syscall.SIGHUP), 0},
		{"interrupted", signal(syscall.SIGINT), 0},
		{"killed", signal(syscall.SIGKILL), -1},
		{"killed with its whole group", func(s *sitting) { require.NoError(s.t, syscall.Kill(-s.cmd.Process.Pid, syscall.SIGKILL)) }, -1},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := sitDown(t, workshop(t))
			s.press("3 ")
			s.made(3)
			c.leave(s)
			assert.Equal(t, c.code, s.over())
			s.leftSane()
			assert.Equal(t, 3, pairsMade(t, s.env))
		})
	}
}

// TestAClosedTerminalLosesNothing: the window is closed in the middle.
func TestAClosedTerminalLosesNothing(t *testing.T) {
	s := sitDown(t, workshop(t))
	s.press("2 ")
	s.made(2)
	require.NoError(t, s.terminal.Close())
	require.NoError(t, s.control.Close())
	s.over()
	assert.Equal(t, 2, pairsMade(t, s.env))
}

// TestTickSaysWhatWasMade on the ordinary screen, once it is left.
func TestTickSaysWhatWasMade(t *testing.T) {
	s := sitDown(t, workshop(t))
	s.press("4 ")
	s.made(4)
	s.press("d")
	s.over()
	s.shows("80 chain-sew pairs, tide: 4 pairs checked off; 4 of 10 made, 6 left")
}

// TestAKeyHeldDownOnAPlainTerminal comes as the same byte again and again.
func TestAKeyHeldDownOnAPlainTerminal(t *testing.T) {
	s := sitDown(t, workshop(t))
	for range 20 {
		s.press(" ")
		time.Sleep(30 * time.Millisecond)
	}
	s.shows("held key: counted once")
	s.press("d")
	s.over()
	assert.Equal(t, 1, pairsMade(t, s.env))
}

// TestAKeyHeldDownOnATerminalThatReportsIt: the terminal says what it can when it
// is asked, and from then on tells presses (1), repeats (2) and releases (3)
// apart, so that two quick presses are two.
func TestAKeyHeldDownOnATerminalThatReportsIt(t *testing.T) {
	s := sitDown(t, workshop(t))
	s.shows("\x1b[?u")
	s.press("\x1b[?27u")
	time.Sleep(200 * time.Millisecond)
	s.press("\x1b[32;1:1u\x1b[32;1:3u\x1b[32;1:1u\x1b[32;1:3u")
	s.made(2)
	s.press("\x1b[32;1:1u" + strings.Repeat("\x1b[32;1:2u", 30) + "\x1b[32;1:3u")
	s.shows("held key: counted once")
	s.press("\x1b[100;1:1u\x1b[100;1:3u") // d
	assert.Zero(t, s.over())
	s.leftSane()
	assert.Equal(t, 3, pairsMade(t, s.env))
}

// TestTickWaitsForALogThatAnotherHasOpen, and loses and doubles nothing.
func TestTickWaitsForALogThatAnotherHasOpen(t *testing.T) {
	s := sitDown(t, workshop(t), "--apart", "0s")
	db, err := bbolt.Open(logOf(s.env), 0o600, &bbolt.Options{Timeout: patience})
	require.NoError(t, err)
	s.press(" ")
	s.shows("waiting for another quiltrun command")
	s.press("2 ")
	s.shows("2 entries wait for the log")
	require.NoError(t, db.Close())
	s.made(3)
	s.press("d")
	assert.Zero(t, s.over())
	assert.Equal(t, 3, pairsMade(t, s.env))
}

// TestTickThatCannotWriteSaysHowTo: whoever insists on leaving is told what is
// not in the log.
func TestTickThatCannotWriteSaysHowTo(t *testing.T) {
	s := sitDown(t, workshop(t), "--apart", "0s")
	db, err := bbolt.Open(logOf(s.env), 0o600, &bbolt.Options{Timeout: patience})
	require.NoError(t, err)
	s.press("2 ")
	s.press("d")
	s.shows("leaving as soon as written")
	s.press("d")
	assert.Equal(t, 1, s.over())
	s.shows("quiltrun: not all is in the log")
	s.shows("quiltrun log estuary-lap sew-pairs 2 --lot")
	require.NoError(t, db.Close())
	assert.Zero(t, pairsMade(t, s.env))
}

func logOf(env []string) string { return filepath.Join(homeOf(env), "quiltrun", "quiltrun.db") }

// TestTheScreenHasNoColourWhereNoneIsWelcome: bold and exchanged colours are all it
// has, and NO_COLOR takes them away.
func TestTheScreenHasNoColourWhereNoneIsWelcome(t *testing.T) {
	styles := regexp.MustCompile("\x1b\\[[0-9;]*[1-9][0-9;]*m")
	for set, want := range map[string]bool{"NO_COLOR=": true, "NO_COLOR=1": false} {
		s := sitDown(t, append(workshop(t), set))
		s.press("3")
		s.shows("typed")
		s.press("d")
		s.over()
		assert.Equal(t, want, styles.MatchString(s.output()), set)
		assert.NotRegexp(t, "\x1b\\[(3|4|9|10)[0-9;]*m", s.output(), "no colour of its own in either case")
	}
}
