package tracker

import (
	"cmp"
	"slices"
	"strings"
)

// mostNear is how many near names a refusal gives.
const mostNear = 3

// nearest is the names that a mistyped text may have meant, nearest first, ties
// in the order of names: those within a third of its letters, or that hold it.
func nearest(typed string, names []string) []string {
	type candidate struct {
		name string
		off  int
	}
	want := []rune(strings.ToLower(typed))
	var found []candidate
	for _, name := range names {
		have := []rune(strings.ToLower(name))
		most := max(1, (len(want)+1)/3)
		holds := len(want) > 1 && strings.Contains(string(have), string(want))
		if !holds && (len(want) > len(have)+most || len(have) > len(want)+most) {
			continue // farther off by its length alone
		}
		if off := distance(want, have); off <= most || holds {
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

// distance is how many letters must be put in, left out, changed or swapped
// with their neighbour to make b of a. Source: the optimal string alignment
// form of Damerau, "A technique for computer detection and correction of
// spelling errors" (1964).
func distance(a, b []rune) int {
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		for j := range b {
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+unlike(a[i], b[j]))
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}

// unlike is the cost of putting b in the place of a.
func unlike(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}
