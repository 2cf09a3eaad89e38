package guillotine

import (
	"cmp"
	"slices"
)

// block is a rectangle made from pieces, or from two blocks side by side
// (Upright) or one above the other (Across).
type block struct {
	w, h, area int
	bag        bag
	cut        Cut
	a, b       int // the blocks joined; for a piece, a is the piece
	turned     bool
	waste      int
}

// builder joins blocks bottom up until one holds every piece (Wang 1983, Oper.
// Res. 31, 573-586). It leaves out blocks that waste more than the target
// allows and, of blocks of the same pieces, those no smaller than another; so
// what it finds is best, and what it does not find does not exist, unless its
// steps run out.
type builder struct {
	*packer
	w, h       int // target
	area       int
	pieces     []Piece
	fitW, fitH []int
	blocks     []block // joined with each other already
	byH, byW   *index
	wait       [][]block // to be joined, by area
	grain      int
	work       int
	best       int
}

// index finds blocks by one side.
type index struct {
	sides []int
	of    [][]int
}

func (x *index) put(side, k int) {
	at, ok := slices.BinarySearch(x.sides, side)
	if !ok {
		x.sides = slices.Insert(x.sides, at, side)
		x.of = slices.Insert(x.of, at, nil)
	}
	x.of[at] = append(x.of[at], k)
}

func newBuilder(w, h int, pieces []Piece, k *packer) *builder {
	b := &builder{packer: k, w: w, h: h, area: areaOf(pieces), pieces: pieces, best: -1, byH: &index{}, byW: &index{}}
	b.grain = b.area
	for _, p := range pieces {
		if p.N > 0 {
			b.grain = min(b.grain, p.W*p.H)
		}
	}
	b.wait = make([][]block, b.area/b.grain+1)
	b.fitW = sums(w, pieces, func(s side) int { return s.w })
	b.fitH = sums(h, pieces, func(s side) int { return s.h })
	return b
}

// sums[x] is the greatest sum of sides that is no more than x.
func sums(upTo int, pieces []Piece, measure func(side) int) []int {
	can := make([]bool, upTo+1)
	can[0] = true
	for _, p := range pieces {
		for range p.N {
			reach(can, p, measure)
		}
	}
	out := make([]int, upTo+1)
	for x := 1; x <= upTo; x++ {
		out[x] = out[x-1]
		if can[x] {
			out[x] = x
		}
	}
	return out
}

// reach adds one piece to every sum.
func reach(can []bool, p Piece, measure func(side) int) {
	for x := len(can) - 1; x > 0; x-- {
		for _, s := range p.sides() {
			if m := measure(s); m <= x && can[x-m] {
				can[x] = true
			}
		}
	}
}

// run builds for no more than a number of steps and reports whether it built
// all that it had to.
func (b *builder) run(limit int) bool {
	b.start()
	for at := range b.wait {
		for _, k := range undominated(b.wait[at]) {
			if b.work > limit {
				return false
			}
			if k.area == b.area {
				b.done(k)
			} else {
				b.joins(k)
			}
		}
		b.work += 60 * len(b.wait[at])
		b.wait[at] = nil
	}
	return true
}

// start offers the pieces themselves.
func (b *builder) start() {
	for i, p := range b.pieces {
		if p.N == 0 {
			continue
		}
		for _, s := range p.sides() {
			b.offer(block{w: s.w, h: s.h, area: p.W * p.H, bag: b.one(i), a: i, turned: s.turned})
		}
	}
}

// done keeps the lowest block that holds everything.
func (b *builder) done(k block) {
	if b.best < 0 || k.h < b.blocks[b.best].h {
		b.best = len(b.blocks)
		b.blocks = append(b.blocks, k)
	}
}

// offer sets a block aside to be joined later, unless it wastes too much: what
// is bare inside it, and what no pieces can fill beside and above it.
func (b *builder) offer(k block) {
	free, high := b.w-k.w, b.h-k.h
	if free < 0 || high < 0 {
		return
	}
	k.waste = k.w*k.h - k.area + (free-b.fitW[free])*k.h + (high-b.fitH[high])*k.w
	if k.waste > b.w*b.h-b.area {
		return
	}
	b.work += 40
	b.wait[k.area/b.grain] = append(b.wait[k.area/b.grain], k)
}

// undominated leaves out blocks that are no smaller than another of the same
// pieces. The order is fixed to the last field, so that the choice is too.
func undominated(list []block) []block {
	slices.SortFunc(list, func(x, y block) int {
		return cmp.Or(cmp.Compare(x.bag[0], y.bag[0]), cmp.Compare(x.bag[1], y.bag[1]), x.w-y.w, x.h-y.h,
			cmp.Compare(x.cut, y.cut), x.a-y.a, x.b-y.b)
	})
	var out []block
	for _, k := range list {
		if n := len(out); n > 0 && out[n-1].bag == k.bag && out[n-1].h <= k.h {
			continue
		}
		out = append(out, k)
	}
	return out
}

// joins joins a block with all those before it that are nearly as high, or
// nearly as wide.
func (b *builder) joins(k block) {
	me := len(b.blocks)
	b.blocks = append(b.blocks, k)
	b.byH.put(k.h, me)
	b.byW.put(k.w, me)
	spare := b.w*b.h - b.area - (k.w*k.h - k.area)
	b.partners(b.byH, k.h, k.w, spare, func(j int) { b.join(me, j, Upright) })
	b.partners(b.byW, k.w, k.h, spare, func(j int) { b.join(me, j, Across) })
}

// partners visits blocks whose side is near enough to a block's: the lower one
// leaves at least a unit bare for every unit it is lower.
func (b *builder) partners(x *index, side, other, spare int, visit func(int)) {
	from, _ := slices.BinarySearch(x.sides, side-spare)
	for at := from; at < len(x.sides) && x.sides[at] <= side+spare/other; at++ {
		b.work += 4 * len(x.of[at])
		for _, j := range x.of[at] {
			visit(j)
		}
	}
}

// join leaves out two blocks that are both joined the same way already: their
// parts come together one by one as well.
func (b *builder) join(i, j int, cut Cut) {
	k, o := &b.blocks[i], &b.blocks[j]
	if k.cut == cut && o.cut == cut || k.area+o.area > b.area {
		return
	}
	n := block{area: k.area + o.area, a: i, b: j, cut: cut}
	if cut == Upright {
		n.w, n.h = k.w+o.w, max(k.h, o.h)
	} else {
		n.w, n.h = max(k.w, o.w), k.h+o.h
	}
	if n.w > b.w || n.h > b.h || n.w*n.h-n.area > b.w*b.h-b.area {
		return
	}
	var ok bool
	if n.bag, ok = b.both(k.bag, o.bag); ok {
		b.offer(n)
	}
}

// node draws a block.
func (b *builder) node(i int) *Node {
	k := b.blocks[i]
	if k.cut == None {
		return leaf(k.w, k.h, k.a, k.turned)
	}
	return joined(k.w, k.h, k.cut, b.node(k.a), b.node(k.b))
}
