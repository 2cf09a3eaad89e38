package guillotine

import (
	"math"
	"slices"
)

// rough is a bound on the length of any plan of levels for the counts given: at
// every height there are enough levels for the widths that must reach it.
func (b *bench) rough(counts []int) int {
	type reach struct{ h, w int }
	var all []reach
	for i, n := range counts {
		if n == 0 {
			continue
		}
		r := reach{b.leastHeight(i), math.MaxInt}
		for _, s := range b.pieces[i].sides() {
			if s.w <= b.w {
				r.w = min(r.w, s.w)
			}
		}
		all = append(all, reach{r.h, r.w * n})
	}
	slices.SortFunc(all, func(a, c reach) int { return c.h - a.h })
	length, w := 0, 0
	for k, r := range all {
		w += r.w
		below := 0
		if k+1 < len(all) {
			below = all[k+1].h
		}
		length += (r.h - below) * ceilDiv(w, b.w)
	}
	return length
}

// used are the levels of the basis and how often it uses each.
func (m *master) used(known []level) ([]level, []float64) {
	var levels []level
	var times []float64
	for k, c := range m.basis {
		if m.x[k] > 1e-7 && c.cost > 0 {
			for _, l := range known {
				if l.sameAs(c) {
					levels, times = append(levels, l), append(times, m.x[k])
					break
				}
			}
		}
	}
	return levels, times
}

func (l level) sameAs(c column) bool {
	n := 0
	for _, u := range l.uses {
		if c.take[u.piece] != u.n {
			return false
		}
		n += u.n
	}
	for _, k := range c.take {
		n -= k
	}
	return n == 0 && float64(l.h) == c.cost
}

func counts(pieces []Piece) []int {
	out := make([]int, len(pieces))
	for i, p := range pieces {
		out[i] = p.N
	}
	return out
}

func (b *bench) step() int {
	g := 0
	for _, h := range b.tall {
		g = gcd(g, h)
	}
	return g
}

type simplePlan struct {
	levels []level
	bound  int
	steps, work, rounds, lpb int
}

func (b *bench) simple(limit int) simplePlan {
	best := b.plain()
	bound := max(0, b.rough(counts(b.pieces)))
	if d := b.greedy(); total(d) < total(best) {
		best = d
	}
	bound = b.raise(bound, total(best))
	if bound == total(best) { return simplePlan{levels: best, bound: bound} }
	r := b.relax(10*limit)
	if d := b.dive(r.prices); total(d) < total(best) {
		best = d
	}
	bound = b.raise(max(bound, r.bound), total(best))
	s := &shelfSearch{bench: b, prices: r.prices, step: b.step(), best: best, length: total(best)}
	goal := bound
	spent := 0
	for grow := s.step; s.length > bound && spent < limit; {
		was, wasLength := s.best, s.length
		if goal < s.length { s.length = goal + s.step } else {goal = s.length-s.step}
		s.cut, s.seen, s.steps, s.limit = false, map[string]int{}, 0, min(limit-spent, max(limit/8, 1))
		s.open = s.open[:0]
		s.run(counts(b.pieces), 0)
		spent += s.steps
		found := s.length <= goal
		if !found { s.best, s.length = was, wasLength }
		if !s.cut && bound == goal && !found {
			bound = b.raise(goal+s.step, s.length)
			goal = bound
		} else if !s.cut && found && goal==bound {
			break
		} else if found {
			goal = bound
			grow = s.step
			break
		} else {
			if goal >= s.length - s.step {break}
			grow *= 2
			goal += grow
		}
	}
	return simplePlan{s.best, bound, spent, r.work, r.rounds, r.bound}
}

// dive opens a level with the hardest piece and fills it with the best priced
// pieces left, until none is left.
func (b *bench) dive(prices prices) []level {
	rem := counts(b.pieces)
	s := &shelfSearch{bench: b}
	p := newPricer(b)
	var out []level
	for {
		t := s.hardest(rem)
		if t < 0 {
			return out
		}
		var best level
		var bestLoss int64
		for _, h := range b.tall {
			w := b.in(t, h).w
			if w == 0 {break}
			if s.fixedTop(t) && h != b.pieces[t].H {continue}
			rem[t]--
			l := b.fillLevel(p, rem, h, t, prices)
			rem[t]++
			loss := int64(l.h)*dualScale
			for _, u := range l.uses { loss -= prices[u.piece]*int64(u.n) }
			if best.h == 0 || loss < bestLoss { best, bestLoss = l, loss }
		}
		best.from(rem, -1)
		out = append(out, best)
	}
}

func (b *bench) fillLevel(p *pricer, rem []int, h, t int, prices prices) level {
	first := b.in(t, h)
	f := p.exact
	var slots []slot
	for i, n := range rem {
		if s := b.in(i, h); n > 0 && s.w > 0 {
			slots = append(slots, slot{i, ceilDiv(s.w, p.unit), n, prices[i]*1024+int64(s.w)})
		}
	}
	// the first piece takes its width off: a slot that is worth more than all
	slots = append(slots, slot{t, ceilDiv(first.w, p.unit), 1, 1<<60})
	if len(slots) > 0 && f.w > 0 { f.fill(slots) }
	take := make([]int, len(rem))
	f.taken(take)
	l := level{}
	for i, n := range take {
		if n > 0 {
			s := b.in(i, h)
			l.uses = append(l.uses, use{i, s.turned, n})
			l.h = max(l.h, s.h)
		}
	}
	return l
}

func (r relaxation) floor(rem []int) ([]level, []int, int) {
	var fixed []level
	used := 0
	for k, l := range r.levels {
		for range int(r.times[k] + 1e-6) {
			fit := true
			for _, u := range l.uses {
				fit = fit && rem[u.piece] >= u.n
			}
			if !fit { break }
			l.from(rem, -1)
			fixed = append(fixed, l)
			used += l.h
		}
	}
	return fixed, rem, used
}

// raise lifts a bound to the next length that heights of levels add up to.
func (b *bench) raise(bound, upTo int) int {
	if upTo > 1<<17 || bound >= upTo {
		return min(bound, upTo)
	}
	can := make([]bool, upTo+1)
	can[0] = true
	for x := range can {
		for _, h := range b.tall {
			if h <= x && can[x-h] {
				can[x] = true
				break
			}
		}
	}
	for bound < upTo && !can[bound] {
		bound++
	}
	return bound
}
