package render

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// sheetAt is the job sheet of a plan at a width.
func sheetAt(t *testing.T, p planner.Plan, look Look) string {
	t.Helper()
	var out strings.Builder
	require.NoError(t, Sheet(&out, p, look))
	return out.String()
}

func TestTheSheetDrawsEachKindOfBlockOnceWhereThereIsRoom(t *testing.T) {
	p := example(t, "harbour-pair")
	shown := sheetAt(t, p, Look{Width: 80, Unicode: true})
	assert.Equal(t, 1, strings.Count(shown, "The finished block of"), "a plain square is not drawn")
	assert.Contains(t, shown, "The finished block of mooring")
	assert.Contains(t, shown, "corner")
	for _, line := range strings.Split(shown, "\n") {
		assert.LessOrEqual(t, width(line), 80, line)
	}
	assert.Contains(t, sheetAt(t, p, Look{Unicode: true}), "The finished block of", "a pipe has room")
	assert.NotContains(t, sheetAt(t, p, Look{Width: 40, Unicode: true}), "The finished block of")
	ascii := sheetAt(t, p, Look{Width: 80})
	assert.Contains(t, ascii, "The finished block of")
	for _, r := range ascii {
		require.Less(t, r, rune(128), "only ASCII where no more can be shown")
	}
}

// The recut-twice example is pressed in two ways: the drawing shows one of them.
func TestTheDrawingSaysWhichCardItShows(t *testing.T) {
	twoWays := sheetAt(t, example(t, "tidemark-lap"), Look{Width: 120, Unicode: true})
	assert.Contains(t, twoWays, "allowance is pressed by card a.")
	oneWay := sheetAt(t, example(t, "estuary-lap"), Look{Width: 120, Unicode: true})
	assert.Contains(t, oneWay, "allowance is pressed.")
}
