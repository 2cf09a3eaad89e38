package patchwork

import "quiltrun/planner/measure"

// Pressing is a number of blocks of one build that are pressed alike. Given are
// the choices that are not free.
type Pressing struct {
	Build  *Build
	Blocks int
	Given  []Given
}

// Given is a choice that is taken one way whatever it costs.
type Given struct {
	Choice int
	Second bool
}

// Face is a block as it lies in a top: how it is pressed, and its quarter turns
// clockwise.
type Face struct {
	Pressing int // index into the pressings of the top
	Quarters int
}

// Meeting is a number of like joins between two blocks, side by side, or the
// first above the second.
type Meeting struct {
	First, Second Face
	Above         bool
	Count         int
}

// Met is how the seams of a top meet: Inside all its blocks, between blocks
// side by side (Columns), between blocks one above the other (Rows). Changes
// are those of direction at the iron, over all blocks. Least is how many of the
// clashes no pressing can help.
type Met struct {
	Inside, Columns, Rows Tally
	Changes               int
	Least                 int
}

// All is every match point of the top.
func (m Met) All() Tally { return m.Inside.Plus(m.Columns).Plus(m.Rows) }

// Edges knows how blocks meet in tops. It looks at each kind of meeting once
// and remembers it, for builds with the seam it was made for.
type Edges struct {
	seam   measure.Length
	sides  map[turnedBuild][4][]crossing
	joins  map[joinKey]contact
	inside map[*Build]contact
}

type turnedBuild struct {
	build    *Build
	quarters int
}

type joinKey struct {
	first, second turnedBuild
	above         bool
}

// NewEdges knows no meeting yet. Seam is what a seam between blocks takes from
// each side.
func NewEdges(seam measure.Length) *Edges {
	return &Edges{seam, map[turnedBuild][4][]crossing{}, map[joinKey]contact{}, map[*Build]contact{}}
}

// contact is all match points of one kind of join, or inside a block.
type contact struct {
	pairs []pair
	set   Tally // those that no choice can change
}

// pair is match points where the seams of two choices meet.
type pair struct {
	first, second end
	alike         bool // they clash where both choices are taken the same way, else nest
	times         int
}

// end is a choice of the one block or the other.
type end struct {
	other  bool
	choice int
}

// add adds a match point, so many times. Choices from split on are the other
// block's.
func (c *contact) add(m Match, split, times int) {
	var leaning []Signed
	for _, lean := range m.Leans {
		if lean.Along != 0 {
			leaning = append(leaning, lean)
		}
	}
	switch {
	case m.Near:
		c.set.Near += times
	case len(leaning) > 2: // two of three always lean the same way
		c.set.Clash += times
	case len(leaning) < 2:
		c.set.Open += times
	default:
		c.pairs = append(c.pairs, pair{
			endOf(leaning[0].Choice, split), endOf(leaning[1].Choice, split), leaning[0].Along == leaning[1].Along, times,
		})
	}
}

func endOf(choice, split int) end {
	if choice >= split {
		return end{true, choice - split}
	}
	return end{false, choice}
}

// insideOf is the match points inside one block.
func (e *Edges) insideOf(b *Build) contact {
	c, ok := e.inside[b]
	if !ok {
		for _, made := range b.Steps {
			for _, join := range made.Joins {
				for _, match := range join.Matches {
					c.add(match, len(b.Choices), int(made.weight()))
				}
			}
		}
		e.inside[b] = c
	}
	return c
}

// joinOf is the match points of a join between two blocks.
func (e *Edges) joinOf(k joinKey) contact {
	c, ok := e.joins[k]
	if !ok {
		one, other := RightSide, LeftSide
		if k.above {
			one, other = BottomSide, TopSide
		}
		split := len(k.first.build.Choices)
		shifted := append([]crossing(nil), e.sidesOf(k.second)[other]...)
		for i := range shifted {
			shifted[i].Choice += split
		}
		for _, match := range meet(e.sidesOf(k.first)[one], shifted, e.seam) {
			c.add(match, split, 1)
		}
		e.joins[k] = c
	}
	return c
}

func (e *Edges) sidesOf(t turnedBuild) [4][]crossing {
	sides, ok := e.sides[t]
	if !ok {
		block := t.build.Block().Turned(t.quarters)
		for side := range sides {
			sides[side] = crossings(block, Side(side), e.seam)
		}
		e.sides[t] = sides
	}
	return sides
}

func (e *Edges) contactOf(pressings []Pressing, m Meeting) contact {
	turned := func(f Face) turnedBuild { return turnedBuild{pressings[f.Pressing].Build, f.Quarters % 4} }
	return e.joinOf(joinKey{turned(m.First), turned(m.Second), m.Above})
}

// Best is the way of each pressing that gives the fewest clashes over the whole
// top, inside its blocks and between them; among those the one with the most
// nests (what does not clash nests, so these are the same), then with the fewest
// changes of direction at the iron over all blocks, then the one listed first:
// pressing by pressing, choice by choice, the first way first. It is exact.
func (e *Edges) Best(pressings []Pressing, meetings []Meeting) []Way {
	from, changes := make([]int, len(pressings)+1), 0
	for i, p := range pressings {
		from[i+1] = from[i] + len(p.Build.Choices)
		changes += p.Blocks * p.Build.mostChanges()
	}
	clash := int64(changes) + 1 // a clash weighs more than all changes
	t := newTies(from[len(pressings)])
	for i, p := range pressings {
		for _, g := range p.Given {
			t.decide(from[i]+g.Choice, g.Second)
		}
		e.insideOf(p.Build).tie(t, from[i], from[i], clash*int64(p.Blocks))
		for choice := 1; choice < len(p.Build.Choices); choice++ {
			if p.Build.consecutive(choice) {
				t.add(from[i]+choice-1, from[i]+choice, -int64(p.Blocks))
			}
		}
	}
	for _, m := range meetings {
		e.contactOf(pressings, m).tie(t, from[m.First.Pressing], from[m.Second.Pressing], clash*int64(m.Count))
	}
	way := t.cheapest()
	ways := make([]Way, len(pressings))
	for i := range ways {
		ways[i] = way[from[i]:from[i+1]:from[i+1]]
	}
	return ways
}

// tie ties the choices of two blocks, which are numbered from first and from
// other on.
func (c contact) tie(t *ties, first, other int, clash int64) {
	from := map[bool]int{false: first, true: other}
	for _, p := range c.pairs {
		u, v := from[p.first.other]+p.first.choice, from[p.second.other]+p.second.choice
		cost := clash * int64(p.times)
		if !p.alike {
			cost = -cost
		}
		if u != v {
			t.add(u, v, cost)
		}
	}
}

// mostChanges is how often the direction could change in one block.
func (b *Build) mostChanges() int {
	n := 0
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) {
			n++
		}
	}
	return n
}

// Changes counts the changes of direction at the iron in one block: where, going
// down the rows of one step, or down its row joins, one is pressed another way
// than the one before it.
func (b *Build) Changes(w Way) int {
	n := 0
	for i := 1; i < len(b.Choices); i++ {
		if b.consecutive(i) && w.second(i-1) != w.second(i) {
			n++
		}
	}
	return n
}

// Count counts the match points of a top, each pressing pressed its own way.
func (e *Edges) Count(pressings []Pressing, meetings []Meeting, ways []Way) Met {
	var met Met
	for i, p := range pressings {
		c := e.insideOf(p.Build)
		met.Inside = met.Inside.Plus(c.tally(ways[i], ways[i]).Times(p.Blocks))
		met.Changes += p.Blocks * p.Build.Changes(ways[i])
		met.Least += p.Blocks * c.set.Clash
	}
	for _, m := range meetings {
		c := e.contactOf(pressings, m)
		t := c.tally(ways[m.First.Pressing], ways[m.Second.Pressing]).Times(m.Count)
		if m.Above {
			met.Rows = met.Rows.Plus(t)
		} else {
			met.Columns = met.Columns.Plus(t)
		}
		met.Least += m.Count * c.set.Clash
	}
	return met
}

// tally counts the match points where blocks pressed one way meet blocks pressed
// another.
func (c contact) tally(first, other Way) Tally {
	t := c.set
	second := func(e end) bool {
		if e.other {
			return other.second(e.choice)
		}
		return first.second(e.choice)
	}
	for _, p := range c.pairs {
		if (second(p.first) == second(p.second)) == p.alike {
			t.Clash += p.times
		} else {
			t.Nest += p.times
		}
	}
	return t
}
