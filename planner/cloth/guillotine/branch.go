package guillotine

import "slices"

// shelfSearch tries levels one after the other: the piece that is hardest to
// place opens a level, and every full level that can still beat the best plan
// is tried, the best priced first.
type shelfSearch struct {
	*bench
	prices prices
	goal   int // only plans this long or shorter are of use
	best   []level
	open   []level
	seen   map[string]int
	steps  int
	limit  int // steps after which it gives up
}

// option is a level that may come next, and what it costs beyond its worth.
type option struct {
	level
	loss int64
}

// search looks for plans no longer than goal. It returns the best, or nil, and
// whether all plans were tried.
func (b *bench) search(values prices, goal, limit int) (best []level, steps int, all bool) {
	s := &shelfSearch{bench: b, prices: values, goal: goal, seen: map[string]int{}, limit: limit}
	s.run(counts(b.pieces), 0)
	return s.best, s.steps, s.steps < s.limit
}

func (s *shelfSearch) run(rem []int, used int) {
	if s.steps >= s.limit {
		return
	}
	s.steps++
	t := s.hardest(rem)
	if t < 0 {
		s.best, s.goal = slices.Clone(s.open), used-1
		return
	}
	slack := s.slack(rem, used)
	if slack < 0 || s.known(rem, used) || used+s.rough(rem) > s.goal {
		return
	}
	for _, o := range s.options(rem, t, slack) {
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

// slack is how much levels may cost beyond their worth before the plan misses
// the goal.
func (s *shelfSearch) slack(rem []int, used int) int64 {
	return int64(s.goal-used)*dualScale - s.prices.of(rem)
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

// options lists the full levels that hold piece t and lose no more than slack,
// the least loss first.
func (s *shelfSearch) options(rem []int, t int, slack int64) []option {
	m := &levelMaker{shelfSearch: s, rem: rem, t: t, slack: slack}
	for _, h := range s.openings(t) {
		m.at(h)
	}
	slices.SortStableFunc(m.found, func(a, b option) int { return compare(a.loss, b.loss) })
	return m.found
}

// levelMaker lists the levels that may come next.
type levelMaker struct {
	*shelfSearch
	rem   []int
	t     int
	slack int64
	h     int
	slots []slot
	take  []int
	found []option
}

// at lists those of height h. The slots after the first go by worth for width,
// so that what may still be gained is bounded by the next of them.
func (m *levelMaker) at(h int) {
	m.h = h
	m.slots = append(m.slots[:0], slot{m.t, m.in(m.t, h).w, m.rem[m.t], m.prices[m.t]})
	for i, n := range m.rem {
		if s := m.in(i, h); n > 0 && i != m.t && s.w > 0 {
			m.slots = append(m.slots, slot{i, s.w, n, m.prices[i]})
		}
	}
	slices.SortStableFunc(m.slots[1:], func(a, b slot) int {
		return compare(b.value*int64(a.w), a.value*int64(b.w))
	})
	m.take = make([]int, len(m.slots))
	m.steps += len(m.slots) / 2
	m.choose(0, m.w, 0)
}

// choose tries every number of slot k, most first.
func (m *levelMaker) choose(k, room int, value int64) {
	if m.steps >= m.limit {
		return
	}
	need := int64(m.h)*dualScale - m.slack
	if k == len(m.slots) {
		if value >= need && m.full(room) {
			m.add(value)
		}
		return
	}
	s := m.slots[k]
	least := 1
	if k > 0 {
		if value+int64(room)*s.value/int64(s.w)+1 < need {
			return
		}
		least = 0
	}
	m.steps++
	for n := min(s.most, room/s.w); n >= least; n-- {
		m.take[k] = n
		m.choose(k+1, room-n*s.w, value+int64(n)*s.value)
	}
}

// full reports whether no piece left over fits the room left.
func (m *levelMaker) full(room int) bool {
	for k, s := range m.slots {
		if s.w <= room && m.take[k] < s.most {
			return false
		}
	}
	return true
}

// add keeps the level unless a lower one holds the same.
func (m *levelMaker) add(value int64) {
	l := level{}
	for k, n := range m.take {
		if n > 0 {
			s := m.in(m.slots[k].id, m.h)
			l.uses = append(l.uses, use{m.slots[k].id, s.turned, n})
			l.h = max(l.h, s.h)
		}
	}
	if l.h == m.h {
		m.found = append(m.found, option{l, int64(l.h)*dualScale - value})
	}
}

func compare(a, b int64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	default:
		return 0
	}
}
