package guillotine

import (
	"cmp"
	"slices"
)

// rough bounds the length of any plan of levels for the numbers given: at every
// height there are enough levels for the widths that must reach it.
func (b *bench) rough(counts []int) int {
	type reach struct{ h, w int }
	var all []reach
	for i, n := range counts {
		if n > 0 {
			all = append(all, reach{b.least(i), n * b.narrowest(i)})
		}
	}
	slices.SortFunc(all, func(x, y reach) int { return cmp.Compare(y.h, x.h) })
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

// narrowest is the least width that piece i can take up.
func (b *bench) narrowest(i int) int {
	w := b.w
	for _, s := range b.pieces[i].sides() {
		w = min(w, s.w)
	}
	return w
}

// raise lifts a bound to the next length that sides of pieces add up to, which
// every tight layout has; it goes no higher than upTo.
func (b *bench) raise(bound, upTo int) int {
	const most = 1 << 17
	if bound >= upTo || upTo > most {
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
