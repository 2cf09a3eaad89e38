package planner

import (
	"slices"

	"quiltrun/planner/patchwork"
)

// pressedTop is the top as it has been laid, to ask what another pressing would
// come to.
type pressedTop struct {
	laid
	top *pressTop
	of  []int // the group of each colourway
}

// spinning asks of one card what pressing one of its choices the other way would
// come to.
type spinning struct {
	pressedTop
	group, pressing int
	way             patchwork.Way
	now             []patchwork.Junction
	then            map[int][]patchwork.Junction // with a choice taken the other way
}

// spinning is for the blocks of a colourway that are pressed in one way, and have
// these junctions then.
func (p pressedTop) spinning(colourway int, way patchwork.Way, now []patchwork.Junction) *spinning {
	group := p.of[colourway]
	pressing := p.places[group][0]
	if !slices.Equal(p.ways[pressing], way) {
		pressing = p.places[group][1]
	}
	return &spinning{p, group, pressing, way, now, map[int][]patchwork.Junction{}}
}

// respun is a row of seams that is pressed the other way so that a centre can be
// spun: the seams on both sides of the join then go round with it.
type respun struct {
	choice int
	way    patchwork.Way // of the whole block then
	layers int           // with the centre spun
}

// best finds the row of the step sewn last at a heap's junctions that, pressed the
// other way, lets their centres be spun to the fewest layers, without one clash more
// in the whole top and without making another junction of the block thicker; false
// where none makes these thinner.
func (s *spinning) best(h heap) (best respun, ok bool) {
	best.layers = h.Layers
	choices := s.top.groups[s.group].build.Choices
	for choice, c := range choices {
		if c.Step != choices[h.Choice].Step || c.Between || choice == h.Choice || s.isBound(choice) {
			continue
		}
		way, then := s.otherwise(choice)
		if spun := spunAt(then, h.at); spun > 0 && spun < best.layers && !thicker(then, s.now) && !s.clashes(way) {
			best, ok = respun{choice, way, spun}, true
		}
	}
	return best, ok
}

// otherwise is the card with a choice taken the other way, and its junctions.
func (s *spinning) otherwise(choice int) (patchwork.Way, []patchwork.Junction) {
	way := slices.Clone(s.way)
	way[choice] = !way[choice]
	then, ok := s.then[choice]
	if !ok {
		then = s.top.groups[s.group].build.Bulk(way)
		s.then[choice] = then
	}
	return way, then
}

// clashes reports whether the card pressed in another way costs a clash anywhere in
// the top.
func (s *spinning) clashes(way patchwork.Way) bool {
	ways := slices.Clone(s.ways)
	ways[s.pressing] = way
	return s.top.edges.Count(s.pressings, s.meetings, ways).All().Clash > s.met.All().Clash
}

// isBound reports whether a choice cannot be taken otherwise for one card: a rule
// has decided it, or it is one of units made for the lot.
func (s *spinning) isBound(choice int) bool {
	g := s.top.groups[s.group]
	return slices.ContainsFunc(g.given, func(given patchwork.Given) bool { return given.Choice == choice }) ||
		stepOf(g.build, choice).Pooled
}

// stepOf is the step whose seams a choice is of.
func stepOf(b *patchwork.Build, choice int) patchwork.Made {
	i := slices.IndexFunc(b.Steps, func(s patchwork.Made) bool { return s.Step.Name == b.Choices[choice].Step })
	return b.Steps[i]
}

// spunAt is the layers of the thickest of some junctions once they are spun; 0 where
// not all of them can be.
func spunAt(junctions []patchwork.Junction, at []patchwork.Point) int {
	most := 0
	for _, j := range junctions {
		if !slices.Contains(at, j.At) {
			continue
		}
		if j.Spun == 0 {
			return 0
		}
		most = max(most, j.Spun)
	}
	return most
}

// thicker reports whether any junction of a block has more layers than before, as
// it is pressed or with what would have helped it.
func thicker(then, now []patchwork.Junction) bool {
	for i, j := range then {
		before := now[i]
		if j.Layers > before.Layers || j.Open > before.Open || before.Spun < before.Layers && j.Spun > before.Spun {
			return true
		}
	}
	return false
}
