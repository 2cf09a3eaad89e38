package render

import (
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
)

// patternNames are the patterns as a maker says them.
var patternNames = map[planner.Pattern]string{
	planner.AllAlike:  "all blocks alike",
	planner.ByRows:    "every other row",
	planner.ByColumns: "every other column",
	planner.Chequered: "every other block",
}

// pressing is how the blocks are pressed so that the top nests, and what the
// other patterns would come to.
func (s *sheet) pressing() {
	press := s.plan.Press
	if len(press.Cards) == 0 {
		return
	}
	s.heading("Pressing")
	for _, words := range press.Words() {
		s.para(1, words)
	}
	if anythingMeets(press.Patterns) {
		s.records(1, patternTable(press))
	}
	for i := 1; i < len(press.Cards); i++ {
		if a, b := press.Cards[i-1], press.Cards[i]; a.Colourway == b.Colourway {
			s.card(a, b)
			s.card(b, a)
		}
	}
}

func anythingMeets(patterns []planner.PatternCount) bool {
	return slices.ContainsFunc(patterns, func(c planner.PatternCount) bool { return c.Between.Nest+c.Between.Clash > 0 })
}

// patternTable counts the match points of one quilt, pattern by pattern.
func patternTable(press planner.PressPlan) *grid {
	g := &grid{columns: []column{
		{title: "Turned or pressed the second way", flexible: true},
		{title: "Nest", right: true}, {title: "Clash", right: true}, {title: "Clash in blocks", right: true}, {title: ""},
	}}
	for _, c := range press.Patterns {
		chosen := ""
		if c.Pattern == press.Chosen {
			chosen = "chosen"
		}
		name := patternNames[c.Pattern]
		if c.Pattern == planner.AllAlike {
			name = "none, " + name
		}
		g.add(name, strconv.Itoa(c.Between.Nest), strconv.Itoa(c.Between.Clash), strconv.Itoa(c.Inside.Clash), chosen)
	}
	return g
}

// card is the directions for the blocks of a variant, where they are not those
// of the other.
func (s *sheet) card(c, other planner.PressCard) {
	var steps []string
	for i, step := range c.Steps {
		if words := step.Words(); words != other.Steps[i].Words() {
			steps = append(steps, step.Step+" "+words)
		}
	}
	s.hang(1, "Card "+c.Variant+"  ", c.List()+": "+strings.Join(steps, "; "))
}
