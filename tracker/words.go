package tracker

import (
	"fmt"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
)

// mostListed is how many names a sentence lists before it says how many more
// there are: a job of 100 fabrics must still read.
const mostListed = 6

// things is a count with its word: "1 pair", "12 patches".
func things(n int, unit planner.CountUnit) string { return english.Count(n, string(unit)) }

// plural is the word for n things.
func plural(n int, unit planner.CountUnit) string {
	if n == 1 {
		return string(unit)
	}
	return english.Plural(string(unit))
}

// isOrAre is the verb after n things.
func isOrAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// thereIs says which names there are instead: "there is tide".
func thereIs(names []string) string {
	return "there " + isOrAre(len(names)) + " " + andList(names)
}

// quoted is what somebody typed, with anything that would not show made plain.
func quoted(text string) string { return strconv.Quote(text) }

// andList writes words as a sentence does, and cuts a long list short.
func andList(words []string) string {
	if len(words) > mostListed+1 {
		return fmt.Sprintf("%s and %d more", strings.Join(words[:mostListed], ", "), len(words)-mostListed)
	}
	return english.List(words, "and")
}
