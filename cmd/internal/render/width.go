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

// wrap parts a text into lines of at most limit columns, at blanks that do not
// hold a measure together. A word longer than a line is parted too, between
// clusters, unless it is a measure: those are never cut. A limit of 0 is none.
func wrap(s string, limit int) []string {
	if limit <= 0 || width(s) <= limit {
		return []string{s}
	}
	var lines []string
	line := ""
	for _, word := range words(s) {
		if line != "" && width(line)+1+width(word) > limit {
			lines = append(lines, line)
			line = ""
		}
		if line != "" {
			line += " " + word
			continue
		}
		parts := broken(word, limit)
		lines = append(lines, parts[:len(parts)-1]...)
		line = parts[len(parts)-1]
	}
	return append(lines, line)
}

// tied is a blank that holds two words together on a line. A page writes it as
// an ordinary one.
const tied = "\u00a0"

// together ties the words of a name.
func together(name string) string { return strings.ReplaceAll(name, " ", tied) }

// words parts a text at blanks, except within a measure.
func words(s string) []string {
	var out []string
	for w := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == ' ' }) {
		if n := len(out); n > 0 && held(out[n-1], w) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// held reports that a blank between two words is part of a measure, such as
// those in "≈ 8 1/2 × 9 in", "3 h 20 min" and "88 %".
func held(before, after string) bool {
	last, _ := utf8.DecodeLastRuneInString(before)
	first, _ := utf8.DecodeRuneInString(after)
	number := unicode.IsDigit(first)
	after, _, _ = strings.Cut(after, tied)
	switch {
	case strings.ContainsRune("≈~×☐", last):
		return true
	case unicode.IsDigit(last):
		return after == "×" || after == "x" || number && strings.Contains(after, "/") ||
			unitWord(strings.TrimRight(after, ".,;:)"))
	}
	return number && (strings.HasSuffix(before, " h") || strings.HasSuffix(before, " x"))
}

// unitWord reports that a word belongs to the number before it.
func unitWord(s string) bool {
	switch s {
	case "in", "cm", "mm", "m", "yd", "h", "min", "%":
		return true
	}
	return false
}

// broken cuts a word into lines: after hyphens and tied blanks where that is
// enough, else cluster by cluster, but never within a number.
func broken(word string, limit int) []string {
	if width(word) <= limit {
		return []string{word}
	}
	var lines []string
	line, used := "", 0
	for _, part := range hyphened(word) {
		for _, piece := range pieces(part, limit) {
			w := width(piece)
			if used > 0 && used+w > limit {
				lines = append(lines, strings.TrimRight(line, " "))
				line, used = "", 0
			}
			line += piece
			used += w
		}
	}
	return append(lines, line)
}

// hyphened parts a word after each hyphen between letters, after each tied
// blank, and a size after its ×.
func hyphened(word string) []string {
	var parts []string
	start := 0
	for i := 1; i+1 < len(word); i++ {
		hyphen := word[i] == '-' && !numeric(word[i-1]) && !numeric(word[i+1])
		if hyphen || strings.HasSuffix(word[:i+1], tied) || strings.HasSuffix(word[:i+1], "× ") {
			parts = append(parts, word[start:i+1])
			start = i + 1
		}
	}
	return append(parts, word[start:])
}

// pieces parts what does not fit a line into clusters and whole numbers. A
// measure stays whole even then.
func pieces(part string, limit int) []string {
	if width(part) <= limit || strings.Contains(part, " ") && strings.ContainsAny(part, "0123456789") {
		return []string{part}
	}
	var out []string
	for g := narrow.StringGraphemes(part); g.Next(); {
		if n := len(out); n > 0 && withinNumber(out[n-1], g.Value()) {
			out[n-1] += g.Value()
			continue
		}
		out = append(out, g.Value())
	}
	return out
}

// withinNumber reports that a cut between two texts would go through a number.
func withinNumber(before, after string) bool {
	a, b := before[len(before)-1], after[0]
	return numeric(a) && numeric(b) && (digit(a) || digit(b))
}

func digit(b byte) bool { return b >= '0' && b <= '9' }

// numeric reports that a character may be part of a number as it is written.
func numeric(b byte) bool { return digit(b) || strings.IndexByte("/.,-", b) >= 0 }
