package planner

import (
	"strings"

	"quiltrun/planner/patchwork"
)

// pressCards writes the directions for the iron: a card for each colourway, two
// where its blocks are pressed in two ways.
func (m *maker) pressCards() {
	cards := make([][2]*PressCard, len(m.plan.Colourways))
	index := make(map[string]int, len(cards))
	for i, c := range m.plan.Colourways {
		index[c.Name] = i
		for v, way := range c.ways() {
			cards[i][v] = &PressCard{
				Colourway: c.Name, Variant: [...]string{variantA, variantB}[v],
				Steps: pressSteps(c.Build, way), Matches: c.Build.BlockTally(way),
			}
		}
	}
	for _, b := range m.plan.Blocks {
		card := cards[index[b.Colourway]][boolean(b.Press == variantB)]
		card.Blocks = append(card.Blocks, b.ID)
	}
	for _, pair := range cards {
		for _, card := range pair {
			if card != nil {
				m.plan.Press.Cards = append(m.plan.Press.Cards, *card)
			}
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
