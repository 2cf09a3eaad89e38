package cloth

import (
	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// CutYardage cuts pieces from cloth of a usable width, using as little length
// as it finds. The plan is never longer than strips of each size of its own,
// and depends on nothing but what it is given. Long pieces are cut first, side by
// side in lengths of the whole width. Pieces too wide for the cloth are a
// *TooLarge.
func CutYardage(wants []Want, width measure.Length, s Settings) (Plan, error) {
	return CutFrom(wants, nil, width, s)
}

// CutFrom is CutYardage where pieces of cloth are on hand beside the bolt. They,
// and what long pieces leave of their lengths, are used for other pieces where
// that takes less off the bolt. Pieces that are used come first in the plan's
// cloths.
func CutFrom(wants []Want, hand []Sheet, width measure.Length, s Settings) (Plan, error) {
	if err := checked(wants); err != nil {
		return Plan{}, err
	}
	width -= s.SquareUp
	for _, w := range wants {
		if w.Size.Width > width && (w.fixed() || w.Size.Height > width) {
			return Plan{}, &TooLarge{w, measure.Size{Width: width + s.SquareUp}}
		}
	}
	b := &bolt{wants: wants, settings: s, width: width}
	b.lengths()
	b.whole = b.long == nil && len(hand) == 0
	b.strips(wants)
	b.fill(hand)
	return b.plan(), nil
}

// bolt is a length of cloth being cut up.
type bolt struct {
	wants    []Want
	settings Settings
	width    measure.Length // squared up

	long   *part          // lengths with the long pieces, nil for none
	rest   *part          // strips with the others, nil for none
	hand   []handCut      // pieces on hand that are used
	length measure.Length // without squaring up
	style  measure.Length // no plan of strips takes less; 0 where that is not known
	whole  bool           // everything comes from strips
	bound  measure.Length // no plan takes less; 0 where that is not known yet
}

// handCut is a piece on hand, cut up.
type handCut struct {
	Sheet
	root *part
}

// only are the wants with the counts of those that are long, or of those that are
// not.
func only(wants []Want, long bool) []Want {
	out := make([]Want, len(wants))
	for k, w := range wants {
		if w.Long != long {
			w.Count = 0
		}
		out[k] = w
	}
	return out
}

// lengths lays the long pieces out.
func (b *bolt) lengths() {
	b.long, _ = b.laid(only(b.wants, true), Simple)
}

// strips lays the others out in strips across the cloth.
func (b *bolt) strips(wants []Want) {
	b.rest, b.style = b.laid(only(wants, false), b.settings.Style)
	b.length = deep(b.long) + deep(b.rest)
	if b.long != nil {
		b.style = 0
	}
}

// laid lays wants out in a strip of the bolt's width; nil where there are none.
func (b *bolt) laid(wants []Want, style Style) (root *part, least measure.Length) {
	s := b.settings
	s.Style = style
	d := newDraft(wants, nil, s, b.width)
	if len(d.pieces) == 0 {
		return nil, 0
	}
	strip := d.strip(d.cells(b.width), b.whole)
	if !d.rounded {
		least = d.unit.Times(strip.Style)
		if b.whole {
			b.bound = d.unit.Times(strip.Bound)
		}
	}
	return d.assigned(d.exact(strip.Root).onBolt(b.width)), least
}

// deep is a part's height, 0 for none.
func deep(p *part) measure.Length {
	if p == nil {
		return 0
	}
	return p.size.Height
}

// plan is what the bolt comes to.
func (b *bolt) plan() Plan {
	plan := Plan{Style: Simple}
	if b.settings.Style == Nested {
		plan.Style = Nested
	}
	var roots []*part
	for _, h := range b.hand {
		h.root.hand = true
		roots = append(roots, h.root)
	}
	if root := stacked(b.long, b.rest); root != nil {
		roots = append(roots, root)
		plan.Length = b.length + b.settings.SquareUp
		for _, level := range root.parts {
			plan.Levels = append(plan.Levels, level.size.Height)
		}
	}
	if len(roots) == 0 {
		return plan
	}
	plan.work(b.wants, roots, b.settings)
	for k, root := range roots {
		cloth := Cloth{Size: measure.Size{Width: b.width + b.settings.SquareUp, Height: plan.Length}}
		if k < len(b.hand) {
			cloth = Cloth{Name: b.hand[k].Name, Size: b.hand[k].Size, Hand: true}
		}
		plan.lay(b.settings, cloth, root)
	}
	if plan.Length > 0 {
		plan.Bound = b.least() + b.settings.SquareUp
		plan.StyleBound = max(plan.Bound, b.style+b.settings.SquareUp)
	}
	return plan
}

// stacked puts lengths and strips one above the other.
func stacked(parts ...*part) *part {
	bolt := &part{cut: guillotine.Across, kind: guillotine.Offcut, bolt: true}
	for _, p := range parts {
		if p != nil {
			bolt.parts = append(bolt.parts, p.parts...)
		}
	}
	if len(bolt.parts) == 0 {
		return nil
	}
	bolt.measured()
	return bolt
}

// least is a length that no plan for the bolt can go below.
func (b *bolt) least() measure.Length {
	if b.bound > 0 {
		return b.bound
	}
	d := newDraft(b.wants, nil, b.settings, b.width)
	if len(b.hand) > 0 {
		area := d.area()
		for _, h := range b.hand {
			area = area.Sub(measure.Mul(h.Size.Width, h.Size.Height))
		}
		return bound(area, b.width, b.length)
	}
	if d.rounded {
		return bound(d.area(), b.width, b.length)
	}
	return d.unit.Times(guillotine.Bound(d.cells(b.width), d.pieces, d.cells(b.length)))
}

// work lists the ruler work and adds it up.
func (p *Plan) work(wants []Want, cloths []*part, s Settings) {
	c := &cutter{settings: s, shares: make([]int, len(wants))}
	c.work(cloths)
	p.Steps, p.CutsOf = c.steps, c.shares
	for _, step := range p.Steps {
		p.Cuts += step.Cuts
	}
}

func (d *draft) strip(w int, bounded bool) guillotine.Strip {
	switch {
	case d.style() == Nested:
		return guillotine.Nested(w, d.pieces, d.settings.effort())
	case !bounded:
		return guillotine.Levels(w, d.pieces, d.settings.effort())
	}
	return guillotine.Simple(w, d.pieces, d.settings.effort())
}
