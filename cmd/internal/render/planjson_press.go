package render

import (
	"quiltrun/planner"
)

// jsonPress is how the blocks are pressed. The counts are of one quilt; half
// turns and cards are of the run.
type jsonPress struct {
	Rule      string        `json:"rule"`
	Cost      int           `json:"cost"` // clashes of a quilt that the rule costs
	Patterns  []jsonPattern `json:"patterns"`
	Chosen    string        `json:"chosen"`
	HalfTurns []string      `json:"half_turns"` // ids of blocks, in the order of blocks
	Cards     []jsonCard    `json:"cards"`
	Top       jsonTopPress  `json:"top"`
}

// jsonTopPress is how the seams between the parts of a top are pressed: those of
// each row of blocks, from the first; those of rows of sashing, null where there are
// none; and those of borders of blocks.
type jsonTopPress struct {
	Rows    []string    `json:"rows"`
	Sashing *string     `json:"sashing"`
	Borders []jsonStrip `json:"borders"`
}

// jsonStrip is a border of blocks: its four strips, and the seams of the side ones.
type jsonStrip struct {
	Border    int    `json:"border"`
	Upper     string `json:"upper"`
	Lower     string `json:"lower"`
	Left      string `json:"left"`
	Right     string `json:"right"`
	LeftSeam  string `json:"left_seam"`
	RightSeam string `json:"right_seam"`
}

// jsonPattern is what a pattern comes to. HalfTurns says that half turns do it,
// with no second way of pressing.
type jsonPattern struct {
	Pattern   string      `json:"pattern"`
	Inside    jsonMatches `json:"inside"`
	Between   jsonMatches `json:"between"`
	HalfTurns bool        `json:"half_turns"`
	Exact     bool        `json:"exact"` // no way of pressing is better
}

// jsonCard is the directions of one variant of a colourway's blocks.
type jsonCard struct {
	Colourway string          `json:"colourway"`
	Variant   string          `json:"variant"`
	Blocks    []string        `json:"blocks"`
	Steps     []jsonPressStep `json:"steps"`
	Matches   jsonMatches     `json:"matches"` // inside one such block
}

// jsonPressStep is the directions of one step.
type jsonPressStep struct {
	Step  string   `json:"step"`
	Rows  []string `json:"rows"`
	Joins []string `json:"joins"`
}

func pressOf(p planner.PressPlan) jsonPress {
	same := func(text string) string { return text }
	return jsonPress{
		Top: jsonTopPress{
			Rows: list(p.Top.Rows, same), Sashing: known(p.Top.Sashing),
			Borders: list(p.Top.Borders, func(r planner.RingPress) jsonStrip {
				return jsonStrip{r.Border, r.Upper, r.Lower, r.Left, r.Right, r.LeftSeam, r.RightSeam}
			}),
		},
		Rule: string(p.Rule), Cost: p.RuleCost, Chosen: string(p.Chosen), HalfTurns: list(p.Half, same),
		Patterns: list(p.Patterns, func(c planner.PatternCount) jsonPattern {
			return jsonPattern{string(c.Pattern), jsonMatches(c.Inside), jsonMatches(c.Between), c.Half, c.Exact}
		}),
		Cards: list(p.Cards, func(c planner.PressCard) jsonCard {
			return jsonCard{
				Colourway: c.Colourway, Variant: c.Variant, Blocks: list(c.Blocks, same), Matches: jsonMatches(c.Matches),
				Steps: list(c.Steps, func(s planner.PressStep) jsonPressStep {
					return jsonPressStep{s.Step, list(s.Rows, same), list(s.Joins, same)}
				}),
			}
		}),
	}
}
