package patchwork

import (
	"math/bits"
	"slices"
)

// ties is a number of choices, some two of which cost something where both are
// taken the same way; a cost below nought is paid where they differ. Pressing
// comes to no more than this: where two seams meet they nest or clash, and of
// three that meet two always lean the same way.
type ties struct {
	links   [][]tie
	way     Way
	decided []bool
}

// tie is one choice's share in a pair: the other choice, and the cost.
type tie struct {
	to   int
	cost int64
}

func newTies(choices int) *ties {
	return &ties{links: make([][]tie, choices), way: make(Way, choices), decided: make([]bool, choices)}
}

// add ties two different choices; what a pair costs adds up.
func (t *ties) add(u, v int, cost int64) {
	t.links[u] = added(t.links[u], tie{v, cost})
	t.links[v] = added(t.links[v], tie{u, cost})
}

func added(list []tie, more tie) []tie {
	for i := range list {
		if list[i].to == more.to {
			list[i].cost += more.cost
			return list
		}
	}
	return append(list, more)
}

func (t *ties) decide(choice int, second bool) {
	t.way[choice], t.decided[choice] = second, true
}

// cheapest is the way of taking all choices that costs least; of equals the one
// listed first, the first choice taken the first way, and so on.
func (t *ties) cheapest() Way {
	for choice := range t.links {
		if t.decided[choice] {
			continue
		}
		// The order of a group can be ranked for so many choices at once.
		for group := t.group(choice); len(group) > 0; group = group[min(len(group), ranks):] {
			_, answer := t.net(group).solve(widest)
			for i := range min(len(group), ranks) {
				t.decide(group[i], answer[i])
			}
		}
	}
	return t.way
}

// group is the open choices that hang together with one of them, rising.
func (t *ties) group(choice int) []int {
	group := []int{choice}
	seen := map[int]bool{choice: true}
	for i := 0; i < len(group); i++ {
		for _, link := range t.links[group[i]] {
			if link.cost != 0 && !t.decided[link.to] && !seen[link.to] {
				seen[link.to] = true
				group = append(group, link.to)
			}
		}
	}
	slices.Sort(group)
	return group
}

// net is a group of choices numbered from nought, what is decided beside it
// taken into account.
type net struct {
	alone [][2]worth // what each choice costs by itself, taken either way
	links [][]tie
}

func (t *ties) net(group []int) net {
	n := net{make([][2]worth, len(group)), make([][]tie, len(group))}
	for i, choice := range group {
		if i < ranks {
			n.alone[i][1].order = 1 << (ranks - 1 - i)
		}
		for _, link := range t.links[choice] {
			if t.decided[link.to] {
				n.alone[i][side(t.way[link.to])].main += link.cost
			} else if j, ok := slices.BinarySearch(group, link.to); ok && link.cost != 0 {
				n.links[i] = append(n.links[i], tie{j, link.cost})
			}
		}
	}
	return n
}

func side(second bool) int {
	if second {
		return 1
	}
	return 0
}

// turn is when a choice is decided: as an answer to each way of taking the
// choices of its scope, which are decided after it.
type turn struct {
	choice int
	scope  []int
}

// turns is the order of deciding: always the choice with the fewest others in
// its scope, the first of equals. Width is the longest scope.
func (n net) turns() (order []turn, width int) {
	beside := newMatrix(len(n.links))
	for i, links := range n.links {
		for _, link := range links {
			beside.set(i, link.to)
		}
	}
	open := make([]int, len(n.links))
	for i := range open {
		open[i] = i
	}
	for len(open) > 0 {
		best, fewest := 0, len(n.links)+1
		for i, choice := range open {
			if size := beside.count(choice); size < fewest {
				best, fewest = i, size
			}
		}
		next := turn{open[best], beside.row(open[best])}
		open = slices.Delete(open, best, best+1)
		beside.remove(next.choice, next.scope)
		order = append(order, next)
		width = max(width, len(next.scope))
	}
	return order, width
}

// solve finds the least cost and a way that has it, by variable elimination (R.
// Dechter, Bucket elimination, 1999): one choice after the other gives way to a
// table of its best answers. No table spans more than limit choices.
func (n net) solve(limit int) (worth, Way) {
	order, width := n.turns()
	if width > limit {
		return n.branch(limit)
	}
	when := make([]int, len(order))
	for i, t := range order {
		when[t.choice] = i
	}
	var total worth
	answers := make([][]bool, len(order))
	waiting := make([][]table, len(order))
	for i, t := range order {
		best, answer := n.answer(t, when, waiting[i])
		answers[i] = answer
		if len(t.scope) == 0 {
			total = total.plus(best[0])
			continue
		}
		next := len(order)
		for _, choice := range t.scope {
			next = min(next, when[choice])
		}
		waiting[next] = append(waiting[next], table{t.scope, best})
	}
	way := make(Way, len(order))
	for i := len(order) - 1; i >= 0; i-- {
		way[order[i].choice] = answers[i][way.place(order[i].scope)]
	}
	return total, way
}

// place is the place in a table over scope where the choices are taken as w says.
func (w Way) place(scope []int) int {
	place := 0
	for j, choice := range scope {
		place |= side(w[choice]) << j
	}
	return place
}

// table is a cost for every way of taking the choices of a scope: bit j of a
// place tells how scope[j] is taken.
type table struct {
	scope []int
	worth []worth
}

// answer is the best cost of one choice for every way of taking its scope, and
// whether the choice is then taken the second way.
func (n net) answer(t turn, when []int, tables []table) ([]worth, []bool) {
	size := 1 << len(t.scope)
	both := make([]worth, 2*size) // the choice itself is the highest bit
	first, second := both[:size], both[size:]
	for place := range first {
		first[place], second[place] = n.alone[t.choice][0], n.alone[t.choice][1]
	}
	for _, link := range n.links[t.choice] {
		if when[link.to] < when[t.choice] {
			continue // it is in a table already
		}
		bit := 1 << slices.Index(t.scope, link.to)
		for place := range first {
			if place&bit == 0 {
				first[place].main += link.cost
			} else {
				second[place].main += link.cost
			}
		}
	}
	with := append(slices.Clip(t.scope), t.choice)
	for _, old := range tables {
		old.addTo(both, with)
	}
	answer := make([]bool, size)
	for place := range first {
		if second[place].less(first[place]) {
			first[place], answer[place] = second[place], true
		}
	}
	return first, answer
}

// addTo adds a table to one over a scope that holds its own.
func (t table) addTo(sum []worth, scope []int) {
	var bit [bits.UintSize]int
	for j, choice := range t.scope {
		bit[j] = slices.Index(scope, choice)
	}
	for place := range sum {
		mine := 0
		for j := range t.scope {
			mine |= place >> bit[j] & 1 << j
		}
		sum[place] = sum[place].plus(t.worth[mine])
	}
}

// never is a cost that is not worth paying.
const never = 1 << 60

// branch decides the choice with the most others beside it both ways and keeps
// the better answer.
func (n net) branch(limit int) (worth, Way) {
	busiest := 0
	for i, links := range n.links {
		if len(links) > len(n.links[busiest]) {
			busiest = i
		}
	}
	least, best := n.given(busiest, false).solve(limit)
	if sum, way := n.given(busiest, true).solve(limit); sum.less(least) {
		least, best = sum, way
	}
	return least, best
}

// given is the net with one choice taken one way.
func (n net) given(choice int, second bool) net {
	less := net{slices.Clone(n.alone), slices.Clone(n.links)}
	less.alone[choice][1-side(second)].main += never
	for _, link := range n.links[choice] {
		less.alone[link.to][side(second)].main += link.cost
		less.links[link.to] = slices.DeleteFunc(slices.Clone(n.links[link.to]), func(back tie) bool { return back.to == choice })
	}
	less.links[choice] = nil
	return less
}

// matrix tells which of a number of things are beside each other.
type matrix struct {
	words int
	bits  []uint64
}

func newMatrix(size int) matrix {
	words := (size + 63) / 64
	return matrix{words, make([]uint64, size*words)}
}

func (m matrix) line(i int) []uint64 { return m.bits[i*m.words : (i+1)*m.words] }

func (m matrix) set(i, j int) { m.line(i)[j/64] |= 1 << (j % 64) }

func (m matrix) count(i int) int {
	n := 0
	for _, word := range m.line(i) {
		n += bits.OnesCount64(word)
	}
	return n
}

// row is what is beside a thing, rising.
func (m matrix) row(i int) []int {
	row := make([]int, 0, m.count(i))
	for w, word := range m.line(i) {
		for ; word != 0; word &= word - 1 {
			row = append(row, w*64+bits.TrailingZeros64(word))
		}
	}
	return row
}

// remove takes a thing out and puts all that was beside it beside each other.
func (m matrix) remove(i int, row []int) {
	gone := m.line(i)
	for _, j := range row {
		line := m.line(j)
		for w := range line {
			line[w] |= gone[w]
		}
		line[i/64] &^= 1 << (i % 64)
		line[j/64] &^= 1 << (j % 64)
	}
}
