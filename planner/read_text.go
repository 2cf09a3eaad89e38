package planner

import (
	"bytes"
	"fmt"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The bounds of a job file. A job of a thousand fabrics and a mapped layout of
// ten thousand blocks stays well within them.
const (
	largestFile = 1 << 20 // bytes
	mostLines   = 20_000
)

// lineEnds makes every line end \n: a job file may come from any system.
var lineEnds = strings.NewReplacer("\r\n", "\n", "\r", "\n")

// cleanText is the file as text whose lines end in \n, with each tab beyond the
// indent as one blank, so that columns stay what they are in an editor. It is
// false, and the problem reported, for what no job file is.
func (r *jobReader) cleanText(data []byte) (string, bool) {
	before := len(r.problems)
	data = bytes.TrimPrefix(data, []byte("\ufeff"))
	if what, hint := notText(data); what != "" {
		r.report(Position{1, 1}, "", what, hint)
		return "", false
	}
	text := lineEnds.Replace(string(data))
	if lines := strings.Count(text, "\n"); lines > mostLines {
		what := fmt.Sprintf("the file has %d lines; a job file has at most %d", lines, mostLines)
		r.report(Position{mostLines + 1, 1}, "", what, "is this the right file?")
		return "", false
	}
	r.reportUnseen(text)
	r.reportIndents(text)
	r.text = strings.ReplaceAll(text, "\t", " ")
	return r.text, len(r.problems) == before
}

// notText says why the bytes as a whole cannot be a job file.
func notText(data []byte) (what, hint string) {
	switch {
	case len(data) > largestFile:
		return fmt.Sprintf("the file has %d bytes; a job file has at most %d (1 MiB)", len(data), largestFile),
			"is this the right file?"
	case bytes.HasPrefix(data, []byte{0xff, 0xfe}), bytes.HasPrefix(data, []byte{0xfe, 0xff}):
		return "the file is saved as UTF-16", "save it as UTF-8 text"
	case len(bytes.TrimSpace(data)) == 0:
		return "the file is empty", "begin with " + keyExamples()["job"]
	}
	return "", ""
}

// reportUnseen reports the first character that is no text: a byte that is not
// UTF-8, or a control character.
func (r *jobReader) reportUnseen(text string) {
	at := Position{1, 1}
	for i, c := range text {
		switch {
		case c == '\n':
			at = Position{at.Line + 1, 0}
		case c == utf8.RuneError && !strings.HasPrefix(text[i:], "\uFFFD"):
			r.report(at, "", fmt.Sprintf("the byte %#02x here is not UTF-8", text[i]), "save the file as UTF-8 text")
			return
		case c != '\t' && unicode.IsControl(c):
			what := fmt.Sprintf("a control character (U+%04X) stands here", c)
			r.report(at, "", what, "delete it; it cannot be seen in most editors")
			return
		}
		at.Column++
	}
}

// reportIndents reports lines that are indented by anything but blanks: the
// first, and how many more.
func (r *jobReader) reportIndents(text string) {
	var first Position
	what, more, number := "", 0, 0
	for line := range strings.Lines(text) {
		number++
		column, kind := badIndent(line)
		switch {
		case column == 0:
		case what == "":
			first, what = Position{number, column}, kind+" indents this line"
		default:
			more++
		}
	}
	if more > 0 {
		what += fmt.Sprintf(", and %d more", more)
	}
	if what != "" {
		r.report(first, "", what, "indent with blanks, two for each step; YAML does not take anything else")
	}
}

// badIndent finds the column of a tab or of an odd blank in a line's indent, 0
// where there is none or the line says nothing.
func badIndent(line string) (column int, kind string) {
	body := strings.TrimLeftFunc(line, unicode.IsSpace)
	if body == "" || strings.HasPrefix(body, "#") {
		return 0, ""
	}
	for _, c := range strings.TrimSuffix(line, body) {
		column++
		switch c {
		case ' ':
		case '\t':
			return column, "a tab"
		default:
			return column, fmt.Sprintf("a blank of another kind (U+%04X)", c)
		}
	}
	return 0, ""
}
