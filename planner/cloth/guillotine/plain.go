package guillotine

import "math"

// plain cuts every piece in levels of its own, lying the way that takes less
// length.
func (b *bench) plain() []level {
	var out []level
	for i, p := range b.pieces {
		if p.N == 0 {
			continue
		}
		s := b.plainSide(p)
		for n := p.N; n > 0; n -= b.w / s.w {
			out = append(out, level{s.h, []use{{i, s.turned, min(n, b.w/s.w)}}})
		}
	}
	return out
}

// plainSide is the way for all of a piece to lie in levels of its own.
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
