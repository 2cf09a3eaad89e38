package cli

import "strings"

// What a shell hands over at a press of Tab is the line as it was typed, with its
// quotes. It is taken apart here and nothing of it is evaluated: a shell that is
// asked to do that runs what stands in it.

// rawWords parts a line into its words as they were typed, the last of them the
// one at the cursor: "" after a blank.
func rawWords(line string) []string {
	var words []string
	var q quoting
	start := 0
	for i := 0; i < len(line); i++ {
		plain := q.next(line[i])
		if plain && (line[i] == ' ' || line[i] == '\t') {
			if i > start {
				words = append(words, line[start:i])
			}
			start = i + 1
		}
	}
	return append(words, line[start:])
}

// quoting follows a shell's quotes through a text, byte by byte.
type quoting struct {
	open    byte // the quote that is open, 0 for none
	escaped bool // the next byte stands for itself
}

// next takes one more byte, and reports that it stands outside of quotes and is no
// quote or escape.
func (q *quoting) next(c byte) bool {
	switch {
	case q.escaped:
		q.escaped = false
	case c == '\\' && q.open != '\'':
		q.escaped = true
	case q.open != 0:
		if c == q.open {
			q.open = 0
		}
	case c == '\'' || c == '"':
		q.open = c
	default:
		return true
	}
	return false
}

// unquoted is what a word says without its quotes, and where the quote that is
// still open begins, -1 where none is. Variables and substitutions stay as they
// stand.
func unquoted(raw string) (text string, open int) {
	var out strings.Builder
	var q quoting
	open = -1
	for i := 0; i < len(raw); i++ {
		was := q
		plain := q.next(raw[i])
		switch {
		case was.escaped:
			if was.open == '"' && !strings.ContainsRune("\"\\$`", rune(raw[i])) {
				out.WriteByte('\\') // within double quotes few signs are escaped
			}
			out.WriteByte(raw[i])
		case q.escaped || was.open == 0 && !plain || was.open != 0 && q.open == 0:
			// an escape, or a quote that opens or closes
		default:
			out.WriteByte(raw[i])
		}
		if was.open == 0 && q.open != 0 {
			open = i
		}
	}
	if q.open == 0 {
		open = -1
	}
	return out.String(), open
}

// bashReply is how bash has to be given a word in place of what it thinks is the
// current one: behind the quote that is open, or behind the last sign at which it
// breaks words, and quoted so that it stays one word.
func bashReply(word, raw, breaks string) string {
	if _, open := unquoted(raw); open >= 0 {
		before, _ := unquoted(raw[:open])
		return withinQuotes(strings.TrimPrefix(word, before), raw[open])
	}
	var q quoting
	from := 0
	for i := 0; i < len(raw); i++ {
		if q.next(raw[i]) && strings.IndexByte(breaks, raw[i]) >= 0 {
			from = i + 1
		}
	}
	before, _ := unquoted(raw[:from])
	return bashQuoted(strings.TrimPrefix(word, before))
}

// withinQuotes is a word as it goes on within a quote that is open.
func withinQuotes(word string, quote byte) string {
	if quote == '\'' {
		return strings.ReplaceAll(word, "'", `'\''`)
	}
	return strings.NewReplacer(`\`, `\\`, `"`, `\"`, "$", `\$`, "`", "\\`").Replace(word)
}

// bashQuoted is a word with every sign escaped that means something to bash.
func bashQuoted(word string) string {
	var out strings.Builder
	for i, r := range word {
		if strings.ContainsRune(" \t!\"#$&'()*;<>?[\\]^`{|}", r) || i == 0 && r == '~' {
			out.WriteByte('\\')
		}
		out.WriteRune(r)
	}
	return out.String()
}
