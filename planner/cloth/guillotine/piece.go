// Package guillotine lays rectangles out so that straight cuts from edge to
// edge part them. Measures are whole numbers of any one unit; every search is
// deterministic and bounded by counted steps, never by a clock.
package guillotine

// Piece is a rectangle wanted N times. A Free piece may be laid turned by a
// quarter turn.
type Piece struct {
	W, H, N int
	Free    bool
}

// sides are the ways a piece may lie: as given, and turned where it is free
// and not square.
func (p Piece) sides() []side {
	if !p.Free || p.W == p.H {
		return []side{{p.W, p.H, false}}
	}
	return []side{{p.W, p.H, false}, {p.H, p.W, true}}
}

// side is one way to lie.
type side struct {
	w, h   int
	turned bool
}

// Fits reports whether one piece lies within w × h.
func (p Piece) Fits(w, h int) bool {
	for _, s := range p.sides() {
		if s.w <= w && s.h <= h {
			return true
		}
	}
	return false
}

func areaOf(pieces []Piece) int {
	area := 0
	for _, p := range pieces {
		area += p.W * p.H * p.N
	}
	return area
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }
