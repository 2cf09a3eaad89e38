package cli

import (
	"context"
	"slices"
	"strings"
	"time"
	"unicode"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"quiltrun/tracker"
	"quiltrun/tracker/store"
)

// completionWait is how long a press of Tab waits for a log that is in use.
// Then, as for any other trouble, there is nothing to offer and nothing said.
const completionWait = 100 * time.Millisecond

// completions is what a shell is offered.
type completions = []cobra.Completion

// noFiles tells the shell that names of files are no answer either.
const noFiles = cobra.ShellCompDirectiveNoFileComp

// completeFile offers job files: the shell looks for them itself.
func completeFile(_ *cobra.Command, args []string, _ string) (completions, cobra.ShellCompDirective) {
	if len(args) > 0 {
		return nil, noFiles
	}
	return completions{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt
}

// completeFileOrJob offers booked jobs, and job files where none fits.
func (e *Env) completeFileOrJob(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	if jobs, _ := e.completeJob(cmd, args, typed); len(jobs) > 0 {
		return jobs, cobra.ShellCompDirectiveDefault
	}
	return completeFile(cmd, args, typed)
}

// completeJob offers the booked jobs.
func (e *Env) completeJob(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	var jobs []string
	if len(args) == 0 {
		e.glance(cmd.Context(), func(opened *store.Store) { jobs, _ = opened.Jobs() })
	}
	return fitting(jobs, typed), noFiles
}

// completeLog offers what each argument of log may be. Counts per colourway get
// no blank after them, since the number is still to come.
func (e *Env) completeLog(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	state, words := e.glanceWords(cmd.Context(), args)
	switch {
	case len(args) == 0:
		jobs, _ := e.completeJob(cmd, args, typed)
		return append(jobs, fitting(operations(state.Ledger, typed), typed)...), noFiles
	case words == 0:
		return fitting(operations(state.Ledger, typed), typed), noFiles
	}
	return fitting(append([]string{"all"}, perColourway(state.Ledger)...), typed), noFiles | cobra.ShellCompDirectiveNoSpace
}

// completeFlags says what the values of options may be. Only a press of Tab
// wants to know, so that other calls do not pay for it.
func completeFlags(root *cobra.Command, env *Env) {
	none := cobra.NoFileCompletions
	named := map[string]cobra.CompletionFunc{
		"today": none, "now": none, "id": none, "took": none, "end": none, "gap": none, "longest": none, "reason": none, "from": none,
		"tolerance": none, "apart": none, "key": cobra.FixedCompletions(pedalKeys, noFiles),
		"for": none, "last": none, "to": none, "at": cobra.FixedCompletions(places, noFiles), "op": env.completeNames(operationKeys),
		"machine": env.completeMachine, "entry": env.completeEntry,
		"block": env.completeNames(blockIDs), "lot": env.completeNames(lotNames), "colourway": env.completeNames(colourways),
	}
	for _, own := range []string{"dye-lot", "where", "width", "size", "spool"} {
		named[own] = none
	}
	named["have"] = env.completeHave
	commands := append(root.Commands(), root)
	for _, cmd := range root.Commands() {
		commands = append(commands, cmd.Commands()...)
	}
	for _, cmd := range commands {
		register := func(flag *pflag.Flag) {
			if f, ok := named[flag.Name]; ok {
				// The only error is that of registering twice.
				_ = cmd.RegisterFlagCompletionFunc(flag.Name, f)
			}
		}
		cmd.Flags().VisitAll(register)
		cmd.PersistentFlags().VisitAll(register)
	}
}

// completeNames offers names that a job has, for an option of log.
func (e *Env) completeNames(of func(tracker.Ledger) []string) cobra.CompletionFunc {
	return func(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
		return fitting(of(e.glanceJob(cmd.Context(), args).Ledger), typed), noFiles
	}
}

// completeEntry offers the entries of a job that stand, newest first.
func (e *Env) completeEntry(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	var ids []string
	for _, entry := range slices.Backward(e.glanceJob(cmd.Context(), args).Entries) {
		if entry.Standing() {
			ids = append(ids, entry.ID)
		}
	}
	return fitting(ids, typed), noFiles | cobra.ShellCompDirectiveKeepOrder
}

// completeMachine offers the machines on which pieces of a job were measured.
func (e *Env) completeMachine(cmd *cobra.Command, args []string, typed string) (completions, cobra.ShellCompDirective) {
	var names []string
	for _, entry := range e.glanceJob(cmd.Context(), args).Measurements() {
		if name := entry.Measure.Machine; name != "" && !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return fitting(names, typed), noFiles
}

// glance looks into the log, if that can be done at once.
func (e *Env) glance(ctx context.Context, at func(*store.Store)) {
	path, err := e.openable(ctx)
	if err != nil {
		return
	}
	opened, err := store.OpenForReading(path, store.Waiting{Limit: completionWait})
	if err != nil {
		return
	}
	defer opened.Close()
	at(opened)
}

// glanceJob is the job that a call is about, empty where that cannot be had at
// once.
func (e *Env) glanceJob(ctx context.Context, args []string) tracker.State {
	state, _ := e.glanceWords(ctx, args)
	return state
}

// glanceWords is the job that a call is about, the one in use where the first word
// is no job's, and how many words came after JOB so far.
func (e *Env) glanceWords(ctx context.Context, args []string) (state tracker.State, words int) {
	words = len(args)
	e.glance(ctx, func(opened *store.Store) {
		if len(args) > 0 {
			var err error
			if state, err = bookedState(opened, args[0]); err == nil {
				words--
				return
			}
		}
		if used, err := inUse(opened); err == nil && used != "" {
			state, _ = stateOf(opened, used)
		}
	})
	return state, words
}

// fitting is the names that begin with what was typed. A name that is not one
// line of text cannot be offered.
func fitting(names []string, typed string) completions {
	var fit completions
	for _, name := range names {
		if strings.HasPrefix(name, typed) && !strings.ContainsFunc(name, unicode.IsControl) {
			fit = append(fit, name)
		}
	}
	return fit
}

// operations is the keys of a job's operations, each once, by number. After
// "sew-pairs.." they are the ends of a run.
func operations(ledger tracker.Ledger, typed string) []string {
	start := ""
	if first, _, isRun := strings.Cut(typed, ".."); isRun {
		start = first + ".."
	}
	var keys []string
	for _, o := range ledger.Operations {
		if key := start + o.Key; !slices.Contains(keys, key) {
			keys = append(keys, key)
		}
	}
	return keys
}

// operationKeys is the keys of a job's operations, as --op takes them.
func operationKeys(ledger tracker.Ledger) []string { return operations(ledger, "") }

// perColourway is the beginnings of counts per colourway: tide=.
func perColourway(ledger tracker.Ledger) []string {
	var counts []string
	for _, name := range ledger.Colourways {
		counts = append(counts, name+"=")
	}
	return counts
}

// colourways is a job's colourways as --colourway takes them.
func colourways(ledger tracker.Ledger) []string { return ledger.Colourways }

// fabrics is a job's fabrics as cut takes them.
func fabrics(ledger tracker.Ledger) []string { return ledger.Fabrics }

// blockIDs is the blocks that a job still has, as --block takes them.
func blockIDs(ledger tracker.Ledger) []string {
	var ids []string
	for _, b := range ledger.Blocks {
		if !b.Retired {
			ids = append(ids, b.ID)
		}
	}
	return ids
}

// lotNames is every lot of a job as --lot takes it.
func lotNames(ledger tracker.Ledger) []string {
	var names []string
	for _, o := range ledger.Operations {
		if name := string(o.Lot.Kind) + ":" + o.Lot.Name; !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}
