package guillotine

// slot is one kind of thing that a filler may take up to most times, each
// taking width w and worth value.
type slot struct {
	id, w, most int
	value       int64
}

// filler solves bounded knapsacks over a width by dynamic programming, keeping
// the rows that two calls in a row have in common.
type filler struct {
	w     int
	slots []slot
	best  [][]int64 // best[k][c] is the greatest value of the first k slots in width c
	picks [][]uint16
	work  int // cells computed
}

func newFiller(w int) *filler {
	return &filler{w: w, best: [][]int64{make([]int64, w+1)}, picks: [][]uint16{nil}}
}

// fill is the greatest value of slots that fits the width.
func (f *filler) fill(slots []slot) int64 {
	same := 0
	for same < len(slots) && same < len(f.slots) && slots[same] == f.slots[same] {
		same++
	}
	f.slots = append(f.slots[:same], slots[same:]...)
	for k := same; k < len(slots); k++ {
		f.row(k)
	}
	return f.best[len(slots)][f.w]
}

// row computes best[k+1] from best[k].
func (f *filler) row(k int) {
	if len(f.best) <= k+1 {
		f.best = append(f.best, make([]int64, f.w+1))
		f.picks = append(f.picks, make([]uint16, f.w+1))
	}
	s, old, best, picks := f.slots[k], f.best[k], f.best[k+1], f.picks[k+1]
	copy(best, old)
	clear(picks)
	f.work += f.w
	for n := 1; n <= s.most && n*s.w <= f.w; n++ {
		worth, taken := int64(n)*s.value, n*s.w
		f.work += f.w - taken
		from, to, pick := old[:f.w+1-taken], best[taken:], picks[taken:]
		for c, v := range from {
			if v+worth > to[c] {
				to[c], pick[c] = v+worth, uint16(n)
			}
		}
	}
}

// taken adds to take[id] what the last fill took.
func (f *filler) taken(take []int) {
	c := f.w
	for k := len(f.slots); k > 0; k-- {
		n := int(f.picks[k][c])
		take[f.slots[k-1].id] += n
		c -= n * f.slots[k-1].w
	}
}

// begin starts a filling of width w, no more than it was made for or grown to.
func (f *filler) begin(w int) {
	f.w, f.slots = w, f.slots[:0]
	for k := range f.best {
		if len(f.best[k]) <= w {
			f.best[k] = make([]int64, w+1)
			f.picks[k] = make([]uint16, w+1)
		}
	}
	clear(f.best[0][:w+1])
}

// add takes in one more slot.
func (f *filler) add(s slot) {
	f.slots = append(f.slots, s)
	k := len(f.slots)
	if len(f.best) <= k {
		f.best = append(f.best, make([]int64, f.w+1))
		f.picks = append(f.picks, make([]uint16, f.w+1))
	}
	if len(f.best[k]) <= f.w {
		f.best[k] = make([]int64, f.w+1)
		f.picks[k] = make([]uint16, f.w+1)
	}
	old, best, picks := f.best[k-1][:f.w+1], f.best[k][:f.w+1], f.picks[k][:f.w+1]
	copy(best, old)
	clear(picks)
	f.work += f.w
	for n := 1; n <= s.most && n*s.w <= f.w; n++ {
		worth, taken := int64(n)*s.value, n*s.w
		f.work += f.w - taken
		from, to, pick := old[:f.w+1-taken], best[taken:], picks[taken:]
		for c, v := range from {
			if v+worth > to[c] {
				to[c], pick[c] = v+worth, uint16(n)
			}
		}
	}
}

func (f *filler) value() int64 { return f.best[len(f.slots)][f.w] }
