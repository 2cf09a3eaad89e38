package guillotine

import (
	"cmp"
	"slices"
)

// band is pieces side by side in a row (cut Across), or one above the other in
// a column (Upright).
type band struct {
	cut   Cut
	depth int
	share float64 // worth for area
	slots int
	uses  []use
}

// best is the row or column of w × h with the greatest worth for its area.
func (c *carver) best(w, h int) (band, bool) {
	if c.only == Upright {
		return c.along(c.upright, c.cols, h, w, Upright)
	}
	row, ok := c.along(c.across, c.rows, w, h, Across)
	if c.only == Across {
		return row, ok
	}
	if col, also := c.along(c.upright, c.cols, h, w, Upright); also && (!ok || col.share*c.lean > row.share) {
		return col, true
	}
	return row, ok
}

// along finds the best band of length a and depth up to b. Ways come shallowest
// first, so each depth only adds rows to the filler.
func (c *carver) along(f *filler, ways []way, a, b int, cut Cut) (band, bool) {
	best := band{cut: cut}
	if a > deepest {
		return best, false
	}
	f.again(a)
	c.at = c.at[:0]
	for k, v := range ways {
		if v.b > b {
			break
		}
		if v.a > a || c.stock[v.piece] == 0 {
			continue
		}
		if n := len(c.at); n > 0 && ways[c.at[n-1]].b != v.b {
			best.improve(f, ways[c.at[n-1]].b, c.deep/float64(b))
		}
		f.add(slot{v.piece, v.a, min(c.stock[v.piece], a/v.a), c.value[v.piece]})
		c.at = append(c.at, k)
	}
	if n := len(c.at); n > 0 {
		best.improve(f, ways[c.at[n-1]].b, c.deep/float64(b))
	}
	c.work += f.work + 2*len(ways) + 100
	f.work = 0
	if best.slots == 0 {
		return best, false
	}
	c.read(f, &best, ways)
	return best, true
}

// improve takes what the filler has found if its share is better. A deeper band
// may count for a little more, or less.
func (k *band) improve(f *filler, depth int, like float64) {
	share := float64(f.value()) / float64(f.w*depth)
	if share += float64(share * float64(like*float64(depth))); share >= k.share {
		k.share, k.depth, k.slots = share, depth, len(f.slots)
	}
}

// read takes down what fills the best band. A free piece has two ways; what
// both take together is no more than the stock.
func (c *carver) read(f *filler, best *band, ways []way) {
	room := f.w
	for k := best.slots; k > 0; k-- {
		v := ways[c.at[k-1]]
		n := int(f.picks[k][room])
		room -= n * v.a
		for _, u := range best.uses {
			if u.piece == v.piece {
				n = min(n, c.stock[v.piece]-u.n)
			}
		}
		if n > 0 {
			best.uses = append(best.uses, use{v.piece, v.turned, n})
		}
	}
}

// side is how long and how deep a piece lies in a band.
func (c *carver) side(cut Cut, u use) (a, b int) {
	s := c.pieces[u.piece].lying(u.turned)
	if cut == Across {
		return s.w, s.h
	}
	return s.h, s.w
}

// frame is the width and height of part of a band.
func (k band) frame(a, b int) (w, h int) {
	if k.cut == Across {
		return a, b
	}
	return b, a
}

// band lays a band's pieces one after the other, deepest first, and fills what
// is free beside each run of shallower ones, and at the end.
func (c *carver) band(k band, length int) *Node {
	slices.SortStableFunc(k.uses, func(x, y use) int {
		xa, xb := c.side(k.cut, x)
		ya, yb := c.side(k.cut, y)
		return cmp.Or(yb-xb, ya-xa)
	})
	w, h := k.frame(length, k.depth)
	var parts []*Node
	for uses := k.uses; len(uses) > 0; {
		n, long := c.run(k.cut, uses)
		parts = append(parts, c.beside(k, uses[:n], long))
		uses = uses[n:]
		length -= long
	}
	parts = append(parts, c.spare(k.frame(length, k.depth)))
	return c.node(w, h, k.cut.other(), parts...)
}

// run is how many of the uses are equally deep, and how long they are.
func (c *carver) run(cut Cut, uses []use) (n, long int) {
	_, deep := c.side(cut, uses[0])
	for _, u := range uses {
		a, b := c.side(cut, u)
		if b != deep {
			break
		}
		n, long = n+1, long+a*u.n
	}
	return n, long
}

// beside is a run of equally deep pieces with what lies beside it.
func (c *carver) beside(k band, uses []use, long int) *Node {
	_, deep := c.side(k.cut, uses[0])
	free := c.spare(k.frame(long, k.depth-deep))
	if !c.draw {
		return nil
	}
	w, h := k.frame(long, deep)
	run := &Node{W: w, H: h, Cut: k.cut.other(), Piece: Offcut}
	for _, u := range uses {
		s := c.pieces[u.piece].lying(u.turned)
		for range u.n {
			run.Parts = append(run.Parts, leaf(s.w, s.h, u.piece, u.turned))
		}
	}
	if len(run.Parts) == 1 {
		run = run.Parts[0]
	}
	if free == nil {
		return run
	}
	w, h = k.frame(long, k.depth)
	return c.node(w, h, k.cut, run, free)
}

// spare fills what is free in a band, or leaves it where bands of one kind alone are wanted.
func (c *carver) spare(w, h int) *Node {
	if c.only != None && w > 0 && h > 0 {
		return c.waste(w, h)
	}
	return c.fill(w, h)
}
