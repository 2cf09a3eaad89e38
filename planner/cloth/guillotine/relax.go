package guillotine

import (
	"math/bits"
	"slices"
)

// relaxation is the level problem in fractions: prices at which no level of
// height h holds more than h·dualScale, so that no plan is shorter than what
// all pieces are worth, and the levels that come close to it.
type relaxation struct {
	prices prices
	bound  int
	levels []level
	times  []float64 // how often the fractional solution uses each level
}

// relax solves the level problem in fractions, within a number of steps,
// starting from plain levels and those of a known plan.
func (b *bench) relax(known []level, limit int) relaxation {
	p := newPricer(b)
	m, made := b.levelMaster()
	m.below = b.replaceable()
	for _, l := range known {
		if m.enter(b.column(l)) {
			made = append(made, l)
		}
	}
	r := relaxation{}
	for last := 0; ; {
		before := m.work + p.work()
		if !p.improve(m, &made, &r) || before+last > limit {
			break
		}
		last = m.work + p.work() - before
	}
	r.levels, r.times = m.used(made)
	return r
}

// column is a level as the master sees it.
func (b *bench) column(l level) column {
	take := make([]int, len(b.pieces))
	l.from(take, 1)
	return column{float64(l.h), take}
}

// levelMaster starts with each piece in levels of its own.
func (b *bench) levelMaster() (*master, []level) {
	var start []column
	var made []level
	for i, piece := range b.pieces {
		s := b.plainSide(piece)
		l := level{s.h, []use{{i, s.turned, max(1, min(b.w/s.w, piece.N))}}}
		made, start = append(made, l), append(start, b.column(l))
	}
	return newMaster(counts(b.pieces), start), made
}

// replaceable lists for every piece those that can be cut in its place. With
// them the prices settle much sooner (dual-optimal inequalities; Valério de
// Carvalho 2005, INFORMS J. Comput. 17, 175-182).
func (b *bench) replaceable() [][]int {
	covers := func(i, j int) bool {
		p, q := b.pieces[i], b.pieces[j]
		if p.Free || q.Free {
			return p.Free == q.Free && min(p.W, p.H) >= min(q.W, q.H) && max(p.W, p.H) >= max(q.W, q.H)
		}
		return p.W >= q.W && p.H >= q.H
	}
	out := make([][]int, len(b.pieces))
	if len(b.pieces) > many {
		return out
	}
	for i := range b.pieces {
		for j := range b.pieces {
			between := func(k int) bool { return k != i && k != j && covers(i, k) && covers(k, j) }
			if i != j && covers(i, j) && !b.some(between) {
				out[i] = append(out[i], j)
			}
		}
	}
	return out
}

// some reports whether some piece is as asked.
func (b *bench) some(ok func(int) bool) bool {
	for k := range b.pieces {
		if ok(k) {
			return true
		}
	}
	return false
}

// improve prices every height once, takes in the levels that save, and keeps
// the best bound met. It returns false where nothing saves any more.
func (p *pricer) improve(m *master, made *[]level, r *relaxation) bool {
	entered := false
	for k := 0; k < len(p.pieces) && m.relax(); k++ {
		entered = true
	}
	values := m.prices()
	worst, at := int64(0), 1
	var found []level
	for k := len(p.tall) - 1; k >= 0; k-- {
		h := p.tall[k]
		z := p.exact.fill(p.slots(h, values, false))
		if z > int64(h)*dualScale {
			found = append(found, p.level(h))
		}
		if p.loose != p.exact {
			z = p.loose.fill(p.slots(h, values, true))
		}
		if worse(z, h, worst, at) {
			worst, at = z, h
		}
	}
	r.keep(values.feasible(worst, at), p.pieces)
	for _, l := range found {
		if m.enter(p.column(l)) {
			*made, entered = append(*made, l), true
		}
	}
	return entered
}

// worse reports whether z per h is above worst per at.
func worse(z int64, h int, worst int64, at int) bool {
	zh, zl := bits.Mul64(uint64(z), uint64(at))
	wh, wl := bits.Mul64(uint64(worst), uint64(h))
	return zh > wh || zh == wh && zl > wl
}

// feasible scales prices so that the worst level is worth no more than its
// height.
func (p prices) feasible(worst int64, at int) prices {
	out := slices.Clone(p)
	if worst <= int64(at)*dualScale {
		return out
	}
	for i, v := range p {
		hi, lo := bits.Mul64(uint64(v), uint64(at)*dualScale)
		q, _ := bits.Div64(hi, lo, uint64(worst))
		out[i] = int64(q)
	}
	return out
}

// keep takes the prices if their bound is better.
func (r *relaxation) keep(p prices, pieces []Piece) {
	bound := int((p.of(counts(pieces)) + dualScale - 1) / dualScale)
	if r.prices == nil || bound > r.bound {
		r.prices, r.bound = p, bound
	}
}

// used are the levels of the basis and how often it uses each.
func (m *master) used(made []level) ([]level, []float64) {
	var levels []level
	var times []float64
	for k, c := range m.basis {
		if m.x[k] < 1e-7 || c.cost == 0 {
			continue
		}
		at := slices.IndexFunc(made, func(l level) bool { return l.is(c) })
		if at >= 0 {
			levels, times = append(levels, made[at]), append(times, m.x[k])
		}
	}
	return levels, times
}

// is reports whether a column stands for this level.
func (l level) is(c column) bool {
	n := 0
	for _, u := range l.uses {
		if c.take[u.piece] != u.n {
			return false
		}
		n += u.n
	}
	return n == sum(c.take) && float64(l.h) == c.cost
}

// whole takes each level as often as the fractions say in full, as long as the
// stock lasts, and returns what is left of the stock.
func (r relaxation) whole(stock []int) ([]level, []int) {
	var out []level
	for k, l := range r.levels {
		for range int(r.times[k] + 1e-6) {
			if !l.lasts(stock) {
				break
			}
			l.from(stock, -1)
			out = append(out, l)
		}
	}
	return out, stock
}

// lasts reports whether a stock has all that a level holds.
func (l level) lasts(stock []int) bool {
	return !slices.ContainsFunc(l.uses, func(u use) bool { return stock[u.piece] < u.n })
}
