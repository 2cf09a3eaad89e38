package guillotine

import "fmt"

type nestedPlan struct {
	h, bound, work int
	info string
}

var beamWidth, beamLimit, exactLimit = 24, 5000000, 1500000

func (b *bench) nested(ub, lb int) nestedPlan {
	p := nestedPlan{h: ub, bound: lb}
	k, ok := newPacker(counts(b.pieces))
	if !ok { return p }
	// exact, target by target
	grow := 1
	for target := lb; p.bound < p.h; {
		bb := newBuilder(b.w, min(target, p.h-1), b.pieces, k)
		bb.limit = exactLimit-p.work
		found := bb.run()
		p.work += bb.work
		p.info += fmt.Sprintf(" [%d blocks=%d work=%dk cut=%v]", bb.h, len(bb.blocks), bb.work/1000, bb.cut)
		if found {
			p.h = bb.blocks[bb.best].h
			if !bb.cut { p.bound = p.h }
		}
		if bb.cut { break }
		if !found { p.bound = bb.h+1 }
		grow *= 2
		target = p.bound + grow - 1
	}
	lo := p.bound
	width := beamWidth
	step := max(1, lo/100)
	target := lo
	found := false
	for lo < p.h && p.work < beamLimit {
		if found { target = (lo+p.h)/2 } 
		bb := newBuilder(b.w, min(target, p.h-1), b.pieces, k)
		bb.width = max(2, width*64*bb.grain/bb.area)
		bb.limit = beamLimit-p.work
		ok := bb.run()
		p.work += bb.work
		p.info += fmt.Sprintf(" [beam %d blocks=%d work=%dk cut=%v found=%v]", bb.h, len(bb.blocks), bb.work/1000, bb.cut, ok)
		if ok {
			p.h = bb.blocks[bb.best].h
			found = true
		} else {
			lo = bb.h+1
			if !found { target = max(lo, target+step); step = step*3/2+1 }
		}
	}
	return p
}
