package guillotine

import (
	"math/bits"
	"slices"
)

// dualScale turns the fractional prices of the master into whole numbers.
const dualScale = 1 << 20

// finest is the most cells of width that the search for patterns tells apart;
// on a finer grid it rounds pieces up, and for the bound down.
const finest = 4096

// prices are what each piece is worth in a bound: no level of height h holds
// more than h·dualScale, so no plan is shorter than the sum over all pieces.
type prices []int64

func (p prices) of(counts []int) int64 {
	sum := int64(0)
	for i, n := range counts {
		sum += p[i] * int64(n)
	}
	return sum
}

// relaxation is the level problem in fractions.
type relaxation struct {
	prices prices
	bound  int
	levels []level
	work, rounds int
	times  []float64 // how often the fractional solution uses each level
}

// pricer finds levels that save length at given prices.
type pricer struct {
	*bench
	exact *filler // widths as they are or rounded up
	loose *filler // widths rounded down
	unit  int
}

func newPricer(b *bench) *pricer {
	unit := 0
	for _, p := range b.pieces {
		for _, s := range p.sides() {
			unit = gcd(unit, s.w)
		}
	}
	if b.w/unit <= finest {
		f := newFiller(b.w / unit)
		return &pricer{b, f, f, unit}
	}
	unit = ceilDiv(b.w, finest)
	return &pricer{b, newFiller(b.w / unit), newFiller(ceilDiv(b.w, unit)), unit}
}

// slots are the pieces that fit a level of height h. Those that lie as they
// would in any higher level come first, lowest first, so that fillers can keep
// their rows from one height to the next.
func (p *pricer) slots(h int, prices prices, loose bool) []slot {
	type entry struct {
		slot
		final bool
		h     int
	}
	var fit []entry
	for i, piece := range p.pieces {
		s := p.in(i, h)
		if s.w == 0 || prices[i] <= 0 || piece.N == 0 {
			continue
		}
		w := ceilDiv(s.w, p.unit)
		if loose {
			w = max(1, s.w/p.unit)
		}
		fit = append(fit, entry{slot{i, w, piece.N, prices[i]}, s.w == p.in(i, p.tall[0]).w, s.h})
	}
	slices.SortStableFunc(fit, func(a, b entry) int {
		if a.final != b.final {
			if a.final {
				return -1
			}
			return 1
		}
		return a.h - b.h
	})
	out := make([]slot, len(fit))
	for i, e := range fit {
		out[i] = e.slot
	}
	return out
}

// level is what the exact filler last took, as a level of height h or less.
func (p *pricer) level(h int) (level, column) {
	take := make([]int, len(p.pieces))
	p.exact.taken(take)
	l := level{}
	for i, n := range take {
		if n > 0 {
			s := p.in(i, h)
			l.uses = append(l.uses, use{i, s.turned, n})
			l.h = max(l.h, s.h)
		}
	}
	return l, column{float64(l.h), take}
}

// relax solves the level problem in fractions, within a number of steps.
func (b *bench) relax(limit int) relaxation {
	p := newPricer(b)
	want, start := make([]int, len(b.pieces)), make([]column, len(b.pieces))
	var known []level
	for i, piece := range b.pieces {
		s := b.plainSide(piece)
		per := min(b.w/s.w, piece.N)
		take := make([]int, len(b.pieces))
		take[i] = per
		want[i], start[i] = piece.N, column{float64(s.h), take}
		known = append(known, level{s.h, []use{{i, s.turned, per}}})
	}
	m := newMaster(want, start)
	r := relaxation{}
	m.below = b.dominated()
	for _, l := range b.greedy() {
		take := make([]int, len(b.pieces))
		l.from(take, 1)
		if m.enter(column{float64(l.h), take}) { known = append(known, l) }
	}
	for {
		r.rounds++
		before := m.work + p.exact.work
		entered := p.improve(m, &known, &r)
		if !entered || m.work+p.exact.work+(m.work+p.exact.work-before) > limit {
			break
		}
	}
	r.levels, r.times = m.used(known)
	r.work = m.work+p.exact.work
	return r
}

// improve prices every height once, takes in the levels that save, and keeps
// the best bound met.
func (p *pricer) improve(m *master, known *[]level, r *relaxation) bool {
	entered := false
	for m.relax() {
		entered = true
	}
	values := m.prices()
	worst, at := int64(0), 1
	var found []level
	var columns []column
	for k := len(p.tall) - 1; k >= 0; k-- {
		h := p.tall[k]
		z := p.exact.fill(p.slots(h, values, false))
		if z > int64(h)*dualScale {
			l, c := p.level(h)
			found, columns = append(found, l), append(columns, c)
		}
		if p.loose != p.exact {
			z = p.loose.fill(p.slots(h, values, true))
		}
		if worst == 0 || worse(z, h, worst, at) {
			worst, at = z, h
		}
	}
	r.keep(values.feasible(worst, at), p.pieces)
	for k, c := range columns {
		if m.enter(c) {
			*known, entered = append(*known, found[k]), true
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
	sum := int64(0)
	for i, piece := range pieces {
		sum += p[i] * int64(piece.N)
	}
	bound := int((sum + dualScale - 1) / dualScale)
	if r.prices == nil || bound > r.bound {
		r.prices, r.bound = p, bound
	}
}

// prices are the master's dual values as whole numbers, none negative.
func (m *master) prices() prices {
	out := make(prices, len(m.dual))
	for i, y := range m.dual {
		out[i] = max(0, int64(y*dualScale))
	}
	return out
}

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
