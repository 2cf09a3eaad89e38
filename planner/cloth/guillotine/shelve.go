package guillotine

import (
	"cmp"
	"slices"
)

// shelved is the best of six simple rules: the pieces laid low, upright or as
// plain strips have them, highest first, each into the first level that has
// room or into the one that it fills best (Coffman, Garey, Johnson & Tarjan
// 1980, SIAM J. Comput. 9, 808-826).
func (b *bench) shelved() []level {
	lowest := func(p Piece) side { return p.lowest(b.w) }
	highest := func(p Piece) side {
		s := p.lowest(b.w)
		if t := p.lying(!s.turned); p.Free && t.w <= b.w {
			s = t
		}
		return s
	}
	best := shorter(b.shelve(lowest, false), b.shelve(lowest, true))
	if !b.anyFree() {
		return best
	}
	for _, lie := range []func(Piece) side{highest, b.plainSide} {
		best = shorter(best, shorter(b.shelve(lie, false), b.shelve(lie, true)))
	}
	return best
}

// shelve follows one rule; lie says how a piece lies that opens a level.
func (b *bench) shelve(lie func(Piece) side, bestFit bool) []level {
	var order []int
	sides := make([]side, len(b.pieces))
	for i, p := range b.pieces {
		if p.N > 0 {
			sides[i] = lie(p)
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(x, y int) int {
		return cmp.Or(sides[y].h-sides[x].h, sides[y].w-sides[x].w)
	})
	var out []level
	var room []int
	for _, i := range order {
		for range b.pieces[i].N {
			k, s := b.shelfFor(i, out, room, bestFit)
			if k < 0 {
				k, s = len(out), sides[i]
				out, room = append(out, level{h: s.h}), append(room, b.w)
			}
			out[k].add(i, s.turned, 1)
			room[k] -= s.w
		}
	}
	return out
}

// shelfFor is the level that takes piece i and how it lies there, or −1.
func (b *bench) shelfFor(i int, levels []level, room []int, bestFit bool) (int, side) {
	at, lies, least := -1, side{}, 0
	for k, l := range levels {
		s := b.in(i, l.h)
		if s.w == 0 || s.w > room[k] || at >= 0 && room[k]-s.w >= least {
			continue
		}
		at, lies, least = k, s, room[k]-s.w
		if !bestFit {
			break
		}
	}
	return at, lies
}
