package guillotine

// Strip is a layout in a strip of a given width. It may be 2¹⁸ wide at
// most and a piece 2²² long, so that every product of the searches fits an int64.
type Strip struct {
	Root   *Node // the whole width, Length long
	Length int
	Bound  int // no layout, however cut, is shorter; 0 where that was not asked for
	Style  int // no layout in the same style is shorter; never below Bound
}

// Sheets is a layout on sheets.
type Sheets struct {
	Cut   []Sheet
	Left  []int // pieces of each kind that found no place
	Bound int   // no layout, however cut, holds everything on fewer sheets
}

// Sheet is one sheet cut up. Sheets cut alike share their nodes.
type Sheet struct {
	Stock int   // which of the stock it is
	Root  *Node // the whole sheet
}

// effort is the steps that a whole search takes at most, a step being of the
// order of a nanosecond.
const effort = 24_000_000

// steps are a share of the effort; few pieces take little setting up, and get
// twice as much.
func steps(pieces []Piece, share int) int {
	const few = 30
	if sum(counts(pieces)) <= few {
		share *= 2
	}
	return effort / 100 * share
}

// Simple lays pieces out in levels across a strip of width w. Every piece must
// fit that width one way or the other. The search is cut to share hundredths,
// 1 to 100, of its full effort.
func Simple(w int, pieces []Piece, share int) Strip {
	b := newBench(w, pieces)
	now, style := b.simple(steps(pieces, share))
	return b.strip(now, b.leastLength(now.length(), effort/100), style)
}

// Levels is Simple without the bound for layouts of other cuts.
func Levels(w int, pieces []Piece, share int) Strip {
	b := newBench(w, pieces)
	now, style := b.simple(steps(pieces, share))
	return b.strip(now, 0, style)
}

// Nested lays pieces out in a strip of width w, cut in any order. It is never
// longer than the Simple layout of the same share.
func Nested(w int, pieces []Piece, share int) Strip {
	b := newBench(w, pieces)
	now, _ := b.simple(steps(pieces, share))
	bound := b.leastLength(now.length(), effort/100)
	now, bound = b.nested(now, bound, steps(pieces, share))
	return b.strip(now, bound, bound)
}

// Bound is a length that no layout of the pieces in a strip of width w goes below,
// however it is cut; most is the length of one that is known.
func Bound(w int, pieces []Piece, most int) int {
	return newBench(w, pieces).leastLength(most, effort/100)
}

func (b *bench) strip(now layout, bound, style int) Strip {
	s := Strip{Length: now.length(), Bound: bound, Style: max(bound, style)}
	s.Root = joined(b.w, s.Length, Across, now.nodes()...).place(0, 0)
	return s
}

// OnSheets lays pieces out on as few sheets as it can: it uses up what there is
// a number of first, and endless stock only then. Simple sheets are cut in
// levels one way or the other, nested ones in any order.
func OnSheets(pieces []Piece, stock []Stock, nested bool, share int) Sheets {
	s := newSheeter(pieces, stock, nested)
	low := leastSheets(pieces, stock, effort/100)
	best := sheets{}
	favourites := s.favourites()
	for n, k := range favourites {
		p := s.plan(k, low, steps(pieces, share)/len(favourites))
		if n == 0 || s.compare(p, best) < 0 {
			best = p
		}
	}
	out := Sheets{Left: best.left, Bound: low}
	for _, c := range best.cut {
		st := stock[c.stock]
		out.Cut = append(out.Cut, Sheet{c.stock, mounted(st.W, st.H, c.how.drawn().tight(pieces)).place(0, 0)})
	}
	return out
}

// favourites are the kinds of endless stock, or none in particular.
func (s *sheeter) favourites() []int {
	var out []int
	for k, st := range s.stock {
		if st.endless() {
			out = append(out, k)
		}
	}
	if out == nil {
		return []int{-1}
	}
	return out
}

// Richest lays out, on one w × h sheet, pieces that are worth as much together
// as it can find, each kind at most N times; worth is for one of each. First is
// the way the first cuts of a Simple layout run, Across or Upright; None is any
// order of cuts.
func Richest(w, h int, pieces []Piece, worth []int, first Cut, share int) (*Node, int) {
	fine := max(1, ceilDiv(max(w, h), finest))
	root, total := richest(newCarver(coarse(pieces, fine), first), w/fine, h/fine, worth, effort/100*share)
	if total == 0 {
		return offcut(w, h), 0
	}
	return mounted(w, h, root.tight(pieces)).place(0, 0), total
}
