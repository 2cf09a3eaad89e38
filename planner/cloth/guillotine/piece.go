package guillotine

// Piece is a rectangle wanted N times. A Free piece may be laid turned by a
// quarter turn.
type Piece struct {
	W, H, N int
	Free    bool
}

// side is one way for a piece to lie.
type side struct {
	w, h   int
	turned bool
}

// sides are the ways a piece may lie: as given, and turned where it is free
// and not square.
func (p Piece) sides() []side {
	if !p.Free || p.W == p.H {
		return []side{{p.W, p.H, false}}
	}
	return []side{{p.W, p.H, false}, {p.H, p.W, true}}
}

// lying is the piece as given, or turned.
func (p Piece) lying(turned bool) side {
	if turned {
		return side{p.H, p.W, true}
	}
	return side{p.W, p.H, false}
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

// lowest is the way to lie in a strip of width w that is least high.
func (p Piece) lowest(w int) side {
	var best side
	for _, s := range p.sides() {
		if s.w <= w && (best.w == 0 || s.h < best.h) {
			best = s
		}
	}
	return best
}

func areaOf(pieces []Piece) int {
	area := 0
	for _, p := range pieces {
		area += p.W * p.H * p.N
	}
	return area
}

func counts(pieces []Piece) []int {
	out := make([]int, len(pieces))
	for i, p := range pieces {
		out[i] = p.N
	}
	return out
}

func sum(counts []int) int {
	n := 0
	for _, c := range counts {
		n += c
	}
	return n
}

// with are the pieces in other numbers.
func with(pieces []Piece, counts []int) []Piece {
	out := make([]Piece, len(pieces))
	for i, p := range pieces {
		p.N = counts[i]
		out[i] = p
	}
	return out
}

func ceilDiv(a, b int) int { return (a + b - 1) / b }

func gcd(a, b int) int {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
