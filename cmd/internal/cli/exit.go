package cli

import (
	"bytes"
	"errors"
	"fmt"
	"runtime/debug"
	"strings"

	"quiltrun/planner"
	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// Output policy: answers go to standard output, and only once the command is
// done; everything else goes to standard error. A failure's first line starts
// with the program's name, in lower case and without a full stop; hints on
// what to do follow on lines of their own.

// Main runs one call and returns its exit code: 0 done, 1 failed, 2 wrong by
// the command line alone.
func Main(env Env, args []string) (code int) {
	var answer bytes.Buffer
	out := env.Out
	env.Out, env.direct = &answer, out
	defer func() {
		if p := recover(); p != nil {
			code = env.broken(p)
		}
	}()
	if err := run(&env, args); err != nil {
		return env.fail(err)
	}
	// A full disk or a closed pipe comes after the deed, never before it.
	if _, err := answer.WriteTo(out); err != nil {
		return env.fail(failed("the answer could not be written: %v", err).
			hint("what was asked for is done; only its answer is missing here"))
	}
	return exitDone
}

// broken words a panic for the person who met it. Every entry is one
// transaction of its own, so whatever was acknowledged before is on disk.
func (e *Env) broken(cause any) int {
	e.say("quiltrun: a fault in the program stopped it")
	e.hints("the log is safe: every entry that was acknowledged is on disk",
		"set QUILTRUN_TRACE=1 and run the same command again for the details")
	if e.Trace {
		fmt.Fprintf(e.Err, "\n%v\n\n%s", cause, debug.Stack())
	}
	return exitFailed
}

// fail shows an error and returns its exit code.
func (e *Env) fail(err error) int {
	var file *fileError
	if errors.As(err, &file) {
		return e.failFile(file)
	}
	shown := worded(err)
	e.say("quiltrun: " + shown.what)
	e.hints(shown.hints...)
	return shown.status
}

// hints are what to do or type instead, one a line.
func (e *Env) hints(lines ...string) {
	for _, line := range lines {
		e.say("  " + line)
	}
}

// say writes a line to standard error, parted at blanks where a terminal would
// part it anywhere. Names come from files and arguments that may hold anything.
func (e *Env) say(line string) {
	for _, part := range wrapped(plainText(line), e.errWidth()) {
		fmt.Fprintln(e.Err, part)
	}
}

// failFile shows each problem of a job file with the line that causes it.
func (e *Env) failFile(err *fileError) int {
	for _, p := range err.problems {
		e.say(fmt.Sprintf("quiltrun: %s:%d:%d: %s", err.file.name, p.At.Line, p.At.Column, p.What))
		if lines := excerpt(err.file.data, p.At, e.errWidth()); lines != "" {
			fmt.Fprintln(e.Err, lines)
		}
		if p.Hint != "" {
			e.hints(p.Hint)
		}
	}
	return exitFailed
}

// errWidth is how wide a line on standard error may get; 0: as it likes.
func (e *Env) errWidth() int {
	if e.ErrTerminal && e.Width == 0 {
		return 80
	}
	return e.Width
}

// worded turns any error into words and an exit code. Refusals and the store's
// errors are sentences already; of any other error the text has to do.
func worded(err error) *fault {
	var own *fault
	var refusal *tracker.Refusal
	switch {
	case errors.As(err, &own):
		return own
	case errors.As(err, &refusal):
		return refused(refusal)
	case fromStore(err):
		return hinted(err)
	}
	return failed("%s", strings.TrimSuffix(err.Error(), "."))
}

// refused words an entry that the tracker did not take.
func refused(r *tracker.Refusal) *fault {
	f := failed("%s", r.What)
	if r.Hint != "" {
		f.hint("%s", r.Hint)
	}
	return f
}

// fromStore tells the errors that the store words for the maker.
func fromStore(err error) bool {
	var (
		held     *store.HeldError
		damaged  *store.DamagedError
		readOnly *store.ReadOnlyError
		newer    *store.NewerError
		folder   *store.FolderError
	)
	return errors.As(err, &held) || errors.As(err, &damaged) || errors.As(err, &readOnly) ||
		errors.As(err, &newer) || errors.As(err, &folder)
}

// hinted parts an error that says what is wrong, a colon, and what to do.
func hinted(err error) *fault {
	text := err.Error()
	at := strings.LastIndex(text, ": ")
	if at < 0 {
		return failed("%s", text)
	}
	return failed("%s", text[:at]).hint("%s", text[at+2:])
}

// fileError is what is wrong with a job file, with the text it is wrong in.
type fileError struct {
	file     jobFile
	problems planner.Problems
}

// Error is one line per problem.
func (e *fileError) Error() string { return e.problems.Error() }
