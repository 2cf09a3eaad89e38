package patchwork

import (
	"slices"

	"quiltrun/planner/measure"
)

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
	Unsure                bool // too many kinds of block meet to try all ways: a better one may exist
}

// All is every match point of the top.
func (m Met) All() Tally { return m.Inside.Plus(m.Columns).Plus(m.Rows) }

// Edges knows how blocks meet in tops. It looks at each kind of meeting once
// and remembers it, for builds with the seam it was made for.
type Edges struct {
	seam   measure.Length
	builds []*Build
	sides  map[turnedBuild][4][]crossing
	joins  map[joinKey]*contact
	inside map[*Build]contact
}

// turnedBuild is a build, by its place among those seen, and its quarter turns.
type turnedBuild int

type joinKey struct {
	first, second turnedBuild
	above         bool
}

// NewEdges knows no meeting yet. Seam is what a seam between blocks takes from
// each side.
func NewEdges(seam measure.Length) *Edges {
	return &Edges{seam: seam, sides: map[turnedBuild][4][]crossing{}, joins: map[joinKey]*contact{}, inside: map[*Build]contact{}}
}

// unturned is a build as it is sewn.
func (e *Edges) unturned(b *Build) turnedBuild {
	i := slices.Index(e.builds, b)
	if i < 0 {
		i = len(e.builds)
		e.builds = append(e.builds, b)
	}
	return turnedBuild(4 * i)
}

func (e *Edges) buildOf(t turnedBuild) *Build { return e.builds[t/4] }

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
func (e *Edges) joinOf(k joinKey) *contact {
	if c, ok := e.joins[k]; ok {
		return c
	}
	one, other := RightSide, LeftSide
	if k.above {
		one, other = BottomSide, TopSide
	}
	split := len(e.buildOf(k.first).Choices)
	shifted := slices.Clone(e.sidesOf(k.second)[other])
	for i := range shifted {
		shifted[i].Choice += split
	}
	matches := meet(e.sidesOf(k.first)[one], shifted, e.seam)
	c := &contact{pairs: make([]pair, 0, len(matches))}
	for _, match := range matches {
		c.add(match, split, 1)
	}
	e.joins[k] = c
	return c
}

func (e *Edges) sidesOf(t turnedBuild) [4][]crossing {
	sides, ok := e.sides[t]
	if !ok {
		block := e.buildOf(t).Block().Turned(int(t % 4))
		for side := range sides {
			sides[side] = crossings(block, Side(side), e.seam)
		}
		e.sides[t] = sides
	}
	return sides
}

// contactsOf is the contact of each meeting.
func (e *Edges) contactsOf(pressings []Pressing, meetings []Meeting) []*contact {
	first := make([]turnedBuild, len(pressings)) // each pressing's block, not turned
	for i, p := range pressings {
		first[i] = e.unturned(p.Build)
	}
	turned := func(f Face) turnedBuild { return first[f.Pressing] + turnedBuild(f.Quarters%4) }
	contacts := make([]*contact, len(meetings))
	for i, m := range meetings {
		contacts[i] = e.joinOf(joinKey{turned(m.First), turned(m.Second), m.Above})
	}
	return contacts
}

// Best is the way of each pressing that gives the fewest clashes over the whole
// top, inside its blocks and between them; among those the one with the most
// nests (what does not clash nests, so these are the same), then with the fewest
// changes of direction at the iron over all blocks, then the one listed first:
// pressing by pressing, choice by choice, the first way first. It is exact unless
// Met says that it is unsure. Met is what the top then comes to.
func (e *Edges) Best(pressings []Pressing, meetings []Meeting) ([]Way, Met) {
	contacts := e.contactsOf(pressings, meetings)
	from, changes := make([]int, len(pressings)+1), 0
	for i, p := range pressings {
		from[i+1] = from[i] + len(p.Build.Choices)
		changes += p.Blocks * p.Build.mostChanges()
	}
	clash := 2*int64(changes) + 1
	t := newTies(from[len(pressings)])
	t.clash = clash
	for i, p := range pressings {
		p.tie(t, from[i])
		e.insideOf(p.Build).tie(t, from[i], from[i], clash*int64(p.Blocks))
	}
	for i, m := range meetings {
		contacts[i].tie(t, from[m.First.Pressing], from[m.Second.Pressing], clash*int64(m.Count))
	}
	way, exact := t.cheapest()
	ways := make([]Way, len(pressings))
	for i := range ways {
		ways[i] = way[from[i]:from[i+1]:from[i+1]]
	}
	met := e.count(pressings, meetings, contacts, ways)
	met.Unsure = !exact
	return ways, met
}

// tie takes what is given, and lets every change of direction cost one for each
// block. The pressing's choices are numbered from first on.
func (p Pressing) tie(t *ties, first int) {
	for _, g := range p.Given {
		t.decide(first+g.Choice, g.Second)
	}
	for choice := 1; choice < len(p.Build.Choices); choice++ {
		if p.Build.consecutive(choice) {
			t.add(first+choice-1, first+choice, -int64(p.Blocks))
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

// count counts the match points of a top, each pressing pressed its own way.
func (e *Edges) count(pressings []Pressing, meetings []Meeting, contacts []*contact, ways []Way) Met {
	var met Met
	for i, p := range pressings {
		c := e.insideOf(p.Build)
		met.Inside = met.Inside.Plus(c.tally(ways[i], ways[i]).Times(p.Blocks))
		met.Changes += p.Blocks * p.Build.Changes(ways[i])
		met.Least += p.Blocks * c.set.Clash
	}
	for i, m := range meetings {
		c := contacts[i]
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
