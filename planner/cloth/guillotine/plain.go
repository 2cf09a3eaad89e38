package guillotine

import "math"

// plain cuts every piece in levels of its own, lying the way that takes less
// length.
func (b *bench) plain() []level {
	var out []level
	for i, p := range b.pieces {
		s := b.plainSide(p)
		out = append(out, rows(i, p.N, s, b.w/s.w)...)
	}
	return out
}

func (b *bench) plainSide(p Piece) side {
	best, least := side{}, math.MaxInt
	for _, s := range p.sides() {
		if s.w > b.w {
			continue
		}
		if length := ceilDiv(p.N, b.w/s.w) * s.h; length < least {
			best, least = s, length
		}
	}
	return best
}

// rows are n pieces in levels of at most per pieces.
func rows(piece, n int, s side, per int) []level {
	var out []level
	for ; n > 0; n -= per {
		out = append(out, level{s.h, []use{{piece, s.turned, min(n, per)}}})
	}
	return out
}
