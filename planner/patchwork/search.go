package patchwork

import "slices"

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

// The bounds of a search: how many choices one table may span (2 to their number
// entries), and how many more may be decided both ways before that.
const (
	widestTable  = 14
	mostBranches = 2
)

// search finds the cheapest way; false where that would take too long.
func (n net) search() (Way, bool) {
	_, way, ok := n.solve(widestTable, mostBranches)
	return way, ok
}

// solve finds the least cost and a way that has it, by variable elimination (R.
// Dechter, Bucket elimination, 1999): one choice after the other gives way to a
// table of its best answers. No table spans more than limit choices; it gives up
// where so many branches do not bring it down to that.
func (n net) solve(limit, branches int) (worth, Way, bool) {
	order, width := n.turns()
	if width > limit {
		return n.branch(limit, branches)
	}
	total, way := n.eliminate(order)
	return total, way, true
}

func (n net) eliminate(order []turn) (worth, Way) {
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
	bit := make([]int, len(t.scope))
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
func (n net) branch(limit, branches int) (worth, Way, bool) {
	if branches == 0 {
		return worth{}, nil, false
	}
	busiest := 0
	for i, links := range n.links {
		if len(links) > len(n.links[busiest]) {
			busiest = i
		}
	}
	least, best, ok := n.given(busiest, false).solve(limit, branches-1)
	if !ok {
		return least, best, false
	}
	sum, way, ok := n.given(busiest, true).solve(limit, branches-1)
	if sum.less(least) {
		least, best = sum, way
	}
	return least, best, ok
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
