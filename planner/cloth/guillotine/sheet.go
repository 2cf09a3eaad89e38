package guillotine

import (
	"cmp"
	"slices"
)

// sheet is one sheet of a plan.
type sheet struct {
	stock int
	how   *filling // of its carver; sheets cut alike share it
	take  []int    // pieces from it
	area  int      // of those pieces
}

// filling is all that a carver's filling of a sheet follows from: few of those that
// are tried are ever drawn.
type filling struct {
	carver     *carver
	w, h       int
	stock      []int
	value      []int64
	lean, deep float64
	root       *Node // nil until it is drawn
}

// noted is how a carver, as it is now, fills w × h from a stock.
func (c *carver) noted(w, h int, stock []int) *filling {
	return &filling{carver: c, w: w, h: h, stock: slices.Clone(stock), value: slices.Clone(c.value), lean: c.lean, deep: c.deep}
}

// drawn is the layout, not yet mounted in the sheet.
func (f *filling) drawn() *Node {
	if f.root == nil {
		c := f.carver
		copy(c.value, f.value)
		c.lean, c.deep = f.lean, f.deep
		f.root = c.drawn(f.w, f.h, f.stock)
	}
	return f.root
}

// sheets is a plan on sheets, and the pieces that found no place.
type sheets struct {
	cut  []sheet
	left []int
}

func (p sheets) missing(pieces []Piece) int { return areaOf(with(pieces, p.left)) }

// compare orders plans: least missing, fewest bought, fewest at all, and of
// equals the one whose emptiest sheet is emptier.
func (s *sheeter) compare(p, q sheets) int {
	return cmp.Or(
		cmp.Compare(p.missing(s.pieces), q.missing(s.pieces)),
		cmp.Compare(s.bought(p), s.bought(q)),
		cmp.Compare(len(p.cut), len(q.cut)),
		cmp.Compare(p.emptiest().area, q.emptiest().area),
	)
}

func (s *sheeter) bought(p sheets) int {
	n := 0
	for _, cut := range p.cut {
		if s.stock[cut.stock].endless() {
			n++
		}
	}
	return n
}

func (p sheets) emptiest() sheet {
	var least sheet
	for k, s := range p.cut {
		if k == 0 || s.area < least.area {
			least = s
		}
	}
	return least
}

// mounted puts a tight layout into a sheet so that the largest offcut stays
// whole.
func mounted(w, h int, n *Node) *Node {
	if above, aside := w*(h-n.H), (w-n.W)*h; above >= aside {
		return joined(w, h, Across, joined(w, n.H, Upright, n))
	}
	return joined(w, h, Upright, joined(n.W, h, Across, n))
}
