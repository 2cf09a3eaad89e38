package render

import "quiltrun/planner"

// Fit is a text made fit to print and parted into lines of at most so many
// columns; measures stay whole. A limit of 0 is none.
func (l Look) Fit(text string, limit int) []string {
	lines := wrap(l.text(text), limit)
	for i, line := range lines {
		lines[i] = untied(line)
	}
	return lines
}

// Text is a text made fit to print: nothing in it steers the terminal.
func (l Look) Text(text string) string { return untied(l.text(text)) }

// Cut is a printable text shortened to so many columns, with a mark where
// something is left out.
func (l Look) Cut(text string, limit int) string {
	if width(text) <= limit {
		return text
	}
	return narrow.TruncateString(text, limit, l.text("…"))
}

// Columns is how many columns a terminal needs for a text.
func Columns(text string) int { return width(text) }

// Counted is a number of things: "1 pair", "12 pairs".
func Counted(n int, one planner.CountUnit) string { return counted(n, string(one)) }

// Spell is a time to the minute: "35 min", "3 h 20 min".
func Spell(m planner.Minutes) string { return spell(m) }

// ShellWord is a name as a command line takes it.
func ShellWord(name string) string { return shellWord(name) }
