package planner

import (
	"slices"
	"strings"

	"quiltrun/planner/patchwork"
)

// pressCards writes the directions for the iron: a card for each colourway, two
// where its blocks are pressed in two ways.
func (m *maker) pressCards() {
	cards := make([][2]*PressCard, len(m.plan.Colourways))
	var written writtenCards
	for i, c := range m.plan.Colourways {
		for v, way := range c.ways() {
			card := written.card(c.Build, way)
			card.Colourway, card.Variant = c.Name, [...]string{variantA, variantB}[v]
			cards[i][v] = &card
		}
	}
	for i, blocks := range m.own {
		cards[i][0].Blocks = make([]string, 0, len(blocks))
		for _, b := range blocks {
			card := cards[i][boolean(b.Press == variantB)]
			card.Blocks = append(card.Blocks, b.ID)
		}
	}
	for _, pair := range cards {
		for _, card := range pair {
			if card != nil {
				m.plan.Press.Cards = append(m.plan.Press.Cards, *card)
			}
		}
	}
}

// writtenCards remembers cards, for colourways of one block that are pressed
// alike.
type writtenCards []writtenCard

type writtenCard struct {
	build *patchwork.Build
	way   patchwork.Way
	PressCard
}

// find is the place of a way of pressing, -1 where it has not been written.
func (w writtenCards) find(b *patchwork.Build, way patchwork.Way) int {
	return slices.IndexFunc(w, func(c writtenCard) bool { return c.build == b && slices.Equal(c.way, way) })
}

// card is the directions of a way of pressing, for no blocks yet.
func (w *writtenCards) card(b *patchwork.Build, way patchwork.Way) PressCard {
	i := w.find(b, way)
	if i < 0 {
		i = len(*w)
		*w = append(*w, writtenCard{b, way, PressCard{Steps: pressSteps(b, way), Matches: b.BlockTally(way), Bulk: b.Bulk(way)}})
	}
	return (*w)[i].PressCard
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

// List is the card's blocks: "tide-01, -03, -05".
func (c PressCard) List() string { return idList(c.Blocks) }

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
