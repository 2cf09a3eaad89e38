package patchwork

import "slices"

// ties is a number of choices, some two of which cost something where both are
// taken the same way; a cost below nought is paid where they differ. Pressing
// comes to no more than this: where two seams meet they nest or clash, and of
// three that meet two always lean the same way.
type ties struct {
	links   [][]tie
	way     Way
	decided []bool
	clash   int64 // what one clash costs, more than twice all that is no clash; 0: no cost is a clash
}

// tie is one choice's share in a pair: the other choice, and the cost.
type tie struct {
	to   int
	cost int64
}

func newTies(choices int) *ties {
	const few = 8 // most choices meet no more
	links, room := make([][]tie, choices), make([]tie, few*choices)
	for i := range links {
		links[i] = room[few*i : few*i : few*(i+1)]
	}
	return &ties{links: links, way: make(Way, choices), decided: make([]bool, choices)}
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
// listed first, the first choice taken the first way, and so on. Exact is false
// where too many choices hang together to be sure: then no single choice taken
// the other way costs less.
func (t *ties) cheapest() (way Way, exact bool) {
	exact = true
	for choice := range t.links {
		if t.decided[choice] {
			continue
		}
		group := t.group(choice)
		if !t.bound(group) {
			// All of it taken the other way costs the same and is listed later.
			t.decide(choice, false)
			group = group[1:]
		}
		exact = t.settle(group) && exact
	}
	return t.way, exact
}

// settle decides choices that hang together. Their order can be ranked for so
// many at once.
func (t *ties) settle(group []int) (exact bool) {
	exact = true
	for len(group) > 0 {
		answer, sure := t.net(group).best(t.clash)
		exact = exact && sure
		ranked := min(len(group), ranks)
		for i := range ranked {
			t.decide(group[i], answer[i])
		}
		group = group[ranked:]
	}
	return exact
}

// group is the open choices that hang together with one of them, rising.
func (t *ties) group(choice int) []int {
	group := []int{choice}
	seen := make([]bool, len(t.links))
	seen[choice] = true
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

// bound reports whether anything decided is tied to a choice of the group.
func (t *ties) bound(group []int) bool {
	for _, choice := range group {
		for _, link := range t.links[choice] {
			if link.cost != 0 && t.decided[link.to] {
				return true
			}
		}
	}
	return false
}

// worth is what a way costs, the less the better.
type worth struct {
	main  int64
	order uint64 // which ranked choices are taken the second way, the first in the highest bit
}

// ranks is how many choices one order can rank.
const ranks = 64

func (w worth) plus(v worth) worth { return worth{w.main + v.main, w.order + v.order} }

func (w worth) less(v worth) bool {
	return w.main < v.main || w.main == v.main && w.order < v.order
}

// net is a group of choices numbered from nought, what is decided beside it
// taken into account.
type net struct {
	alone [][2]worth // what each choice costs by itself, taken either way
	links [][]tie
}

func (t *ties) net(group []int) net {
	n := newNet(len(group))
	size := 0
	for _, choice := range group {
		size += len(t.links[choice])
	}
	room := make([]tie, 0, size)
	for i, choice := range group {
		if i < ranks {
			n.alone[i][1].order = 1 << (ranks - 1 - i)
		}
		from := len(room)
		for _, link := range t.links[choice] {
			if t.decided[link.to] {
				n.alone[i][side(t.way[link.to])].main += link.cost
			} else if j, ok := slices.BinarySearch(group, link.to); ok && link.cost != 0 {
				room = append(room, tie{j, link.cost})
			}
		}
		n.links[i] = slices.Clip(room[from:])
	}
	return n
}

func newNet(choices int) net { return net{make([][2]worth, choices), make([][]tie, choices)} }

func side(second bool) int {
	if second {
		return 1
	}
	return 0
}

// best is the cheapest way of a net, and whether it is sure to be that.
func (n net) best(clash int64) (Way, bool) {
	if r, ok := n.rigid(clash); ok {
		if way, ok := r.net.search(); ok {
			return r.way(way), true
		}
	}
	if way, ok := n.search(); ok {
		return way, true
	}
	return n.nearby(), false
}
