package planner

import (
	"cmp"

	"quiltrun/planner/patchwork"
)

// pressGroup is blocks that have their ways of pressing in common: of one build,
// with the same choices given.
type pressGroup struct {
	build *patchwork.Build
	given []patchwork.Given
	same  bool // its blocks look the same after half a turn
}

// spot is what matters of a place in a top: whose block lies there, how it is
// turned by the layout, and whether its row and its column are odd. It is this
// little that patterns tell apart, so a top of any size has few kinds of spot.
type spot struct {
	group, quarters int
	row, column     int // 0 or 1
}

func (s spot) second(p Pattern) bool { return p.second(s.row, s.column) }

// number is another for each spot, below 16 for each group.
func (s spot) number() int { return ((s.group*4+s.quarters)*2+s.row)*2 + s.column }

// neighbours is two spots side by side, or the first above the second.
type neighbours struct {
	first, second spot
	above         bool
	at            seamSort
}

// pressTop is the top as it has to be pressed.
type pressTop struct {
	groups []pressGroup
	blocks [][2][2]int // per group, by odd or even row and column
	kinds  []neighbours
	counts []int // of each kind
	edges  *patchwork.Edges
}

// pressTop counts what meets in one quilt. Of gives each colourway its group.
func (m *maker) pressTop(groups []pressGroup, of []int, edges *patchwork.Edges) *pressTop {
	t := &pressTop{groups: groups, blocks: make([][2][2]int, len(groups)), edges: edges}
	spots := make([]spot, m.plan.Quilt.Blocks)
	near := m.frame.neighbourhood(m.layout)
	seen := map[int]int{}
	for i := range spots {
		p := m.layout[i]
		s := spot{of[m.colourwayOf[i]], m.plan.Blocks[i].Turn / 90, p.u % 2, p.v % 2}
		spots[i] = s
		t.blocks[s.group][s.row][s.column]++
		if left, at := near.left(p); at != noSeam {
			t.meet(neighbours{spots[left], s, false, at}, seen)
		}
		if upper, at := near.above(p); at != noSeam {
			t.meet(neighbours{spots[upper], s, true, at}, seen)
		}
	}
	return t
}

// meet counts a meeting. Seen holds the kinds so far, by number.
func (t *pressTop) meet(n neighbours, seen map[int]int) {
	number := ((n.first.number()*16*len(t.groups)+n.second.number())*2+boolean(n.above))*seamKinds + int(n.at)
	i, ok := seen[number]
	if !ok {
		i = len(t.kinds)
		seen[number] = i
		t.kinds = append(t.kinds, n)
		t.counts = append(t.counts, 0)
	}
	t.counts[i]++
}

// laid is a top laid by a pattern and pressed as well as that can be.
type laid struct {
	pattern   Pattern
	half      []bool   // per group: its second places get half a turn
	places    [][2]int // per group: which pressing its first and its second places get
	pressings []patchwork.Pressing
	meetings  []patchwork.Meeting
	ways      []patchwork.Way // of each pressing
	met       patchwork.Met
}

// needsCards reports whether a group's blocks are pressed in two ways.
func (l laid) needsCards(group int) bool {
	a, b := l.ways[l.places[group][0]], l.ways[l.places[group][1]]
	for i := range a {
		if a[i] != b[i] {
			return true
		}
	}
	return false
}

func (l laid) cards() int {
	n := 0
	for group := range l.places {
		if l.needsCards(group) {
			n++
		}
	}
	return n
}

// compare says which of two comes first: fewest clashes, most nests, then the
// fewest groups that need a second card, since a block that is pressed like all
// others fits any place; then the fewest changes of direction.
func (l laid) compare(o laid) int {
	a, b := l.met.All(), o.met.All()
	return cmp.Or(
		cmp.Compare(a.Clash, b.Clash), cmp.Compare(b.Nest, a.Nest),
		cmp.Compare(l.cards(), o.cards()), cmp.Compare(l.met.Changes, o.met.Changes),
	)
}

// blocksIn is how many blocks of a group lie in the pattern's first and second
// places.
func (t *pressTop) blocksIn(group int, p Pattern) (in [2]int) {
	for row, counts := range t.blocks[group] {
		for column, n := range counts {
			in[boolean(p.second(row, column))] += n
		}
	}
	return in
}

// lay presses the top by a pattern. The groups in half give their second places
// half a turn, others may press them another way. A group that lies in the
// second places alone needs neither.
func (t *pressTop) lay(p Pattern, half []bool) laid {
	l := laid{pattern: p, half: make([]bool, len(t.groups)), places: make([][2]int, len(t.groups))}
	for i, g := range t.groups {
		in := t.blocksIn(i, p)
		both := in[0] > 0 && in[1] > 0
		l.half[i] = both && half[i]
		l.places[i] = [2]int{len(l.pressings), len(l.pressings)}
		if both && !l.half[i] {
			l.places[i][1]++
			l.pressings = append(l.pressings,
				patchwork.Pressing{Build: g.build, Blocks: in[0], Given: g.given},
				patchwork.Pressing{Build: g.build, Blocks: in[1], Given: g.given, OnePool: true})
			continue
		}
		l.pressings = append(l.pressings, patchwork.Pressing{Build: g.build, Blocks: in[0] + in[1], Given: g.given})
	}
	l.meetings = make([]patchwork.Meeting, len(t.kinds))
	for i, k := range t.kinds {
		l.meetings[i] = patchwork.Meeting{First: l.face(k.first), Second: l.face(k.second), Above: k.above, Count: t.counts[i]}
	}
	l.ways, l.met = t.edges.Best(l.pressings, l.meetings)
	return l
}

// face is what a spot shows when the top is laid so.
func (l laid) face(s spot) patchwork.Face {
	places := l.places[s.group]
	switch {
	case !s.second(l.pattern):
		return patchwork.Face{Pressing: places[0], Quarters: s.quarters}
	case l.half[s.group]:
		return patchwork.Face{Pressing: places[0], Quarters: s.quarters + 2}
	default:
		return patchwork.Face{Pressing: places[1], Quarters: s.quarters}
	}
}

// choose lays the top by each pattern and keeps the best, the first of equals.
func (t *pressTop) choose() (laid, []PatternCount) {
	var best laid
	counts := make([]PatternCount, len(patterns))
	for i, p := range patterns {
		l := t.layBest(p)
		counts[i] = PatternCount{
			Pattern: p, Inside: l.met.Inside, Between: l.met.Columns.Plus(l.met.Rows),
			Half: l.cards() == 0 && l.turns(), Exact: !l.met.Unsure,
		}
		if i == 0 || l.compare(best) < 0 {
			best = l
		}
	}
	return best, counts
}

func (l laid) turns() bool {
	for _, half := range l.half {
		if half {
			return true
		}
	}
	return false
}

// layBest lays the top by a pattern: with half turns wherever blocks look the
// same after one, unless a second way of pressing some of them is better.
func (t *pressTop) layBest(p Pattern) laid {
	half, none := make([]bool, len(t.groups)), make([]bool, len(t.groups))
	for i, g := range t.groups {
		half[i] = g.same && p != AllAlike
	}
	turned := t.lay(p, half)
	if !turned.turns() || turned.met.All().Clash == turned.met.Least {
		return turned
	}
	pressed := t.lay(p, none)
	if turned.compare(pressed) <= 0 {
		return turned
	}
	return t.turnSome(pressed, turned.half)
}

// turnSome gives half turns to as many groups as can take one, group by group,
// without it costing a clash.
func (t *pressTop) turnSome(best laid, can []bool) laid {
	half := make([]bool, len(t.groups))
	for i := range half {
		if !can[i] {
			continue
		}
		half[i] = true
		if l := t.lay(best.pattern, half); l.compare(best) < 0 {
			best = l
			continue
		}
		half[i] = false
	}
	return best
}
