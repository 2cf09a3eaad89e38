package patchwork

import "slices"

// Best is the way of pressing with the fewest clashes in a block; among those
// the one with the most nests, then with the fewest changes of direction, then
// the one listed first (the first choice taken the first way, and so on). The
// match points of a step count as often as a block has its unit, and once where
// only pooled steps take from it. A change of
// direction is where, going down the rows of one step, or down its row joins,
// one is pressed another way than the one before it. The answer is exact.
func (b *Build) Best() Way {
	way := make(Way, 0, len(b.Choices))
	table := b.factors()
	for len(way) < len(b.Choices) {
		upTo := min(len(way)+ranks, len(b.Choices))
		p := newProblem(table, way, upTo, len(b.Choices))
		_, answer := p.solve(widest)
		way = append(way, answer[len(way):upTo]...)
	}
	return way
}

// worth is what a way costs, the less the better.
type worth struct {
	main  int64  // clashes, nests and changes, each weighing more than all that follow
	order uint64 // which ranked choices are taken the second way, the first in the highest bit
}

// ranks is how many choices one order can rank.
const ranks = 64

func (w worth) plus(v worth) worth { return worth{w.main + v.main, w.order + v.order} }

func (w worth) less(v worth) bool {
	return w.main < v.main || w.main == v.main && w.order < v.order
}

// factor is a part of the worth that depends on few choices. The worth of a
// way stands at the place whose bit j tells how scope[j] is taken.
type factor struct {
	scope []int // rising
	worth []worth
}

// at is the place in the table where the choices of scope are taken as w says.
func (f factor) at(w Way) int {
	place := 0
	for j, choice := range f.scope {
		if w[choice] {
			place |= 1 << j
		}
	}
	return place
}

// factors is the whole worth of pressing a block, part by part.
func (b *Build) factors() []factor {
	points, changes := b.counts()
	var table factors
	for _, made := range b.Steps {
		for _, join := range made.Joins {
			for _, match := range join.Matches {
				if !match.Near {
					table.add(match.factor(made.weight(), points+1, changes+1, len(b.Choices)))
				}
			}
		}
	}
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) {
			change := worth{main: 1}
			table.add(factor{[]int{i - 1, i}, []worth{{}, change, change, {}}})
		}
	}
	return table
}

// factors holds one factor for each scope.
type factors []factor

func (fs *factors) add(f factor) {
	for _, g := range *fs {
		if slices.Equal(f.scope, g.scope) {
			for place, w := range f.worth {
				g.worth[place] = g.worth[place].plus(w)
			}
			return
		}
	}
	*fs = append(*fs, f)
}

// counts bounds the match points of a block and the changes of direction.
func (b *Build) counts() (points, changes int64) {
	for _, made := range b.Steps {
		for _, join := range made.Joins {
			points += int64(len(join.Matches)) * made.weight()
		}
	}
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) {
			changes++
		}
	}
	return points, changes
}

// weight is how often the match points of a step count.
func (m Made) weight() int64 { return int64(max(m.Copies, 1)) }

// consecutive reports whether a choice comes straight after the one before it
// in the same step: the next row, or the next row join.
func (b *Build) consecutive(i int) bool {
	before, choice := b.Choices[i-1], b.Choices[i]
	return before.Step == choice.Step && before.Between == choice.Between
}

// factor is what a match point adds to the worth: a clash as much as clash
// nests, a nest as much as nest changes.
func (m Match) factor(copies, clash, nest int64, choices int) factor {
	f := factor{scope: m.scope()}
	f.worth = make([]worth, 1<<len(f.scope))
	way := make(Way, choices)
	for place := range f.worth {
		for j, choice := range f.scope {
			way[choice] = place>>j&1 == 1
		}
		switch {
		case m.clashes(way):
			f.worth[place].main = copies * clash * nest
		case m.opposed(way):
			f.worth[place].main = -copies * nest
		}
	}
	return f
}

// scope is the choices that a match point depends on, rising.
func (m Match) scope() []int {
	var scope []int
	for _, lean := range m.Leans {
		if lean.Along != 0 {
			scope = union(scope, []int{lean.Choice})
		}
	}
	return scope
}

// union merges two rising lists.
func union(a, b []int) []int {
	merged := make([]int, 0, len(a)+len(b))
	for len(a) > 0 || len(b) > 0 {
		switch {
		case len(b) == 0 || len(a) > 0 && a[0] < b[0]:
			merged, a = append(merged, a[0]), a[1:]
		case len(a) == 0 || b[0] < a[0]:
			merged, b = append(merged, b[0]), b[1:]
		default:
			merged, a, b = append(merged, a[0]), a[1:], b[1:]
		}
	}
	return merged
}
