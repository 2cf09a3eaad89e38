package cli

import (
	"errors"
	"slices"
	"strconv"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// A command that is about one job takes JOB first. While a job is in use JOB may
// be left out. What the first word is then is never guessed: where it may be the
// beginning of a job and a word of the command's own, the call is refused.

// ownWords says what the arguments' first word may be to a command beside JOB, as
// the error words it, given the job in use: such as "the operation 80 chain-sew
// pairs". It is "" where the word can be nothing of the command's own. A command
// that takes JOB alone has no ownWords.
type ownWords func(s tracker.State, args []string) string

// aboutJob makes a command's run of one that gets JOB first. Check counts
// the arguments with JOB among them; it takes the place of the command's Args,
// which has to let all numbers pass.
func (e *Env) aboutJob(check cobra.PositionalArgs, own ownWords, run func(*cobra.Command, []string) error) func(*cobra.Command, []string) error {
	return func(cmd *cobra.Command, args []string) error {
		full, used, err := e.withJob(cmd, args, own)
		if err != nil {
			return err
		}
		if err := check(cmd, full); err != nil {
			return noneInUse(err, full)
		}
		if err := run(cmd, full); err != nil {
			return leftOut(err, used, args)
		}
		return nil
	}
}

// withJob is the arguments with JOB first, and the job in use where it stands
// for a JOB that was left out, "" where none does.
func (e *Env) withJob(cmd *cobra.Command, args []string, own ownWords) (full []string, used string, err error) {
	if len(args) > 0 && (args[0] == "" || isFile(args[0])) {
		return args, "", nil
	}
	err = e.read(cmd.Context(), func(opened *store.Store) error {
		if used, err = inUse(opened); err != nil || used == "" {
			return err
		}
		if len(args) == 0 {
			return nil
		}
		named, err := opened.Jobs()
		if err != nil {
			return err
		}
		named = slices.DeleteFunc(named, func(id string) bool { return !strings.HasPrefix(id, args[0]) })
		left, err := isLeftOut(opened, used, args, named, own)
		if !left {
			used = ""
		}
		return unlessUsage(cmd, err)
	})
	if err != nil || used == "" {
		return args, "", err
	}
	return append([]string{used}, args...), used, nil
}

// isLeftOut reports that the first word is not JOB. Named are the jobs that it
// may mean.
func isLeftOut(opened *store.Store, used string, args, named []string, own ownWords) (bool, error) {
	if own == nil || len(named) == 0 {
		return own != nil, nil
	}
	state, err := stateOf(opened, used)
	if err != nil {
		return false, err
	}
	other := own(state, args)
	if other == "" {
		return false, nil
	}
	job := "the job " + named[0]
	if len(named) > 1 {
		job = "one of the jobs " + strings.Join(named, ", ")
	}
	return false, failed("%q may be %s, or %s of %s, which is in use", args[0], job, other, used).
		hint("write the job before it: %s", strings.Join(append([]string{used}, args...), " ")).
		hint("or put %s down: quiltrun use --none", used)
}

// unlessUsage gives an error that is worded for a call the command's name.
func unlessUsage(cmd *cobra.Command, err error) error {
	var f *fault
	if errors.As(err, &f) && len(f.hints) > 0 {
		f.hints[0] = strings.Replace(f.hints[0], "before it: ", "before it: "+cmd.CommandPath()+" ", 1)
	}
	return err
}

// inUse is the id of the job that is in use, "" where none is.
func inUse(opened *store.Store) (string, error) {
	ev, _, err := opened.NewestOwn(tracker.InUse)
	return ev.Target, err
}

// noneInUse adds to a call without any argument how JOB can be left out.
func noneInUse(err error, args []string) error {
	var f *fault
	if len(args) == 0 && errors.As(err, &f) {
		f.hint("to leave JOB out, put a job in use: quiltrun use JOB")
	}
	return err
}

// leftOut adds to a first word that nobody knows that it is no job either.
func leftOut(err error, used string, args []string) error {
	var refusal *tracker.Refusal
	if used == "" || len(args) == 0 || !errors.As(err, &refusal) || !strings.Contains(refusal.What, strconv.Quote(args[0])) {
		return err
	}
	return refused(refusal).hint("JOB was left out: %s is in use, and no job is called so", used)
}

// operationWord is the ownWords of a command whose OP follows JOB.
func operationWord(s tracker.State, args []string) string {
	meant := s.Meant(args[0])
	switch len(meant) {
	case 0:
		return ""
	case 1:
		return "the operation " + meant[0]
	}
	return "one of the operations " + shortList(meant)
}

// loneText is the ownWords of a command that takes JOB and one text.
func loneText(_ tracker.State, args []string) string {
	if len(args) == 1 {
		return "the text for it"
	}
	return ""
}

// wordsOf is the ownWords of a command that takes a name of the job after JOB, or
// the beginning of one.
func wordsOf(what string, names func(tracker.Ledger) []string) ownWords {
	return func(s tracker.State, args []string) string {
		for _, name := range names(s.Ledger) {
			if strings.HasPrefix(strings.ToLower(name), strings.ToLower(args[0])) {
				return what + " " + name
			}
		}
		return ""
	}
}
