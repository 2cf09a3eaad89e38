package tick

import (
	"errors"
	"io"
	"os"
	"os/exec"
)

// guards says that this system has none: its console forgets what a program that
// ended had set.
const guards = false

// leavingSignals end the screen in order.
var leavingSignals = []os.Signal{os.Interrupt}

func setApart(*exec.Cmd) {}

// Guard is no command here.
func Guard(io.Reader, io.Writer, io.Writer) error {
	return errors.New("there is nothing to guard on this system")
}
