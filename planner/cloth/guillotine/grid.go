package guillotine

// plain cuts every kind from sheets of its own, in whole rows and columns.
func (s *sheeter) plain(favourite int) sheets {
	p := sheets{left: counts(s.pieces)}
	supply := newSupply(s.stock, s.pieces, favourite)
	for i := range s.pieces {
		rem := make([]int, len(s.pieces))
		rem[i] = p.left[i]
		for k := supply.next(rem); k >= 0; k = supply.next(rem) {
			cut := s.grid(i, rem[i], k)
			cut.from(rem)
			p.cut = append(p.cut, cut)
		}
		p.left[i] = rem[i]
	}
	return p
}

// grid is up to n pieces in rows and columns, lying whichever way yields more.
func (s *sheeter) grid(i, n, k int) sheet {
	p, st := s.pieces[i], s.stock[k]
	var best side
	most := 0
	for _, lie := range p.sides() {
		if per := (st.W / lie.w) * (st.H / lie.h); per > most {
			best, most = lie, per
		}
	}
	out := sheet{stock: k, take: make([]int, len(s.pieces))}
	out.take[i] = min(n, most)
	out.area = out.take[i] * p.W * p.H
	across := st.W / best.w
	var rows []*Node
	for left := out.take[i]; left > 0; left -= across {
		var row []*Node
		for range min(left, across) {
			row = append(row, leaf(best.w, best.h, i, best.turned))
		}
		rows = append(rows, joined(across*best.w, best.h, Upright, row...))
	}
	out.how = &filling{root: joined(across*best.w, len(rows)*best.h, Across, rows...)}
	return out
}
