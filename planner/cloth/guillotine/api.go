package guillotine

// Strip is a layout in a strip of a given width.
type Strip struct {
	Root   *Node // the whole width, Length long
	Length int
	Bound  int // no layout, however cut, is shorter
	Style  int // no layout in the same style is shorter
}

// effort is the steps of each search at full effort.
const effort = 48_000_000

// Simple lays pieces out in levels across a strip of width w. Every piece must
// fit that width one way. Effort is a share of the search in hundredths, 1 to
// 100.
func Simple(w int, pieces []Piece, share int) Strip {
	b := newBench(w, pieces)
	now, style := b.simple(effort * share / 100)
	bound := leastLength(w, pieces, now.length(), effort/100)
	return b.strip(now, b.raise(bound, now.length()), style)
}

// Nested lays pieces out in a strip of width w, cut in any order. It is never
// longer than the Simple layout.
func Nested(w int, pieces []Piece, share int) Strip {
	b := newBench(w, pieces)
	now, _ := b.simple(effort * share / 1000)
	bound := b.raise(leastLength(w, pieces, now.length(), effort/100), now.length())
	now, bound = b.nested(now, bound, effort*share/100)
	return b.strip(now, bound, bound)
}

func (b *bench) strip(now layout, bound, style int) Strip {
	s := Strip{Length: now.length(), Bound: bound, Style: max(bound, style)}
	var nodes []*Node
	for _, seg := range now {
		nodes = append(nodes, seg.node)
	}
	s.Root = joined(b.w, s.Length, Across, nodes...).place(0, 0)
	return s
}
