package tick

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// place names one row of the route.
type place struct {
	key string
	lot tracker.Lot
}

func placeOf(o tracker.Operation) place { return place{o.Key, o.Lot} }

// direction is what the plan says to the hands that do one row.
type direction struct {
	doing string         // the instruction with its measurements
	below measure.Length // of the bobbin's thread, for one count; 0 where nothing is sewn
}

// Guide is what the plan says of every row: the log keeps counts and no
// instructions.
type Guide struct {
	rows  map[place]direction
	cards map[string][]planner.PressCard // by colourway
}

// NewGuide reads a plan.
func NewGuide(plan planner.Plan) Guide {
	g := Guide{rows: map[place]direction{}, cards: map[string][]planner.PressCard{}}
	for _, o := range plan.Operations {
		d := direction{doing: o.Doing}
		if o.Count > 0 { // half of a lockstitch's thread comes from below
			d.below = o.ThreadLength / 2 / measure.Length(o.Count)
		}
		g.rows[place{o.Key, tracker.Lot{Kind: o.Lot.Kind, Name: o.Lot.Name}}] = d
	}
	for _, c := range plan.Press.Cards {
		g.cards[c.Colourway] = append(g.cards[c.Colourway], c)
	}
	return g
}

// press is the press card for a row, at the block that is being made where a
// colourway has two cards: the step that the row works on, else the whole card.
func (g Guide) press(o tracker.Operation, block string) string {
	cards := g.cards[o.Lot.Name]
	atWork := o.Place == planner.Machine || o.Place == planner.Iron
	if o.Lot.Kind != planner.ColourwayLot || !atWork {
		return ""
	}
	var said []string
	for _, c := range cards {
		if len(cards) > 1 && block != "" && !slices.Contains(c.Blocks, block) {
			continue
		}
		name := "Press card"
		if len(cards) > 1 {
			name += " " + c.Variant
		}
		said = append(said, name+": "+cardWords(c, o.Key))
	}
	return strings.Join(said, "; ")
}

// cardWords is a card's directions, of one step alone where the key names it:
// keys are made of a verb, the step's name and perhaps a column or row.
func cardWords(c planner.PressCard, key string) string {
	var all []string
	for _, s := range c.Steps {
		words := fmt.Sprintf("%s %s", s.Step, s.Words())
		if strings.HasSuffix(key, "-"+s.Step) || strings.Contains(key, "-"+s.Step+"-") {
			return words
		}
		all = append(all, words)
	}
	return strings.Join(all, "; ")
}
