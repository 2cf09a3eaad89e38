package planner

import "slices"

// mostExact is how many blocks a quilt may have for every layout of it to be tried.
const mostExact = 9

// The search lets a layout grow worse by less and less. In each round two places are
// picked so many times for each block, and exchanged where that costs no more than the
// round allows: at first a sixteenth of the nearest pair's 1/d², a tenth less in every
// round. More of it was tried, 20 × 20 with 12 colourways: five times the work finds
// layouts that are a thousandth better.
const (
	roundTries  = 60
	rounds      = 40
	firstAllows = int64(1) << 36
)

// mostWork bounds the search of a large quilt, in steps of about a nanosecond.
const mostWork = 150_000_000

// tryWork is the work of trying one exchange, and moveWork for each block that of
// making it.
const tryWork, moveWork = 15, 5

// best is the kinds of all places in the best layout that is found: the best there is
// up to mostExact blocks, and never worse than another order's.
func (s *scatter) best() []int {
	best, least := s.dealt[0], s.cost(s.dealt[0])
	for _, kindAt := range s.dealt[1:] {
		if cost := s.cost(kindAt); cost < least {
			best, least = kindAt, cost
		}
	}
	if len(best) <= mostExact {
		return s.exact(best, least)
	}
	w := s.walk(best, least)
	w.descend()
	w.cool()
	w.descend()
	return w.best
}

// walking is a layout that is being changed, two places at a time.
type walking struct {
	*scatter
	kindAt []int
	cost   int64
	field  [][]int64 // by class and place: Σ 1/d² to the blocks of the class
	rows   [2][]int64
	dice   dice
	work   int

	best  []int
	least int64
}

func (s *scatter) walk(kindAt []int, cost int64) *walking {
	w := &walking{scatter: s, kindAt: slices.Clone(kindAt), cost: cost, best: kindAt, least: cost, dice: 1}
	w.field = make([][]int64, s.classes())
	for class := range w.field {
		w.field[class] = make([]int64, len(kindAt))
	}
	w.rows = [2][]int64{make([]int64, len(kindAt)), make([]int64, len(kindAt))}
	for p, k := range kindAt {
		w.row(p, w.rows[0])
		for _, class := range s.kinds[k].classes {
			for q, near := range w.rows[0] {
				w.field[class][q] += near
			}
		}
	}
	return w
}

// here is what a block of a kind would cost at a place.
func (w *walking) here(kind, p int) int64 {
	classes := w.kinds[kind].classes
	sum := colourwayWeight * w.field[classes[0]][p]
	for _, class := range classes[1:] {
		sum += w.field[class][p]
	}
	return sum
}

// change is by how much the cost grows where two places exchange their blocks.
func (w *walking) change(p, q int) int64 {
	a, b := w.kindAt[p], w.kindAt[q]
	between := 2*w.alike(a, b) - w.alike(a, a) - w.alike(b, b)
	return w.here(b, p) + w.here(a, q) - w.here(a, p) - w.here(b, q) + between*w.between(p, q)
}

// exchange has two places exchange their blocks.
func (w *walking) exchange(p, q int, change int64) {
	a, b := w.kindAt[p], w.kindAt[q]
	w.row(p, w.rows[0])
	w.row(q, w.rows[1])
	w.moved(a, b, w.rows[0], w.rows[1])
	w.moved(b, a, w.rows[1], w.rows[0])
	w.kindAt[p], w.kindAt[q] = b, a
	w.cost += change
	w.work += moveWork * len(w.at)
}

// moved takes what a kind has and the other has not from one place to another.
func (w *walking) moved(kind, other int, from, to []int64) {
	for _, class := range w.kinds[kind].classes {
		if slices.Contains(w.kinds[other].classes, class) {
			continue
		}
		field := w.field[class]
		for i := range field {
			field[i] += to[i] - from[i]
		}
	}
}

// may reports whether two places can exchange their blocks.
func (w *walking) may(p, q int) bool {
	return w.fixed[p] < 0 && w.fixed[q] < 0 || w.kinds[w.kindAt[p]].colourway == w.kinds[w.kindAt[q]].colourway
}

// try exchanges the blocks of two places where that costs less than what is allowed.
func (w *walking) try(p, q int, allowed int64) bool {
	if w.kindAt[p] == w.kindAt[q] || !w.may(p, q) {
		return false
	}
	w.work += tryWork
	change := w.change(p, q)
	if change >= allowed {
		return false
	}
	w.exchange(p, q, change)
	return true
}

// cool walks at random, allowing less and less.
func (w *walking) cool() {
	allowed := firstAllows
	for range rounds {
		for range roundTries * len(w.at) {
			w.try(w.dice.below(len(w.at)), w.dice.below(len(w.at)), allowed)
			if w.work > mostWork {
				return
			}
		}
		allowed = allowed * 9 / 10
	}
}

// descend exchanges places as long as that makes the layout better, and keeps it
// where it is the best so far.
func (w *walking) descend() {
	for better := true; better; {
		better = false
		for p := range w.at {
			for q := range p {
				better = w.try(p, q, 0) || better
			}
			if w.work > mostWork {
				better = false
				break
			}
		}
	}
	if w.cost < w.least {
		w.best, w.least = slices.Clone(w.kindAt), w.cost
	}
}

// dice is a source of numbers that look thrown and are the same every time
// (xorshift64*, Vigna 2016).
type dice uint64

func (d *dice) below(n int) int {
	*d ^= *d >> 12
	*d ^= *d << 25
	*d ^= *d >> 27
	return int(uint64(*d) * 2685821657736338717 >> 33 % uint64(n))
}
