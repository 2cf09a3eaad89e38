package cli

import (
	"context"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/cmd/internal/tick"
	"quiltrun/tracker"
)

const rootLong = `quiltrun plans the making of patchwork quilts in runs, and follows the work.

Write a job file, look at its job sheet with plan, and take the job on with
book. Check work off with log as it happens; left says what remains, and when
says on which dates the booked jobs will be done.

A FILE is a job file: it has a / in it, ends in .yaml or .yml, or is - for
standard input. A JOB is the id of a booked job or any unique beginning of it;
use puts one in use, so that JOB can be left out.

Exit codes:
  0  done
  1  failed; standard error says why, and with --json nothing is written
  2  the command line itself is wrong`

const rootExample = `  quiltrun plan examples/estuary-lap.yaml
  quiltrun book examples/estuary-lap.yaml
  quiltrun log estuary-lap seam-test 1 --took 12m
  quiltrun left estuary-lap
  quiltrun when`

// run finds the command in the arguments and runs it.
func run(env *Env, args []string) error {
	if len(args) == 1 && args[0] == tick.GuardCommand {
		return tick.Guard(env.In, env.direct, env.Err)
	}
	if len(args) > 0 && args[0] == tabRequest {
		return runTab(env, args[1:])
	}
	root := newRoot(env)
	root.SetArgs(args)
	if len(args) > 0 && strings.HasPrefix(args[0], cobra.ShellCompRequestCmd) {
		completeFlags(root, env)
	}
	return root.ExecuteContext(context.Background())
}

// newRoot is the command tree. It is built for every call, the shortest too:
// nothing in it opens a file or works anything out.
func newRoot(env *Env) *cobra.Command {
	cobra.EnableCommandSorting = false // the order of work, not of the alphabet
	version := false
	root := &cobra.Command{
		Use:           "quiltrun",
		Short:         "Plan patchwork quilts in runs, and follow the work",
		Long:          rootLong,
		Example:       rootExample,
		SilenceErrors: true,
		SilenceUsage:  true,
		// Any first word that is no command lands here, to be worded by us.
		Args: cobra.ArbitraryArgs,
		PersistentPreRunE: func(cmd *cobra.Command, _ []string) error {
			if err := noEmptyOptions(cmd); err != nil {
				return err
			}
			return env.fixClock()
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case len(args) > 0:
				return unknownCommand(cmd, args[0])
			case version:
				return runVersion(cmd.Context(), env)
			}
			return cmd.Help()
		},
	}
	root.Flags().BoolVar(&version, "version", false, "say which revision and schema this is")
	env.given.register(root.PersistentFlags())
	// Errors are worded by Main alone, so that cobra prints help and nothing else.
	root.SetIn(env.In)
	root.SetOut(env.Out)
	root.SetErr(env.Err)
	root.SetFlagErrorFunc(flagFault)
	root.CompletionOptions.DisableDefaultCmd = true
	addCommands(root, env)
	return root
}

// addCommands puts the commands in the order of the work.
func addCommands(root *cobra.Command, env *Env) {
	for i, group := range [][]*cobra.Command{
		{newPlan(env), newCompare(env), newCut(env), newEnough(env), newShop(env), newDraw(env), newBlocks(env)},
		{newBook(env), newRevise(env)},
		{newTick(env), newLog(env), newStart(env), newStop(env), newMeasure(env), newRecount(env), newRip(env), newScrap(env), newSwap(env), newUndo(env),
			newNote(env), newPark(env), newUse(env)},
		{newNext(env), newLeft(env), newTime(env), newJobs(env), newHistory(env), newWhen(env)},
		{newShelf(env), newHours(env), newCheck(env), newCompletion(env)},
	} {
		root.AddGroup(workGroups[i])
		for _, cmd := range group {
			cmd.GroupID = workGroups[i].ID
		}
		root.AddCommand(group...)
	}
	help := newHelp()
	help.GroupID = workGroups[len(workGroups)-1].ID
	root.SetHelpCommand(help)
	root.SetUsageFunc(usage)
}

// unknownCommand is a first word that is none.
func unknownCommand(root *cobra.Command, name string) error {
	f := wrong("there is no command %q", name)
	if near := tracker.Nearest(name, commandNames(root)); len(near) > 0 {
		return f.hint("did you mean quiltrun %s?", strings.Join(near, " or quiltrun "))
	}
	return f.hint("try: quiltrun --help")
}

// commandNames is what may come first on the command line.
func commandNames(root *cobra.Command) []string {
	var names []string
	for _, c := range root.Commands() {
		names = append(names, c.Name())
	}
	return names
}
