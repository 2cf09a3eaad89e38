package cloth

import "quiltrun/planner/measure"

// Pieces is how many rectangles of one raw size are wanted.
type Pieces struct {
	Size  measure.Size
	Count int
}

// Strips is one group of equal strips across the usable width, and the pieces
// cut from them.
type Strips struct {
	Piece   measure.Size
	Strips  int
	Height  measure.Length // cut width of each strip
	Along   measure.Length // side of the piece that lies along the strip
	PerFull int            // pieces from one full strip
	Pieces  int
}

// Length is what the group takes off the bolt.
func (s Strips) Length() measure.Length { return s.Height.Times(s.Strips) }

// CutUp is pieces cut from yardage: strips first, then each strip into pieces.
type CutUp struct {
	Groups []Strips // in the order of the pieces given
	Length measure.Length
	Bound  measure.Length // no plan can take less
}

// FromYardage cuts pieces from cloth of a usable width, each size in strips of
// its own. A piece that may be turned lies whichever way takes less cloth.
// It returns false with the first piece that is too wide either way.
func FromYardage(pieces []Pieces, width measure.Length, directional bool) (CutUp, measure.Size, bool) {
	var plan CutUp
	var area measure.Area
	for _, p := range pieces {
		group, ok := inStrips(p, width)
		if turned, fits := inStrips(Pieces{p.Size.Turned(), p.Count}, width); fits && !directional && (!ok || turned.Length() < group.Length()) {
			group, ok = turned, true
		}
		if !ok {
			return CutUp{}, p.Size, false
		}
		plan.Groups = append(plan.Groups, group)
		plan.Length += group.Length()
		area = area.Add(measure.Mul(p.Size.Width, p.Size.Height).Times(p.Count))
	}
	plan.Bound = bound(area, width, plan.Length)
	return plan, measure.Size{}, true
}

// inStrips lays the piece's width along the strip.
func inStrips(p Pieces, width measure.Length) (Strips, bool) {
	if p.Size.Width > width {
		return Strips{}, false
	}
	full := measure.FloorDiv(width, p.Size.Width)
	return Strips{
		Piece: p.Size, Height: p.Size.Height, Along: p.Size.Width,
		PerFull: full, Pieces: p.Count, Strips: (p.Count + full - 1) / full,
	}, true
}

// bound is the area of the pieces over the width, rounded up to the tick: cloth
// cannot be shorter than that. It is never above the plan's own length.
func bound(area measure.Area, width, length measure.Length) measure.Length {
	low, high := measure.Length(0), length
	for low < high {
		middle := low + (high-low)/2
		if measure.Mul(middle, width).Cmp(area) < 0 {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// RulerCuts is how many times the cutter runs along the ruler: one cut a strip
// and one that squares the end, then stacks of strips cut up together, layers
// at a time, each stack squared at one end.
func (s Strips) RulerCuts(layers int) int {
	stacks := (s.Strips + layers - 1) / layers
	return s.Strips + 1 + stacks*(min(s.PerFull, s.Pieces)+1)
}
