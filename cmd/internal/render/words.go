package render

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// spell is a time to the minute: "35 min", "3 h 20 min". A time that is not
// zero is at least one minute.
func spell(m planner.Minutes) string {
	whole := int(math.Round(float64(m)))
	if whole == 0 && m > 0 {
		whole = 1
	}
	hours, rest := whole/60, whole%60
	switch {
	case hours == 0:
		return fmt.Sprintf("%d min", rest)
	case rest == 0:
		return fmt.Sprintf("%d h", hours)
	}
	return fmt.Sprintf("%d h %02d min", hours, rest)
}

// About is a time in words for a sentence: "about 3 h 20 min".
func About(m planner.Minutes) string { return about(m) }

// about is a time in words for a sentence.
func about(m planner.Minutes) string {
	if m <= 0 {
		return "none"
	}
	return "about " + spell(m)
}

// day is a date with its weekday.
func day(d planner.Date) string {
	if d.IsZero() {
		return ""
	}
	return fmt.Sprintf("%s (%s)", d, d.Weekday())
}

// counted is english.Count, which most lines of this room need.
func counted(n int, one string) string { return english.Count(n, one) }

// size is a raw or finished size; of a square, its side. A measure is held together
// as a line is broken, the word behind it is not.
func size(s measure.Size, u measure.Unit) string {
	return strings.Replace(s.Words(u), " square", tied+"square", 1)
}

// matchWords says what the seams of a join do where they meet.
func matchWords(t patchwork.Tally) string {
	if t == (patchwork.Tally{}) {
		return "nothing has to match"
	}
	var parts []string
	for _, part := range []struct {
		n    int
		word string
	}{{t.Nest, "nest"}, {t.Clash, "clash"}, {t.Open, "open"}} {
		if part.n > 0 {
			parts = append(parts, fmt.Sprintf("%d %s", part.n, part.word))
		}
	}
	if t.Near > 0 {
		parts = append(parts, counted(t.Near, "near miss"))
	}
	return strings.Join(parts, ", ")
}

// pointWords says the same in a sentence: "9 match points, all nest".
func pointWords(t patchwork.Tally) string {
	points := t.Nest + t.Clash + t.Open
	if points == 0 {
		return matchWords(t)
	}
	said := counted(points, "match point")
	switch points {
	case t.Nest:
		said += ", " + allOf(points, "nest", "it nests")
	case t.Clash:
		said += ", " + allOf(points, "clash", "it clashes")
	case t.Open:
		said += ", " + allOf(points, "open", "it is open")
	default:
		return said + ": " + matchWords(t)
	}
	if t.Near > 0 {
		said += ", " + counted(t.Near, "near miss")
	}
	return said
}

// allOf says that points are all alike.
func allOf(points int, all, one string) string {
	if points == 1 {
		return one
	}
	return "all " + all
}

// enumerate joins names with commas; a line ends between names rather than
// within one.
func enumerate(names []string) string {
	tiedNames := make([]string, len(names))
	for i, n := range names {
		tiedNames[i] = together(n)
	}
	return strings.Join(tiedNames, ", ")
}

// spans writes numbers of blocks shortly: "01 to 04, 07".
func spans(ids []string, join string) string {
	var parts []string
	for i := 0; i < len(ids); {
		j := i
		for j+1 < len(ids) && follows(ids[j], ids[j+1]) {
			j++
		}
		switch {
		case j == i:
			parts = append(parts, ids[i])
		case j == i+1:
			parts = append(parts, ids[i], ids[j])
		default:
			parts = append(parts, ids[i]+join+ids[j])
		}
		i = j + 1
	}
	return enumerate(parts)
}

// follows reports that the second of two numbers is the next after the first.
func follows(a, b string) bool {
	m, err := strconv.Atoi(a)
	if err != nil {
		return false
	}
	n, err := strconv.Atoi(b)
	return err == nil && n == m+1
}

// idSpan writes block ids of one colourway shortly: "tide-01 to 08, 12". Where
// the colourway was renamed its ids have several stems, and each is said:
// "deck-47, 48, bow-49".
func idSpan(ids []string) string {
	var parts []string
	for _, run := range sameStem(ids) {
		stem := idStem(run[0])
		numbers := make([]string, len(run))
		for i, id := range run {
			numbers[i] = id[len(stem):]
		}
		parts = append(parts, stem+spans(numbers, " to "))
	}
	return strings.Join(parts, ", ")
}

// sameStem parts ids wherever the next has another stem.
func sameStem(ids []string) [][]string {
	var runs [][]string
	for i, id := range ids {
		if i == 0 || idStem(id) != idStem(ids[i-1]) {
			runs = append(runs, nil)
		}
		runs[len(runs)-1] = append(runs[len(runs)-1], id)
	}
	return runs
}

// idStem is a block id without its number: the name that its colourway had when
// the block was planned, and a hyphen.
func idStem(id string) string { return id[:strings.LastIndexByte(id, '-')+1] }

// idNumber is the number of a block id: what stands after the last hyphen.
func idNumber(id string) string { return id[strings.LastIndexByte(id, '-')+1:] }

// grouped collects the indexes of equal keys, in order of first appearance.
func grouped(n int, key func(int) string) [][]int {
	var groups [][]int
	place := map[string]int{}
	for i := range n {
		k := key(i)
		at, ok := place[k]
		if !ok {
			at = len(groups)
			place[k] = at
			groups = append(groups, nil)
		}
		groups[at] = append(groups[at], i)
	}
	return groups
}

// picked are the names of some indexes.
func picked(indexes []int, name func(int) string) []string {
	out := make([]string, len(indexes))
	for i, index := range indexes {
		out[i] = name(index)
	}
	return out
}
