package guillotine

import (
	"cmp"
	"slices"
)

// shelfSearch tries levels one after the other: the piece that is hardest to
// place opens a level, and every full level that can still beat the best plan
// is tried, best priced first.
type shelfSearch struct {
	*bench
	prices prices
	step   int // two different lengths differ by at least this
	best   []level
	length int
	children int // tried at each level at most; 0 is all
	cut      bool
	steps    int
	limit    int
	seen   map[string]int
	open   []level
}

// option is a level that may come next.
type option struct {
	level
	loss int64
}

func (s *shelfSearch) run(rem []int, used int) {
	if s.steps >= s.limit {
		s.cut = true
		return
	}
	s.steps++
	t := s.hardest(rem)
	if t < 0 {
		if used < s.length {
			s.length, s.best = used, slices.Clone(s.open)
		}
		return
	}
	if s.slack(rem, used) < 0 || s.known(rem, used) || used+s.rough(rem) > s.length-s.step {
		return
	}
	options := s.options(rem, t, s.slack(rem, used))
	if s.children > 0 && len(options) > s.children {
		options, s.cut = options[:s.children], true
	}
	for _, o := range options {
		if s.slack(rem, used) < o.loss {
			break
		}
		o.from(rem, -1)
		s.open = append(s.open, o.level)
		s.run(rem, used+o.h)
		s.open = s.open[:len(s.open)-1]
		o.from(rem, 1)
	}
}

func (l level) from(rem []int, sign int) {
	for _, u := range l.uses {
		rem[u.piece] += sign * u.n
	}
}

// slack is how much a level may fall short of its prices before the plan can
// no longer beat the best.
func (s *shelfSearch) slack(rem []int, used int) int64 {
	return int64(s.length-s.step-used)*dualScale - s.prices.of(rem)
}

// known reports whether the same pieces were left before, no later.
func (s *shelfSearch) known(rem []int, used int) bool {
	key := make([]byte, 0, 2*len(rem))
	for _, n := range rem {
		key = append(key, byte(n), byte(n>>8))
	}
	if before, ok := s.seen[string(key)]; ok && before <= used {
		return true
	}
	s.seen[string(key)] = used
	return false
}

// hardest is the piece left with the greatest least height.
func (s *shelfSearch) hardest(rem []int) int {
	t := -1
	for i, n := range rem {
		if n > 0 && (t < 0 || s.leastHeight(i) > s.leastHeight(t)) {
			t = i
		}
	}
	return t
}

func (b *bench) leastHeight(i int) int {
	least := 0
	for _, s := range b.pieces[i].sides() {
		if s.w <= b.w && (least == 0 || s.h < least) {
			least = s.h
		}
	}
	return least
}

// rough is a bound from widths alone: at every height, enough levels for the
// pieces that reach it.
func (s *shelfSearch) rough(rem []int) int {
	return s.bench.rough(rem)
}

// options lists the full levels that hold piece t and lose no more than slack.
func (s *shelfSearch) options(rem []int, t int, slack int64) []option {
	g := &levelMaker{shelfSearch: s, rem: rem, t: t, slack: slack}
	for _, h := range s.tall {
		if s.in(t, h).w == 0 {
			break
		}
		if s.fixedTop(t) && h != s.pieces[t].H {
			continue
		}
		g.at(h)
	}
	slices.SortStableFunc(g.found, func(a, b option) int { return cmp.Compare(a.loss, b.loss) })
	return g.found
}

// fixedTop reports whether no piece left can be higher than t, as none is where
// pieces are not turned.
func (s *shelfSearch) fixedTop(t int) bool { return len(s.pieces[t].sides()) == 1 && !s.anyFree() }

func (b *bench) anyFree() bool {
	return slices.ContainsFunc(b.pieces, func(p Piece) bool { return p.Free })
}

// levelMaker lists levels of one height.
type levelMaker struct {
	*shelfSearch
	rem   []int
	t     int
	slack int64
	h     int
	slots []slot
	sides []side
	take  []int
	found []option
}

func (g *levelMaker) at(h int) {
	g.h, g.slots = h, g.slots[:0]
	g.slots = append(g.slots, slot{g.t, g.in(g.t, h).w, g.rem[g.t], g.prices[g.t]})
	for i, n := range g.rem {
		if s := g.in(i, h); n > 0 && i != g.t && s.w > 0 {
			g.slots = append(g.slots, slot{i, s.w, n, g.prices[i]})
		}
	}
	slices.SortStableFunc(g.slots[1:], func(a, b slot) int {
		return cmp.Compare(b.value*int64(a.w), a.value*int64(b.w))
	})
	g.take = make([]int, len(g.slots))
	g.choose(0, g.w, 0)
}

// choose tries every number of slot k, most first.
func (g *levelMaker) choose(k, room int, value int64) {
	if g.steps >= g.limit {
		return
	}
	need := int64(g.h)*dualScale - g.slack
	if k == len(g.slots) {
		if value >= need && g.full(room) {
			g.add(value)
		}
		return
	}
	s := g.slots[k]
	if k > 0 && value+int64(room)*s.value/int64(s.w)+1 < need {
		return
	}
	g.steps++
	least := 0
	if k == 0 {
		least = 1
	}
	for n := min(s.most, room/s.w); n >= least; n-- {
		g.take[k] = n
		g.choose(k+1, room-n*s.w, value+int64(n)*s.value)
	}
}

// full reports whether no piece left over fits the room left.
func (g *levelMaker) full(room int) bool {
	for k, s := range g.slots {
		if s.w <= room && g.take[k] < s.most {
			return false
		}
	}
	return true
}

// add keeps the level unless a lower one holds the same.
func (g *levelMaker) add(value int64) {
	l := level{}
	for k, n := range g.take {
		if n > 0 {
			s := g.in(g.slots[k].id, g.h)
			l.uses = append(l.uses, use{g.slots[k].id, s.turned, n})
			l.h = max(l.h, s.h)
		}
	}
	if l.h == g.h {
		g.found = append(g.found, option{l, int64(l.h)*dualScale - value})
	}
}
