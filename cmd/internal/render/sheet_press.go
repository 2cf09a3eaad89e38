package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/patchwork"
)

// patternNames are the places of a pattern as a maker says them.
var patternNames = map[planner.Pattern]string{
	planner.AllAlike:  "none",
	planner.ByRows:    "every other row",
	planner.ByColumns: "every other column",
	planner.Chequered: "every other block",
}

// pressing is what to do at the iron and at the layout so that the top nests,
// and what else was weighed.
func (s *sheet) pressing() {
	press := s.plan.Press
	if len(press.Cards) == 0 {
		return
	}
	s.heading("Pressing")
	s.hang(1, padded("At the iron", pressAt), s.ironWords(press))
	for i := 1; i < len(press.Cards); i++ {
		if a, b := press.Cards[i-1], press.Cards[i]; a.Colourway == b.Colourway {
			s.card(a, b)
			s.card(b, a)
		}
	}
	s.hang(1, padded("At the layout", pressAt), s.turningWords(press))
	for _, words := range s.pressOutcome(press) {
		s.para(1, words)
	}
	if anythingMeets(press.Patterns) {
		s.para(1, "Kept for comparison: what the match points between the blocks of a quilt would do if these blocks were turned or pressed the other way.")
		s.records(1, patternTable(press))
	}
}

// pressAt is where the words stand beside the places of work.
const pressAt = 15

// ironWords says how many ways of pressing there are.
func (s *sheet) ironWords(press planner.PressPlan) string {
	if !slices.ContainsFunc(s.plan.Colourways, func(c planner.ColourwayPlan) bool { return c.SeamLength > 0 }) {
		return "The blocks have no seams to press."
	}
	if !press.TwoWays() {
		return "Press all blocks of a colourway the same way, as the steps above say. Any of them then fits any of its colourway's places."
	}
	return "Two ways of pressing: keep the blocks of card a and card b apart. All other seams go as the steps above say."
}

// turningWords says which blocks get half a turn, and where a second card goes.
func (s *sheet) turningWords(press planner.PressPlan) string {
	var said []string
	if n := len(press.Half); n > 0 {
		which := patternNames[press.Chosen]
		if n <= mostTurned {
			which = s.spansOf(press.Half)
		}
		said = append(said, fmt.Sprintf("Give half a turn to %s (%s); the map shows them so.", which, counted(n, "block")))
	}
	if press.TwoWays() {
		said = append(said, "Lay each block in its own place: card b is for "+patternNames[press.Chosen]+".")
	}
	if len(said) == 0 {
		return "Nothing has to be turned for the seams: lay the blocks as the map shows."
	}
	return strings.Join(said, " ")
}

// mostTurned is how many block ids are listed.
const mostTurned = 24

// spansOf writes the ids of blocks shortly, colourway by colourway.
func (s *sheet) spansOf(ids []string) string {
	var blocks []planner.Block
	for _, b := range s.plan.Blocks {
		if slices.Contains(ids, b.ID) {
			blocks = append(blocks, b)
		}
	}
	return s.idRanges(blocks)
}

// pressOutcome says what the pressing comes to, and what a rule costs.
func (s *sheet) pressOutcome(press planner.PressPlan) []string {
	chosen := patternOf(press, press.Chosen)
	said := []string{betweenWords(chosen.Between)}
	switch nothing := chosen.Between.Nest+chosen.Between.Clash == 0; {
	case nothing && s.plan.Job.Layout.Sashing != nil:
		said[0] = "No block meets another: sashing lies between them."
	case nothing && s.plan.Quilt.Across > 1 && s.plan.Quilt.Down > 1:
		said[0] = "Between blocks only the corners have to match."
	}
	if !chosen.Exact {
		said = append(said, "So many kinds of block meet here that not every way of pressing could be tried: a better one may exist.")
	}
	switch {
	case press.Rule == planner.PressBest:
	case press.RuleCost == 0:
		said = append(said, fmt.Sprintf("Pressing toward the %s costs no clash.", press.Rule))
	default:
		said = append(said, fmt.Sprintf("Pressing toward the %s costs %s in each quilt over the best pressing.", press.Rule, counted(press.RuleCost, "clash")))
	}
	return said
}

// betweenWords says what becomes of the match points between blocks.
func betweenWords(t patchwork.Tally) string {
	switch meet := t.Nest + t.Clash; {
	case meet == 0:
		return "Nothing has to match between blocks."
	case t.Clash == 0:
		return fmt.Sprintf("Then all %s between the blocks of a quilt nest.", counted(meet, "match point"))
	default:
		return fmt.Sprintf("Then %d of the %s between the blocks of a quilt nest; pin the other %d, where the seams clash.",
			t.Nest, counted(meet, "match point"), t.Clash)
	}
}

func patternOf(press planner.PressPlan, pattern planner.Pattern) planner.PatternCount {
	i := slices.IndexFunc(press.Patterns, func(c planner.PatternCount) bool { return c.Pattern == pattern })
	if i < 0 {
		return planner.PatternCount{Pattern: pattern, Exact: true}
	}
	return press.Patterns[i]
}

func anythingMeets(patterns []planner.PatternCount) bool {
	return slices.ContainsFunc(patterns, func(c planner.PatternCount) bool { return c.Between.Nest+c.Between.Clash > 0 })
}

// patternTable counts the match points of one quilt, pattern by pattern. Those
// inside blocks have a column where a pattern makes some of them clash.
func patternTable(press planner.PressPlan) *grid {
	g := &grid{columns: []column{{title: "Blocks", flexible: true}, {title: "Nest", right: true}, {title: "Clash", right: true}}}
	inside := slices.ContainsFunc(press.Patterns, func(c planner.PatternCount) bool { return c.Inside.Clash > 0 })
	if inside {
		g.columns = append(g.columns, column{title: "Clash inside blocks", right: true})
	}
	g.columns = append(g.columns, column{})
	for _, c := range press.Patterns {
		cells := []string{patternNames[c.Pattern], strconv.Itoa(c.Between.Nest), strconv.Itoa(c.Between.Clash)}
		if inside {
			cells = append(cells, strconv.Itoa(c.Inside.Clash))
		}
		chosen := ""
		if c.Pattern == press.Chosen {
			chosen = "as planned"
		}
		g.add(append(cells, chosen)...)
	}
	return g
}

// card is the directions for the blocks of a variant, where they are not those
// of the other.
func (s *sheet) card(c, other planner.PressCard) {
	var steps []string
	for i, step := range c.Steps {
		if words := step.Words(); words != other.Steps[i].Words() {
			steps = append(steps, fmt.Sprintf("at step %s press %s", step.Step, words))
		}
	}
	s.hang(3, "Card "+c.Variant+"  ", idSpan(c.Blocks)+": "+strings.Join(steps, "; "))
}
