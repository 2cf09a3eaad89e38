package guillotine

// bars bounds how many bars of a length it takes to cut every piece into
// slices one unit wide and lay them out freely, each slice whole: no layout of
// the pieces, however cut, takes less cloth than that. It is the bar relaxation
// (Scheithauer 1999, "LP-based bounds for the container and multi-container
// loading problem"), solved in fractions; the bound is proved in whole numbers.
type bars struct {
	length int
	ways   []barWay
	filler *filler
	unit   int
}

// barWay is one way for a piece to be sliced: n pieces of b slices a long.
type barWay struct {
	piece, a, b, n int
	second         bool // the other way of the piece before
}

func newBars(length int, pieces []Piece, slice func(side) (along, across int)) *bars {
	b := &bars{length: length}
	for i, p := range pieces {
		first := true
		for _, s := range p.sides() {
			if along, across := slice(s); along <= length && p.N > 0 {
				b.ways = append(b.ways, barWay{i, along, across, p.N, !first})
				b.unit = gcd(b.unit, along)
				first = false
			}
		}
	}
	if b.unit == 0 {
		return b
	}
	if length/b.unit <= finest {
		b.filler = newFiller(length / b.unit)
	} else {
		b.unit = ceilDiv(length, finest)
		b.filler = newFiller(ceilDiv(length, b.unit))
	}
	return b
}

// need is a lower bound on the bars.
func (b *bars) need(limit int) int {
	if len(b.ways) == 0 {
		return 0
	}
	m := b.master()
	best := 0
	for m.work+b.filler.work < limit {
		entered := m.relax()
		values := m.prices()
		z := b.filler.fill(b.slots(values))
		if z > 0 {
			best = max(best, int((b.worth(values)+z-1)/z))
		}
		take := make([]int, len(b.ways))
		b.filler.taken(take)
		if m.enter(column{1, take}) {
			entered = true
		}
		for k := range b.ways {
			if b.ways[k].second && m.enter(b.turn(k)) {
				entered = true
			}
		}
		if !entered {
			break
		}
	}
	return best
}

// slots are the ways at what one slice of each is worth. On a rounded grid they
// are rounded down, so that the filler allows more than there can be.
func (b *bars) slots(values prices) []slot {
	out := make([]slot, 0, len(b.ways))
	for k, v := range b.ways {
		if values[k] > 0 {
			out = append(out, slot{k, max(1, v.a/b.unit), v.n, values[k]})
		}
	}
	return out
}

// worth is what all pieces are worth, each lying the way that is worth less.
func (b *bars) worth(values prices) int64 {
	sum, last := int64(0), int64(0)
	for k, v := range b.ways {
		worth := values[k] * int64(v.b) * int64(v.n)
		if v.second {
			sum, worth = sum-last, min(worth, last)
		}
		sum, last = sum+worth, worth
	}
	return sum
}

// master wants every piece sliced its first way; turn offers the second.
func (b *bars) master() *master {
	want := make([]int, len(b.ways))
	start := make([]column, len(b.ways))
	for k, v := range b.ways {
		if !v.second {
			want[k] = v.b * v.n
		}
		take := make([]int, len(b.ways))
		take[k] = min(v.n, b.length/v.a)
		start[k] = column{1, take}
	}
	return newMaster(want, start)
}

// turn lets a piece be sliced the other way.
func (b *bars) turn(k int) column {
	take := make([]int, len(b.ways))
	take[k-1], take[k] = b.ways[k-1].b, -b.ways[k].b
	return column{0, take}
}

// leastLength bounds the length of any layout, however cut, by bars across the
// strip and along it; it is never above upTo, a length known to do. Bars along a
// strip say little where it is much longer than its pieces, and are left out.
func (b *bench) leastLength(upTo, limit int) int {
	low := ceilDiv(areaOf(b.pieces), b.w)
	for i, p := range b.pieces {
		if p.N > 0 {
			low = max(low, b.least(i))
		}
	}
	if b.raise(low, upTo) == upTo {
		return upTo
	}
	low = max(low, newBars(b.w, b.pieces, func(s side) (int, int) { return s.w, s.h }).need(limit))
	const much = 4
	high := upTo
	if len(b.tall) > 0 && upTo > much*b.tall[0] {
		high = low
	}
	for low < high {
		middle := (low + high) / 2
		if newBars(middle, b.pieces, func(s side) (int, int) { return s.h, s.w }).need(limit) > b.w {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return b.raise(low, upTo)
}
