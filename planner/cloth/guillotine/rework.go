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

func better(a, b layout) layout {
	if b.length() < a.length() {
		return b
	}
	return a
}

// reworker improves a strip's layout: it takes a few segments out, wasteful
// ones sooner, and lays their pieces anew in a little less length than they had
// (ruin and recreate; Schrimpf et al. 2000, J. Comput. Phys. 159, 139-171).
type reworker struct {
	*bench
	carver *carver
	rng    *rng
	now    layout
	out    []bool
	pool   []int
	n      int
	area   int
	length int
}

// rework goes on until the layout is as short as low or the steps are spent.
func (b *bench) rework(now layout, c *carver, low, limit int) (layout, int) {
	const handling = 500 // steps that a try takes beside the carver's own
	r := &reworker{bench: b, carver: c, rng: newRng(), now: now, pool: make([]int, len(b.pieces))}
	length := now.length()
	spent := 0
	for length > low && spent < limit {
		r.pick()
		c.work = 0
		if r.n > 1 && r.retry() {
			length = r.now.length()
		}
		spent += c.work + handling + 20*r.n + 10*len(b.pieces) + 10*len(r.now)
	}
	return r.now, spent
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
		whole := r.w * s.node.H
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
	if r.w*target < r.area {
		target = r.length - 1
	}
	if r.w*target < r.area {
		return false
	}
	r.carver.shake(r.rng, 1+r.rng.next(6))
	if !r.carver.into(r.w, target, r.pool, r.area) {
		return false
	}
	var keep layout
	for k, s := range r.now {
		if !r.out[k] {
			keep = append(keep, s)
		}
	}
	anew := r.carver.drawn(r.w, target, r.pool)
	r.now = append(keep, newLayout([]*Node{anew}, r.pieces)...)
	return true
}
