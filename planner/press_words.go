package planner

import (
	"fmt"

	"quiltrun/planner/patchwork"
)

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

// Words says what the pressing comes to, for the person at the iron and at the
// design wall: how, and what a rule costs.
func (p PressPlan) Words() []string {
	said := []string{p.chosenWords()}
	if !p.count(p.Chosen).Exact {
		said = append(said, "So many kinds of block meet here that not every way of pressing could be tried: a better one may exist.")
	}
	switch {
	case p.Rule == PressBest:
	case p.RuleCost == 0:
		said = append(said, fmt.Sprintf("Pressing toward the %s costs no clash.", p.Rule))
	default:
		said = append(said, fmt.Sprintf("Pressing toward the %s costs %s in each quilt over the best pressing.", p.Rule, clashes(p.RuleCost)))
	}
	return said
}

func (p PressPlan) chosenWords() string {
	between := p.count(p.Chosen).Between
	meet := between.Nest + between.Clash
	if meet == 0 {
		return "Press all blocks of a colourway alike. Nothing has to match between blocks."
	}
	nest := fmt.Sprintf("%d of the %s between the blocks of a quilt nest", between.Nest, counted(meet, "match point"))
	if between.Clash == 0 {
		nest = fmt.Sprintf("all %s between the blocks of a quilt nest", counted(meet, "match point"))
	}
	if p.Chosen == AllAlike {
		return fmt.Sprintf("Press all blocks of a colourway alike: %s.", nest)
	}
	do := "press all blocks of a colourway alike, each colourway by its own card"
	switch turn := fmt.Sprintf("give %s half a turn at the layout, as the map shows (%s)", p.Chosen.words(), counted(len(p.Half), "block")); {
	case len(p.Half) > 0 && p.TwoWays():
		do = "press by the cards where there are two, and " + turn
	case len(p.Half) > 0:
		do = "press all blocks of a colourway alike, so that each fits any of its places, and " + turn
	case p.TwoWays():
		do = "press by the cards, " + p.Chosen.words() + " the second way"
	}
	return fmt.Sprintf("%s: %s. All alike and none turned, %d would.", capital(do), nest, p.count(AllAlike).Between.Nest)
}

// words names the pattern's second places.
func (p Pattern) words() string {
	switch p {
	case ByRows:
		return "the blocks of every other row"
	case ByColumns:
		return "the blocks of every other column"
	case Chequered:
		return "every other block"
	}
	return "no block"
}

func (p PressPlan) count(pattern Pattern) PatternCount {
	for _, c := range p.Patterns {
		if c.Pattern == pattern {
			return c
		}
	}
	return PatternCount{Pattern: pattern}
}

func clashes(n int) string {
	if n == 1 {
		return "1 clash"
	}
	return fmt.Sprintf("%d clashes", n)
}

// mostListed is how many block ids an instruction lists.
const mostListed = 12

// byCard is what to do with all blocks of a colourway, or card by card where its
// blocks are pressed in two ways that differ here.
func (m *maker) byCard(c *ColourwayPlan, say func(patchwork.Way) string) string {
	all := say(c.Press)
	if c.PressB == nil || say(c.PressB) == all {
		return all
	}
	return fmt.Sprintf("for %s: %s; for %s: %s", m.cardBlocks(c.Name, variantA), all, m.cardBlocks(c.Name, variantB), say(c.PressB))
}

// cardBlocks names the blocks of a card.
func (m *maker) cardBlocks(colourway, variant string) string {
	for _, card := range m.plan.Press.Cards {
		if card.Colourway == colourway && card.Variant == variant && len(card.Blocks) <= mostListed {
			return card.List()
		}
	}
	return "the blocks of card " + variant
}

// halfWords says at the layout what half turns are for.
func (m *maker) halfWords() string {
	if len(m.plan.Press.Half) == 0 {
		return ""
	}
	turned := len(m.plan.Press.Half) / m.job.Quantity
	return fmt.Sprintf(" Mind the half turns: %s of a quilt lie turned so that seams nest.", counted(turned, "block"))
}

// pressRowsWords is how the rows of a top are pressed, and how one that was
// pressed the wrong way is put right.
func pressRowsWords(across, down int) string {
	if down == 1 {
		return "Press the row to the right."
	}
	return fmt.Sprintf("Press odd rows to the right, even rows to the left, so that the rows nest. A row pressed the wrong way clashes with the rows above and below it: press its %s again, nothing else.",
		counted(across-1, "seam"))
}
