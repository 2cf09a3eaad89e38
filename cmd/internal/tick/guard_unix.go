//go:build !windows

package tick

import (
	"errors"
	"io"
	"os"
	"os/exec"
	"os/signal"
	"reflect"
	"syscall"
	"time"

	"golang.org/x/sys/unix"
	"golang.org/x/term"
)

// guards says that this system has guards.
const guards = true

// leavingSignals end the screen in order: the last two say that the terminal was
// closed and that somebody wants the program gone.
var leavingSignals = []os.Signal{os.Interrupt, syscall.SIGQUIT, syscall.SIGHUP, syscall.SIGTERM}

// leaveScreen undoes whatever the screen may have set, in the order in which
// that is safe where nothing was: held-back drawing ends, the keyboard speaks
// plainly again, pasting is plain, the alternate screen is left, the cursor
// shows, and letters are ordinary.
const leaveScreen = "\x1b[?2026l\x1b[<u\x1b[>4m\x1b[?2004l\x1b[?1049l\x1b[?25h\x1b[0m"

// setApart gives the guard a session of its own: what is sent to the terminal's
// programs, or to the screen's process group, does not reach it.
func setApart(cmd *exec.Cmd) { cmd.SysProcAttr = &syscall.SysProcAttr{Setsid: true} }

// Guard is the work of the guard: words come in, out is the terminal's screen and
// ready is told once its state has been noted. The terminal itself is the file
// behind the standard three.
func Guard(words io.Reader, out, ready io.Writer) error {
	signal.Ignore(os.Interrupt, syscall.SIGQUIT, syscall.SIGHUP, syscall.SIGTERM, syscall.SIGTTOU, syscall.SIGTTIN, syscall.SIGTSTP)
	const terminal = 3
	before, err := term.GetState(terminal)
	if err != nil {
		return errors.New("this is a command of quiltrun's own, for the screen of quiltrun tick")
	}
	_, _ = ready.Write([]byte{0})
	var during *term.State
	word := make([]byte, 1)
	for {
		if n, err := words.Read(word); n == 0 || err != nil {
			break
		}
		switch word[0] {
		case changed:
			during, _ = term.GetState(terminal)
		case dismissed:
			return nil
		}
	}
	_, _ = io.WriteString(out, leaveScreen)
	if during == nil || is(terminal, during) {
		if err := term.Restore(terminal, before); err != nil {
			return err
		}
	}
	time.Sleep(nudge)
	if !is(terminal, before) {
		redraw(terminal)
	}
	return nil
}

// is reports that the terminal is in a state.
func is(terminal int, state *term.State) bool {
	now, err := term.GetState(terminal)
	return err == nil && reflect.DeepEqual(now, state)
}

// redraw has a shell that was quicker draw its prompt anew: it has set the terminal
// for its next line, which is left so, and may have drawn on the screen that is
// gone. What draws itself does so where the window's size changes, if only for a
// moment.
func redraw(terminal int) {
	size, err := unix.IoctlGetWinsize(terminal, unix.TIOCGWINSZ)
	if err != nil || size.Row < 2 {
		return
	}
	size.Row--
	_ = unix.IoctlSetWinsize(terminal, unix.TIOCSWINSZ, size)
	time.Sleep(nudge)
	size.Row++
	_ = unix.IoctlSetWinsize(terminal, unix.TIOCSWINSZ, size)
}

// nudge is long enough for a shell to notice, and too short for eyes.
const nudge = 20 * time.Millisecond
