package cli

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"quiltrun/tracker"
)

const completionLong = `completion writes a script that teaches a shell to finish quiltrun's commands,
options, job ids, operations, lots and blocks when Tab is pressed. SHELL is
bash, zsh, fish or powershell.`

const completionExample = `  # bash, for this session:
  source <(quiltrun completion bash)

  # zsh, for good:
  quiltrun completion zsh > "${fpath[1]}/_quiltrun"

  # fish, for good:
  quiltrun completion fish > ~/.config/fish/completions/quiltrun.fish`

// shells is the shells that there are scripts for. That of PowerShell is cobra's.
var shells = []string{"bash", "zsh", "fish", "powershell"}

// newCompletion is the command completion. It takes the place of cobra's own,
// which has a command of its own for each shell and words of its own.
func newCompletion(env *Env) *cobra.Command {
	return &cobra.Command{
		Use:               "completion SHELL",
		Short:             "Write the script that finishes words in a shell",
		Long:              completionLong,
		Example:           completionExample,
		Args:              between(1, 1, "SHELL"),
		ValidArgsFunction: cobra.FixedCompletions(shells, noFiles),
		RunE: func(cmd *cobra.Command, args []string) error {
			return writeScript(env.Out, cmd.Root(), args[0])
		},
	}
}

// written writes a script.
func written(out io.Writer, script string) error {
	_, err := io.WriteString(out, script)
	return err
}

// writeScript has the tree write its completion script for a shell.
func writeScript(out io.Writer, root *cobra.Command, shell string) error {
	switch shell {
	case "bash":
		return written(out, bashScript)
	case "zsh":
		return written(out, zshScript)
	case "fish":
		return written(out, fishScript)
	case "powershell":
		return root.GenPowerShellCompletionWithDesc(out)
	}
	f := wrong("completion does not know the shell %q", shell)
	if near := tracker.Nearest(shell, shells); len(near) > 0 {
		return f.hint("did you mean %s?", near[0])
	}
	return f.hint("it knows %s", strings.Join(shells, ", "))
}
