package patchwork

import "slices"

// widest is how many choices one table may span (2 to their number entries)
// before the search branches instead.
const widest = 14

// problem is the search for the cheapest way: the sum of factors over the
// choices that are still open. It is solved exactly by variable elimination
// (R. Dechter, Bucket elimination, 1999): one choice after the other is
// replaced by a table of its best answer to each way of taking its neighbours.
type problem struct {
	factors []factor
	open    []int
	answer  Way // of every choice that is not open
}

// newProblem is the problem with the first choices taken as way says, and the
// choices up to upTo ranked by their order.
func newProblem(table []factor, way Way, upTo, choices int) problem {
	p := problem{answer: make(Way, choices)}
	copy(p.answer, way)
	for choice := len(way); choice < choices; choice++ {
		p.open = append(p.open, choice)
	}
	for _, f := range table {
		for _, choice := range f.scope {
			if choice < len(way) {
				f = f.given(choice, way[choice])
			}
		}
		p.factors = append(p.factors, f)
	}
	for choice := len(way); choice < upTo; choice++ {
		second := worth{order: 1 << (ranks - 1 - (choice - len(way)))}
		p.factors = append(p.factors, factor{[]int{choice}, []worth{{}, second}})
	}
	return p
}

// given is the factor with one choice of its scope decided.
func (f factor) given(choice int, second bool) factor {
	j := slices.Index(f.scope, choice)
	less := factor{
		scope: without(f.scope, choice),
		worth: make([]worth, len(f.worth)/2),
	}
	low := 1<<j - 1
	for place := range less.worth {
		full := place&low | place&^low<<1
		if second {
			full |= 1 << j
		}
		less.worth[place] = f.worth[full]
	}
	return less
}

// solve finds the least worth and a way that has it. No table spans more than
// limit choices.
func (p problem) solve(limit int) (worth, Way) {
	if len(p.open) == 0 {
		var sum worth
		for _, f := range p.factors {
			sum = sum.plus(f.worth[0])
		}
		return sum, slices.Clone(p.answer)
	}
	choice := p.easiest()
	rest, bucket := p.without(choice)
	scope := scopeOf(bucket, choice)
	if len(scope) > limit {
		return p.branch(limit)
	}
	// The choice itself is the highest bit of the joint table.
	joint := make([]worth, 2<<len(scope))
	with := append(scope[:len(scope):len(scope)], choice)
	for _, f := range bucket {
		f.addTo(joint, with)
	}
	first, second := joint[:len(joint)/2], joint[len(joint)/2:]
	best := factor{scope, make([]worth, len(first))}
	for place := range first {
		best.worth[place] = first[place]
		if second[place].less(first[place]) {
			best.worth[place] = second[place]
		}
	}
	rest.factors = append(rest.factors, best)
	sum, way := rest.solve(limit)
	place := best.at(way)
	way[choice] = second[place].less(first[place])
	return sum, way
}

// easiest is the open choice with the fewest neighbours, the first of equals.
func (p problem) easiest() int {
	best, fewest := p.open[0], len(p.answer)+1
	counted := make([]int, len(p.answer)) // for which choice, plus one
	for _, choice := range p.open {
		neighbours := 0
		for _, f := range p.factors {
			if !slices.Contains(f.scope, choice) {
				continue
			}
			for _, c := range f.scope {
				if counted[c] != choice+1 {
					counted[c] = choice + 1
					neighbours++
				}
			}
		}
		if neighbours < fewest {
			best, fewest = choice, neighbours
		}
	}
	return best
}

// scopeOf is what factors depend on beside a choice that is in all of them.
func scopeOf(bucket []factor, choice int) []int {
	var scope []int
	for _, f := range bucket {
		scope = union(scope, f.scope)
	}
	return without(scope, choice)
}

// without is the problem less one choice, and the factors that depend on it.
func (p problem) without(choice int) (problem, []factor) {
	rest := problem{
		factors: make([]factor, 0, len(p.factors)+1),
		open:    without(p.open, choice),
		answer:  p.answer,
	}
	var bucket []factor
	for _, f := range p.factors {
		if slices.Contains(f.scope, choice) {
			bucket = append(bucket, f)
		} else {
			rest.factors = append(rest.factors, f)
		}
	}
	return rest, bucket
}

func without(list []int, choice int) []int {
	rest := make([]int, 0, len(list))
	for _, c := range list {
		if c != choice {
			rest = append(rest, c)
		}
	}
	return rest
}

// addTo adds the factor to a table over a scope that holds its own.
func (f factor) addTo(sum []worth, scope []int) {
	bits := make([]int, len(f.scope))
	for j, choice := range f.scope {
		bits[j] = slices.Index(scope, choice)
	}
	for place := range sum {
		mine := 0
		for j, bit := range bits {
			mine |= place >> bit & 1 << j
		}
		sum[place] = sum[place].plus(f.worth[mine])
	}
}

// branch decides the choice with the most factors both ways and keeps the
// better answer.
func (p problem) branch(limit int) (worth, Way) {
	busiest, most := p.open[0], 0
	for _, choice := range p.open {
		if _, bucket := p.without(choice); len(bucket) > most {
			busiest, most = choice, len(bucket)
		}
	}
	var least worth
	var best Way
	for side := range 2 {
		rest, bucket := p.without(busiest)
		for _, f := range bucket {
			rest.factors = append(rest.factors, f.given(busiest, side == 1))
		}
		rest.answer = slices.Clone(p.answer)
		rest.answer[busiest] = side == 1
		if sum, way := rest.solve(limit); best == nil || sum.less(least) {
			least, best = sum, way
		}
	}
	return least, best
}
