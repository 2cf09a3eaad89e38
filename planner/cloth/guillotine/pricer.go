package guillotine

import "slices"

// finest is the most cells of width that a search tells apart; on a finer grid
// it rounds pieces up, and for a bound down.
const finest = 4096

// pricer finds the levels that are worth most at given prices.
type pricer struct {
	*bench
	exact *filler // widths as they are, or rounded up
	loose *filler // widths rounded down
	unit  int
}

// newPricer divides widths by what they have in common.
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

func (p *pricer) work() int {
	if p.loose == p.exact {
		return p.exact.work
	}
	return p.exact.work + p.loose.work
}

// slots are the pieces that fit a level of height h. Those that lie as they
// would in any higher level come first, lowest first, so that fillers can keep
// their rows from one height to the next.
func (p *pricer) slots(h int, values prices, loose bool) []slot {
	type entry struct {
		slot
		last bool // lies differently in higher levels
		h    int
	}
	var fit []entry
	for i, piece := range p.pieces {
		s := p.in(i, h)
		if s.w == 0 || values[i] <= 0 || piece.N == 0 {
			continue
		}
		w := ceilDiv(s.w, p.unit)
		if loose {
			w = max(1, s.w/p.unit)
		}
		fit = append(fit, entry{slot{i, w, piece.N, values[i]}, s.w != p.in(i, p.tall[0]).w, s.h})
	}
	slices.SortStableFunc(fit, func(a, b entry) int {
		switch {
		case a.last == b.last:
			return a.h - b.h
		case a.last:
			return 1
		default:
			return -1
		}
	})
	out := make([]slot, len(fit))
	for i, e := range fit {
		out[i] = e.slot
	}
	p.exact.work += 20 * len(p.pieces)
	return out
}

// level is what the exact filler last took, as a level of height h or less.
func (p *pricer) level(h int) level {
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
	return l
}

// dive opens a level with the hardest piece, fills it with what is worth most
// of the pieces left, and goes on so until none is left.
func (b *bench) dive(values prices) []level {
	rem := counts(b.pieces)
	p := newPricer(b)
	var out []level
	for t := b.hardest(rem); t >= 0; t = b.hardest(rem) {
		var best level
		least := int64(0)
		for _, h := range b.openings(t) {
			l := p.fillWith(t, h, rem, values)
			if loss := l.loss(values); best.h == 0 || loss < least {
				best, least = l, loss
			}
		}
		best.from(rem, -1)
		out = append(out, best)
	}
	return out
}

// loss is how much a level costs beyond what its pieces are worth.
func (l level) loss(values prices) int64 {
	loss := int64(l.h) * dualScale
	for _, u := range l.uses {
		loss -= values[u.piece] * int64(u.n)
	}
	return loss
}

// fillWith is the level of height h that holds piece t and is worth most; of
// levels worth the same, the fullest.
func (p *pricer) fillWith(t, h int, rem []int, values prices) level {
	const full = 1 << 10 // a unit of price against one of width
	first := p.in(t, h)
	slots := []slot{}
	for i, n := range rem {
		if i == t {
			n--
		}
		if s := p.in(i, h); n > 0 && s.w > 0 {
			slots = append(slots, slot{i, ceilDiv(s.w, p.unit), n, values[i]*full + int64(s.w)})
		}
	}
	f := p.exact
	f.begin(p.w/p.unit - ceilDiv(first.w, p.unit))
	f.fill(slots)
	l := p.level(h)
	l.add(t, first.turned, 1)
	l.h = max(l.h, first.h)
	return l
}
