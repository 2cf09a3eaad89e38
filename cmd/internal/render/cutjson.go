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
	if f.Form.Sheets() {
		out.Size = &jsonSize{length(f.Size.Width, u), length(f.Size.Height, u)}
		out.Takes, out.Plain, out.Bound = tally(plan.Sheets), tally(c.Need.Sheets), tally(plan.SheetBound)
		return out
	}
	width := length(f.Width, u)
	out.Width = &width
	out.Takes, out.Plain, out.Bound = length(plan.Length, u), length(c.Need.PlainStrips(), u), length(plan.Bound, u)
	return out
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
