package planner

// exact tries every layout of a few blocks: the best there is, and what it was given
// where nothing is better.
func (s *scatter) exact(best []int, least int64) []int {
	t := &trying{scatter: s, kindAt: make([]int, len(best)), left: make([]int, len(s.kinds)), best: best, least: least}
	for k, kind := range s.kinds {
		t.left[k] = len(kind.nth)
	}
	t.try(0, 0)
	return t.best
}

// trying is a layout of which the first places are taken.
type trying struct {
	*scatter
	kindAt []int
	left   []int // blocks of each kind
	best   []int
	least  int64
}

// try gives the places from p on their blocks in every way that may be better than
// the best.
func (t *trying) try(p int, cost int64) {
	if cost >= t.least {
		return
	}
	if p == len(t.kindAt) {
		t.best, t.least = append([]int(nil), t.kindAt...), cost
		return
	}
	for k := range t.left {
		if t.left[k] == 0 || t.fixed[p] >= 0 && t.fixed[p] != t.kinds[k].colourway {
			continue
		}
		t.left[k]--
		t.kindAt[p] = k
		t.try(p+1, cost+t.added(p))
		t.left[k]++
	}
}

// added is what the block at p costs beside those before it.
func (t *trying) added(p int) int64 {
	var sum int64
	for q, k := range t.kindAt[:p] {
		if n := t.alike(k, t.kindAt[p]); n > 0 {
			sum += n * t.between(p, q)
		}
	}
	return sum
}
