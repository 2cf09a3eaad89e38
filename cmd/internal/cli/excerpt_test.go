package cli

import (
	"strings"
	"testing"

	"github.com/clipperhouse/displaywidth"
	"github.com/stretchr/testify/assert"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

func TestExcerptPointsAtTheColumn(t *testing.T) {
	file := []byte("job: kelp\r\ncolorways:\n  藍: {blocks: 8}\n\toffset: 1\n  \x1b[31mred\u202e: 1\n")
	for _, c := range []struct {
		name         string
		line, column int
		want         string
	}{
		{"a plain line", 2, 1, "   2 | colorways:\n     | ^"},
		{"a line of another system, without its return", 1, 6, "   1 | job: kelp\n     |      ^"},
		// 藍 is one character and two columns.
		{"behind wide characters", 3, 6, "   3 |   藍: {blocks: 8}\n     |       ^"},
		{"a tab takes one column", 4, 2, "   4 |  offset: 1\n     |  ^"},
		{"escapes and marks of direction do not reach the terminal", 5, 8, "   5 |    [31mred : 1\n     |        ^"},
		{"behind the end of the line", 2, 99, "   2 | colorways:\n     |           ^"},
		{"the empty line at the end", 6, 1, "   6 |\n     | ^"},
		{"no such line", 7, 1, ""},
		{"no line at all", 0, 0, ""},
	} {
		assert.Equal(t, c.want, excerpt(file, planner.Position{Line: c.line, Column: c.column}, 0), c.name)
	}
}

func TestExcerptOfALongLineKeepsTheCaretInSight(t *testing.T) {
	line := strings.Repeat("a", 60) + "B" + strings.Repeat("c", 60)
	// 33 columns are left beside the margin of 7; two thirds of them are 22.
	assert.Equal(t,
		"   1 | ..."+strings.Repeat("a", 19)+"B"+strings.Repeat("c", 7)+"...\n     | "+strings.Repeat(" ", 22)+"^",
		excerpt([]byte(line), planner.Position{Line: 1, Column: 61}, 40))
}

func TestLongErrorsAreWrappedOnTerminals(t *testing.T) {
	for _, c := range []struct {
		name  string
		line  string
		width int
		want  []string
	}{
		{"no terminal", "quiltrun: no job is booked", 0, []string{"quiltrun: no job is booked"}},
		{"short enough", "quiltrun: no job is booked", 26, []string{"quiltrun: no job is booked"}},
		{"one too many", "quiltrun: no job is booked", 25, []string{"quiltrun: no job is", "    booked"}},
		{"several lines", "  one two three four", 9, []string{"  one two", "    three", "    four"}},
		{"a long word stays whole", "  a longer-than-that word", 8, []string{"  a", "    longer-than-that", "    word"}},
		{"wide characters", "藍 藍 藍", 5, []string{"藍 藍", "    藍"}},
	} {
		assert.Equal(t, c.want, wrapped(c.line, c.width), c.name)
	}
}

func TestExcerptNeverRunsOverItsWidth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		line := rapid.StringOf(rapid.RuneFrom([]rune("ab 藍🧵é\t\x1b\u0301"))).Draw(t, "line")
		column := rapid.IntRange(1, 200).Draw(t, "column")
		width := rapid.IntRange(30, 100).Draw(t, "width")
		shown := excerpt([]byte(line), planner.Position{Line: 1, Column: column}, width)
		for _, l := range strings.Split(shown, "\n") {
			assert.LessOrEqual(t, displaywidth.String(strings.TrimRight(l, "^")), width, l)
		}
		assert.NotContains(t, shown, "\x1b")
	})
}
