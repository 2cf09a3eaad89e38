package guillotine

// strip lays the whole stock in a strip of width w, level by level. Each level
// is as high as the hardest piece left, which opens it; or, by share, as high
// as makes the fullest row.
func (c *carver) strip(b *bench, stock []int, byShare bool) []*Node {
	c.load(stock, 1<<62)
	c.draw = true
	var out []*Node
	for c.left > 0 {
		if byShare {
			out = append(out, c.fullest(b))
		} else {
			out = append(out, c.opened(b))
		}
	}
	c.draw = false
	return out
}

// opened is a level opened by the hardest piece left.
func (c *carver) opened(b *bench) *Node {
	t := b.hardest(c.stock)
	s := b.pieces[t].lowest(b.w)
	c.stock[t]--
	c.left--
	first := leaf(s.w, s.h, t, s.turned)
	if c.only == Across && s.w < b.w {
		return joined(b.w, s.h, Upright, first, c.row(b.w-s.w, s.h))
	}
	return c.node(b.w, s.h, Upright, first, c.fill(b.w-s.w, s.h))
}

// row is the best single row that fits w × h.
func (c *carver) row(w, h int) *Node {
	k, ok := c.along(c.across, c.rows, w, h, Across)
	if !ok {
		return offcut(w, h)
	}
	for _, u := range k.uses {
		c.stock[u.piece] -= u.n
		c.left -= u.n
	}
	return c.band(k, w)
}

// fullest is the level whose row fills the greatest share of it.
func (c *carver) fullest(b *bench) *Node { return c.row(b.w, b.tall[0]) }
