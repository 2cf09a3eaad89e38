package render

import (
	"fmt"
	"io"
	"strconv"
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
	p.para(0, "Widths run across the cloth. Each numbered line is one kind of cut, in the order to make them: what is cut, how it is stacked, how often the ruler is laid on, and what all of it makes.")
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
	fact := func(name, text string) {
		if text != "" {
			out.facts = append(out.facts, [2]string{name, text})
		}
	}
	switch {
	case len(c.Need.Pieces) == 0:
		fact("Cuts", "no pieces are cut from it")
		return out
	case len(c.Plan.Steps) == 0:
		fact("Cuts", "nothing to cut: "+w.pieces())
		fact("Buy", w.buy())
		return out
	}
	fact("Takes", w.takes())
	fact("Bound", w.bound())
	fact("Buy", w.buy())
	fact("On hand", w.fromHand())
	fact("Nested", w.nested())
	fact("Cuts", counted(c.Plan.Cuts, "ruler cut")+", "+layersWords(c.Plan))
	fact("Spare", w.spare())
	fact("Left over", w.left())
	out.steps = c.CutWords(u)
	return out
}

// layersWords say how many layers lie in the deepest stack.
func layersWords(plan cloth.Plan) string {
	most := 1
	for _, s := range plan.Steps {
		most = max(most, s.Layers)
	}
	if most == 1 {
		return "one layer at a time"
	}
	return fmt.Sprintf("up to %d layers at once", most)
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
	if f.Shrinkage != (planner.Shrinkage{}) {
		left := f.Across().Show(w.units)
		if f.Form.Sheets() {
			left = size(f.Sheet(), w.units)
		}
		text += ", " + left + " once it is washed"
	}
	if f.OnHand != nil && len(f.OnHand.Pieces) > 0 {
		parts := make([]string, len(f.OnHand.Pieces))
		for i, s := range f.OnHand.Pieces {
			parts[i] = size(s, w.units)
		}
		text += "; pieces on hand " + enumerate(parts)
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
		parts[i] = planner.CutPieces(p.Count, p.Size, p.For, w.units)
	}
	return "use " + strings.Join(parts, "; ") + " as they come"
}

// spare is what is cut beyond the need.
func (w cutWords) spare() string {
	var parts []string
	for _, p := range w.Need.Pieces {
		if p.For == "spare" {
			parts = append(parts, planner.CutPieces(p.Count, p.Size, p.For, w.units))
		}
	}
	return strings.Join(parts, "; ")
}

// takes is the cloth used, beside what plain strips would use.
func (w cutWords) takes() string {
	plan, need := w.Plan, w.Need
	if need.Fabric.Form.Sheets() {
		return w.instead(counted(plan.Sheets, "piece")+" of cloth", need.PlainSheets > plan.Sheets,
			"sheets for each size alone would be "+fmt.Sprint(need.PlainSheets), fmt.Sprint(need.PlainSheets-plan.Sheets))
	}
	return w.instead(plan.Length.Show(w.units)+" off the bolt", need.Plain > plan.Length,
		"plain strips of each size would take "+need.Plain.Show(w.units), (need.Plain - plan.Length).Show(w.units))
}

func (w cutWords) instead(used string, less bool, plain, saved string) string {
	if less {
		return used + "; " + plain + ", so this saves " + saved
	}
	return used
}

// buy is what to buy by the shop's step, against what is on hand. It is the need's
// own: another style is shown with what it takes alone.
func (w cutWords) buy() string {
	if w.Plan.Style != w.Need.Cutting.Style {
		return ""
	}
	return boughtWords(w.Need, w.units)
}

// fromHand is which strips come of the length on hand, where it does not do for all.
func (w cutWords) fromHand() string {
	strips := w.FromHandWords(w.units)
	if strips == "" {
		return ""
	}
	return fmt.Sprintf("from the %s on hand cut %s, and the others from what is bought: no strip is cut of two lengths",
		w.Need.Fabric.OnHand.Length.ShowYardage(w.units), strips)
}

// boughtWords is what to buy of a fabric, and what it is reckoned against.
func boughtWords(n planner.FabricNeed, u measure.Unit) string {
	f := n.Fabric
	if f.Form.Sheets() {
		switch {
		case f.OnHand == nil:
			return strconv.Itoa(n.SheetBuy)
		case n.SheetBuy == 0:
			return fmt.Sprintf("nothing: %d of %d on hand", n.Sheets, f.OnHand.Sheets)
		}
		return fmt.Sprintf("%d: %d needed, %d on hand", n.SheetBuy, n.Sheets, f.OnHand.Sheets)
	}
	switch {
	case f.OnHand == nil:
		return n.LengthBuy.ShowYardage(u)
	case n.LengthBuy == 0:
		return fmt.Sprintf("nothing: %s of %s on hand", n.Length.Show(u), f.OnHand.Length.Show(u))
	}
	text := fmt.Sprintf("%s: %s needed, %s on hand", n.LengthBuy.ShowYardage(u), n.Length.Show(u), f.OnHand.Length.Show(u))
	if n.Joint > 0 {
		text += fmt.Sprintf(", of which %s is left where no strip ends", n.Joint.Show(u))
	}
	return text
}

// nested is what cutting in any order would save.
func (w cutWords) nested() string {
	if w.Plan.Style == cloth.Nested {
		return ""
	}
	return nestedWords(w.Need, w.units)
}

// nestedWords is what cutting in any order would save of what is bought.
func nestedWords(n planner.FabricNeed, u measure.Unit) string {
	if n.Nested == nil {
		return ""
	}
	saved := n.Nested.Length.ShowYardage(u)
	if n.Fabric.Form.Sheets() {
		saved = counted(n.Nested.Sheets, n.Fabric.Form.One())
	}
	return fmt.Sprintf("cuts in any order would save %s, in %s instead of %d", saved, counted(n.Nested.Cuts, "ruler cut"), n.Cuts)
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
