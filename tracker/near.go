package tracker

import (
	"cmp"
	"slices"
	"strings"
	"unicode/utf8"

	"quiltrun/planner"
)

// mostNear is how many near names a refusal gives.
const mostNear = 3

// Nearest is the names that a mistyped text may have meant, at most three,
// nearest first and ties in the order of names: those within a third of its
// letters, or that hold it. Capitals do not matter.
func Nearest(typed string, names []string) []string {
	type candidate struct {
		name string
		off  int
	}
	want := strings.ToLower(typed)
	letters := utf8.RuneCountInString(want)
	if letters == 0 {
		return nil
	}
	most := max(1, (letters+1)/3)
	var found []candidate
	for _, name := range names {
		have := strings.ToLower(name)
		holds := letters > 1 && strings.Contains(have, want)
		longer := utf8.RuneCountInString(have) - letters
		if !holds && max(longer, -longer) > most {
			continue // farther off by its length alone
		}
		if off := planner.Slips(want, have); off <= most || holds {
			found = append(found, candidate{name, off})
		}
	}
	slices.SortStableFunc(found, func(a, b candidate) int { return cmp.Compare(a.off, b.off) })
	near := make([]string, 0, mostNear)
	for _, c := range found[:min(mostNear, len(found))] {
		near = append(near, c.name)
	}
	return near
}
