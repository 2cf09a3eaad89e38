package planner

import (
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

// oneColonEach reports texts within { } or [ ] that hold a colon and a blank,
// unquoted: there a comma has been forgotten.
func (r *jobReader) oneColonEach(tokens token.Tokens) bool {
	before, depth := len(r.problems), 0
	for _, t := range tokens {
		switch t.Type {
		case token.SequenceStartType, token.MappingStartType:
			depth++
		case token.SequenceEndType, token.MappingEndType:
			depth--
		case token.StringType:
			if depth > 0 && strings.Contains(t.Value, ": ") {
				r.report(tokenPosition(t), "", "there is a second colon in "+said(t.Value),
					"put a comma before the next key, or quotes round a text that holds a colon")
			}
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
		return "a text begins with %, which YAML takes for a directive; job files have none", "put quotes round a name"
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

// lostColour finds a colour whose # has made it a comment.
func lostColour(before token.Tokens, comment *token.Token) (what, hint string) {
	digits := comment.Value[:hexDigits(comment.Value)]
	n := len(before)
	if !isColour("#"+digits) || n < 2 || before[n-1].Type != token.MappingValueType ||
		before[n-1].Position.Line != comment.Position.Line {
		return "", ""
	}
	if key, _ := keyNamed(before[n-2].Value, []string{"colour"}); key == "" {
		return "", ""
	}
	return "a # after a blank begins a comment, so no colour is given here", `put it in quotes: "#` + digits + `"`
}
