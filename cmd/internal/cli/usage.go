package cli

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// The groups of commands, in the order of the work.
var workGroups = []*cobra.Group{
	{ID: "plan", Title: "before the work"},
	{ID: "take on", Title: "taking a job on"},
	{ID: "work", Title: "at work"},
	{ID: "look", Title: "how it stands"},
	{ID: "set up", Title: "setting up"},
}

// usage is the part of help after the explanation: how a command is called,
// examples, commands and options. It is written without a template, which would
// have to be read anew at every call.
func usage(cmd *cobra.Command) error {
	var text strings.Builder
	fmt.Fprintf(&text, "Usage:\n  %s\n", usedLine(cmd))
	if cmd.HasExample() {
		fmt.Fprintf(&text, "\nExamples:\n%s\n", cmd.Example)
	}
	if cmd.HasAvailableSubCommands() {
		text.WriteString("\nCommands:\n" + commandList(cmd))
	}
	if cmd.HasAvailableLocalFlags() {
		text.WriteString("\nOptions:\n" + trimmed(cmd.LocalFlags().FlagUsages()))
	}
	if cmd.HasAvailableInheritedFlags() {
		text.WriteString("\nOptions of every command:\n" + trimmed(cmd.InheritedFlags().FlagUsages()))
	}
	if cmd.HasAvailableSubCommands() {
		fmt.Fprintf(&text, "\n%s COMMAND --help says more of a command.\n", cmd.CommandPath())
	}
	_, err := fmt.Fprint(cmd.OutOrStderr(), text.String())
	return err
}

// usedLine is how a command is called.
func usedLine(cmd *cobra.Command) string {
	switch {
	case cmd.HasAvailableSubCommands() && cmd.HasParent(): // it says something by itself
		return cmd.CommandPath() + " [COMMAND] [options]"
	case cmd.HasAvailableSubCommands():
		return cmd.CommandPath() + " COMMAND [options]"
	}
	return strings.Replace(cmd.UseLine(), "[flags]", "[options]", 1)
}

// commandList is the commands by their groups.
func commandList(cmd *cobra.Command) string {
	var text strings.Builder
	for _, group := range cmd.Groups() {
		fmt.Fprintf(&text, "  %s\n", group.Title)
		for _, sub := range cmd.Commands() {
			if sub.GroupID == group.ID {
				fmt.Fprintf(&text, "    %-*s %s\n", sub.NamePadding(), sub.Name(), sub.Short)
			}
		}
	}
	return text.String()
}

// trimmed is the options without blanks at the ends of lines.
func trimmed(options string) string {
	lines := strings.Split(strings.TrimRight(options, "\n"), "\n")
	for i, line := range lines {
		lines[i] = strings.TrimRight(line, " ")
	}
	return strings.Join(lines, "\n") + "\n"
}
