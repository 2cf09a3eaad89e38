package render

import (
	"io"
	"strconv"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// jsonCut is how one fabric is cut: lengths in the unit for yardage, counts for
// every other form.
type jsonCut struct {
	Fabric      string         `json:"fabric"`
	Form        string         `json:"form"`
	Width       *number        `json:"width"` // usable width of yardage, else null
	Size        *jsonSize      `json:"size"`  // of a sheet, else null
	Directional bool           `json:"directional"`
	Takes       number         `json:"takes"`
	Plain       number         `json:"plain"` // what the job sheet's strips, or sheets for each size, take
	Bound       number         `json:"bound"` // no plan takes less
	Gap         number         `json:"gap"`   // what it takes over the bound, in percent of that
	Best        bool           `json:"best"`  // proved to be the least in this style
	Cuts        int            `json:"cuts"`
	Steps       []jsonCutStep  `json:"steps"`
	Leftovers   []jsonLeftover `json:"leftovers"`

	CutWidth *number        `json:"cut_width"` // of yardage once it is washed, else null
	CutSize  *jsonSize      `json:"cut_size"`  // of a sheet once it is washed, else null
	Layers   int            `json:"layers"`    // the most in one stack
	Hand     []jsonSize     `json:"hand"`      // pieces on hand that are used
	OnHand   *number        `json:"on_hand"`   // null: not said
	Need     number         `json:"need"`      // of the job sheet, in its style
	Buy      number         `json:"buy"`
	Joint    number         `json:"joint"`     // lost of what is on hand where no strip ends
	HandCuts []jsonStrips   `json:"hand_cuts"` // strips to cut from the length on hand, the others from what is bought
	Nested   *jsonNested    `json:"nested"`    // null: cuts in any order buy no less
	Cloths   []jsonCutCloth `json:"cloths"`
}

// jsonStrips is alike strips right across the cloth.
type jsonStrips struct {
	Height number `json:"height"`
	Count  int    `json:"count"`
}

// jsonNested is what cutting in any order would save of what is bought.
type jsonNested struct {
	Saves number `json:"saves"`
	Cuts  int    `json:"cuts"` // ruler cuts in all
}

// jsonCutCloth is one piece of cloth with every piece in its place, from its lower
// left corner.
type jsonCutCloth struct {
	Width  number      `json:"width"`
	Height number      `json:"height"`
	Hand   bool        `json:"hand"`
	Pieces []jsonLaid  `json:"pieces"`
	Lines  []jsonSlice `json:"lines"`
}

// jsonLaid is a piece in its place.
type jsonLaid struct {
	X      number `json:"x"`
	Y      number `json:"y"`
	Width  number `json:"width"`
	Height number `json:"height"`
	For    string `json:"for"`
	Turned bool   `json:"turned"`
}

// jsonSlice is one cut, from its left or its lower end.
type jsonSlice struct {
	Step    int    `json:"step"` // in which it is made, from 1
	X       number `json:"x"`
	Y       number `json:"y"`
	Length  number `json:"length"`
	Upright bool   `json:"upright"`
}

// jsonCutStep is one kind of ruler work.
type jsonCutStep struct {
	Ruler  string     `json:"ruler"` // "across" the width, or "upright"
	From   jsonSize   `json:"from"`
	Count  int        `json:"count"` // how many of those
	Layers int        `json:"layers"`
	Stacks int        `json:"stacks"`
	Cuts   int        `json:"cuts"`
	Makes  []jsonMade `json:"makes"`
}

// jsonMade is what a step makes, in all.
type jsonMade struct {
	Width  number  `json:"width"`
	Height number  `json:"height"`
	Count  int     `json:"count"`
	Kind   string  `json:"kind"` // "piece", "cut again" or "left over"
	For    *string `json:"for"`  // of a piece, else null
}

// jsonLeftover is usable leftovers of one size.
type jsonLeftover struct {
	Width  number `json:"width"`
	Height number `json:"height"`
	Count  int    `json:"count"`
}

// CuttingJSON shows the same for scripts.
func CuttingJSON(w io.Writer, job planner.Job, style cloth.Style, cuts []planner.FabricCut) error {
	return writeJSON(w, struct {
		Schema  int       `json:"schema"`
		Unit    string    `json:"unit"`
		Job     string    `json:"job"`
		Style   string    `json:"style"`
		Fabrics []jsonCut `json:"fabrics"`
	}{schema, job.Units.String(), job.ID, string(style), list(cuts, func(c planner.FabricCut) jsonCut { return jsonCutOf(c, job.Units) })})
}

func jsonCutOf(c planner.FabricCut, u measure.Unit) jsonCut {
	f, plan := c.Need.Fabric, c.Plan
	out := jsonCut{
		Fabric: f.Name, Form: string(f.Form), Directional: f.Directional,
		Gap: decimal(100*plan.Gap(), 2), Best: plan.Best(), Cuts: plan.Cuts,
		Steps: list(plan.Steps, func(s cloth.Step) jsonCutStep { return jsonCutStepOf(c.Need, s, u) }),
		Leftovers: list(leftovers(plan), func(o leftover) jsonLeftover {
			return jsonLeftover{length(o.size.Width, u), length(o.size.Height, u), o.count}
		}),
	}
	out.Cloths = list(plan.Cloths, func(k cloth.Cloth) jsonCutCloth { return jsonCutClothOf(c.Need, k, u) })
	out.Layers, out.Hand = 1, []jsonSize{}
	for _, s := range plan.Steps {
		out.Layers = max(out.Layers, s.Layers)
	}
	for _, k := range plan.Cloths {
		if k.Hand {
			out.Hand = append(out.Hand, jsonSize{length(k.Size.Width, u), length(k.Size.Height, u)})
		}
	}
	out.bought(c.Need, u)
	out.HandCuts = list(c.FromHand(), func(s planner.StockStrip) jsonStrips { return jsonStrips{length(s.Length, u), s.Count} })
	if f.Form.Sheets() {
		out.Size = &jsonSize{length(f.Size.Width, u), length(f.Size.Height, u)}
		out.Takes, out.Plain, out.Bound = tally(plan.Sheets), tally(c.Need.PlainSheets), tally(plan.SheetBound)
		return out
	}
	width := length(f.Width, u)
	out.Width = &width
	out.Takes, out.Plain, out.Bound = length(plan.Length, u), length(c.Need.Plain, u), length(plan.Bound, u)
	return out
}

// bought fills in the need of the job sheet, and what to buy for it.
func (j *jsonCut) bought(n planner.FabricNeed, u measure.Unit) {
	stock := n.Fabric.OnHand
	j.Joint = length(n.Joint, u)
	if n.Fabric.Form.Sheets() {
		sheet := n.Fabric.Sheet()
		j.Need, j.Buy, j.CutSize = tally(n.Sheets), tally(n.SheetBuy), &jsonSize{length(sheet.Width, u), length(sheet.Height, u)}
		if stock != nil {
			j.OnHand = some(tally(stock.Sheets))
		}
		if n.Nested != nil {
			j.Nested = &jsonNested{tally(n.Nested.Sheets), n.Nested.Cuts}
		}
		return
	}
	j.Need, j.Buy, j.CutWidth = length(n.Length, u), length(n.LengthBuy, u), some(length(n.Fabric.Across(), u))
	if stock != nil {
		j.OnHand = some(length(stock.Length, u))
	}
	if n.Nested != nil {
		j.Nested = &jsonNested{length(n.Nested.Length, u), n.Nested.Cuts}
	}
}

func jsonCutClothOf(need planner.FabricNeed, c cloth.Cloth, u measure.Unit) jsonCutCloth {
	return jsonCutCloth{
		Width: length(c.Size.Width, u), Height: length(c.Size.Height, u), Hand: c.Hand,
		Pieces: list(c.Pieces, func(p cloth.Piece) jsonLaid {
			return jsonLaid{length(p.X, u), length(p.Y, u), length(p.Size.Width, u), length(p.Size.Height, u), need.Pieces[p.Want].For, p.Turned}
		}),
		Lines: list(c.Lines, func(l cloth.Line) jsonSlice {
			return jsonSlice{l.Step, length(l.X, u), length(l.Y, u), length(l.Length, u), l.Upright}
		}),
	}
}

// tally is a count where others have a length.
func tally(n int) number { return number(strconv.Itoa(n)) }

func jsonCutStepOf(need planner.FabricNeed, s cloth.Step, u measure.Unit) jsonCutStep {
	out := jsonCutStep{
		Ruler: "across", From: jsonSize{length(s.From.Width, u), length(s.From.Height, u)},
		Count: s.Count, Layers: s.Layers, Stacks: s.Stacks, Cuts: s.Cuts,
		Makes: list(s.Makes, func(m cloth.Make) jsonMade {
			made := jsonMade{length(m.Size.Width, u), length(m.Size.Height, u), m.Count, "cut again", nil}
			switch {
			case m.Want == cloth.Left:
				made.Kind = "left over"
			case m.Want >= 0:
				made.Kind, made.For = "piece", known(need.Pieces[m.Want].For)
			}
			return made
		}),
	}
	if s.Upright {
		out.Ruler = "upright"
	}
	return out
}
