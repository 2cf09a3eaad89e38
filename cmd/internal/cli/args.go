package cli

import (
	"errors"
	"slices"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"quiltrun/tracker"
)

// between checks how many arguments a command got, and that none is empty: an
// empty one is a script's unset variable, not a wish. The names are the
// arguments' own, in order, for the sentence.
func between(least, most int, names ...string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return asUsed(cmd, wrong("%s needs %s", cmd.Name(), strings.Join(names[len(args):least], " and ")))
		case most >= 0 && len(args) > most:
			return asUsed(cmd, wrong("%s does not take %q", cmd.Name(), args[most]))
		}
		at := slices.Index(args, "")
		if at < 0 {
			return nil
		}
		f := wrong("%s got an empty word", cmd.Name())
		if at < len(names) {
			f = wrong("%s got an empty word for %s", cmd.Name(), names[at])
		}
		return f.hint(unset)
	}
}

// unset is what is probably wrong where a word or a value is empty.
const unset = "is a variable of the script not set?"

// noEmptyOptions refuses options that were given an empty value. None of them
// means what it would without the option: --entry "" is not the newest entry,
// and --store "" not the usual store. Only a note may be empty.
func noEmptyOptions(cmd *cobra.Command) error {
	var empty error
	cmd.Flags().Visit(func(f *pflag.Flag) {
		if f.Value.Type() == "string" && f.Value.String() == "" && f.Name != "reason" {
			empty = wrong("--%s is empty", f.Name).hint(unset)
		}
	})
	return empty
}

// asUsed adds how the command is called.
func asUsed(cmd *cobra.Command, f *fault) *fault {
	return f.hint("usage: %s", usedLine(cmd)).hint("try: %s --help", cmd.CommandPath())
}

// flagFault words what is wrong with an option.
func flagFault(cmd *cobra.Command, err error) error {
	var own *fault
	if errors.Is(err, pflag.ErrHelp) || errors.As(err, &own) {
		return err // options that check themselves have worded it already
	}
	var unknown *pflag.NotExistError
	var bare *pflag.ValueRequiredError
	var value *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		return unknownFlag(cmd, unknown)
	case errors.As(err, &bare):
		name, _ := pflag.UnquoteUsage(bare.GetFlag())
		return wrong("--%s needs a value", bare.GetFlag().Name).hint("write: --%s %s", bare.GetFlag().Name, name)
	case errors.As(err, &value):
		return wrong("--%s does not take %q", value.GetFlag().Name, value.GetValue())
	}
	return asUsed(cmd, wrong("%v", err))
}

// unknownFlag names the options that were probably meant.
func unknownFlag(cmd *cobra.Command, unknown *pflag.NotExistError) *fault {
	if letters := unknown.GetSpecifiedShortnames(); letters != "" {
		return asUsed(cmd, wrong("%s has no option -%s", cmd.Name(), letters))
	}
	f := wrong("%s has no option --%s", cmd.Name(), unknown.GetSpecifiedName())
	if near := tracker.Nearest(unknown.GetSpecifiedName(), flagNames(cmd)); len(near) > 0 {
		return f.hint("did you mean --%s?", strings.Join(near, " or --"))
	}
	return asUsed(cmd, f)
}

// flagNames is every option that a command takes, those of all commands too.
func flagNames(cmd *cobra.Command) []string {
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	return names
}
