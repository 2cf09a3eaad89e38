package cloth

import (
	"cmp"
	"slices"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// part is a rectangle of cloth: a piece, an offcut, or cut into parts that fill
// it, the longest pieces first and what is left over last.
type part struct {
	x, y   measure.Length
	size   measure.Size
	cut    guillotine.Cut
	parts  []*part
	kind   int // of piece, or guillotine.Offcut
	turned bool
	want   int            // which of the wants a piece is for, once that is settled
	step   int            // of the work in which it is cut, from 1
	oneWay bool           // a piece in it is directional
	bolt   bool           // it is all that is cut off the bolt
	hand   bool           // it is a piece on hand
	long   measure.Length // the longest side of a piece in it; 0 for an offcut
}

// exact is a node in exact sizes: the least rectangle in which the same cuts
// give the same pieces, or nil where there are none.
func (d *draft) exact(n *guillotine.Node) *part {
	if n.Cut == guillotine.None {
		return d.piece(n)
	}
	p := &part{cut: n.Cut, kind: guillotine.Offcut}
	for _, m := range n.Parts {
		if q := d.exact(m); q != nil {
			p.parts = append(p.parts, q)
		}
	}
	switch len(p.parts) {
	case 0:
		return nil
	case 1:
		return p.parts[0]
	}
	p.measured()
	for k, q := range p.parts {
		p.parts[k] = q.spread(p.cut, p.size)
	}
	slices.SortStableFunc(p.parts, longestFirst)
	return p
}

func (d *draft) piece(n *guillotine.Node) *part {
	if n.Piece == guillotine.Offcut {
		return nil
	}
	p := &part{size: d.sizes[n.Piece], kind: n.Piece, turned: n.Turned}
	if n.Turned {
		p.size = p.size.Turned()
	}
	p.long, p.oneWay = max(p.size.Width, p.size.Height), d.wants[d.kinds[n.Piece][0].want].Directional
	return p
}

// longestFirst is the order of cutting: the longest pieces, then the deepest
// parts, and offcuts last.
func longestFirst(a, b *part) int {
	return cmp.Or(cmp.Compare(b.long, a.long), cmp.Compare(b.size.Height, a.size.Height), cmp.Compare(b.size.Width, a.size.Width))
}

// measured sets a part's size from its parts.
func (p *part) measured() {
	p.size = measure.Size{}
	for _, q := range p.parts {
		p.long, p.oneWay = max(p.long, q.long), p.oneWay || q.oneWay
		if p.cut == guillotine.Across {
			p.size.Width, p.size.Height = max(p.size.Width, q.size.Width), p.size.Height+q.size.Height
		} else {
			p.size.Width, p.size.Height = p.size.Width+q.size.Width, max(p.size.Height, q.size.Height)
		}
	}
}

// spread gives a part the full breadth of a parent cut the way given.
func (p *part) spread(cut guillotine.Cut, parent measure.Size) *part {
	if cut == guillotine.Across {
		return p.wider(parent.Width)
	}
	return p.higher(parent.Height)
}

func (p *part) wider(width measure.Length) *part {
	return p.before(width-p.size.Width, p.size.Height, guillotine.Upright)
}

func (p *part) higher(height measure.Length) *part {
	return p.before(p.size.Width, height-p.size.Height, guillotine.Across)
}

// before is a part with an offcut of the size given behind it.
func (p *part) before(width, height measure.Length, cut guillotine.Cut) *part {
	if width == 0 || height == 0 {
		return p
	}
	parts := []*part{p}
	if p.cut == cut {
		parts = slices.Clone(p.parts)
	}
	if last := parts[len(parts)-1]; last.long == 0 {
		parts = parts[:len(parts)-1]
		if cut == guillotine.Across {
			height += last.size.Height
		} else {
			width += last.size.Width
		}
	}
	off := &part{size: measure.Size{Width: width, Height: height}, kind: guillotine.Offcut}
	out := &part{cut: cut, kind: guillotine.Offcut, parts: append(parts, off)}
	out.measured()
	return out
}

// onBolt is a part as strips across the whole width, even where there is one.
func (p *part) onBolt(width measure.Length) *part {
	strips := []*part{p}
	if p.cut == guillotine.Across {
		strips = p.parts
	}
	bolt := &part{cut: guillotine.Across, kind: guillotine.Offcut}
	for _, q := range strips {
		bolt.parts = append(bolt.parts, q.wider(width))
	}
	bolt.measured()
	return bolt
}

// onSheet is a part in a sheet, set so that the largest offcut stays whole.
func (p *part) onSheet(size measure.Size) *part {
	above := measure.Mul(size.Width, size.Height-p.size.Height)
	aside := measure.Mul(size.Width-p.size.Width, size.Height)
	if above.Cmp(aside) >= 0 {
		return p.wider(size.Width).higher(size.Height)
	}
	return p.higher(size.Height).wider(size.Width)
}

// place sets positions.
func (p *part) place(x, y measure.Length) {
	p.x, p.y = x, y
	for _, q := range p.parts {
		q.place(x, y)
		if p.cut == guillotine.Across {
			y += q.size.Height
		} else {
			x += q.size.Width
		}
	}
}

// leaves visits the pieces and offcuts in the order in which they are cut.
func (p *part) leaves(visit func(*part)) {
	if p.cut == guillotine.None {
		visit(p)
		return
	}
	for _, q := range p.parts {
		q.leaves(visit)
	}
}
