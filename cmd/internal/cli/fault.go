package cli

import (
	"fmt"
	"strings"

	"quiltrun/tracker"
)

// Exit codes, as the root help states them.
const (
	exitDone   = 0
	exitFailed = 1
	exitWrong  = 2
)

// fault is an error that the shell itself words: a sentence that says what is
// wrong and where, and hints that say what to do or type instead.
type fault struct {
	status int
	what   string
	hints  []string
}

// wrong is a call that is wrong by the command line alone.
func wrong(format string, args ...any) *fault {
	return &fault{status: exitWrong, what: fmt.Sprintf(format, args...)}
}

// failed is a call that was right and could not be done.
func failed(format string, args ...any) *fault {
	return &fault{status: exitFailed, what: fmt.Sprintf(format, args...)}
}

// hint adds a line that says what to do. It gives the fault back, so that one
// expression words the whole error.
func (f *fault) hint(format string, args ...any) *fault {
	f.hints = append(f.hints, fmt.Sprintf(format, args...))
	return f
}

// didYouMean hints at the names that are near to what was typed; where none is, at
// what else there is to say.
func (f *fault) didYouMean(typed string, names []string, otherwise string) *fault {
	if near := tracker.Nearest(typed, names); len(near) > 0 {
		return f.hint("did you mean %s?", strings.Join(near, " or "))
	}
	return f.hint("%s", otherwise)
}

// noFabric is a fabric that a job has not.
func noFabric(typed string, names []string) *fault {
	return failed("there is no fabric %q", typed).didYouMean(typed, names, "fabrics are "+shortList(names))
}

// noColourway is a colourway that a job has not.
func noColourway(typed string, names []string) *fault {
	return failed("there is no colourway %q", typed).didYouMean(typed, names, "colourways are "+shortList(names))
}

// Error is the sentence alone; the hints are for whoever shows it.
func (f *fault) Error() string { return f.what }
