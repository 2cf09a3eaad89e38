package cli

import (
	"fmt"
	"strings"
)

// plural is a number with its word.
func plural(n int, word string) string { return pluralOf(n, word, word+"s") }

// pluralOf is the same for words that take more than an s.
func pluralOf(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// shortList names a few and counts the others.
func shortList(names []string) string {
	const most = 8
	if len(names) <= most {
		return strings.Join(names, ", ")
	}
	return strings.Join(names[:most], ", ") + " and " + plural(len(names)-most, "other")
}
