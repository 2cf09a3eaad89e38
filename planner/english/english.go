// Package english has what sentences are made of everywhere in the program:
// counts with their nouns, lists, capitals.
package english

import (
	"fmt"
	"strings"
)

// Count is a number of things, in the singular for one alone: "1 pair", "0 pairs",
// "12 pairs".
func Count(n int, one string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, Plural(one))
}

// Plural is enough English for the words of this trade that are counted.
func Plural(one string) string {
	switch {
	case strings.HasSuffix(one, "ch"), strings.HasSuffix(one, "sh"), strings.HasSuffix(one, "x"), strings.HasSuffix(one, "s"):
		return one + "es"
	case strings.HasSuffix(one, "y") && !strings.HasSuffix(one, "ay") && !strings.HasSuffix(one, "ey"):
		return one[:len(one)-1] + "ies"
	}
	return one + "s"
}

// List is words in a sentence: "a", "a and b", "a, b and c", with and or another
// word before the last.
func List(words []string, and string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + and + " " + words[end]
}

// Capital begins a sentence, whose first letter is a plain one.
func Capital(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
