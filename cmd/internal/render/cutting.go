package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// Cutting shows how fabrics are cut, one ruler job after the other. Fabrics that
// are cut alike are told together.
func Cutting(w io.Writer, job planner.Job, cuts []planner.FabricCut, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "Cutting: "+job.Title)
	p.rule()
	p.para(0, "Widths run across the cloth. Each numbered line is one kind of cut, in the order to make them. Squaring up is counted in cuts, not in cloth.")
	told := make([]*cutTold, len(cuts))
	for i, c := range cuts {
		told[i] = tellCut(c, job.Units)
	}
	for _, group := range grouped(len(cuts), func(i int) string { return told[i].key() }) {
		names := picked(group, func(i int) string { return cuts[i].Need.Fabric.Name })
		each := ""
		if len(names) > 1 {
			each = ", each"
		}
		p.heading(enumerate(names) + each)
		told[group[0]].show(p)
	}
	return p.writeTo(w)
}

// cutTold is one fabric's cutting in words.
type cutTold struct {
	facts [][2]string
	steps []string
}

func (c *cutTold) key() string { return fmt.Sprint(c.facts, c.steps) }

func (c *cutTold) show(p *page) {
	for _, f := range c.facts {
		p.fact(f[0], factAt, f[1])
	}
	for i, s := range c.steps {
		p.hang(1, fmt.Sprintf("%2d  ", i+1), s)
	}
}

// cutWords words one fabric's plan.
type cutWords struct {
	planner.FabricCut
	units measure.Unit
}

func tellCut(c planner.FabricCut, u measure.Unit) *cutTold {
	w := cutWords{c, u}
	out := &cutTold{facts: [][2]string{{"Cloth", w.cloth()}}}
	switch {
	case len(c.Need.Pieces) == 0:
		out.facts = append(out.facts, [2]string{"Cuts", "no pieces are cut from it"})
		return out
	case len(c.Plan.Steps) == 0:
		out.facts = append(out.facts, [2]string{"Cuts", "nothing to cut: " + w.pieces()})
		return out
	}
	out.facts = append(out.facts, [2]string{"Takes", w.takes()}, [2]string{"Bound", w.bound()},
		[2]string{"Cuts", counted(c.Plan.Cuts, "ruler cut")}, [2]string{"Left over", w.left()})
	for k, s := range c.Plan.Steps {
		out.steps = append(out.steps, w.step(s, k == 0))
	}
	return out
}

// cloth is what the pieces are cut from.
func (w cutWords) cloth() string {
	f := w.Need.Fabric
	text := string(f.Form) + " "
	if f.Form.Sheets() {
		text += size(f.Size, w.units)
	} else {
		text += f.Width.Show(w.units) + " usable"
	}
	if f.Directional {
		text += "; the print has a direction: one layer at a time, and no piece turned"
	}
	return text
}

// pieces is what is used as it comes.
func (w cutWords) pieces() string {
	parts := make([]string, len(w.Need.Pieces))
	for i, p := range w.Need.Pieces {
		parts[i] = w.wanted(p.Count, p.Size, p.For)
	}
	return "use " + strings.Join(parts, "; ") + " as they come"
}

// takes is the cloth used, beside what the sheet's plain strips use.
func (w cutWords) takes() string {
	plan, need := w.Plan, w.Need
	if need.Fabric.Form.Sheets() {
		return w.instead(fmt.Sprintf("%d of them", plan.Sheets), need.Sheets > plan.Sheets,
			"sheets for each size alone would be "+fmt.Sprint(need.Sheets), fmt.Sprint(need.Sheets-plan.Sheets))
	}
	plain := need.PlainStrips()
	return w.instead(plan.Length.Show(w.units)+" off the bolt", plain > plan.Length,
		"the job sheet's plain strips take "+plain.Show(w.units), (plain - plan.Length).Show(w.units))
}

func (w cutWords) instead(used string, less bool, plain, saved string) string {
	if less {
		return used + "; " + plain + ", so this saves " + saved
	}
	return used + ", as the job sheet says: nothing is saved"
}

// bound says how far from the best possible the plan can be.
func (w cutWords) bound() string {
	plan := w.Plan
	least := plan.Bound.Show(w.units)
	if w.Need.Fabric.Form.Sheets() {
		least = fmt.Sprint(plan.SheetBound)
	}
	if plan.Gap() == 0 {
		return "no plan can take less"
	}
	text := fmt.Sprintf("no plan can take less than %s; this is %s more", least, percent(plan.Gap()))
	if plan.Best() {
		text += ", and the least " + leastOf[plan.Style]
	}
	return text
}

// leastOf says among which plans a plan is the best one.
var leastOf = map[cloth.Style]string{cloth.Simple: "with strips cut first", cloth.Nested: "in any order of straight cuts"}

// percent is a share to a tenth of a hundredth; what is less is said to be.
func percent(share float64) string {
	if share < 0.001 {
		return "less than 0.1 %"
	}
	return string(decimal(100*share, 1)) + " %"
}

// left are the leftovers that another quilt can use, alike ones together.
func (w cutWords) left() string {
	var parts []string
	for _, o := range leftovers(w.Plan) {
		parts = append(parts, fmt.Sprintf("%d of %s", o.count, size(o.size, w.units)))
	}
	if len(parts) == 0 {
		return "nothing of use"
	}
	return strings.Join(parts, "; ")
}

// leftover is usable offcuts of one size.
type leftover struct {
	size  measure.Size
	count int
}

// leftovers are a plan's usable offcuts, the largest of each cloth first.
func leftovers(plan cloth.Plan) []leftover {
	var out []leftover
	place := map[measure.Size]int{}
	for _, c := range plan.Cloths {
		for _, o := range c.Offcuts {
			at, ok := place[o.Size]
			if !ok {
				at = len(out)
				place[o.Size] = at
				out = append(out, leftover{size: o.Size})
			}
			out[at].count++
		}
	}
	return out
}

// step is one line of ruler work. The first is cut from the cloth itself.
func (w cutWords) step(s cloth.Step, first bool) string {
	made := make([]string, 0, len(s.Makes))
	for _, m := range s.Makes {
		made = append(made, w.made(s, m, first))
	}
	return fmt.Sprintf("%s: %s (%s)", w.from(s, first), strings.Join(made, "; "), counted(s.Cuts, "cut"))
}

// from is what a step cuts, which way, and in what stacks.
func (w cutWords) from(s cloth.Step, first bool) string {
	yardage := !w.Need.Fabric.Form.Sheets()
	if first && yardage {
		return "Cut across the cloth"
	}
	text := "Cut level "
	if s.Upright {
		text = "Cut upright "
	}
	if yardage && s.From.Width == w.Need.Fabric.Width {
		text += counted(s.Count, "strip") + " " + s.From.Height.Show(w.units) + " wide"
	} else {
		text += fmt.Sprintf("%d of %s", s.Count, size(s.From, w.units))
	}
	switch {
	case s.Stacks == 1 && s.Layers > 1:
		text += ", stacked"
	case s.Layers > 1:
		text += fmt.Sprintf(", %d stacks of up to %d layers", s.Stacks, s.Layers)
	}
	return text
}

// made is what comes off: "6 squares 7 in from each, 12 in all".
func (w cutWords) made(s cloth.Step, m cloth.Make, first bool) string {
	if s.Count > 1 && m.Count > s.Count && sameCuts(s) {
		return w.named(m.Count/s.Count, m, s, first) + fmt.Sprintf(" from each, %d in all", m.Count)
	}
	return w.named(m.Count, m, s, first)
}

// sameCuts reports that everything a step cuts gives the same. What is cut less far
// than its like has a leftover of its own, which the others have not.
func sameCuts(s cloth.Step) bool {
	return !slices.ContainsFunc(s.Makes, func(m cloth.Make) bool { return m.Count%s.Count != 0 })
}

// named is a count of what a step makes.
func (w cutWords) named(n int, m cloth.Make, s cloth.Step, first bool) string {
	strip := ""
	if first && !w.Need.Fabric.Form.Sheets() && m.Size.Width == s.From.Width {
		strip = fmt.Sprintf("%s %s wide", counted(n, "strip"), m.Size.Height.Show(w.units))
	}
	switch m.Want {
	case cloth.Further:
		if strip != "" {
			return strip
		}
		return fmt.Sprintf("%d of %s to cut again", n, size(m.Size, w.units))
	case cloth.Left:
		return fmt.Sprintf("%d of %s left over", n, size(m.Size, w.units))
	}
	piece := w.Need.Pieces[m.Want]
	if strip != "" {
		return strip + purpose(piece.For) + ", done"
	}
	return w.wanted(n, m.Size, piece.For)
}

// wanted is a count of wanted pieces: "6 squares 7 in", "2 pieces 6 × 3 in for
// border".
func (w cutWords) wanted(n int, s measure.Size, use string) string {
	if s.Width == s.Height {
		return fmt.Sprintf("%s %s%s", counted(n, "square"), s.Width.Show(w.units), purpose(use))
	}
	return fmt.Sprintf("%s %s%s", counted(n, "piece"), s.Show(w.units), purpose(use))
}

// purpose is what pieces are for; those not said to be are for blocks.
func purpose(use string) string {
	if use == "" || use == "blocks" {
		return ""
	}
	return " for " + use
}
