package cli

import "fmt"

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

// Error is the sentence alone; the hints are for whoever shows it.
func (f *fault) Error() string { return f.what }
