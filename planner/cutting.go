package planner

import (
	"cmp"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// FabricCut is how the pieces of one fabric are cut together.
type FabricCut struct {
	Need FabricNeed
	Plan cloth.Plan // its wants are the need's pieces, in their order
}

// CutPlan plans the cutting of a fabric's pieces, all sizes together, in a style:
// the need's own plan where that is its style. It takes no more cloth than strips,
// or sheets, of each size of their own. Leftovers are listed from a side that the
// next quilt can use. A fabric without pieces has an empty plan. The error is that
// of pieces that no cloth of the fabric holds, or of more than cloth.MostPieces.
func CutPlan(job Job, need FabricNeed, style cloth.Style) (cloth.Plan, error) {
	if need.Cutting.Style == style {
		return need.Cutting, nil
	}
	return planCut(need, need.handPieces(), cutSettings(job, need.Fabric, style))
}

// FromHand is the strips to cut from the length on hand where more is bought beside it,
// alike ones together, longest first: the least of it is left over then, and the others
// come from what is bought. It is nothing where what is on hand does for all, and where
// it is a cloth of its own in the plan.
func (c FabricCut) FromHand() []StockStrip {
	n := c.Need
	stock := n.Fabric.OnHand
	apart := slices.ContainsFunc(c.Plan.Cloths, func(l cloth.Cloth) bool { return l.Name == cloth.LengthOnHand })
	if stock == nil || stock.Length == 0 || n.LengthBuy == 0 || apart || c.Plan.Style != n.Cutting.Style {
		return nil
	}
	var strips []StockStrip
	first := slices.Sorted(slices.Values(c.Plan.First(n.Fabric.washed(stock.Length))))
	for _, level := range slices.Backward(first) {
		if n := len(strips); n > 0 && strips[n-1].Length == level {
			strips[n-1].Count++
			continue
		}
		strips = append(strips, StockStrip{Length: level, Count: 1})
	}
	return strips
}

// planCut cuts a need's pieces from pieces on hand and from the fabric's form.
func planCut(need FabricNeed, hand []cloth.Sheet, s cloth.Settings) (cloth.Plan, error) {
	f := need.Fabric
	wants := wantsOf(f, need.Pieces)
	if f.Form.Sheets() {
		return cloth.CutSheets(wants, append(hand, cloth.Sheet{Size: f.Sheet()}), s)
	}
	return cloth.CutFrom(wants, hand, f.Across(), s)
}

// handPieces are the pieces of a fabric that lie on hand, as a wash leaves them.
func (n FabricNeed) handPieces() []cloth.Sheet {
	if n.Fabric.OnHand == nil {
		return nil
	}
	var out []cloth.Sheet
	for _, size := range n.Fabric.OnHand.Pieces {
		out = append(out, cloth.Sheet{Name: "on hand", Size: n.Fabric.shrunk(size), Count: 1})
	}
	return out
}

// styleOf is the style in which a job cuts.
func styleOf(job Job) cloth.Style { return cmp.Or(job.Cutting.Style, cloth.Simple) }

// cutSettings are a job's ways of cutting a fabric. A print with a direction is
// cut one layer at a time, and pre-cut pieces are square as they come.
func cutSettings(job Job, f Fabric, style cloth.Style) cloth.Settings {
	s := cloth.Settings{Style: style, Layers: layers(job, f), SquareUp: job.Cutting.SquareUp, Usable: usable(job.Units), Effort: effort(len(job.Fabrics))}
	if s.Style == "" {
		s.Style = cloth.Simple
	}
	if f.Form == PreCutSquares || f.Form == PreCutStrips {
		s.SquareUp = 0
	}
	return s
}

// effort shares the search out among the fabrics of a job, so that a plan of a
// hundred of them is as quick as one of a few. Plans that are proved to be best take
// none.
func effort(fabrics int) int {
	const few, least = 2, 2
	return max(least, 100*few/max(few, fabrics))
}

// layers is how many layers of a fabric are cut at once: one where the print has a
// direction.
func layers(job Job, f Fabric) int {
	switch {
	case f.Directional:
		return 1
	case job.Cutting.Layers > 0:
		return job.Cutting.Layers
	}
	return cloth.DefaultLayers
}

// usable is the least side of a leftover worth keeping: a strip for binding.
// Common practice, no source.
func usable(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return 6 * measure.Centimetre
	}
	return 5 * measure.Inch / 2
}
