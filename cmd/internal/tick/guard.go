package tick

import (
	"io"
	"os"
	"os/exec"
)

// GuardCommand is the word by which this program starts itself as a guard.
const GuardCommand = "guard-terminal"

// What the screen says to its guard.
const (
	changed   = 'c' // the terminal has been changed for the screen
	dismissed = 'd' // it is itself again
)

// guard is a process of this program that puts the terminal right where the
// screen is killed in such a way that it cannot do so itself. It notes the
// terminal's state when it begins, and acts when the pipe to it ends without a
// word. The zero guard guards nothing.
type guard struct {
	process *exec.Cmd
	pipe    io.WriteCloser
}

// startGuard starts the guard of a terminal and waits until it has noted what the
// terminal was like. Where no guard can be had the screen does without: it is
// needed only by who is killed outright.
func startGuard(in io.Reader, out io.Writer) guard {
	from, isFile := in.(*os.File)
	to, isFileToo := out.(*os.File)
	program, err := os.Executable()
	if !guards || !isFile || !isFileToo || err != nil {
		return guard{}
	}
	cmd := exec.Command(program, GuardCommand)
	cmd.Args[0] = os.Args[0] // what this program goes by
	cmd.Stdout, cmd.ExtraFiles = to, []*os.File{from}
	setApart(cmd)
	pipe, err := cmd.StdinPipe()
	if err != nil {
		return guard{}
	}
	ready, err := cmd.StderrPipe()
	if err != nil || cmd.Start() != nil {
		return guard{}
	}
	_, _ = ready.Read(make([]byte, 1)) // a guard that fails ends the pipe instead
	return guard{cmd, pipe}
}

// tell says one word to the guard. A guard that is gone hears nothing, and there
// is nobody to tell of it.
func (g guard) tell(word byte) {
	if g.pipe != nil {
		_, _ = g.pipe.Write([]byte{word})
	}
}

// dismiss ends the guard's work: the terminal is itself again.
func (g guard) dismiss() {
	if g.pipe == nil {
		return
	}
	g.tell(dismissed)
	_ = g.pipe.Close()
	_ = g.process.Wait()
}
