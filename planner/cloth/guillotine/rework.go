package guillotine

// segment is part of a strip's layout that reaches over its whole width.
type segment struct {
	node *Node
	uses []use // pieces in it
	n    int   // how many
	area int
}

func newSegment(n *Node, pieces []Piece) segment {
	s := segment{node: n}
	l := level{}
	n.Leaves(func(p *Node) {
		if p.Piece != Offcut {
			l.add(p.Piece, false, 1)
			s.n++
			s.area += pieces[p.Piece].W * pieces[p.Piece].H
		}
	})
	s.uses = l.uses
	return s
}

// layout is a strip's segments.
type layout []segment

// newLayout closes nodes up and takes them apart where they are cut across.
func newLayout(nodes []*Node, pieces []Piece) layout {
	var out layout
	for _, n := range nodes {
		if t := n.tight(pieces); t != nil {
			for _, l := range t.levels() {
				out = append(out, newSegment(l, pieces))
			}
		}
	}
	return out
}

func (l layout) length() int {
	h := 0
	for _, s := range l {
		h += s.node.H
	}
	return h
}

func (l layout) nodes() []*Node {
	out := make([]*Node, len(l))
	for k, s := range l {
		out[k] = s.node
	}
	return out
}

// better is the shorter layout, the first of equals; nil is none.
func better(a, b layout) layout {
	if b != nil && b.length() < a.length() {
		return b
	}
	return a
}

// reworker improves a strip's layout: it takes a few segments out, wasteful
// ones sooner, and lays their pieces anew in a little less length than they had
// (ruin and recreate; Schrimpf et al. 2000, J. Comput. Phys. 159, 139-171). It
// works on a grid, on which pieces are rounded up where theirs is finer.
type reworker struct {
	exact  *bench
	grid   *bench
	fine   int // units to a cell of the grid
	carver *carver
	rng    *rng
	now    layout
	out    []bool // segments taken out
	pool   []int  // their pieces
	n      int
	area   int
	length int
}

// newReworker lays out anew with bands cut one way only, or with None any way.
func newReworker(b *bench, only Cut) *reworker {
	fine := 1
	if b.w > finest {
		fine = ceilDiv(b.w, finest)
	}
	grid := newBench(b.w/fine, coarse(b.pieces, fine))
	return &reworker{
		exact: b, grid: grid, fine: fine, carver: newCarver(grid.pieces, only), rng: newRng(),
		pool: make([]int, len(b.pieces)),
	}
}

// coarse are pieces in cells of a grid, rounded up.
func coarse(pieces []Piece, fine int) []Piece {
	out := make([]Piece, len(pieces))
	for i, p := range pieces {
		p.W, p.H = ceilDiv(p.W, fine), ceilDiv(p.H, fine)
		out[i] = p
	}
	return out
}

// strips is the shortest of four layouts made from scratch, or nil where the grid
// is too coarse for a piece.
func (r *reworker) strips() layout {
	for _, p := range r.grid.pieces {
		if p.N > 0 && p.lowest(r.grid.w).w == 0 {
			return nil
		}
	}
	stock := counts(r.grid.pieces)
	var best layout
	for _, like := range []int64{0, 1000} {
		r.carver.prefer(like)
		for _, byShare := range []bool{false, true} {
			made := newLayout(r.carver.strip(r.grid, stock, byShare), r.exact.pieces)
			if best == nil || made.length() < best.length() {
				best = made
			}
		}
	}
	return best
}

// shorten goes on until a layout is as short as low or its steps are spent.
func (r *reworker) shorten(now layout, low, limit int) layout {
	const handling = 500 // steps that a try takes beside the carver's own
	r.now = newLayout(now.nodes(), r.grid.pieces)
	length := r.now.length()
	for spent := 0; length*r.fine > low && spent < limit; {
		r.pick()
		r.carver.work = 0
		if r.n > 1 && r.retry() {
			length = r.now.length()
		}
		spent += r.carver.work + handling + 20*r.n + 10*len(r.pool) + 10*len(r.now)
	}
	return better(now, newLayout(r.now.nodes(), r.exact.pieces))
}

// pick takes segments out, up to a random number of pieces.
func (r *reworker) pick() {
	const most = 80
	clear(r.pool)
	r.out = make([]bool, len(r.now))
	r.n, r.area, r.length = 0, 0, 0
	want := 2 + r.rng.next(most-1)
	for tries := 4 * len(r.now); tries > 0 && r.n < want; tries-- {
		k := r.rng.next(len(r.now))
		s := r.now[k]
		whole := r.grid.w * s.node.H
		chance := 150 + 4000*(whole-s.area)/whole // of 1000
		if r.out[k] || r.rng.next(1000) > chance || r.n > 0 && r.n+s.n > want+most/10 {
			continue
		}
		r.out[k] = true
		for _, u := range s.uses {
			r.pool[u.piece] += u.n
		}
		r.n, r.area, r.length = r.n+s.n, r.area+s.area, r.length+s.node.H
	}
}

// retry lays what was taken out anew, in less length.
func (r *reworker) retry() bool {
	target := r.length - 1 - r.rng.next(1+r.length/40)
	if r.grid.w*target < r.area {
		target = r.length - 1
	}
	if r.grid.w*target < r.area {
		return false
	}
	r.carver.shake(r.rng, 1+r.rng.next(6))
	if !r.carver.into(r.grid.w, target, r.pool, r.area) {
		return false
	}
	var keep layout
	for k, s := range r.now {
		if !r.out[k] {
			keep = append(keep, s)
		}
	}
	anew := r.carver.drawn(r.grid.w, target, r.pool)
	r.now = append(keep, newLayout([]*Node{anew}, r.grid.pieces)...)
	return true
}
