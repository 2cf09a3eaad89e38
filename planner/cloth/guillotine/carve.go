package guillotine

import (
	"cmp"
	"slices"
)

// way is one way for a piece to lie in a row: a along it, b across.
type way struct {
	piece, a, b int
	turned      bool
}

// carver fills a rectangle from a stock of pieces, row by row or column by
// column, whichever leaves the smallest share of its own area bare, and fills
// what stays free beside lower pieces in the same manner.
type carver struct {
	pieces []Piece
	rows   []way // lowest first
	cols   []way // narrowest first
	value  []int64
	rem    []int
	left   int // pieces still to place
	bare   int // area given up so far
	most   int // area that may be given up
	draw   bool
	fill1  *filler
	slots  []slot
	ways   []int
	work   int
	take   []int
}

func newCarver(w int, pieces []Piece) *carver {
	c := &carver{pieces: pieces, rem: make([]int, len(pieces)), fill1: newFiller(0), value: make([]int64, len(pieces))}
	for i, p := range pieces {
		for _, s := range p.sides() {
			c.rows = append(c.rows, way{i, s.w, s.h, s.turned})
			c.cols = append(c.cols, way{i, s.h, s.w, s.turned})
		}
	}
	lowest := func(x, y way) int { return cmp.Compare(x.b, y.b) }
	slices.SortStableFunc(c.rows, lowest)
	slices.SortStableFunc(c.cols, lowest)
	return c
}

// load sets what is to be placed.
func (c *carver) load(stock []int) {
	copy(c.rem, stock)
	c.left = 0
	for _, n := range stock {
		c.left += n
	}
	c.bare, c.most = 0, 1<<62
}

// strip of pieces found: a row (Across) or a column (Upright).
type band struct {
	cut   Cut
	depth int
	share float64
	uses  []use
}

func (c *carver) best(w, h int) (band, bool) {
	row, ok := c.along(c.rows, w, h, Across)
	col, also := c.along(c.cols, h, w, Upright)
	if also && (!ok || col.share > row.share) {
		return col, true
	}
	return row, ok
}

// along finds the best band of length a and depth up to b.
func (c *carver) along(ways []way, a, b int, cut Cut) (band, bool) {
	c.slots, c.ways = c.slots[:0], c.ways[:0]
	best := band{cut: cut, depth: -1}
	f := c.fill1
	f.begin(a)
	at := 0
	for k := range ways {
		v := &ways[k]
		if v.b > b {
			break
		}
		if v.a > a || c.rem[v.piece] == 0 {
			continue
		}
		if len(c.slots) > 0 && v.b != ways[c.ways[len(c.ways)-1]].b {
			c.try(&best, ways, a, at)
		}
		f.add(slot{v.piece, v.a, c.rem[v.piece], c.value[v.piece]})
		c.slots = append(c.slots, slot{})
		c.ways = append(c.ways, k)
	}
	if len(c.slots) > 0 {
		c.try(&best, ways, a, at)
	}
	c.work += f.work + len(ways)
	f.work = 0
	if best.depth < 0 {
		return best, false
	}
	n := best.uses[0].n // slots of the best
	return c.read(best, ways, a, n), true
}

func (c *carver) try(best *band, ways []way, a, _ int) {
	depth := ways[c.ways[len(c.ways)-1]].b
	v := c.fill1.value()
	if share := float64(v) / float64(a*depth); share >= best.share {
		best.share, best.depth = share, depth
		best.uses = append(best.uses[:0], use{n: len(c.ways)})
	}
}

// read takes the pieces of the first n slots' best filling.
func (c *carver) read(best band, ways []way, a, n int) band {
	best.uses = best.uses[:0]
	f := c.fill1
	room := a
	for k := n; k > 0; k-- {
		v := ways[c.ways[k-1]]
		m := int(f.picks[k][room])
		room -= m * v.a
		for _, u := range best.uses {
			if u.piece == v.piece {
				m = min(m, c.rem[v.piece]-u.n)
			}
		}
		if m > 0 {
			best.uses = append(best.uses, use{v.piece, v.turned, m})
		}
	}
	return best
}

// fill lays out as much as it can in w × h; it returns nil where nothing is
// drawn.
func (c *carver) fill(w, h int) *Node {
	if w == 0 || h == 0 {
		return nil
	}
	if c.left == 0 || c.bare > c.most {
		c.bare += w * h
		return leaf(w, h, Offcut, false)
	}
	k, ok := c.best(w, h)
	if !ok {
		c.bare += w * h
		return leaf(w, h, Offcut, false)
	}
	for _, u := range k.uses {
		c.rem[u.piece] -= u.n
		c.left -= u.n
	}
	if k.cut == Across {
		band := c.band(k, w)
		return c.node(w, h, Across, band, c.fill(w, h-k.depth))
	}
	band := c.band(k, h)
	return c.node(w, h, Upright, band, c.fill(w-k.depth, h))
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
	return n
}

// band lays a band's pieces one after the other, deepest first, and fills what
// is free beside each run of less deep ones, and at the end.
func (c *carver) band(k band, length int) *Node {
	side := func(u use) (int, int) {
		s := lying(c.pieces[u.piece], u.turned)
		if k.cut == Across {
			return s.w, s.h
		}
		return s.h, s.w
	}
	slices.SortStableFunc(k.uses, func(x, y use) int {
		xa, xb := side(x)
		ya, yb := side(y)
		return cmp.Or(yb-xb, ya-xa)
	})
	var out *Node
	if c.draw {
		out = &Node{Cut: k.cut.other(), Piece: Offcut}
		out.W, out.H = k.frame(length, k.depth)
	}
	for i := 0; i < len(k.uses); {
		_, depth := side(k.uses[i])
		from, run := i, 0
		for ; i < len(k.uses); i++ {
			a, b := side(k.uses[i])
			if b != depth {
				break
			}
			run += a * k.uses[i].n
		}
		length -= run
		var free *Node
		if depth < k.depth {
			w, h := k.frame(run, k.depth-depth)
			free = c.fill(w, h)
		}
		if c.draw {
			w, h := k.frame(run, depth)
			pieces := &Node{W: w, H: h, Cut: out.Cut, Piece: Offcut}
			for _, u := range k.uses[from:i] {
				s := lying(c.pieces[u.piece], u.turned)
				for range u.n {
					pieces.Parts = append(pieces.Parts, leaf(s.w, s.h, u.piece, u.turned))
				}
			}
			if free != nil {
				w, h := k.frame(run, k.depth)
				pieces = c.node(w, h, k.cut, pieces, free)
			}
			out.take(pieces)
		}
	}
	if length > 0 {
		w, h := k.frame(length, k.depth)
		if n := c.fill(w, h); c.draw {
			out.take(n)
		}
	}
	return out
}

// frame gives the width and height of a part of a band.
func (k band) frame(along, deep int) (int, int) {
	if k.cut == Across {
		return along, deep
	}
	return deep, along
}

func (c Cut) other() Cut {
	if c == Across {
		return Upright
	}
	return Across
}

// strip fills a strip of width w, level by level: the piece left that cannot
// lie lower than any other sets the height.
func (c *carver) strip(b *bench, byRow bool) (int, []*Node) {
	total := 0
	var out []*Node
	s := &shelfSearch{bench: b}
	for c.left > 0 {
		if byRow {
			k, _ := c.along(c.rows, b.w, 1<<40, Across)
			for _, u := range k.uses {
				c.rem[u.piece] -= u.n
				c.left -= u.n
			}
			out = append(out, c.band(k, b.w))
			total += k.depth
			continue
		}
		t := s.hardest(c.rem)
		l := b.in(t, b.leastHeight(t))
		c.rem[t]--
		c.left--
		rest := c.fill(b.w-l.w, l.h)
		out = append(out, c.node(b.w, l.h, Upright, leaf(l.w, l.h, t, l.turned), rest))
		total += l.h
	}
	return total, out
}

func (n *Node) leaves(visit func(*Node)) {
	if n.Cut == None {
		if n.Piece >= 0 {
			visit(n)
		}
		return
	}
	for _, p := range n.Parts {
		p.leaves(visit)
	}
}
