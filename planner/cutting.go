package planner

import (
	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// FabricCut is how the pieces of one fabric are cut together.
type FabricCut struct {
	Need FabricNeed
	Plan cloth.Plan // its wants are the need's pieces, in their order
}

// CutPlan plans the cutting of a fabric's pieces, all sizes together. It takes
// no more cloth than the strips, or sheets, of the need; a backing is not in it.
// Nothing is counted for squaring up, as in the need. Leftovers are listed from
// a side that the next quilt can use. A fabric without pieces has an empty plan.
// The error is that of pieces that no cloth of the fabric holds, or of more than
// cloth.MostPieces.
func CutPlan(need FabricNeed, style cloth.Style, units measure.Unit) (cloth.Plan, error) {
	f := need.Fabric
	wants := make([]cloth.Want, len(need.Pieces))
	for i, p := range need.Pieces {
		wants[i] = cloth.Want{Name: p.For, Size: p.Size, Count: p.Count, Directional: f.Directional}
	}
	settings := cloth.Settings{Style: style, Layers: layers(f), Usable: usable(units)}
	if f.Form.Sheets() {
		return cloth.CutSheets(wants, []cloth.Sheet{{Name: f.Name, Size: f.Size}}, settings)
	}
	return cloth.CutYardage(wants, f.Width, settings)
}

// PlainStrips is the length off the bolt that strips of each size of their own
// take: the need without a backing. It is 0 for sheets.
func (n FabricNeed) PlainStrips() measure.Length {
	var length measure.Length
	for _, p := range n.Pieces {
		length += p.Cut.StripWidth.Times(p.Cut.Strips)
	}
	return length
}

// usable is the least side of a leftover worth keeping: a strip for binding.
// Common practice, no source.
func usable(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return 6 * measure.Centimetre
	}
	return 5 * measure.Inch / 2
}
