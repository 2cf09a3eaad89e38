package guillotine

import "slices"

// level is a strip across the width: pieces side by side, none higher than h.
type level struct {
	h    int
	uses []use
}

// use is n equal pieces lying the same way.
type use struct {
	piece  int
	turned bool
	n      int
}

// bench is the width to cut from, and the pieces wanted.
type bench struct {
	w      int
	pieces []Piece
	tall   []int // heights that a level can have, highest first
}

func newBench(w int, pieces []Piece) *bench {
	b := &bench{w: w, pieces: pieces}
	for _, p := range pieces {
		if p.N == 0 {
			continue
		}
		for _, s := range p.sides() {
			if s.w <= w {
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

// node draws a level w wide: runs of equal height side by side, highest first,
// each trimmed to its height and then cut up.
func (l level) node(w int, pieces []Piece) *Node {
	var runs []*Node
	for _, u := range l.sorted(pieces) {
		s := lying(pieces[u.piece], u.turned)
		for range u.n {
			runs = append(runs, leaf(s.w, s.h, u.piece, u.turned))
		}
	}
	var parts []*Node
	for len(runs) > 0 {
		n := 1
		for n < len(runs) && runs[n].H == runs[0].H {
			n++
		}
		parts = append(parts, aside(span(runs[:n]), runs[0].H, runs[:n]...))
		runs = runs[n:]
	}
	return aside(w, l.h, parts...)
}

// sorted puts the highest first, then the widest.
func (l level) sorted(pieces []Piece) []use {
	uses := slices.Clone(l.uses)
	slices.SortStableFunc(uses, func(a, b use) int {
		s, t := lying(pieces[a.piece], a.turned), lying(pieces[b.piece], b.turned)
		if s.h != t.h {
			return t.h - s.h
		}
		return t.w - s.w
	})
	return uses
}

func lying(p Piece, turned bool) side {
	if turned {
		return side{p.H, p.W, true}
	}
	return side{p.W, p.H, false}
}

func span(nodes []*Node) int {
	w := 0
	for _, n := range nodes {
		w += n.W
	}
	return w
}

func total(levels []level) int {
	h := 0
	for _, l := range levels {
		h += l.h
	}
	return h
}
