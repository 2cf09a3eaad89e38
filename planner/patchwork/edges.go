package patchwork

import (
	"slices"

	"quiltrun/planner/measure"
)

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
// are those of direction at the iron, over all blocks. Least is a number of the
// clashes that no pressing can help.
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

	shifted []crossing // room for the other block's crossings, its choices numbered on
	room    gathering
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
					c.add(match, len(b.Choices), made.weight())
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
	e.shifted = append(e.shifted[:0], e.sidesOf(k.second)[other]...)
	for i := range e.shifted {
		e.shifted[i].Choice += split
	}
	matches := e.room.meet(e.sidesOf(k.first)[one], e.shifted, e.seam)
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
	numbers, choices := numbered(pressings)
	t := newTies(choices)
	e.tie(t, pressings, meetings, contacts, numbers)
	way, exact := t.cheapest()
	ways := make([]Way, len(pressings))
	for i, numbers := range numbers {
		ways[i] = make(Way, len(numbers))
		for choice, number := range numbers {
			ways[i][choice] = way[number]
		}
	}
	met := e.count(pressings, meetings, contacts, ways)
	met.Unsure = !exact
	return ways, met
}

// tie ties all choices of a top by what their seams come to: a clash costs more
// than all changes of direction that there could be.
func (e *Edges) tie(t *ties, pressings []Pressing, meetings []Meeting, contacts []*contact, numbers [][]int) {
	changes := 0
	for _, p := range pressings {
		changes += p.Blocks * p.Build.mostChanges()
	}
	t.clash = 2*int64(changes) + 1
	for i, p := range pressings {
		p.tie(t, numbers[i])
		e.insideOf(p.Build).tie(t, numbers[i], numbers[i], t.clash*int64(p.Blocks))
	}
	for i, m := range meetings {
		contacts[i].tie(t, numbers[m.First.Pressing], numbers[m.Second.Pressing], t.clash*int64(m.Count))
	}
}

// Count is what a top comes to, each pressing pressed its own way.
func (e *Edges) Count(pressings []Pressing, meetings []Meeting, ways []Way) Met {
	return e.count(pressings, meetings, e.contactsOf(pressings, meetings), ways)
}

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
