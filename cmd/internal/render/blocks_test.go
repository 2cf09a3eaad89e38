package render

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func TestBlocksKeepTheirContract(t *testing.T) {
	conforms(t, "blocks", func(w io.Writer) error { return BlocksJSON(w, planner.BuiltIns()) })
	for _, b := range planner.BuiltIns() {
		conforms(t, "block", func(w io.Writer) error { return BlockRecipeJSON(w, b) })
	}
}

// The list names every block with all that a job file can give it, and fits the
// page.
func TestTheListOfBlocksFitsThePage(t *testing.T) {
	for _, columns := range []int{40, 80, 0} {
		out := shownBy(t, func(w *bytes.Buffer) error { return Blocks(w, planner.BuiltIns(), Look{Width: columns, Unicode: true}) })
		for _, b := range planner.BuiltIns() {
			assert.Contains(t, out, b.Name)
			for _, m := range b.Measures {
				assert.Contains(t, out, m.Name)
			}
		}
		if columns == 0 {
			continue
		}
		for line := range strings.Lines(out) {
			assert.LessOrEqual(t, width(strings.TrimSuffix(line, "\n")), columns, line)
		}
	}
}

// What is printed is a comment and the fragment, which a test of the planner
// pastes into a job.
func TestARecipeIsPrintedToBePasted(t *testing.T) {
	for _, b := range planner.BuiltIns() {
		var out bytes.Buffer
		require.NoError(t, BlockRecipe(&out, b))
		comment, fragment, found := strings.Cut(out.String(), "block:\n")
		require.True(t, found, b.Name)
		assert.Equal(t, planner.Fragment(b.Sample().Recipe), "block:\n"+fragment)
		for line := range strings.Lines(comment) {
			assert.True(t, strings.HasPrefix(line, "# "), line)
		}
		for _, role := range b.Sample().Roles {
			assert.Contains(t, comment, role)
		}
	}
}
