package guillotine

// nested shortens a layout by cuts in any order, and raises the bound where it
// can prove that nothing shorter exists.
func (b *bench) nested(now layout, bound, limit int) (layout, int) {
	if now.length() <= bound {
		return now, bound
	}
	r := newReworker(b, None)
	now = better(now, r.strips())
	now = r.shorten(now, bound, limit*3/10)
	if r.fine == 1 {
		now, bound = b.exact(now, bound, limit*2/5)
	}
	return r.shorten(now, bound, limit*3/10), bound
}

// exact builds for one target after the other, from the bound up, as long as
// its steps last.
func (b *bench) exact(now layout, bound, limit int) (layout, int) {
	const most = 60 // pieces; more never come to an end
	k, ok := newPacker(counts(b.pieces))
	if !ok || sum(counts(b.pieces)) > most {
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
