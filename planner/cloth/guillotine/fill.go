package guillotine

// slot is one kind of thing that a filler may take up to most times, each
// taking width w and worth value.
type slot struct {
	id, w, most int
	value       int64
}

// filler solves bounded knapsacks over a width by dynamic programming, slot by
// slot: best[k][c] is the greatest value of the first k slots in width c, and
// picks[k][c] how often it takes the last of them.
type filler struct {
	w     int
	slots []slot
	best  [][]int64
	picks [][]uint16
	kept  []slot // of the filling before, as far as its rows still hold
	work  int
}

func newFiller(w int) *filler {
	f := &filler{}
	f.begin(w)
	return f
}

// begin starts a filling of width w with no slots.
func (f *filler) begin(w int) {
	f.w, f.slots, f.kept = w, f.slots[:0], nil
	f.grow(0)
	clear(f.best[0][:w+1])
}

// again is begin where the filling before may have begun with the same slots: rows of
// those are not worked out anew, though their work counts.
func (f *filler) again(w int) {
	if w != f.w {
		f.begin(w)
		return
	}
	f.slots, f.kept = f.slots[:0], f.slots
}

func (f *filler) grow(k int) {
	if len(f.best) <= k {
		f.best, f.picks = append(f.best, nil), append(f.picks, nil)
	}
	if len(f.best[k]) <= f.w {
		f.best[k], f.picks[k] = make([]int64, f.w+1), make([]uint16, f.w+1)
	}
}

// add takes in one more slot.
func (f *filler) add(s slot) {
	k := len(f.slots) + 1
	same := k <= len(f.kept) && f.kept[k-1] == s
	if !same {
		f.kept = nil
	}
	f.slots = append(f.slots, s)
	f.grow(k)
	old, best, picks := f.best[k-1][:f.w+1], f.best[k][:f.w+1], f.picks[k][:f.w+1]
	f.work += 40 + f.w
	for n := 1; n <= s.most && n*s.w <= f.w; n++ {
		f.work += 5 + (f.w-n*s.w)*2/3
	}
	if same {
		return
	}
	if k == 1 {
		s.alone(best, picks)
		return
	}
	copy(best, old)
	clear(picks)
	for n := 1; n <= s.most && n*s.w <= f.w; n++ {
		worth, taken := int64(n)*s.value, n*s.w
		to, pick := best[taken:], picks[taken:]
		for c, v := range old[:f.w+1-taken] {
			if v+worth > to[c] {
				to[c], pick[c] = v+worth, uint16(n)
			}
		}
	}
}

// alone is the rows of a slot that is the first: as many of it as there is width for.
func (s slot) alone(best []int64, picks []uint16) {
	if s.value <= 0 {
		clear(best)
		clear(picks)
		return
	}
	for from, n := 0, 0; from < len(best); n++ {
		to := len(best)
		if n < s.most {
			to = min(to, from+s.w)
		}
		worth := int64(n) * s.value
		for c := from; c < to; c++ {
			best[c], picks[c] = worth, uint16(n)
		}
		from = to
	}
}

// value is the greatest value of the slots so far.
func (f *filler) value() int64 { return f.best[len(f.slots)][f.w] }

// fill is the greatest value of slots, keeping the rows that this call has in
// common with the one before.
func (f *filler) fill(slots []slot) int64 {
	f.kept = nil
	same := 0
	for same < len(slots) && same < len(f.slots) && slots[same] == f.slots[same] {
		same++
	}
	f.slots = f.slots[:same]
	for _, s := range slots[same:] {
		f.add(s)
	}
	return f.value()
}

// taken adds to take[id] what the best filling takes.
func (f *filler) taken(take []int) {
	c := f.w
	for k := len(f.slots); k > 0; k-- {
		n := int(f.picks[k][c])
		take[f.slots[k-1].id] += n
		c -= n * f.slots[k-1].w
	}
}
