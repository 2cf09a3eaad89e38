package main

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pane is a shell in a window of tmux, whose screen can be read as a person does.
type pane struct {
	t      *testing.T
	env    []string
	server string // tmux's socket, so that nobody else's windows are touched
}

// openPane opens a window with a plain shell in it.
func openPane(t *testing.T, env []string, wide, high int) *pane {
	if _, err := exec.LookPath("tmux"); err != nil {
		if os.Getenv("QUILTRUN_CI") == "1" {
			t.Fatal(err)
		}
		t.Skip("there is no tmux here")
	}
	p := &pane{t, env, filepath.Join(homeOf(env), "tmux")}
	p.tmux("-f", "/dev/null", "new-session", "-d", "-x", strconv.Itoa(wide), "-y", strconv.Itoa(high), "bash --norc --noprofile")
	t.Cleanup(func() { p.tmux("kill-server") })
	p.tmux("set-option", "-g", "status", "off")
	p.tmux("resize-window", "-x", strconv.Itoa(wide), "-y", strconv.Itoa(high))
	p.line("PS1='$ '; cd; clear; stty -g > before")
	return p
}

func (p *pane) tmux(args ...string) string {
	p.t.Helper()
	cmd := exec.Command("tmux", append([]string{"-S", p.server}, args...)...)
	cmd.Env = append(p.env, "TMUX=", "SHELL=/bin/bash", "HISTFILE=")
	out, err := cmd.CombinedOutput()
	require.NoError(p.t, err, "%v: %s", args, out)
	return string(out)
}

// line types a line and the end of it.
func (p *pane) line(text string) { p.tmux("send-keys", "-l", text); p.tmux("send-keys", "Enter") }

// keys types keys as they are.
func (p *pane) keys(text string) { p.tmux("send-keys", "-l", text) }

// screen is what the window shows.
func (p *pane) screen() string { return p.tmux("capture-pane", "-p") }

// shows waits until the window shows a text.
func (p *pane) shows(text string) {
	p.t.Helper()
	for end := time.Now().Add(patience); !strings.Contains(p.screen(), text); time.Sleep(20 * time.Millisecond) {
		if time.Now().After(end) {
			p.t.Fatalf("%q does not show:\n%s", text, p.screen())
		}
	}
}

var madeWords = regexp.MustCompile(`(?m)^(\d+) made,`)

// shown is the count made that the window shows, -1 for none. Where the window is
// too narrow for large figures it is a line of text.
func (p *pane) shown() int {
	found := madeWords.FindStringSubmatch(p.screen())
	if found == nil {
		return -1
	}
	n, _ := strconv.Atoi(found[1])
	return n
}

// piecesCut is what the log says of the cutting of Foam.
func piecesCut(t *testing.T, env []string) int {
	out, err := quiltrun(env, "left", "estuary-lap", "--json").Output()
	require.NoError(t, err)
	found := regexp.MustCompile(`"lot":"Foam".*?"key":"cut","counted_in":"piece","count":40,"done":(\d+)`).FindSubmatch(out)
	require.NotNil(t, found)
	n, err := strconv.Atoi(string(found[1]))
	require.NoError(t, err)
	return n
}

// TestAKillInTheMiddleOfAChain ticks as fast as it can be typed and kills the
// screen at any moment: what it had shown is in the log, the window is sane, and
// the next screen shows what the log has.
func TestAKillInTheMiddleOfAChain(t *testing.T) {
	const rounds = 5
	env := workshop(t)
	p := openPane(t, env, 26, 10)
	seed := uint64(time.Now().UnixNano())
	t.Log("seed", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	sent := 0
	for round := range rounds {
		p.line("sh -c 'echo $$ > pid; exec quiltrun tick estuary-lap cut --lot Foam --catch-up --apart 0s'")
		p.shows("d done")
		before := piecesCut(t, env)
		require.Eventually(t, func() bool { return p.shown() == before }, patience, 20*time.Millisecond)
		ticks := 1 + random.IntN(6)
		p.keys(strings.Repeat(" ", ticks))
		sent += ticks
		time.Sleep(time.Duration(random.IntN(30)) * time.Millisecond)
		shown := p.shown()
		p.line("") // what is typed before the kill is the screen's too: one more
		sent++
		p.kill()
		// A shell that is quicker than the guard answers on the screen that goes away:
		// what it says is looked for in a file.
		after := fmt.Sprintf("after%d", round)
		p.line("stty -g > state; mv state " + after)
		require.Eventually(t, func() bool { _, err := os.Stat(filepath.Join(homeOf(env), after)); return err == nil }, patience, 20*time.Millisecond)
		logged := piecesCut(t, env)
		assert.LessOrEqual(t, shown, logged, "round %d", round)
		assert.LessOrEqual(t, logged, sent, "round %d", round)
		assert.Equal(t, p.file("before"), p.file(after), "round %d", round)
		require.Eventually(t, func() bool {
			return strings.TrimSpace(p.tmux("display-message", "-p", "#{alternate_on} #{cursor_flag}")) == "0 1"
		}, patience, 20*time.Millisecond, "the screen is left, and the cursor shows")
		p.line("clear")
	}
}

// kill kills the screen as nothing can catch, and waits until it is gone: what is
// typed while it dies may still be read by it.
func (p *pane) kill() {
	pid, err := strconv.Atoi(strings.TrimSpace(p.file("pid")))
	require.NoError(p.t, err)
	process, err := os.FindProcess(pid)
	require.NoError(p.t, err)
	require.NoError(p.t, process.Kill())
	gone := func() bool { return errors.Is(syscall.Kill(pid, 0), syscall.ESRCH) } // the shell has seen its end, too
	require.Eventually(p.t, gone, patience, 5*time.Millisecond)
}

func (p *pane) file(name string) string {
	p.t.Helper()
	data, err := os.ReadFile(filepath.Join(homeOf(p.env), name))
	require.NoError(p.t, err)
	return string(data)
}

// TestAnotherShellAndAnotherSizeShow while the screen is open.
func TestAnotherShellAndAnotherSizeShow(t *testing.T) {
	env := workshop(t)
	p := openPane(t, env, 26, 10)
	p.line("quiltrun tick estuary-lap cut --lot Foam --catch-up")
	p.shows("0 made, 40 left")
	require.NoError(t, quiltrun(env, "log", "estuary-lap", "cut", "7", "--lot", "Foam", "--catch-up").Run())
	p.shows("7 made, 33 left")
	p.keys(" ")
	p.shows("8 made, 32 left")
	p.tmux("resize-window", "-x", "132", "-y", "43")
	p.shows("left of 40 pieces")
	p.shows("██████████")
	p.tmux("resize-window", "-x", "40", "-y", "12")
	p.shows("space one, 12 space 12")
	p.keys("d")
	p.shows("8 of 40")
}
