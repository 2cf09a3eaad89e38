package planner

import (
	"errors"
	"fmt"
	"strings"

	"github.com/goccy/go-yaml/token"
)

// reportSyntax reports the library's error in words of our own.
func (r *jobReader) reportSyntax(err error) {
	var located interface {
		GetToken() *token.Token
		GetMessage() string
	}
	if !errors.As(err, &located) || located.GetToken() == nil {
		r.report(Position{1, 1}, "", "the file cannot be read", "look at its indents, colons and quotes")
		return
	}
	message, t := located.GetMessage(), located.GetToken()
	for _, word := range []func(string, *token.Token) (Position, string, string){unclosed, tooDeep, notAKey, listedWords} {
		if at, what, hint := word(message, t); what != "" {
			r.report(at, "", what, hint)
			return
		}
	}
}

// unclosed words a bracket that ends on none of the lines where it should: the
// place to look at is where it was opened.
func unclosed(message string, t *token.Token) (at Position, what, hint string) {
	if !strings.Contains(message, "must be specified") {
		return at, "", ""
	}
	opened, depth := t.Prev, 1
	for ; opened != nil; opened = opened.Prev {
		switch opened.Type {
		case token.SequenceEndType, token.MappingEndType:
			depth++
		case token.SequenceStartType, token.MappingStartType:
			depth--
		}
		if depth == 0 {
			break
		}
	}
	if opened == nil || opened.Position.Line == t.Position.Line {
		return at, "", ""
	}
	return tokenPosition(opened), fmt.Sprintf("the %s opened here is not closed before line %d", opened.Value, t.Position.Line),
		"close it where its entries end"
}

// tooDeep words a line indented under a key that has its value already: the
// library takes the line for more of the value.
func tooDeep(message string, t *token.Token) (at Position, what, hint string) {
	value := strings.TrimLeft(t.Origin, " \n")
	line, rest, more := strings.Cut(strings.TrimRight(value, " \n"), "\n")
	if !more || line == "" || !strings.Contains(message, "mapping value is not allowed") {
		return at, "", ""
	}
	at = tokenPosition(t)
	for more {
		at.Line, line = at.Line+1, rest
		line, rest, more = strings.Cut(line, "\n")
	}
	at.Column = 1 + len(line) - len(strings.TrimLeft(line, " "))
	return at, "this line is indented deeper than the one above, which has its value already",
		"give keys that belong together the same indent"
}

// notAKey words a line that should be a key and is not.
func notAKey(message string, t *token.Token) (at Position, what, hint string) {
	line, _, _ := strings.Cut(strings.TrimLeft(t.Origin, " \n"), "\n")
	keyWanted := strings.Contains(message, "non-map value") || strings.Contains(message, "unexpected key name")
	before := t.Prev
	switch at = tokenPosition(t); {
	case before != nil && before.Position.Line == t.Position.Line && isQuoted(before):
		return at, "a quoted text ends before this", `an apostrophe or a quote in a text needs the other kind of quotes round it: "it's"`
	case t.Type == token.SequenceEntryType && keyWanted:
		return at, "a - begins a list here, between keys", "indent the list under its key"
	case !keyWanted || t.Type != token.StringType:
		return at, "", ""
	case noBlankAfterColon(line):
		return at, "a blank is missing after the colon in " + said(trimmed(line)), "write key: value"
	case !strings.Contains(line, ":"):
		return at, "there is no colon after " + said(trimmed(line)), "write key: value"
	}
	return at, "", ""
}

// noBlankAfterColon reports whether a line begins like a key but for the blank.
func noBlankAfterColon(line string) bool {
	key, rest, ok := strings.Cut(line, ":")
	return ok && key != "" && rest != "" && !strings.ContainsAny(key, " \"'{}[]") && rest[0] != ' '
}

// isQuoted reports whether a token is a text in quotes of either kind.
func isQuoted(t *token.Token) bool {
	return t.Type == token.SingleQuoteType || t.Type == token.DoubleQuoteType
}

// syntaxWords words the library's other complaints. The first entry whose part is
// found counts; the last is found in any.
var syntaxWords = []struct{ part, what, hint string }{
	{"tab character", "a tab stands where YAML takes only blanks", "use blanks"},
	{"end character of double-quoted", `a " is opened here and never closed`, `write a " that belongs to the text as \"`},
	{"end character of single-quoted", "a ' is opened here and never closed",
		`put a text that holds an apostrophe in double quotes: "it's"`},
	{"escape", `a \ in double quotes stands before something that it does not go with`, `write \\ for the \ itself`},
	{"surrogate", `a \u in double quotes is not finished`, "write the character itself"},
	{"',' or '}'", "a comma or a } is missing before this", "entries in { } have commas between them"},
	{"',' or ']'", "a comma or a ] is missing before this", "entries in [ ] have commas between them"},
	{"but found ','", "there is nothing before this comma", "take one comma out"},
	{"unexpected scalar value type", "there is nothing before this", "take it out, or write what is missing"},
	{"end token '}'", "the { opened here is never closed", "close it where its entries end"},
	{"end token ']'", "the [ opened here is never closed", "close it where its entries end"},
	{"corresponding to ']'", "there is no [ before this ]", ""},
	{"corresponding to '}'", "there is no { before this }", ""},
	{"flow map content", "an entry of { } has no colon", "write key: value"},
	{"implicit line break", "a key runs over the end of its line", "write key: value on one line"},
	{"block sequence entries", "a list begins on its key's own line", "begin the list on the next line, or write [a, b]"},
	{"mapping value is not allowed", "a second colon stands in this value", "put quotes round a text that holds a colon"},
	{"is a reserved character", "a text cannot begin with @ or `", "put quotes round it"},
	{"directive", "a text cannot begin with %", "put quotes round it"},
	{"unexpected key name", "this line has no key that can be read", "write key: value"},
	{"invalid key", "there is no key before this colon", "write key: value"},
	{"undefined map key", "there is no key before this colon", "write key: value"},
	{"document separator", "a quoted text runs over the end of the job", "close the quotes"},
	{"header option", "this | or > is followed by something that it does not go with", "put quotes round the text"},
	{"multi-line content", "nothing follows this | or >", "put quotes round the text"},
	{"number of indent", "the lines of this text are indented unevenly", "give them the same indent"},
	{"context", "this does not stand in line with what is above", "give keys that belong together the same indent"},
	{"non-map value", "this does not stand in line with what is above", "give keys that belong together the same indent"},
	{"", "the file cannot be read from here on", "look at the indent, the colons and the quotes near here"},
}

// listedWords looks a complaint up in the list.
func listedWords(message string, t *token.Token) (at Position, what, hint string) {
	for _, w := range syntaxWords {
		if strings.Contains(message, w.part) {
			return tokenPosition(t), w.what, w.hint
		}
	}
	return tokenPosition(t), "", ""
}
