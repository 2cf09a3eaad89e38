package planner

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// The bounds of what one value may say.
const (
	longestName = 100       // characters
	longestLine = 400       // characters of a title or a client
	longestID   = 64        // characters
	largestOne  = 1_000_000 // of any count
)

// said quotes what somebody wrote so that it can be read at a glance: a text with
// inch marks between single quotes, what cannot be seen escaped, the middle of
// a long text left out.
func said(text string) string {
	if runes := []rune(text); len(runes) > longestName {
		text = string(runes[:longestName/2]) + "…" + string(runes[len(runes)-20:])
	}
	mark := `"`
	if strings.Contains(text, mark) {
		mark = "'"
	}
	var b strings.Builder
	for _, c := range text {
		if unicode.IsControl(c) || c == '\u2028' || c == '\u2029' {
			fmt.Fprintf(&b, `\u%04x`, c)
			continue
		}
		b.WriteRune(c)
	}
	return mark + b.String() + mark
}

// scalarText is the text of a single value; false, and reported, where there is
// a list, a group of keys or nothing.
func (r *jobReader) scalarText(n *fileNode, wanted string) (string, bool) {
	r.at[n.path] = n.at
	switch {
	case n.kind == nothing || n.kind == scalar && n.text == "":
		r.fault(n, "nothing is given for "+said(n.label), n.hint())
	case n.kind != scalar:
		r.fault(n, fmt.Sprintf("%s should be %s, not %s", said(n.label), wanted, n.holds()), n.hint())
	default:
		return n.text, true
	}
	return "", false
}

// id reads a job's id.
func (r *jobReader) id(n *fileNode) string {
	text, ok := r.scalarText(n, "an id")
	if !ok {
		return ""
	}
	tidy := tidyID(text)
	if tidy == text && len(text) <= longestID {
		return text
	}
	hint := ""
	if tidy != "" && tidy != text && len(tidy) <= longestID {
		hint = "such as " + tidy
	}
	what := "%s cannot be a job's id: ids are small letters a to z, digits and hyphens, at most %d, and begin with no hyphen"
	r.fault(n, fmt.Sprintf(what, said(text), longestID), hint)
	return ""
}

// tidyID is the id nearest to a text: the text itself where it is one.
func tidyID(text string) string {
	return strings.TrimLeft(strings.Map(func(c rune) rune {
		switch {
		case c >= 'a' && c <= 'z', c >= '0' && c <= '9', c == '-':
			return c
		case c >= 'A' && c <= 'Z':
			return c + 'a' - 'A'
		case unicode.IsSpace(c), c == '_', c == '.', c == '/':
			return '-'
		}
		return -1
	}, text), "-")
}

// line reads a text that stands on one line; "" for nil.
func (r *jobReader) line(n *fileNode) string {
	if n == nil {
		return ""
	}
	text, ok := r.scalarText(n, "a text")
	if !ok {
		return ""
	}
	if what := textFault(text, longestLine); what != "" {
		r.fault(n, said(n.label)+" "+what, "")
		return ""
	}
	return text
}

// nameFault says why a text cannot be a name, "" where it can.
func nameFault(text string) string { return textFault(text, longestName) }

// textFault says why a text cannot stand on a sheet or a screen, "" where it can.
// What would break a line or a terminal is refused; every script is welcome.
func textFault(text string, longest int) string {
	switch {
	case text == "":
		return "is blank"
	case strings.ContainsRune(text, utf8.RuneError):
		return "holds a character that cannot be read (U+FFFD)"
	case strings.ContainsFunc(text, func(c rune) bool { return c == '\n' || c == '\u2028' || c == '\u2029' }):
		return "runs over more than one line"
	case strings.ContainsFunc(text, unicode.IsControl):
		return "holds a control character: " + said(text)
	case utf8.RuneCountInString(text) > longest:
		return fmt.Sprintf("is longer than %d characters", longest)
	}
	return ""
}

// date reads a calendar date; the zero Date for nil.
func (r *jobReader) date(n *fileNode) Date {
	if n == nil {
		return Date{}
	}
	text, ok := r.scalarText(n, "a date")
	if !ok {
		return Date{}
	}
	d, err := ParseDate(text)
	if err != nil {
		r.fault(n, said(text)+" is not a calendar date", "write year-month-day, such as 2027-02-12")
	}
	return d
}

// count reads a whole number from its text; 0, and reported, for anything else
// or less than least.
func (r *jobReader) count(n *fileNode, least int) int {
	text, ok := r.scalarText(n, "a whole number")
	if !ok {
		return 0
	}
	number, hint := countOf(text)
	switch {
	case hint != "":
		r.fault(n, fmt.Sprintf("%s should be a whole number, not %s", said(n.label), said(text)), hint)
	case number > largestOne:
		r.fault(n, fmt.Sprintf("%s is %s, more than any quilt needs", said(n.label), said(text)), "check the number")
	case number < least:
		r.fault(n, fmt.Sprintf("%s is %s; it must be at least %d", said(n.label), text, least), "")
	default:
		return number
	}
	return 0
}

// countOf reads digits. The hint says what to write instead where the text is no
// count; numbers past largestOne come back as one more than that.
func countOf(text string) (number int, hint string) {
	digits := strings.TrimLeft(text, "0123456789") == "" && text != ""
	switch {
	case !digits:
		return 0, "write digits, such as 8"
	case len(text) > 1 && text[0] == '0':
		without := strings.TrimLeft(text[:len(text)-1], "0") + text[len(text)-1:]
		return 0, "leave out the zero in front: " + without
	case len(text) > len(strconv.Itoa(largestOne)):
		return largestOne + 1, ""
	}
	number, _ = strconv.Atoi(text)
	return number, ""
}

// choose reads one word of a list; false, and reported, for another.
func (r *jobReader) choose(n *fileNode, words wordList) (string, bool) {
	text, ok := r.scalarText(n, "one of "+listed(words.words(), "or"))
	if !ok {
		return "", false
	}
	if word, ok := words.find(text); ok {
		return word, true
	}
	r.fault(n, fmt.Sprintf("%s cannot be %s", said(n.label), said(text)), cmp.Or(didYouMean(text, words.words()), "it can be "+listed(words.words(), "or")))
	return "", false
}

// yes reads yes or no; no for nil.
func (r *jobReader) yes(n *fileNode) bool {
	if n == nil {
		return false
	}
	word, _ := r.choose(n, yesWords)
	return word == "yes"
}
