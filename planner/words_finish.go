package planner

import (
	"fmt"

	"quiltrun/planner/measure"
)

// PanelWords are the panels of a backing as they are cut: "2 panels 42 × 64 in",
// "a panel 42 × 59 in and one 28 × 59 in".
func (b BackingPlan) PanelWords(u measure.Unit) string {
	counts := map[measure.Size]int{}
	var sizes []measure.Size
	for _, p := range b.Cut {
		if counts[p]++; counts[p] == 1 {
			sizes = append(sizes, p)
		}
	}
	parts := make([]string, len(sizes))
	for i, s := range sizes {
		parts[i] = counted(counts[s], "panel") + " " + s.Show(u)
	}
	return listed(parts, "and")
}

// SeamWords say where the seams fall.
func (b BackingPlan) SeamWords(u measure.Unit) string {
	edge := "left edge"
	if b.SeamsRun == string(Crosswise) {
		edge = "top"
	}
	at := make([]string, len(b.SeamsAt))
	for i, l := range b.SeamsAt {
		at[i] = l.Show(u)
	}
	return fmt.Sprintf("%s from the %s", listed(at, "and"), edge)
}

// FitWords say plainly that a backing is wider than its cloth; "" where it is not.
func (b BackingPlan) FitWords(u measure.Unit) string {
	if b.Panels == 1 {
		return ""
	}
	return fmt.Sprintf("does not fit %s either way", b.Width.Show(u))
}

// CutWords say how a border's lengths come off the cloth.
func (b BorderCut) CutWords() string {
	switch {
	case b.Grain == Lengthwise:
		return "each in one piece along the selvage"
	case b.Joined:
		return "from strips across the cloth, joined end to end with a straight seam where one is too short"
	}
	return "each from one strip across the cloth"
}

// SavedWords say what the border's grain buys less than the other; "" where only
// one was worked out.
func (b BorderCut) SavedWords(u measure.Unit) string {
	if !b.Considered {
		return ""
	}
	other := "lengthwise"
	if b.Grain == Lengthwise {
		other = "crosswise, pieced,"
	}
	if b.Saves <= 0 {
		return other + " would buy as much"
	}
	return other + " would buy " + b.Saves.ShowYardage(u) + " more"
}
