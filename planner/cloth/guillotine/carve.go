package guillotine

import (
	"cmp"
	"slices"
)

// way is one way for a piece to lie in a band: a along it, b across.
type way struct {
	piece, a, b int
	turned      bool
}

// carver fills a rectangle from a stock of pieces, band by band: each band is
// the row or column that leaves the smallest share of its own area bare at the
// pieces' present values. What stays free beside shallower pieces is filled in
// the same manner, unless only levels are wanted.
type carver struct {
	pieces []Piece
	levels bool  // rows alone, nothing beside the lower pieces
	rows   []way // lowest first
	cols   []way // narrowest first
	value  []int64
	stock  []int
	left   int // pieces still to place
	bare   int // area given up so far
	most   int // area that may be given up
	draw   bool
	filler *filler
	lean   float64 // how much more a column's share counts than a row's
	deep   float64
	at     []int // ways in the filler
	work   int
}

// deepest is the longest band that is looked for.
const deepest = 2 * finest

func newCarver(pieces []Piece, levels bool) *carver {
	c := &carver{pieces: pieces, levels: levels, filler: newFiller(0), lean: 1}
	c.value, c.stock = make([]int64, len(pieces)), make([]int, len(pieces))
	for i, p := range pieces {
		for _, s := range p.sides() {
			c.rows = append(c.rows, way{i, s.w, s.h, s.turned})
			c.cols = append(c.cols, way{i, s.h, s.w, s.turned})
		}
		c.value[i] = int64(p.W*p.H) * valueScale
	}
	lowest := func(x, y way) int { return cmp.Compare(x.b, y.b) }
	slices.SortStableFunc(c.rows, lowest)
	slices.SortStableFunc(c.cols, lowest)
	return c
}

// valueScale leaves room for values to differ a little from the areas.
const valueScale = 1 << 10

// into fills w × h and reports whether the whole stock, of the area given, found
// a place. It gives up once too much is bare for that.
func (c *carver) into(w, h int, stock []int, area int) bool {
	c.load(stock, w*h-area)
	c.fill(w, h)
	return c.left == 0
}

// drawn is what into lays out.
func (c *carver) drawn(w, h int, stock []int) *Node {
	c.load(stock, w*h)
	c.draw = true
	n := c.fill(w, h)
	c.draw = false
	return n
}

func (c *carver) load(stock []int, most int) {
	copy(c.stock, stock)
	c.left, c.bare, c.most = sum(stock), 0, most
}

// fill lays out what it can in w × h. It returns nil unless it draws.
func (c *carver) fill(w, h int) *Node {
	if w == 0 || h == 0 {
		return nil
	}
	if c.left == 0 || c.bare > c.most {
		return c.waste(w, h)
	}
	k, ok := c.best(w, h)
	if !ok {
		return c.waste(w, h)
	}
	for _, u := range k.uses {
		c.stock[u.piece] -= u.n
		c.left -= u.n
	}
	if k.cut == Across {
		first := c.band(k, w)
		return c.node(w, h, Across, first, c.fill(w, h-k.depth))
	}
	first := c.band(k, h)
	return c.node(w, h, Upright, first, c.fill(w-k.depth, h))
}

func (c *carver) waste(w, h int) *Node {
	c.bare += w * h
	if !c.draw {
		return nil
	}
	return offcut(w, h)
}

func (c *carver) node(w, h int, cut Cut, parts ...*Node) *Node {
	if !c.draw {
		return nil
	}
	n := &Node{W: w, H: h, Cut: cut, Piece: Offcut}
	for _, p := range parts {
		if p != nil {
			n.take(p)
		}
	}
	if len(n.Parts) == 1 {
		return n.Parts[0]
	}
	return n
}

// shake makes every value differ from the area by a random share of at most
// tenths/10.
func (c *carver) shake(g *rng, tenths int) {
	const fine = 1000
	c.lean = 1 + LEAN*float64(g.next(2*fine+1)-fine)/fine
	c.deep = DEEP*float64(g.next(2*fine+1)-fine)/fine
	for i, p := range c.pieces {
		if p.N > 0 {
			area := int64(p.W * p.H)
			c.value[i] = area*valueScale + area*int64(g.next(2*fine+1)-fine)*int64(tenths)*valueScale/(10*fine)
		}
	}
}

var LEAN, DEEP = 0.0, 0.0
