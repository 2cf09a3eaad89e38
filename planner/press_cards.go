package planner

import (
	"fmt"
	"strings"

	"quiltrun/planner/patchwork"
)

// pressCards writes the directions for the iron: a card for each colourway, two
// where its blocks are pressed in two ways.
func (m *maker) pressCards() {
	blocks := map[[2]string][]string{}
	for _, b := range m.plan.Blocks {
		blocks[[2]string{b.Colourway, b.Press}] = append(blocks[[2]string{b.Colourway, b.Press}], b.ID)
	}
	for _, c := range m.plan.Colourways {
		for i, way := range c.ways() {
			variant := []string{variantA, variantB}[i]
			m.plan.Press.Cards = append(m.plan.Press.Cards, PressCard{
				Colourway: c.Name, Variant: variant, Blocks: blocks[[2]string{c.Name, variant}],
				Steps: pressSteps(c.Build, way), Matches: c.Build.BlockTally(way),
			})
		}
	}
}

// ways is the one or two ways in which a colourway's blocks are pressed.
func (c ColourwayPlan) ways() []patchwork.Way {
	if c.PressB == nil {
		return []patchwork.Way{c.Press}
	}
	return []patchwork.Way{c.Press, c.PressB}
}

// pressSteps is the directions of every step that has seams to press.
func pressSteps(b *patchwork.Build, way patchwork.Way) []PressStep {
	var steps []PressStep
	for _, choice := range b.Choices {
		if len(steps) == 0 || steps[len(steps)-1].Step != choice.Step {
			steps = append(steps, PressStep{Step: choice.Step})
		}
		s := &steps[len(steps)-1]
		if word := b.Direction(choice, way); choice.Between {
			s.Joins = append(s.Joins, word)
		} else {
			s.Rows = append(s.Rows, word)
		}
	}
	return steps
}

// Words is the directions as they are read at the iron: "rows left, right, left;
// joins up, down".
func (s PressStep) Words() string {
	var parts []string
	for _, p := range []struct {
		name  string
		words []string
	}{{"row", s.Rows}, {"join", s.Joins}} {
		switch {
		case len(p.words) == 1 && (len(s.Rows) == 0 || len(s.Joins) == 0):
			parts = append(parts, p.words[0])
		case len(p.words) == 1:
			parts = append(parts, p.name+" "+p.words[0])
		case len(p.words) > 1:
			parts = append(parts, p.name+"s "+strings.Join(p.words, ", "))
		}
	}
	return strings.Join(parts, "; ")
}

// TwoWays reports whether some blocks of a colourway are pressed another way
// than others.
func (p PressPlan) TwoWays() bool {
	for _, c := range p.Cards {
		if c.Variant == variantB {
			return true
		}
	}
	return false
}

// Words says what the pressing of a quilt comes to, for the person at the iron
// and at the design wall.
func (p PressPlan) Words() []string {
	said := []string{p.chosenWords()}
	if words := p.ruleWords(); words != "" {
		said = append(said, words)
	}
	return said
}

func (p PressPlan) chosenWords() string {
	between := p.count(p.Chosen).Between
	meet := between.Nest + between.Clash
	switch {
	case between == (patchwork.Tally{}):
		return "Press all blocks of a colourway alike: nothing has to match between blocks."
	case meet == 0:
		return "Press all blocks of a colourway alike: between blocks no seam meets another that leans."
	}
	nest := fmt.Sprintf("%d of %s between blocks nest", between.Nest, counted(meet, "match point"))
	switch alike := p.count(AllAlike).Between; {
	case p.Chosen == AllAlike:
		return fmt.Sprintf("Press all blocks of a colourway alike: %s.", nest)
	case len(p.Half) > 0 && !p.TwoWays():
		return fmt.Sprintf("Press all blocks of a colourway alike and give %s at the layout: then %s, with none turned so only %d. A block fits any place of its colourway.",
			p.halfWords(), nest, alike.Nest)
	case len(p.Half) > 0:
		return fmt.Sprintf("Press by two cards where there are two, and give %s at the layout: then %s, with all blocks alike only %d.", p.halfWords(), nest, alike.Nest)
	default:
		return fmt.Sprintf("Press by two cards, %s: then %s, with all blocks alike only %d.", p.Chosen.words(), nest, alike.Nest)
	}
}

// halfWords says which blocks get half a turn.
func (p PressPlan) halfWords() string {
	return fmt.Sprintf("%s half a turn, %s", counted(len(p.Half), "block"), p.Chosen.words())
}

func (p Pattern) words() string {
	switch p {
	case ByRows:
		return "every other row"
	case ByColumns:
		return "every other column"
	case Chequered:
		return "every other block, chequered"
	}
	return "none"
}

func (p PressPlan) count(pattern Pattern) PatternCount {
	for _, c := range p.Patterns {
		if c.Pattern == pattern {
			return c
		}
	}
	return PatternCount{Pattern: pattern}
}

// idList shortens a list of block ids: "tide-01, -03, -05".
func idList(ids []string) string {
	var out strings.Builder
	last := ""
	for i, id := range ids {
		cut := strings.LastIndex(id, "-")
		if i > 0 {
			out.WriteString(", ")
		}
		if cut >= 0 && id[:cut] == last {
			id = id[cut:]
		} else if cut >= 0 {
			last = id[:cut]
		}
		out.WriteString(id)
	}
	return out.String()
}
