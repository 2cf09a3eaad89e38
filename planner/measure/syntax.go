package measure

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// SyntaxError says that a text is no measure. Reason is a clause for the person
// who wrote it: what is wrong, and what would be taken instead.
type SyntaxError struct {
	Text   string
	Reason string
}

// Error returns the quoted text and the reason.
func (e *SyntaxError) Error() string { return quoted(e.Text) + ": " + e.Reason }

// quoted quotes text so that it can be read at a glance: a text with inch marks
// goes between single quotes, what cannot be seen is escaped, and the middle of
// a very long text is left out.
func quoted(text string) string {
	const most = 60
	mark := `"`
	if strings.Contains(text, mark) {
		mark = "'"
	}
	if n := utf8.RuneCountInString(text); n > most {
		runes := []rune(text)
		text = string(runes[:most/2]) + "…" + string(runes[n-most/2:])
	}
	return mark + visible(text) + mark
}

// visible escapes what a terminal would not show as it is. Blanks of the kinds
// that the parser takes stay.
func visible(text string) string {
	var b strings.Builder
	for len(text) > 0 {
		r, n := utf8.DecodeRuneInString(text)
		switch {
		case r == utf8.RuneError && n == 1:
			b.WriteString(`\x` + strconv.FormatUint(uint64(text[0]), 16))
		case unicode.IsGraphic(r):
			b.WriteRune(r)
		default:
			escaped := strconv.QuoteRune(r)
			b.WriteString(escaped[1 : len(escaped)-1])
		}
		text = text[n:]
	}
	return b.String()
}
