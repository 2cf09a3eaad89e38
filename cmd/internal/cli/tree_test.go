package cli

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/clipperhouse/displaywidth"
	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// calm is an environment that reads nothing of this machine.
func calm(t *testing.T) (Env, *bytes.Buffer, *bytes.Buffer) {
	var out, errors bytes.Buffer
	return Env{
		In: strings.NewReader(""), Out: &out, Err: &errors, Unicode: true,
		Now:     func() time.Time { return time.Date(2026, time.November, 2, 19, 30, 0, 0, time.UTC) },
		DataDir: t.TempDir(), User: "kelp", Random: strings.NewReader(strings.Repeat("tideline", 100)),
		Revision: func() string { return "0123abc" },
	}, &out, &errors
}

// everyCommand walks the tree, the root first.
func everyCommand(t *testing.T, look func(t *testing.T, cmd *cobra.Command)) {
	env, _, _ := calm(t)
	root := newRoot(&env)
	root.InitDefaultHelpCmd()
	t.Run("quiltrun", func(t *testing.T) { look(t, root) })
	for _, cmd := range root.Commands() {
		t.Run(cmd.Name(), func(t *testing.T) { look(t, cmd) })
	}
}

func TestEveryCommandExplainsItself(t *testing.T) {
	everyCommand(t, func(t *testing.T, cmd *cobra.Command) {
		assert.NotEmpty(t, cmd.Short)
		assert.NotRegexp(t, `\.$`, cmd.Short, "a line of a list has no full stop")
		assert.NotEmpty(t, cmd.Long)
		assert.NotEmpty(t, cmd.Example)
		assert.NotNil(t, cmd.Args, "arguments are to be counted in words of our own")
		if cmd.HasParent() {
			assert.True(t, strings.HasPrefix(cmd.Long, cmd.Name()+" "), "Long begins with the command's name")
			assert.Contains(t, cmd.Example, "quiltrun "+cmd.Name())
		}
	})
}

func TestHelpFitsEightyColumns(t *testing.T) {
	everyCommand(t, func(t *testing.T, cmd *cobra.Command) {
		env, out, _ := calm(t)
		args := []string{"--help"}
		if cmd.HasParent() {
			args = []string{cmd.Name(), "--help"}
		}
		require.Equal(t, exitDone, Main(env, args))
		for _, line := range strings.Split(out.String(), "\n") {
			assert.LessOrEqual(t, displaywidth.String(line), 80, line)
			assert.NotContains(t, line, "\t")
		}
	})
}

func TestEveryCommandHasAScript(t *testing.T) {
	scripts := filepath.Join("..", "..", "quiltrun", "testdata", "script")
	everyCommand(t, func(t *testing.T, cmd *cobra.Command) {
		found, err := filepath.Glob(filepath.Join(scripts, cmd.Name()+"_*.txtar"))
		require.NoError(t, err)
		require.NotEmpty(t, found, "no script is named after it")
		for _, name := range found {
			data, err := os.ReadFile(name)
			require.NoError(t, err)
			assert.Contains(t, string(data), "quiltrun", name)
		}
	})
}

func TestEveryOptionSaysWhatItTakes(t *testing.T) {
	everyCommand(t, func(t *testing.T, cmd *cobra.Command) {
		for _, name := range flagNames(cmd) {
			flag := cmd.Flags().Lookup(name)
			assert.NotEmpty(t, flag.Usage, name)
			assert.Empty(t, flag.Shorthand, "%s: letters are for counts below zero to be told from", name)
		}
	})
}
