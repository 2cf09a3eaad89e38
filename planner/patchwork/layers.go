package patchwork

import (
	"cmp"
	"slices"

	"quiltrun/planner/measure"
)

// Directions about a junction are counted in eighths of a turn, clockwise from
// the right; sector k lies between the directions k and k + 1.

// ray is a seam as seen from a junction.
type ray struct {
	toward int // direction in which the seam runs from the junction
	lean   int // direction in which it is pressed, square to it; -1 for open
	choice int
}

// seamLines is the seams of a unit by the direction of their lines, and of each
// direction by where the line lies.
type seamLines [4][]lined

type lined struct {
	at measure.Length
	*Seam
}

func (u Unit) lines() seamLines {
	var lines seamLines
	for i := range u.Seams {
		s := &u.Seams[i]
		d := direction(s.run()) % 4
		lines[d] = append(lines[d], lined{lineAt(d, s.A), s})
	}
	for _, along := range lines {
		slices.SortFunc(along, func(a, b lined) int { return cmp.Compare(a.at, b.at) })
	}
	return lines
}

// lineAt tells apart the lines of a direction: it is how far the one through a point
// lies from the unit's corner, along an axis.
func lineAt(direction int, p Point) measure.Length {
	return [4]measure.Length{p.Y, p.X - p.Y, p.X, p.X + p.Y}[direction]
}

// raysAt adds the seams that start at a spot or pass through it to a list.
func (l *seamLines) raysAt(rays []ray, spot Point, w Way) []ray {
	for d, along := range l {
		at := lineAt(d, spot)
		i, _ := slices.BinarySearchFunc(along, at-together, func(s lined, at measure.Length) int { return cmp.Compare(s.at, at) })
		for ; i < len(along) && along[i].at <= at+together; i++ {
			rays = along[i].rays(rays, spot, w)
		}
	}
	return rays
}

// rays adds what of a seam runs from a spot on its line to a list.
func (s *Seam) rays(rays []ray, spot Point, w Way) []ray {
	run := s.run()
	from, to := run.steps(s.A, spot), run.steps(spot, s.B)
	if from < -together || to < -together {
		return rays
	}
	lean := direction(s.Lean)
	if lean >= 0 && w.second(s.Choice) {
		lean = (lean + 4) % 8
	}
	if to > together {
		rays = append(rays, ray{direction(run), lean, s.Choice})
	}
	if from > together {
		rays = append(rays, ray{(direction(run) + 4) % 8, lean, s.Choice})
	}
	return rays
}

// run is the direction of a seam from A to B, as steps right and down.
func (s Seam) run() Lean { return Lean{sign(s.B.X - s.A.X), sign(s.B.Y - s.A.Y)} }

// steps is how far q lies from p in the direction of l, along the axes.
func (l Lean) steps(p, q Point) measure.Length {
	if l.X != 0 {
		return (q.X - p.X) * measure.Length(l.X)
	}
	return (q.Y - p.Y) * measure.Length(l.Y)
}

func sign(l measure.Length) int8 { return int8(cmp.Compare(l, 0)) }

// direction is a direction counted in eighths of a turn, -1 for none.
func direction(l Lean) int {
	return [3][3]int{{5, 6, 7}, {4, -1, 0}, {3, 2, 1}}[l.Y+1][l.X+1]
}

// cross reports whether rays run in more than one direction.
func cross(rays []ray) bool {
	return slices.ContainsFunc(rays, func(r ray) bool { return (r.toward-rays[0].toward)%4 != 0 })
}

// latest is the ray of the seam that was sewn last.
func latest(rays []ray) ray {
	return slices.MaxFunc(rays, func(a, b ray) int { return cmp.Compare(a.choice, b.choice) })
}

// bothSides is the rays on either side of a seam.
type bothSides [2][]ray

// fewRays is how many seams come together at a junction, in all that is sewn in
// eight directions.
type fewRays [8]ray

// beside parts the rays at a junction by the side of the seam on which they lie, in
// the room given.
func (r ray) beside(rays []ray, room *[2]fewRays) bothSides {
	parted := bothSides{room[0][:0], room[1][:0]}
	for _, other := range rays {
		if turn := r.turnTo(other.toward); turn%4 != 0 {
			parted[turn/4] = append(parted[turn/4], other)
		}
	}
	return parted
}

// turnTo is a direction, or a sector, counted from the seam's own line on: below 4
// lies its first side, from 4 on its second.
func (r ray) turnTo(direction int) int { return (direction - r.toward%4 + 8) % 8 }

// handling is what is done at the iron with the seam sewn last at a junction.
type handling uint8

const (
	asPressed  handling = iota
	pressOpen           // both allowances apart
	spinFirst           // the half that runs along its line onto its first side, the other half onto the second
	spinSecond          // the other way about
)

// asunder is no side of a seam: its allowances lie each on its own.
const asunder = -1

// onto is the side of the seam on which both its allowances lie in a sector, which
// is so many eighths on from its line.
func (r ray) onto(h handling, turn int) int {
	half := (turn + 2) % 8 / 4
	switch {
	case h == spinFirst:
		return half
	case h == spinSecond:
		return 1 - half
	case h == pressOpen || r.lean < 0:
		return asunder
	}
	return r.turnTo(r.lean) / 4
}

// thickest is the layers of the thickest sector about a junction.
func thickest(rays []ray, h handling) int {
	count := layers(rays, h)
	return slices.Max(count[:])
}

// spun is the layers of the thickest sector with the seam sewn last spun, the better
// way about; 0 where other seams do not meet it from both sides.
func spun(rays []ray) int {
	var room [2]fewRays
	if parted := latest(rays).beside(rays, &room); len(parted[0]) == 0 || len(parted[1]) == 0 {
		return 0
	}
	return min(thickest(rays, spinFirst), thickest(rays, spinSecond))
}

// layers counts the cloth in each sector about a junction. The seam sewn last is
// taken apart first: on either side of it lies a unit with the rays on that side,
// each of which ran on straight into the allowance.
func layers(rays []ray, h handling) [8]int {
	if len(rays) == 0 {
		return [8]int{1, 1, 1, 1, 1, 1, 1, 1}
	}
	last := latest(rays)
	var room [2]fewRays
	var units [2][8]int
	for i, part := range last.beside(rays, &room) {
		units[i] = layers(part, asPressed)
	}
	line := last.toward % 4
	var count [8]int
	for sector := range count {
		turn := last.turnTo(sector)
		side, onto := turn/4, last.onto(h, turn)
		folded := (2*line - sector + 7) % 8 // the sector beyond the seam that is folded onto this one
		count[sector] = units[side][sector]
		if onto == asunder || onto == side {
			count[sector] += units[side][folded]
		}
		if onto == side {
			count[sector] += units[1-side][sector]
		}
	}
	return count
}
