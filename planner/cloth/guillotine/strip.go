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

func (c *carver) opened(b *bench) *Node {
	t := b.hardest(c.stock)
	s := b.pieces[t].lowest(b.w)
	c.stock[t]--
	c.left--
	return c.node(b.w, s.h, Upright, leaf(s.w, s.h, t, s.turned), c.fill(b.w-s.w, s.h))
}

func (c *carver) fullest(b *bench) *Node {
	k, _ := c.along(c.rows, b.w, b.tall[0], Across)
	for _, u := range k.uses {
		c.stock[u.piece] -= u.n
		c.left -= u.n
	}
	return c.band(k, b.w)
}
