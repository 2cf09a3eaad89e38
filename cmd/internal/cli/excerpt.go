package cli

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"

	"github.com/clipperhouse/displaywidth"

	"quiltrun/planner"
)

// excerpt is the line of a job file at a position, with a caret under the
// column, as two lines; "" where the file has no such line. Nothing but the
// file's own text is shown, its control characters as blanks, so that a file
// cannot steer the terminal. A line wider than width is cut round the caret;
// width 0 cuts nothing.
func excerpt(data []byte, at planner.Position, width int) string {
	lines := bytes.Split(data, []byte("\n"))
	if at.Line < 1 || at.Line > len(lines) {
		return ""
	}
	margin := fmt.Sprintf("%4d | ", at.Line)
	before, after := splitColumn(plainText(string(lines[at.Line-1])), at.Column)
	if width > 0 {
		before, after = fitRound(before, after, width-len(margin))
	}
	gutter := strings.Repeat(" ", len(margin)-2) + "| "
	return strings.TrimRight(margin+before+after, " ") + "\n" +
		gutter + strings.Repeat(" ", displaywidth.String(before)) + "^"
}

// plainText is a line without what a terminal would obey: control characters
// and marks that turn the direction of writing become blanks.
func plainText(line string) string {
	line = strings.TrimSuffix(line, "\r")
	return strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == unicode.ReplacementChar {
			return ' '
		}
		return r
	}, line)
}

// splitColumn splits a line before the character at column, counted in
// characters from one. A column behind the end splits at the end.
func splitColumn(line string, column int) (before, after string) {
	n := 1
	for at := range line {
		if n == column {
			return line[:at], line[at:]
		}
		n++
	}
	return line, ""
}

// fitRound cuts both sides so that together they are at most width wide, and
// the start of after, where the caret points, stays in sight.
func fitRound(before, after string, width int) (string, string) {
	const mark = "..."
	if displaywidth.String(before)+displaywidth.String(after) <= width {
		return before, after
	}
	if room := width * 2 / 3; displaywidth.String(before) > room {
		before = mark + lastOf(before, room-len(mark))
	}
	return before, displaywidth.TruncateString(after, width-displaywidth.String(before), mark)
}

// wrapped parts a line at its blanks into lines of at most width, the later
// ones further in. Width 0 parts nothing; a word longer than a line stays whole.
func wrapped(line string, width int) []string {
	const further = "    "
	var lines []string
	for width > 0 && displaywidth.String(line) > width {
		at := lastBlank(line, width, len(line)-len(strings.TrimLeft(line, " ")))
		if at < 0 {
			break
		}
		lines = append(lines, strings.TrimRight(line[:at], " "))
		line = further + line[at+1:]
	}
	return append(lines, line)
}

// lastBlank is where the last blank stands after which a text would be wider
// than width, or the first one behind that; it looks past the text's indent. It
// is -1 where there is none.
func lastBlank(text string, width, indent int) int {
	found := -1
	for at := indent; at < len(text); at++ {
		if text[at] != ' ' {
			continue
		}
		if found >= 0 && displaywidth.String(text[:at]) > width {
			break
		}
		found = at
	}
	return found
}

// lastOf is the end of a text that is at most width wide.
func lastOf(text string, width int) string {
	over := displaywidth.String(text) - width
	parts := displaywidth.StringGraphemes(text)
	for over > 0 && parts.Next() {
		over -= parts.Width()
		text = text[len(parts.Value()):]
	}
	return text
}
