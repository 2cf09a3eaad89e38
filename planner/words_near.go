package planner

import (
	"strings"
	"unicode/utf8"

	"quiltrun/planner/english"
)

// nearest is the name that somebody most likely meant by word: the one reached
// with the fewest slips of the pen, "" where none is close. Capitals count as no
// slip. Of equally close names the first wins. Past a thousand names none is
// looked for: that would be slow, and no list that somebody wrote by hand.
func nearest(word string, among []string) string {
	const most = 1000
	if len(among) > most {
		return ""
	}
	folded := strings.ToLower(word)
	best, fewest := "", 0
	for _, name := range among {
		slips, close := slipsBetween(folded, strings.ToLower(name))
		if close && (best == "" || slips < fewest) {
			best, fewest = name, slips
		}
	}
	return best
}

// slipsBetween counts the slips between two words, and reports whether they are
// few enough for one word that was meant: a third of the longer, at least 1.
func slipsBetween(a, b string) (int, bool) {
	long := max(utf8.RuneCountInString(a), utf8.RuneCountInString(b))
	few := max(1, long/3)
	apart := utf8.RuneCountInString(a) - utf8.RuneCountInString(b)
	if apart > few || -apart > few || long > longestName {
		return 0, false
	}
	slips := Slips(a, b)
	return slips, slips <= few && slips < long
}

// Slips is how many letters have to be put in, left out, changed or exchanged
// with their neighbour to make one word of the other. It is the optimal string
// alignment form of F. J. Damerau, A technique for computer detection and
// correction of spelling errors (1964); three rows of its table are kept.
func Slips(from, to string) int {
	a, b := []rune(from), []rune(to)
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range a {
		next[0] = i + 1
		for j := range b {
			change := row[j]
			if a[i] != b[j] {
				change++
			}
			next[j+1] = min(change, row[j+1]+1, next[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				next[j+1] = min(next[j+1], before[j-1]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}

// didYouMean is the hint for a near name, "" where none is.
func didYouMean(word string, among []string) string {
	if name := nearest(word, among); name != "" {
		return "did you mean " + said(name) + "?"
	}
	return ""
}

// listed is "a", "a and b", "a, b and c", with "and" or another word. A list too
// long to read stops with "and so on".
func listed(words []string, and string) string {
	const most = 20
	if len(words) > most {
		return strings.Join(words[:most], ", ") + " and so on"
	}
	return english.List(words, and)
}
