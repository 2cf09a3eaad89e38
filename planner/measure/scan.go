package measure

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// vulgar are the fractions that have a character of their own and that a yard
// stick or an inch ruler knows.
var vulgar = map[rune]fraction{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
	'⅓': {1, 3}, '⅔': {2, 3},
}

type fraction struct{ num, den int64 }

// scanner goes through a text from left to right.
type scanner struct{ rest string }

func (s *scanner) peek() rune {
	r, _ := utf8.DecodeRuneInString(s.rest)
	return r
}

// one takes a character if it is among those given.
func (s *scanner) one(among string) bool {
	r, n := utf8.DecodeRuneInString(s.rest)
	if n == 0 || r == utf8.RuneError || !strings.ContainsRune(among, r) {
		return false
	}
	s.rest = s.rest[n:]
	return true
}

// digits takes a run of digits, which may be empty.
func (s *scanner) digits() string {
	n := 0
	for n < len(s.rest) && isDigit(rune(s.rest[n])) {
		n++
	}
	run := s.rest[:n]
	s.rest = s.rest[n:]
	return run
}

// blanks takes a run of blanks and reports whether there was any.
func (s *scanner) blanks() bool {
	before := len(s.rest)
	s.rest = strings.TrimLeftFunc(s.rest, isBlank)
	return len(s.rest) < before
}

// vulgar takes a fraction that is one character.
func (s *scanner) vulgar() (fraction, bool) {
	r, n := utf8.DecodeRuneInString(s.rest)
	f, ok := vulgar[r]
	if ok {
		s.rest = s.rest[n:]
	}
	return f, ok
}

func isDigit(r rune) bool { return '0' <= r && r <= '9' }

// isBlank takes blanks of every width: text programs put no-break, narrow and
// thin ones between number and unit.
func isBlank(r rune) bool { return r == '\t' || unicode.Is(unicode.Zs, r) }

const (
	// strokes: the slash, the fraction slash and the division slash.
	strokes = "/\u2044\u2215"
	// hyphens: with the en dash that text programs make of one.
	hyphens = "-\u2010\u2011\u2013"
	// minuses: those and the minus sign itself.
	minuses = hyphens + "\u2212"
	// marks are the decimal point and the decimal comma.
	marks = ".,"
)
