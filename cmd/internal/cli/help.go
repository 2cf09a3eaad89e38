package cli

import "github.com/spf13/cobra"

// newHelp is the command help. It takes the place of cobra's own, which shows
// the help of the root for a command that there is not.
func newHelp() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Say what a command does and how to call it",
		Long:    "help says what a command does, which options it takes, and shows calls that\nwork. Without COMMAND it shows all commands.",
		Example: "  quiltrun help log",
		Args:    between(0, 1, "COMMAND"),
		ValidArgsFunction: func(cmd *cobra.Command, args []string, _ string) ([]cobra.Completion, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, noFiles
			}
			return commandNames(cmd.Root()), noFiles
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return cmd.Root().Help()
			}
			for _, c := range cmd.Root().Commands() {
				if c.Name() == args[0] {
					c.InitDefaultHelpFlag()
					return c.Help()
				}
			}
			return unknownCommand(cmd.Root(), args[0])
		},
	}
}
