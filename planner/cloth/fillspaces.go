package cloth

import (
	"slices"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// fill uses pieces on hand, and what the lengths leave beside the long pieces, for
// the other pieces, where less then comes off the bolt.
func (b *bolt) fill(hand []Sheet) {
	spaces := b.spaces(hand)
	if b.rest == nil || len(spaces) == 0 {
		return
	}
	if !b.shortened(spaces) {
		return
	}
	other := *b
	other.hand = nil
	left, used := other.into(spaces, only(b.wants, false))
	if !used {
		return
	}
	other.strips(left)
	if other.length >= b.length {
		return
	}
	for k, s := range spaces {
		if s.root == nil {
			continue
		}
		if s.part == nil {
			other.hand = append(other.hand, handCut{hand[k], s.root})
			continue
		}
		*s.part = *s.root
	}
	other.style = 0
	*b = other
}

// shortened reports whether the bolt would be shorter if the spaces were filled to
// the last bit with pieces that fit them, and the others were laid without loss.
// Lengths are sums of sides of pieces, so they differ by what divides all of those.
func (b *bolt) shortened(spaces []space) bool {
	var free, fit, all measure.Area
	step := measure.Length(0)
	for _, s := range spaces {
		if s.size.Width > 0 && s.size.Height > 0 {
			free = free.Add(measure.Mul(s.size.Width, s.size.Height))
		}
	}
	stock := sheetsOf(spaces)
	for _, w := range only(b.wants, false) {
		if w.Count > 0 {
			step = gcd(step, gcd(w.Size.Width, w.Size.Height))
		}
		area := measure.Mul(w.Size.Width, w.Size.Height).Times(w.Count)
		all = all.Add(area)
		if heldBy(stock, w) {
			fit = fit.Add(area)
		}
	}
	if free.Cmp(fit) > 0 {
		free = fit
	}
	return all.Sub(free).Cmp(measure.Mul(b.width, deep(b.rest)-step)) <= 0
}

// sheetsOf are spaces as sheets, one of each.
func sheetsOf(spaces []space) []Sheet {
	out := make([]Sheet, len(spaces))
	for k, s := range spaces {
		out[k] = Sheet{Size: s.size, Count: 1}
	}
	return out
}

// space is cloth that pieces may come from beside the bolt: a piece on hand, or
// an offcut of a length.
type space struct {
	size measure.Size
	part *part // the offcut, nil for a piece on hand
	root *part // how it is cut, nil where it is not
}

// spaces are the pieces on hand, in their order, then the offcuts.
func (b *bolt) spaces(hand []Sheet) []space {
	var out []space
	for _, h := range hand {
		out = append(out, space{size: measure.Size{Width: h.Size.Width - b.settings.SquareUp, Height: h.Size.Height - b.settings.SquareUp}})
	}
	if b.long != nil {
		b.long.leaves(func(p *part) {
			if p.kind == guillotine.Offcut {
				out = append(out, space{size: p.size, part: p})
			}
		})
	}
	return out
}

// into cuts what it can of the wants from the spaces, and returns what is left, and
// whether any space is used.
func (b *bolt) into(spaces []space, wants []Want) (left []Want, used bool) {
	stock := sheetsOf(spaces)
	sides := append(sidesOf(stock), b.width)
	fitting := slices.Clone(wants)
	for k, w := range wants {
		if !heldBy(stock, w) {
			fitting[k].Count = 0
		}
	}
	d := newDraft(fitting, nil, b.settings, sides...)
	if len(d.pieces) == 0 {
		return wants, false
	}
	cut := guillotine.OnSheets(d.pieces, d.stock(stock), d.style() == Nested, b.settings.effort()/2)
	for _, c := range cut.Cut {
		root := d.exact(c.Root)
		if root == nil {
			continue
		}
		spaces[c.Stock].root = d.assigned(root.onSheet(spaces[c.Stock].size))
		used = true
	}
	left = slices.Clone(wants)
	for k := range left {
		if fitting[k].Count > 0 {
			left[k].Count = 0
		}
	}
	for k, w := range d.shortBy() {
		left[k].Count += w
	}
	return left, used
}
