package planner

import (
	"cmp"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// stripsOf is bands as lengths, alike ones together.
func stripsOf(bands []band) []StockStrip {
	var strips []StockStrip
	for _, s := range bands {
		if n := len(strips); n > 0 && strips[n-1].Length == s.to-s.from && strips[n-1].Width == s.width() {
			strips[n-1].Count++
			continue
		}
		strips = append(strips, StockStrip{s.to - s.from, s.width(), 1})
	}
	return strips
}

// band is a part of a length of cloth, all across, with the pieces in it.
type band struct {
	from, to measure.Length
	pieces   []cloth.Piece
}

// width is how far across its pieces reach.
func (b band) width() measure.Length {
	var most measure.Length
	for _, p := range b.pieces {
		most = max(most, p.X+p.Size.Width)
	}
	return most
}

// bands parts a plan on yardage wherever no piece lies across the cut, longest
// first, as they are cut. What squaring up takes goes with the first from below.
func bands(plan cloth.Plan) []band {
	if len(plan.Cloths) == 0 || len(plan.Levels) == 0 {
		return nil
	}
	pieces := slices.Clone(plan.Cloths[len(plan.Cloths)-1].Pieces) // the bolt comes last
	slices.SortStableFunc(pieces, func(a, b cloth.Piece) int { return cmp.Compare(a.Y, b.Y) })
	out := []band{{}}
	for _, p := range pieces {
		last := &out[len(out)-1]
		if len(last.pieces) > 0 && p.Y >= last.to {
			last.to = p.Y
			out = append(out, band{from: p.Y})
			last = &out[len(out)-1]
		}
		last.to = max(last.to, p.Y+p.Size.Height)
		last.pieces = append(last.pieces, p)
	}
	out[len(out)-1].to = plan.Length
	slices.SortStableFunc(out, func(a, b band) int { return cmp.Compare(b.to-b.from, a.to-a.from) })
	return out
}

// stockLeft is a plan's leftovers of use, alike ones together, largest first.
func stockLeft(plan cloth.Plan) []StockLeft {
	var left []StockLeft
	for _, c := range plan.Cloths {
		for _, o := range c.Offcuts {
			at := slices.IndexFunc(left, func(l StockLeft) bool { return l.Width == o.Size.Width && l.Height == o.Size.Height })
			if at < 0 {
				at = len(left)
				left = append(left, StockLeft{o.Size.Width, o.Size.Height, 0})
			}
			left[at].Count++
		}
	}
	slices.SortStableFunc(left, func(a, b StockLeft) int {
		return measure.Mul(b.Width, b.Height).Cmp(measure.Mul(a.Width, a.Height))
	})
	return left
}
