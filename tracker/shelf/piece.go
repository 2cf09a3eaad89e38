package shelf

import (
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// pieceOf reports that an item is rectangles of a needed fabric.
func (i Item) pieceOf(n planner.StockNeed) bool {
	return !i.Own && i.Form == planner.Pieces && n.Material == planner.ClothMaterial &&
		i.Material == n.Material && strings.EqualFold(i.Name, n.Name)
}

// forStrips reports that an item is rectangles and a need is measured: strips may
// come from it one by one.
func (i Item) forStrips(n planner.StockNeed) bool { return !n.Form.Counted() && i.pieceOf(n) }

// strips is how many strips of a length and width one rectangle gives, whichever
// way it lies; a print with a direction is not turned.
func (i Item) strips(s segment, directional bool) int {
	give := func(across, along measure.Length) int {
		if across < s.width || planner.Amount(along) < s.units {
			return 0
		}
		return int(planner.Amount(along) / s.units)
	}
	n := give(i.Width, i.Height)
	if !directional {
		n = max(n, give(i.Height, i.Width))
	}
	return n
}

// giveStrips takes of rectangles those that strips of a need come from, longest
// strips first. A rectangle is taken whole.
func (a *allotting) giveStrips(n *need, item int, rest []segment) []segment {
	var after []segment
	for _, s := range rest {
		each := 0
		if !s.loose {
			each = a.items[item].strips(s, n.Directional)
		}
		for each > 0 && s.count > 0 && a.free[item] > 0 {
			k := min(each, s.count)
			a.free[item]--
			s.count -= k
			a.given = append(a.given, allotted{item, n, s.units * planner.Amount(k), 1})
		}
		if s.count > 0 {
			after = append(after, s)
		}
	}
	return after
}

// takePiece books the first use of what was to come from a rectangle: that is cut
// from now on, and is promised to nobody. It says how much of the use came from it;
// the rest of its strips is begun.
func (f *folding) takePiece(a *allotted, rest planner.Amount) planner.Amount {
	i := &f.items[a.item]
	if a.units == 0 || i.Lies() == 0 {
		return 0
	}
	i.Used++
	i.claimedBy(a.need, 1)
	used := min(rest, a.units)
	a.need.begun += a.units - used
	a.units = 0
	return used
}

// claimedBy notes who used of an item.
func (i *Item) claimedBy(n *need, amount planner.Amount) {
	last := len(i.By) - 1
	if last >= 0 && i.By[last].Job == n.Job && i.By[last].For == n.purpose() {
		i.By[last].Amount += amount
		return
	}
	i.By = append(i.By, Claim{n.Job, n.purpose(), amount})
}
