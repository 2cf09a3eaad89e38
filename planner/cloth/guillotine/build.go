package guillotine

import (
	"cmp"
	"math/bits"
	"slices"
)

// bag counts pieces of every kind in packed fields, each with a spare bit on
// top that shows an overflow.
type bag [2]uint64

// packer maps counts to bags.
type packer struct {
	word, shift []uint
	full, spare bag
}

// newPacker returns false where the counts need more than two words.
func newPacker(counts []int) (*packer, bool) {
	k := &packer{}
	word, shift := uint(0), uint(0)
	for _, n := range counts {
		width := uint(bits.Len(uint(n))) + 1
		if shift+width > 64 {
			word, shift = word+1, 0
		}
		if word > 1 {
			return nil, false
		}
		k.word, k.shift = append(k.word, word), append(k.shift, shift)
		k.full[word] |= uint64(n) << shift
		k.spare[word] |= 1 << (shift + width - 1)
		shift += width
	}
	return k, true
}

// join adds two bags, and returns false where that is more than there is.
func (k *packer) join(a, b bag) (bag, bool) {
	sum := bag{a[0] + b[0], a[1] + b[1]}
	// full + spare - sum keeps every spare bit where no field overflows
	left0 := (k.full[0] | k.spare[0]) - sum[0]
	left1 := (k.full[1] | k.spare[1]) - sum[1]
	return sum, left0&k.spare[0] == k.spare[0] && left1&k.spare[1] == k.spare[1]
}

// block is a rectangle built from pieces by joining two blocks side by side or
// one above the other.
type block struct {
	w, h, area int
	bag        bag
	a, b       int32 // joined blocks, -1 for a piece
	piece      int32
	turned     bool
	cut        Cut
	waste      int
}

// builder joins blocks bottom up until one holds every piece (Wang 1983, Oper.
// Res. 31, 573-586), leaving out those that waste more than the target allows.
type builder struct {
	*packer
	w, h       int // target
	area       int
	spare      int
	fitW, fitH []int
	pieces     []Piece
	blocks     []block // joined with each other already
	byH, byW   *shelfIndex
	wait       [][]block // by area/grain
	grain      int
	work, limit int
	width      int // blocks kept of each grain, 0 is all
	cut        bool
	best       int32
}

// shelfIndex finds blocks by one side.
type shelfIndex struct {
	sides []int
	of    [][]int32
}

func (x *shelfIndex) put(side int, k int32) {
	at, ok := slices.BinarySearch(x.sides, side)
	if !ok {
		x.sides = slices.Insert(x.sides, at, side)
		x.of = slices.Insert(x.of, at, nil)
	}
	x.of[at] = append(x.of[at], k)
}

func newBuilder(w, h int, pieces []Piece, k *packer) *builder {
	b := &builder{packer: k, w: w, h: h, area: areaOf(pieces), pieces: pieces, best: -1, byH: &shelfIndex{}, byW: &shelfIndex{}}
	b.spare = w*h - b.area
	b.grain = b.smallest()
	b.wait = make([][]block, b.area/b.grain+1)
	b.fitW, b.fitH = sums(w, pieces, func(s side) int { return s.w }), sums(h, pieces, func(s side) int { return s.h })
	return b
}

// sums[x] is the greatest sum of sides that is no more than x.
func sums(upTo int, pieces []Piece, measure func(side) int) []int {
	can := make([]bool, upTo+1)
	can[0] = true
	for _, p := range pieces {
		for range p.N {
			for x := upTo; x > 0; x-- {
				for _, s := range p.sides() {
					if m := measure(s); m <= x && can[x-m] {
						can[x] = true
					}
				}
			}
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

func (b *builder) waste(k *block) int {
	if k.w > b.w || k.h > b.h {
		return 1 << 60
	}
	free, high := b.w-k.w, b.h-k.h
	return k.w*k.h - k.area + (free-b.fitW[free])*k.h + (high-b.fitH[high])*k.w
}

func (b *builder) offer(k block) {
	k.waste = b.waste(&k)
	if k.waste > b.spare {
		return
	}
	b.work += 4
	at := k.area/b.grain
	b.wait[at] = append(b.wait[at], k)
}

func (b *builder) run() bool {
	for i, p := range b.pieces {
		if p.N == 0 {
			continue
		}
		for _, s := range p.sides() {
			one := bag{}
			one[b.word[i]] = 1 << b.shift[i]
			b.offer(block{w: s.w, h: s.h, area: p.W * p.H, bag: one, a: -1, b: -1, piece: int32(i), turned: s.turned, cut: None})
		}
	}
	for at := range b.wait {
		for _, k := range b.undominated(b.wait[at]) {
			if k.area == b.area {
				if b.best < 0 || b.blocks[b.best].h > k.h {
					b.best = int32(len(b.blocks))
					b.blocks = append(b.blocks, k)
				}
				continue
			}
			b.joins(k)
			if b.work > b.limit { b.cut=true; return b.best>=0 }
		}
		b.wait[at] = nil
	}
	return b.best >= 0
}

func (b *builder) smallest() int {
	m := 1<<60
	for _, p := range b.pieces { if p.N>0 { m = min(m, p.W*p.H) } }
	return m
}

func (b *builder) undominated(list []block) []block {
	slices.SortFunc(list, func(x, y block) int {
		return cmp.Or(cmp.Compare(x.bag[0], y.bag[0]), cmp.Compare(x.bag[1], y.bag[1]), cmp.Compare(x.w, y.w), cmp.Compare(x.h, y.h), cmp.Compare(x.cut,y.cut), cmp.Compare(x.a,y.a), cmp.Compare(x.b,y.b))
	})
	b.work += len(list)*4
	var out []block
	for _, k := range list {
		if n := len(out); n > 0 && out[n-1].bag == k.bag && out[n-1].h <= k.h {
			continue
		}
		out = append(out, k)
	}
	if b.width > 0 && len(out) > b.width {
		b.cut = true
		slices.SortStableFunc(out, func(x, y block) int { return cmp.Compare(x.waste, y.waste) })
		out = out[:b.width]
	}
	return out
}

func (b *builder) joins(k block) {
	me := int32(len(b.blocks))
	b.blocks = append(b.blocks, k)
	b.byH.put(k.h, me)
	b.byW.put(k.w, me)
	inner := k.w*k.h - k.area
	left := b.spare - inner
	b.partners(b.byH, k.h, k.w, left, func(j int32) { b.join2(&k, me, j, Upright) })
	b.partners(b.byW, k.w, k.h, left, func(j int32) { b.join2(&k, me, j, Across) })
}

// partners visits blocks whose side is close enough to that of a block.
func (b *builder) partners(x *shelfIndex, side, other, left int, visit func(int32)) {
	from, _ := slices.BinarySearch(x.sides, max(0, side-left))
	for at := from; at < len(x.sides) && x.sides[at] <= side+left/other; at++ {
		b.work += len(x.of[at])
		for _, j := range x.of[at] {
			visit(j)
		}
	}
}

func (b *builder) join2(k *block, me, j int32, cut Cut) {
	o := &b.blocks[j]
	if k.cut == cut && o.cut == cut || k.area+o.area > b.area {
		return
	}
	n := block{area: k.area + o.area, a: me, b: j, cut: cut}
	if cut == Upright {
		n.w, n.h = k.w+o.w, max(k.h, o.h)
	} else {
		n.w, n.h = max(k.w, o.w), k.h+o.h
	}
	if n.w > b.w || n.h > b.h || n.w*n.h-n.area > b.spare {
		return
	}
	sum, ok := b.packer.join(k.bag, o.bag)
	if !ok {
		return
	}
	n.bag = sum
	b.offer(n)
}
