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
func shortList(names []string) string { return shortListOf(names, ", ") }

// shortListOf is the same for names that have commas in them.
func shortListOf(names []string, between string) string {
	const most = 8
	if len(names) <= most {
		return strings.Join(names, between)
	}
	return strings.Join(names[:most], between) + " and " + plural(len(names)-most, "other")
}
