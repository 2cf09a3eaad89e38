package cli

import (
	"strings"

	"quiltrun/planner/english"
)

// shortList names a few and counts the others.
func shortList(names []string) string { return shortListOf(names, ", ") }

// shortListOf is the same for names that have commas in them.
func shortListOf(names []string, between string) string {
	const most = 8
	if len(names) <= most {
		return strings.Join(names, between)
	}
	return strings.Join(names[:most], between) + " and " + english.Count(len(names)-most, "other")
}
