package guillotine

// sheeter plans sheets: it fills one after the other, many times over with
// other values, then moves pieces off the emptiest sheet.
type sheeter struct {
	pieces  []Piece
	stock   []Stock
	fine    int
	carvers []*carver // on the grid that is searched
	rng     *rng
	work    int
}

// newSheeter lays simple sheets with strips one way or the other, nested ones
// with cuts in any order.
func newSheeter(pieces []Piece, stock []Stock, nested bool) *sheeter {
	s := &sheeter{pieces: pieces, stock: stock, fine: 1, rng: newRng()}
	for _, st := range stock {
		s.fine = max(s.fine, ceilDiv(max(st.W, st.H), finest))
	}
	cuts := []Cut{Across, Upright}
	if nested {
		cuts = []Cut{None}
	}
	for _, cut := range cuts {
		s.carvers = append(s.carvers, newCarver(coarse(pieces, s.fine), cut))
	}
	return s
}

// plan is the best of plain sheets and many rounds, improved, for one
// favourite sheet. It stops early where it has as few as low.
func (s *sheeter) plan(favourite, low, limit int) sheets {
	best := s.plain(favourite)
	s.work = 0
	enough := func() bool { return len(best.cut) <= low && sum(best.left) == 0 }
	for tries := 0; s.work < limit/2 && !enough(); tries++ {
		if tries > 0 {
			s.shake()
		}
		if p := s.round(favourite); s.compare(p, best) < 0 {
			best = p
		}
	}
	for s.work < limit && !enough() && len(best.cut) > 1 {
		best = s.clear(best)
	}
	return best
}

func (s *sheeter) shake() {
	for _, c := range s.carvers {
		c.shake(s.rng, 1+s.rng.next(6))
	}
}

// round fills sheets until nothing is left or nothing fits, each the same way
// again as long as the pieces last.
func (s *sheeter) round(favourite int) sheets {
	rem := counts(s.pieces)
	p := sheets{left: rem}
	supply := newSupply(s.stock, s.pieces, favourite)
	for k := supply.next(rem); k >= 0; k = supply.next(rem) {
		cut := s.fill(k, rem)
		if cut.area == 0 {
			continue
		}
		p.cut = append(p.cut, cut)
		for cut.lasts(rem) && supply.has(k) {
			supply.take(k)
			cut.from(rem)
			p.cut = append(p.cut, cut)
		}
	}
	return p
}

func (c sheet) lasts(rem []int) bool {
	for i, n := range c.take {
		if n > rem[i] {
			return false
		}
	}
	return true
}

func (c sheet) from(rem []int) {
	for i, n := range c.take {
		rem[i] -= n
	}
}

// fill cuts one sheet from the pieces left, with the carver that leaves least
// bare, and takes them off.
func (s *sheeter) fill(k int, rem []int) sheet {
	const handling = 500
	w, h := s.stock[k].W/s.fine, s.stock[k].H/s.fine
	var best *carver
	bare := 0
	for _, c := range s.carvers {
		c.load(rem, w*h)
		c.work = 0
		c.fill(w, h)
		s.work += 2*c.work + handling
		if best == nil || c.bare < bare {
			best, bare = c, c.bare
		}
	}
	out := sheet{stock: k, how: best.noted(w, h, rem), take: make([]int, len(rem))}
	for i, n := range best.stock {
		out.take[i] = rem[i] - n
	}
	out.area = areaOf(with(s.pieces, out.take))
	out.from(rem)
	return out
}

// clear takes the pieces of the emptiest sheet and of a few others and fills
// those sheets anew. It keeps that if it makes a better plan.
func (s *sheeter) clear(p sheets) sheets {
	const handling = 1000
	out := s.choose(p)
	rem := make([]int, len(s.pieces))
	q := sheets{left: p.left}
	for k, cut := range p.cut {
		if !out[k] {
			q.cut = append(q.cut, cut)
			continue
		}
		for i, n := range cut.take {
			rem[i] += n
		}
	}
	s.shake()
	s.work += handling + 10*len(p.cut)
	for k, cut := range p.cut {
		if out[k] && sum(rem) > 0 {
			q.cut = append(q.cut, s.fill(cut.stock, rem))
		}
	}
	if sum(rem) == 0 && s.compare(q, p) < 0 {
		return q
	}
	return p
}

// choose is the emptiest sheet and one to three others.
func (s *sheeter) choose(p sheets) []bool {
	out := make([]bool, len(p.cut))
	least := p.emptiest().area
	for k, c := range p.cut {
		if c.area == least {
			out[k] = true
			break
		}
	}
	for range 1 + s.rng.next(3) {
		out[s.rng.next(len(p.cut))] = true
	}
	return out
}
