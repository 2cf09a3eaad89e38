package guillotine

// many is the number of pieces from which they are no longer placed one by one:
// the fractional solution is taken level by level as far as it is whole, and
// only the rest is searched.
const many = 400

// simple finds a short layout of levels and a bound that no layout of levels
// beats, within a number of steps for each of its searches.
func (b *bench) simple(limit int) (layout, int) {
	best := b.plain()
	few := sum(counts(b.pieces)) <= many
	if few {
		best = shorter(best, b.shelved())
	}
	bound := b.raise(max(b.rough(counts(b.pieces)), ceilDiv(areaOf(b.pieces), b.w)), total(best))
	if bound == total(best) {
		return b.drawn(best), bound
	}
	r := b.relax(best, limit/3)
	bound = b.raise(max(bound, r.bound), total(best))
	var now layout
	if few {
		best = shorter(best, b.dive(r.prices))
		best, bound = b.deepen(best, r.prices, bound, limit/100)
		now = b.drawn(best)
	} else {
		now = better(b.drawn(best), b.wholeAndRest(r, limit))
	}
	if now.length() > bound {
		r := newReworker(b, Across)
		now = r.shorten(better(now, r.strips()), bound, limit/4)
	}
	return now, bound
}

// drawn is a plan of levels as a layout.
func (b *bench) drawn(levels []level) layout {
	var nodes []*Node
	for _, l := range levels {
		nodes = append(nodes, l.node(b.w, b.pieces))
	}
	return newLayout(nodes, b.pieces)
}

// wholeAndRest takes the whole part of the fractions and searches for the rest.
func (b *bench) wholeAndRest(r relaxation, limit int) layout {
	whole, rest := r.whole(counts(b.pieces))
	out := b.drawn(whole)
	if n := sum(rest); n > 0 && n < sum(counts(b.pieces)) {
		last, _ := newBench(b.w, with(b.pieces, rest)).simple(limit)
		out = append(out, last...)
	} else if n > 0 {
		out = append(out, b.drawn(newBench(b.w, with(b.pieces, rest)).plain())...)
	}
	return out
}

// deepen searches for plans as short as the bound, then a little longer, until
// it finds one or its steps are spent.
func (b *bench) deepen(best []level, values prices, bound, limit int) ([]level, int) {
	goal, grow := bound, b.step()
	for spent := 0; total(best) > bound && spent < limit; {
		goal = min(goal, total(best)-b.step())
		found, steps, all := b.search(values, goal, min(limit-spent, limit/8+1))
		spent += steps
		switch {
		case found != nil && all:
			return found, total(found)
		case found != nil:
			return found, bound
		case all:
			bound = b.raise(goal+1, total(best))
			goal = bound
		case goal == total(best)-b.step():
			return best, bound
		default:
			grow *= 2
			goal += grow
		}
	}
	return best, bound
}
