package render

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// wrap parts a text into lines of at most limit columns, at blanks that hold
// nothing together. A word longer than a line is parted too, between clusters,
// unless it is a measure: those are never cut. A limit of 0 is none.
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

// untied is a text with ordinary blanks only.
func untied(s string) string { return strings.ReplaceAll(s, tied, " ") }

// words parts a text at blanks, except within a measure or a count.
func words(s string) []string {
	var out []string
	for w := range strings.FieldsFuncSeq(s, func(r rune) bool { return r == ' ' }) {
		if n := len(out); n > 0 && held(untied(out[n-1]), untied(w)) {
			out[n-1] += " " + w
			continue
		}
		out = append(out, w)
	}
	return out
}

// held reports that a line should not end between two words. Before may be all
// of the line that is held so far, after all that follows; both are untied.
func held(before, after string) bool {
	return measured(before, after) || attached(before, after)
}

// measured reports that a blank is part of a measure, such as those in "≈ 8 1/2
// in ×" and "3 h 20 min": a number, its fraction and its unit are one word.
func measured(before, after string) bool {
	rest, last := lastWord(before)
	after, _, _ = strings.Cut(after, " ")
	_, number := lastWord(rest)
	times := after == "×" || after == "x"
	switch {
	case last == "≈" || last == "~":
		return true
	case startsWithDigit(last) && endsWithDigit(last):
		return times || startsWithDigit(after) && strings.Contains(after, "/") || unitWord(strings.TrimRight(after, ".,;:)"))
	case startsWithDigit(number) && unitWord(last):
		return times || last == "h" && startsWithDigit(after)
	}
	return false
}

// attached reports that two words belong on one line if there is room: the two
// sides of a size, a number and what it counts ("4 of 38 1/2 in", "1 left"), a
// row of turns, a box and its name.
func attached(before, after string) bool {
	rest, last := lastWord(before)
	after, _, _ = strings.Cut(after, " ")
	switch {
	case last == "×" || last == "x" && endsWithDigit(rest):
		return true
	case strings.HasSuffix(last, "°"):
		return after == "/" || startsWithDigit(after)
	case last == "☐" || last == "[" || last == "]" && strings.HasSuffix(rest, "["):
		return true
	case last == "of":
		_, number := lastWord(rest)
		return whole(number) && startsWithDigit(after)
	}
	first, _ := utf8.DecodeRuneInString(after)
	return whole(last) && unicode.IsLetter(first)
}

// lastWord is the last word of a text, and what comes before it.
func lastWord(s string) (rest, last string) {
	if at := strings.LastIndexByte(s, ' '); at >= 0 {
		return s[:at], s[at+1:]
	}
	return "", s
}

// startsWithDigit reports that a word begins with a number, be it in brackets.
func startsWithDigit(s string) bool {
	s = strings.TrimLeft(s, "(")
	return s != "" && digit(s[0])
}

func endsWithDigit(s string) bool { return s != "" && digit(s[len(s)-1]) }

// whole reports that a word is a whole number.
func whole(s string) bool {
	s = strings.TrimLeft(s, "(")
	return s != "" && strings.Trim(s, "0123456789") == ""
}

// unitWord reports that a word belongs to the number before it.
func unitWord(s string) bool {
	switch s {
	case "in", "cm", "mm", "m", "yd", "h", "min", "%", "deg":
		return true
	}
	return false
}

// broken cuts a word into lines: where it hurts least if that is enough, else
// cluster by cluster, but never within a measure.
func broken(word string, limit int) []string {
	if width(word) <= limit {
		return []string{word}
	}
	var lines []string
	line, used := "", 0
	for _, part := range joints(word, limit) {
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

// joints parts a word after hyphens and between the words that are tied, and
// what is too long even so between all words that make no measure.
func joints(word string, limit int) []string {
	var out []string
	for _, part := range parted(word, held) {
		if width(part) <= limit {
			out = append(out, part)
			continue
		}
		out = append(out, parted(part, measured)...)
	}
	return out
}

// parted parts a word after each hyphen between letters, and after each blank
// that is not kept.
func parted(word string, kept func(before, after string) bool) []string {
	var parts []string
	start := 0
	for i := 1; i+1 < len(word); i++ {
		before, blank := strings.CutSuffix(word[:i+1], tied)
		if !blank {
			before, blank = strings.CutSuffix(word[:i+1], " ")
		}
		switch {
		case word[i] == '-' && !numeric(word[i-1]) && !numeric(word[i+1]):
		case blank && !kept(untied(before), untied(word[i+1:])):
		default:
			continue
		}
		parts = append(parts, word[start:i+1])
		start = i + 1
	}
	return append(parts, word[start:])
}

// pieces parts what does not fit a line into clusters and whole numbers. A
// measure, which alone still has blanks within, stays whole even then.
func pieces(part string, limit int) []string {
	if width(part) <= limit || strings.Contains(strings.Trim(untied(part), " "), " ") {
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
