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
// the same manner, unless bands of one kind alone are wanted.
type carver struct {
	pieces  []Piece
	only    Cut   // bands cut this way alone, and nothing beside the lower pieces
	rows    []way // lowest first
	cols    []way // narrowest first
	value   []int64
	stock   []int
	left    int // pieces still to place
	bare    int // area given up so far
	most    int // area that may be given up
	draw    bool
	across  *filler // of rows
	upright *filler // of columns
	lean    float64 // a column's share against a row's
	deep    float64 // how much more the deepest band's share counts
	at      []int   // ways in the filler
	work    int
}

// deepest is the longest band that is looked for.
const deepest = 2 * finest

func newCarver(pieces []Piece, only Cut) *carver {
	c := &carver{pieces: pieces, only: only, across: newFiller(0), upright: newFiller(0), lean: 1}
	c.value, c.stock = make([]int64, len(pieces)), make([]int, len(pieces))
	for i, p := range pieces {
		for _, s := range p.sides() {
			c.rows = append(c.rows, way{i, s.w, s.h, s.turned})
			c.cols = append(c.cols, way{i, s.h, s.w, s.turned})
		}
	}
	c.prefer(0)
	lowest := func(x, y way) int { return cmp.Compare(x.b, y.b) }
	slices.SortStableFunc(c.rows, lowest)
	slices.SortStableFunc(c.cols, lowest)
	return c
}

// valueScale leaves room for values to differ a little from the areas.
const valueScale = 10_000

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

// load sets the stock to place, and how much area may stay bare.
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

// waste gives a rectangle up.
func (c *carver) waste(w, h int) *Node {
	c.bare += w * h
	if !c.draw {
		return nil
	}
	return offcut(w, h)
}

// node is a rectangle of parts that follow each other; parts of no size are nil.
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
// tenths/10, and draws anew how much columns, deep bands and long pieces are
// liked.
func (c *carver) shake(g *rng, tenths int) {
	const fine = 1000
	about := func() int64 { return int64(g.next(2*fine+1) - fine) }
	c.lean, c.deep = 1+float64(about())/(5*fine), float64(about())/(10*fine)
	c.prefer(max(0, about()-fine/2))
	for i, p := range c.pieces {
		if p.N > 0 {
			c.value[i] += c.value[i] / (10 * fine) * about() * int64(tenths)
		}
	}
}

// prefer sets the values to the areas, and a thousandth more for each like
// where a piece is as long as the longest.
func (c *carver) prefer(like int64) {
	longest := 1
	for _, p := range c.pieces {
		if p.N > 0 {
			longest = max(longest, p.W, p.H)
		}
	}
	for i, p := range c.pieces {
		c.value[i] = int64(p.W*p.H) * (valueScale + like*int64(max(p.W, p.H))*(valueScale/1000)/int64(longest))
	}
}
