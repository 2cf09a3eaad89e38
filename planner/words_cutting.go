package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// CutWords are a plan's cuts in words, one line a step, in the order to make them:
// "4 strips 7 in × width; stack 4; 7 upright cuts = 24 squares 7 in".
func (c FabricCut) CutWords(u measure.Unit) []string {
	w := cutWording{c, u}
	out := make([]string, len(c.Plan.Steps))
	for i, s := range c.Plan.Steps {
		out[i] = w.line(s, s.Makes, true)
	}
	return out
}

// wordsFor are the lines of a plan that lead to pieces for some purposes; nothing
// else that they make is named. What had to be cut for earlier purposes is there
// already: strips of it are named as such, and its other cuts are left out.
func (c FabricCut) wordsFor(u measure.Unit, earlier, purposes []string) []string {
	w := cutWording{c, u}
	var out []string
	for _, s := range c.Plan.Steps {
		var made, there []cloth.Make
		for _, m := range s.Makes {
			switch {
			case !w.serves(m, purposes):
			case m.Want == cloth.Further && w.serves(m, earlier):
				there = append(there, m)
			default:
				made = append(made, m)
			}
		}
		if s.Bolt && len(there) > 0 {
			out = append(out, "cut already: "+w.all(s, there))
		}
		if len(made) > 0 {
			out = append(out, w.line(s, made, len(made) == len(s.Makes)))
		}
	}
	return out
}

// cutWording words one fabric's plan.
type cutWording struct {
	FabricCut
	units measure.Unit
}

// serves reports that something made is, or becomes, pieces for some purposes.
func (w cutWording) serves(m cloth.Make, purposes []string) bool {
	of := m.Of
	if m.Want >= 0 {
		of = []int{m.Want}
	}
	return slices.ContainsFunc(of, func(want int) bool { return slices.Contains(purposes, w.Need.Pieces[want].For) })
}

// line is one step; how often the ruler is laid on is said of the whole step only.
func (w cutWording) line(s cloth.Step, made []cloth.Make, all bool) string {
	way := "level cut"
	if s.Upright {
		way = "upright cut"
	}
	if s.Bolt {
		way = "cut"
	}
	cuts := way + "s"
	if all {
		cuts = counted(s.Cuts, way)
	}
	switch {
	case s.Bolt && all:
		return cuts + " across the cloth = " + w.all(s, made)
	case s.Bolt:
		return "across the cloth " + w.all(s, made)
	}
	return fmt.Sprintf("%s%s; %s = %s", w.from(s), stacked(s), cuts, w.all(s, made))
}

// all is things made in one row.
func (w cutWording) all(s cloth.Step, made []cloth.Make) string {
	parts := make([]string, len(made))
	for i, m := range made {
		parts[i] = w.made(s, m)
	}
	return strings.Join(parts, " + ")
}

// stacked says how layers lie where more than one piece is cut.
func stacked(s cloth.Step) string {
	switch {
	case s.Count == 1:
		return ""
	case s.Layers == 1:
		return "; one at a time"
	case s.Stacks == 1:
		return fmt.Sprintf("; stack %d", s.Layers)
	}
	return fmt.Sprintf("; %d stacks of up to %d", s.Stacks, s.Layers)
}

// strip is a rectangle as wide as the cloth, as people say it; "" for another.
func (w cutWording) strip(size measure.Size, n int) string {
	if size.Width != w.squared() {
		return ""
	}
	return stripWords(n, size.Height, w.units)
}

// stripWords is strips right across the cloth.
func stripWords(n int, height measure.Length, u measure.Unit) string {
	what := "strip"
	if height >= longLength {
		what = "length"
	}
	return fmt.Sprintf("%s %s × width", counted(n, what), height.Show(u))
}

// FromHandWords are the strips of FromHand, "13 strips 5 in × width + 2 strips
// 3 1/2 in × width"; "" for none.
func (c FabricCut) FromHandWords(u measure.Unit) string {
	var parts []string
	for _, s := range c.FromHand() {
		parts = append(parts, stripWords(s.Count, s.Length, u))
	}
	return strings.Join(parts, " + ")
}

// squared is the width of the bolt once it is squared up; 0 where none is cut.
func (w cutWording) squared() measure.Length {
	for _, s := range w.Plan.Steps {
		if s.Bolt {
			return s.From.Width
		}
	}
	return 0
}

// longLength is from where a strip is called a length of cloth: half a yard.
const longLength = measure.Yard / 2

// from is what a step cuts.
func (w cutWording) from(s cloth.Step) string {
	if s.Hand {
		return counted(s.Count, "piece") + " on hand " + s.From.Show(w.units)
	}
	if strip := w.strip(s.From, s.Count); strip != "" {
		return strip
	}
	f := w.Need.Fabric
	if f.Form.Sheets() && s.From == f.Sheet() {
		form := f.Form.One()
		return counted(s.Count, form)
	}
	return counted(s.Count, "piece") + " " + s.From.Show(w.units)
}

// made is what comes off, in all.
func (w cutWording) made(s cloth.Step, m cloth.Make) string {
	strip := ""
	if s.Bolt {
		strip = w.strip(m.Size, m.Count)
	}
	switch {
	case m.Want == cloth.Left:
		return fmt.Sprintf("%d of %s left over", m.Count, m.Size.Show(w.units))
	case m.Want == cloth.Further && strip != "":
		return strip
	case m.Want == cloth.Further:
		return counted(m.Count, "piece") + " " + m.Size.Show(w.units) + " to cut again"
	case strip != "":
		return strip + cutFor(w.Need.Pieces[m.Want].For)
	}
	return CutPieces(m.Count, m.Size, w.Need.Pieces[m.Want].For, w.units)
}

// CutPieces is a count of cut pieces in words: "6 squares 7 in", "2 pieces 6 × 3 in
// for border", "4 spare squares 7 in".
func CutPieces(n int, size measure.Size, use string, u measure.Unit) string {
	what, shown := "piece", size.Show(u)
	if size.Width == size.Height {
		what, shown = "square", size.Width.Show(u)
	}
	if use == forSpare {
		return counted(n, "spare "+what) + " " + shown
	}
	return counted(n, what) + " " + shown + cutFor(use)
}

// cutFor is what pieces are for; those not said to be are for blocks.
func cutFor(use string) string {
	if use == "" || use == forBlocks {
		return ""
	}
	return " for " + use
}
