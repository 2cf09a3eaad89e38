package guillotine
import ("slices";"cmp")

func (b *bench) dominated() [][]int {
	out := make([][]int, len(b.pieces))
	covers := func(i, j int) bool {
		p, q := b.pieces[i], b.pieces[j]
		if p.Free != q.Free { return false }
		if !p.Free { return p.W>=q.W && p.H>=q.H }
		return min(p.W,p.H)>=min(q.W,q.H) && max(p.W,p.H)>=max(q.W,q.H)
	}
	for i := range b.pieces {
		for j := range b.pieces {
			if i==j || !covers(i,j) { continue }
			// only direct
			direct := true
			for k := range b.pieces { if k!=i&&k!=j&&covers(i,k)&&covers(k,j) { direct=false; break } }
			if direct { out[i]=append(out[i], j) }
		}
	}
	return out
}

// greedy is the best of first fit and best fit over orders.
func (b *bench) greedy() []level {
	var best []level
	for turn := range 3 {
		for fit := range 2 {
			l := b.shelve(turn, fit)
			if best == nil || total(l) < total(best) { best = l }
		}
		if !b.anyFree() { break }
	}
	return best
}

func (b *bench) shelve(turn, fit int) []level {
	order := make([]int, 0, len(b.pieces))
	lie := make([]side, len(b.pieces))
	for i, p := range b.pieces {
		order = append(order, i)
		for _, s := range p.sides() {
			if s.w > b.w { continue }
			o := lie[i]
			if o.w == 0 || turn==0 && s.h<o.h || turn==1 && s.h>o.h || turn==2 && s==b.plainSide(p) { lie[i]=s }
		}
	}
	slices.SortStableFunc(order, func(x, y int) int {
		return cmp.Or(lie[y].h-lie[x].h, lie[y].w-lie[x].w)
	})
	var out []level
	var room []int
	for _, i := range order {
		for range b.pieces[i].N {
			at := -1
			for k := range out {
				if s := b.in(i, out[k].h); s.w > 0 && s.w <= room[k] && (at<0 || fit==1 && room[k]-s.w < room[at]-b.in(i,out[at].h).w) {
					at = k
					if fit==0 { break }
				}
			}
			s := lie[i]
			if at < 0 {
				out, room = append(out, level{h: s.h}), append(room, b.w)
				at = len(out)-1
			} else { s = b.in(i, out[at].h) }
			room[at] -= s.w
			out[at].add(i, s.turned)
		}
	}
	return out
}

func (l *level) add(piece int, turned bool) {
	for k := range l.uses { if l.uses[k].piece==piece && l.uses[k].turned==turned { l.uses[k].n++; return } }
	l.uses = append(l.uses, use{piece, turned, 1})
}
