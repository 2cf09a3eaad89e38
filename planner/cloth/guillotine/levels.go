package guillotine

import (
	"cmp"
	"slices"
)

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

// from takes a level's pieces out of a stock, or puts them back.
func (l level) from(stock []int, sign int) {
	for _, u := range l.uses {
		stock[u.piece] += sign * u.n
	}
}

// add puts in n more of a piece.
func (l *level) add(piece int, turned bool, n int) {
	for k := range l.uses {
		if l.uses[k].piece == piece && l.uses[k].turned == turned {
			l.uses[k].n += n
			return
		}
	}
	l.uses = append(l.uses, use{piece, turned, n})
}

func total(levels []level) int {
	h := 0
	for _, l := range levels {
		h += l.h
	}
	return h
}

func shorter(a, b []level) []level {
	if a == nil || b != nil && total(b) < total(a) {
		return b
	}
	return a
}

// node draws a level w wide: runs of equal height side by side, highest first,
// each trimmed to its height and then cut up.
func (l level) node(w int, pieces []Piece) *Node {
	var runs []*Node
	for _, u := range l.sorted(pieces) {
		s := pieces[u.piece].lying(u.turned)
		if last := len(runs) - 1; last < 0 || runs[last].H != s.h {
			runs = append(runs, &Node{H: s.h, Cut: Upright, Piece: Offcut})
		}
		run := runs[len(runs)-1]
		for range u.n {
			run.Parts = append(run.Parts, leaf(s.w, s.h, u.piece, u.turned))
			run.W += s.w
		}
	}
	for k, run := range runs {
		runs[k] = joined(run.W, run.H, Upright, run.Parts...)
	}
	return joined(w, l.h, Upright, runs...)
}

// sorted puts the highest first, then the widest.
func (l level) sorted(pieces []Piece) []use {
	uses := slices.Clone(l.uses)
	slices.SortStableFunc(uses, func(a, b use) int {
		s, t := pieces[a.piece].lying(a.turned), pieces[b.piece].lying(b.turned)
		return cmp.Or(t.h-s.h, t.w-s.w, a.piece-b.piece)
	})
	return uses
}
