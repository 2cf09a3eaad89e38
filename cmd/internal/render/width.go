package render

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"github.com/clipperhouse/displaywidth"
)

// narrow counts the columns of a text as a terminal shows it: by grapheme
// cluster, wide characters twice, marks not at all. Characters of ambiguous
// width (rules, ≈, ×) are narrow whatever the locale says, so that a table is
// the same table everywhere.
var narrow = displaywidth.Options{EastAsianWidth: false}

// width is how many columns a text takes.
func width(s string) int {
	if ascii(s) {
		return len(s)
	}
	return narrow.String(s)
}

// ascii reports that s is printable ASCII throughout, which most text is.
func ascii(s string) bool {
	for i := range len(s) {
		if s[i] < ' ' || s[i] > '~' {
			return false
		}
	}
	return true
}

// clean takes out of a text what would steer a terminal rather than show:
// control characters, line ends and overrides of the writing direction. Names
// come from files that anybody may have written.
func clean(s string) string {
	leftwards := false
	s = strings.Map(func(r rune) rune {
		switch {
		case r == '\t' || r == '\n' || r == '\u2028' || r == '\u2029':
			return ' '
		case unicode.IsControl(r) || r == utf8.RuneError:
			return '\uFFFD'
		case unicode.Is(unicode.Bidi_Control, r):
			return -1
		}
		leftwards = leftwards || isLeftwards(r)
		return r
	}, s)
	if leftwards {
		return closed(s)
	}
	return s
}

// isLeftwards reports that a letter is written from right to left.
func isLeftwards(r rune) bool {
	return unicode.In(r, unicode.Hebrew, unicode.Arabic, unicode.Syriac, unicode.Thaana, unicode.Nko)
}

// closed puts a mark behind every stretch written from right to left, so that a
// number that comes after it, in the next column perhaps, keeps its place.
func closed(s string) string {
	var out strings.Builder
	rest := 0 // start of what is not yet written
	end := 0  // end of the stretch that is open; 0: none is
	for i, r := range s {
		switch {
		case isLeftwards(r) || end > 0 && unicode.IsMark(r):
			end = i + utf8.RuneLen(r)
		case end > 0 && r != ' ':
			out.WriteString(s[rest:end] + leftToRight)
			rest, end = end, 0
		}
	}
	if end > 0 {
		out.WriteString(s[rest:end] + leftToRight)
		rest = end
	}
	return out.String() + s[rest:]
}

// leftToRight is a mark of no width that ends a stretch written leftwards.
const leftToRight = "\u200e"

// padded fills s with blanks to n columns.
func padded(s string, n int) string {
	return s + strings.Repeat(" ", max(0, n-width(s)))
}
