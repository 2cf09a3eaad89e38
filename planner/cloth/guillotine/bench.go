package guillotine

import "slices"

// bench is a width to cut from, and the pieces wanted.
type bench struct {
	w      int
	pieces []Piece
	tall   []int // heights that a level can have, highest first
}

// newBench lists the heights of the pieces that fit the width.
func newBench(w int, pieces []Piece) *bench {
	b := &bench{w: w, pieces: pieces}
	for _, p := range pieces {
		for _, s := range p.sides() {
			if p.N > 0 && s.w <= w {
				b.tall = append(b.tall, s.h)
			}
		}
	}
	slices.Sort(b.tall)
	slices.Reverse(b.tall)
	b.tall = slices.Compact(b.tall)
	return b
}

// in is the narrowest way for piece i to lie in a level of height h; its width
// is 0 where it does not fit.
func (b *bench) in(i, h int) side {
	var best side
	for _, s := range b.pieces[i].sides() {
		if s.h <= h && s.w <= b.w && (best.w == 0 || s.w < best.w) {
			best = s
		}
	}
	return best
}

// least is the least height that piece i needs.
func (b *bench) least(i int) int { return b.pieces[i].lowest(b.w).h }

// hardest is the piece left that needs most height, or −1.
func (b *bench) hardest(rem []int) int {
	t := -1
	for i, n := range rem {
		if n > 0 && (t < 0 || b.least(i) > b.least(t)) {
			t = i
		}
	}
	return t
}

// step is the least by which two lengths of levels can differ.
func (b *bench) step() int {
	g := 0
	for _, h := range b.tall {
		g = gcd(g, h)
	}
	return g
}

func (b *bench) anyFree() bool {
	return slices.ContainsFunc(b.pieces, func(p Piece) bool { return p.N > 0 && len(p.sides()) > 1 })
}

// openings are the heights of a level that piece t may open: its own where
// nothing is turned, since every piece left is then as high at most.
func (b *bench) openings(t int) []int {
	if !b.anyFree() {
		return []int{b.pieces[t].H}
	}
	var out []int
	for _, h := range b.tall {
		if b.in(t, h).w > 0 {
			out = append(out, h)
		}
	}
	return out
}
