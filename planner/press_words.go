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
