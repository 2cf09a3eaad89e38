package planner

import (
	"errors"
	"regexp"
	"strings"

	"github.com/goccy/go-yaml/token"
)

// deepest is how many brackets, or hyphens on one line, may stand within each
// other. A job file needs five; the library's parser calls itself for each.
const deepest = 16

// plainYAML reports what a job file does not use of YAML, and colours that YAML
// takes for comments; it is false where there is any.
func (r *jobReader) plainYAML(tokens token.Tokens) bool {
	before := len(r.problems)
	depth, hyphens, headers, line := 0, 0, 0, 0
	for i, t := range tokens {
		if t.Position.Line != line {
			line, hyphens = t.Position.Line, 0
		}
		switch t.Type {
		case token.SequenceStartType, token.MappingStartType:
			depth++
		case token.SequenceEndType, token.MappingEndType:
			depth--
		case token.SequenceEntryType:
			hyphens++
		case token.DocumentHeaderType:
			headers++
		}
		if depth > deepest || hyphens > deepest {
			r.report(tokenPosition(t), "", "brackets or hyphens stand too deep within each other here", "")
			return false
		}
		if what, hint := notUsed(tokens[:i], t, headers); what != "" {
			r.report(tokenPosition(t), "", what, hint)
		}
	}
	return len(r.problems) == before
}

// notUsed says why a token has no place in a job file, given those before it.
func notUsed(before token.Tokens, t *token.Token, headers int) (what, hint string) {
	switch t.Type {
	case token.AnchorType, token.AliasType:
		return "a text begins with " + said(t.Value) + ", which YAML takes for a link to another place; job files have none",
			"write the value out, or put quotes round a name"
	case token.TagType:
		return "a text begins with !, which YAML takes for a tag; job files have none", "put quotes round a name"
	case token.DirectiveType:
		return "a line begins with %, which YAML takes for a directive; job files have none", "put quotes round a name"
	case token.MergeKeyType:
		return "<< stands for merged keys in YAML; job files have none", "write the keys out"
	case token.MappingKeyType:
		return "a key begins with ? here; job files have only plain keys", "put quotes round a name"
	case token.DocumentHeaderType:
		if headers > 1 || len(before) > 0 && before[len(before)-1].Type != token.CommentType {
			return "a second document begins here; a job file holds one job", "give each job a file of its own"
		}
	case token.CommentType:
		return lostColour(before, t)
	}
	return "", ""
}

var hexDigits = regexp.MustCompile(`^(?:[0-9a-fA-F]{6}|[0-9a-fA-F]{3})\b`)

// lostColour finds a colour whose # has made it a comment.
func lostColour(before token.Tokens, comment *token.Token) (what, hint string) {
	digits := hexDigits.FindString(comment.Value)
	n := len(before)
	if digits == "" || n < 2 || before[n-1].Type != token.MappingValueType ||
		before[n-1].Position.Line != comment.Position.Line {
		return "", ""
	}
	if key, _ := keyNamed(before[n-2].Value, []string{"colour"}); key == "" {
		return "", ""
	}
	return "a # after a blank begins a comment, so no colour is given here", `put it in quotes: "#` + digits + `"`
}

// syntaxWords words the library's complaints for a person. The first entry whose
// part is found counts.
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
	{"end token '}'", "the { opened here is never closed", "add the } where its entries end"},
	{"end token ']'", "the [ opened here is never closed", "add the ] where its entries end"},
	{"corresponding to ']'", "there is no [ before this ]", ""},
	{"corresponding to '}'", "there is no { before this }", ""},
	{"flow map content", "an entry of { } has no colon", "write key: value"},
	{"implicit line break", "a key runs over the end of its line", "write key: value on one line"},
	{"block sequence entries", "a list begins on its key's own line", "begin the list on the next line, or write [a, b]"},
	{"mapping value is not allowed", "a second colon stands in this value",
		"put quotes round a text that holds a colon; a new key begins on a line of its own, in line with its neighbours"},
	{"is a reserved character", "a text cannot begin with @ or `", "put quotes round it"},
	{"directive", "a text cannot begin with %", "put quotes round it"},
	{"unexpected key name", "this line has no key that can be read", "write key: value, with a blank after the colon"},
	{"invalid key", "there is no key before this colon", "write key: value"},
	{"undefined map key", "there is no key before this colon", "write key: value"},
	{"document separator", "a quoted text runs over the end of the job", "close the quotes"},
	{"header option", "this | or > is followed by something that it does not go with", "put quotes round the text"},
	{"multi-line content", "nothing follows this | or >", "put quotes round the text"},
	{"invalid number of indent", "the lines of this text are indented unevenly", ""},
	{"context", "this line does not stand in line with those above", "give keys that belong together the same indent"},
	{"non-map value", "this line does not stand in line with those above", "give keys that belong together the same indent"},
}

// reportSyntax reports the library's error in words of our own.
func (r *jobReader) reportSyntax(err error) {
	at, message := Position{1, 1}, err.Error()
	var located interface {
		GetToken() *token.Token
		GetMessage() string
	}
	if errors.As(err, &located) && located.GetToken() != nil {
		at, message = tokenPosition(located.GetToken()), located.GetMessage()
	}
	for _, w := range syntaxWords {
		if strings.Contains(message, w.part) {
			r.report(at, "", w.what, w.hint)
			return
		}
	}
	r.report(at, "", "the file cannot be read from here on", "look at the indent, the colons and the quotes near here")
}
