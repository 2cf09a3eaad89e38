package guillotine

// richest fills a w × h sheet many times over and returns the layout that is
// worth most; worth is what one piece of each kind is worth.
func richest(c *carver, w, h int, worth []int, limit int) (*Node, int) {
	const handling = 500
	g := newRng()
	stock := counts(c.pieces)
	var best *Node
	most := -1
	for spent, tries := 0, 0; spent < limit; tries++ {
		c.prize(g, worth, tries)
		c.work = 0
		c.load(stock, w*h)
		c.fill(w, h)
		spent += c.work + handling
		total := 0
		for i, n := range c.stock {
			total += worth[i] * (stock[i] - n)
		}
		if total > most {
			best, most = c.drawn(w, h, stock), total
		}
	}
	return best, most
}

// prize sets the values to the worth, from the second try on shaken.
func (c *carver) prize(g *rng, worth []int, tries int) {
	if tries > 0 {
		c.shake(g, 1+tries%6)
	}
	for i, p := range c.pieces {
		area := int64(p.W * p.H)
		if tries == 0 {
			c.value[i] = area * valueScale
		}
		c.value[i] = c.value[i] / area * int64(worth[i])
	}
}
