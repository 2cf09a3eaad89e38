package guillotine

// nested shortens a layout by cuts in any order, and raises the bound where it
// can prove that nothing shorter exists.
func (b *bench) nested(now layout, bound, limit int) (layout, int) {
	fine := b.fine()
	grid := newBench(b.w/fine, coarse(b.pieces, fine))
	c := newCarver(grid.pieces, false)
	for _, byShare := range []bool{false, true} {
		now = better(now, b.refined(grid, c.strip(grid, counts(b.pieces), byShare)))
	}
	for round := range 2 {
		if now.length() > bound {
			now = better(now, b.reworked(grid, c, now, bound, limit*3/10))
		}
		if round == 0 && fine == 1 && now.length() > bound {
			now, bound = b.exact(now, bound, limit*2/5)
		}
	}
	return now, bound
}

// fine is how many units go into a cell of the grid that is searched.
func (b *bench) fine() int {
	if b.w <= finest {
		return 1
	}
	return ceilDiv(b.w, finest)
}

func coarse(pieces []Piece, fine int) []Piece {
	out := make([]Piece, len(pieces))
	for i, p := range pieces {
		p.W, p.H = ceilDiv(p.W, fine), ceilDiv(p.H, fine)
		out[i] = p
	}
	return out
}

// refined takes a layout on a grid back to exact sizes.
func (b *bench) refined(_ *bench, nodes []*Node) layout { return newLayout(nodes, b.pieces) }

func (b *bench) reworked(grid *bench, c *carver, now layout, bound, limit int) layout {
	var nodes []*Node
	for _, s := range now {
		nodes = append(nodes, s.node)
	}
	anew, _ := grid.rework(newLayout(nodes, grid.pieces), c, bound/b.fine(), limit)
	nodes = nodes[:0]
	for _, s := range anew {
		nodes = append(nodes, s.node)
	}
	return newLayout(nodes, b.pieces)
}

// exact builds for one target after the other, from the bound up, as long as
// its steps last.
func (b *bench) exact(now layout, bound, limit int) (layout, int) {
	k, ok := newPacker(counts(b.pieces))
	if !ok {
		return now, bound
	}
	for grow := 1; bound < now.length() && limit > 0; grow *= 2 {
		target := min(bound+grow-1, now.length()-1)
		m := newBuilder(b.w, target, b.pieces, k)
		all := m.run(limit)
		limit -= m.work
		if m.best >= 0 {
			now = newLayout([]*Node{m.node(m.best)}, b.pieces)
		}
		switch {
		case !all:
			return now, bound
		case m.best >= 0:
			return now, now.length()
		}
		bound = b.raise(target+1, now.length())
	}
	return now, bound
}
