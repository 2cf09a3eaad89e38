package patchwork

import (
	"cmp"
	"slices"

	"quiltrun/planner/measure"
)

// NestedLayers is the layers of cloth where the seams of a four-patch nest: what
// every piecer sews over, and the limit for a flat junction. Where they clash it
// has 9 (hand-worked by the rule of Junctions, no published source).
const NestedLayers = 7

// Junction is a place in a unit where seams meet.
type Junction struct {
	At     Point // from the raw top left corner
	Layers int   // of cloth, at the thickest side of the junction
	Open   int   // the layers if the seam sewn last there is pressed open
	Choice int   // of that seam, an index into Build.Choices
}

// Bulk lists the junctions inside the finished block, with the layers of cloth
// that come to lie on one another there when it is pressed as w says.
func (b *Build) Bulk(w Way) []Junction { return b.Block().Junctions(b.Seam, w) }

// Junctions lists the places inside the finished unit where seams of two
// directions or more meet, from the top down and from left to right.
//
// The layers follow from the folds, close by the junction: plain cloth is one
// layer. A seam joins two sides. The allowance of each runs on beyond it with
// all the folds that it has; both are pressed onto the side that the seam leans
// to, on top of what lies there, or each onto its own side where the seam is
// pressed open. Of the sectors between the seams the thickest counts. Seams that
// come together within 1/64 in make one junction. Of two seams the one with the
// later choice was sewn later, which is so in all that Make makes. Allowances of
// seams beside the junction are left out; they reach over it only where a patch
// finishes narrower than an allowance.
func (u Unit) Junctions(seam measure.Length, w Way) []Junction {
	var junctions []Junction
	for _, spot := range u.spots() {
		if !inside(spot.X, u.Size.Width, seam) || !inside(spot.Y, u.Size.Height, seam) {
			continue
		}
		rays := u.raysAt(spot, w)
		if !cross(rays) {
			continue
		}
		folded, opened := layers(rays, false), layers(rays, true)
		junctions = append(junctions, Junction{
			At: spot, Layers: slices.Max(folded[:]), Open: slices.Max(opened[:]), Choice: latest(rays).choice,
		})
	}
	return junctions
}

// spots lists the ends of seams, one for all that come together, from the top
// down and from left to right. Of two seams that meet, one always ends there.
func (u Unit) spots() []Point {
	ends := make([]Point, 0, 2*len(u.Seams))
	for _, s := range u.Seams {
		ends = append(ends, s.A, s.B)
	}
	slices.SortFunc(ends, func(p, q Point) int { return cmp.Or(cmp.Compare(p.Y, q.Y), cmp.Compare(p.X, q.X)) })
	var spots []Point
	taken := make(map[Point][]Point) // by squares of the tolerance
	for _, end := range ends {
		if isTaken(taken, end) {
			continue
		}
		cell := Point{end.X / together, end.Y / together}
		taken[cell] = append(taken[cell], end)
		spots = append(spots, end)
	}
	return spots
}

// isTaken reports whether a spot lies together with an end.
func isTaken(taken map[Point][]Point, end Point) bool {
	for x := end.X/together - 1; x <= end.X/together+1; x++ {
		for y := end.Y/together - 1; y <= end.Y/together+1; y++ {
			for _, spot := range taken[Point{x, y}] {
				if max(spot.X-end.X, end.X-spot.X, spot.Y-end.Y, end.Y-spot.Y) <= together {
					return true
				}
			}
		}
	}
	return false
}

// Directions about a junction are counted in eighths of a turn, clockwise from
// the right; sector k lies between the directions k and k + 1.

// ray is a seam as seen from a junction.
type ray struct {
	toward int // direction in which the seam runs from the junction
	lean   int // direction in which it is pressed, square to it; -1 for open
	choice int
}

// raysAt lists the seams that start at a spot or pass through it.
func (u Unit) raysAt(spot Point, w Way) []ray {
	var rays []ray
	for _, s := range u.Seams {
		run := s.run()
		across := (spot.X-s.A.X)*measure.Length(run.Y) - (spot.Y-s.A.Y)*measure.Length(run.X)
		if across > together || across < -together {
			continue
		}
		from, to := run.steps(s.A, spot), run.steps(spot, s.B)
		if from < -together || to < -together {
			continue
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

// layers counts the cloth in each sector about a junction. The seam sewn last
// is taken apart first: on either side of it lies a unit with the rays on that
// side, each of which ran on straight into the allowance.
func layers(rays []ray, open bool) [8]int {
	if len(rays) == 0 {
		return [8]int{1, 1, 1, 1, 1, 1, 1, 1}
	}
	last := latest(rays)
	line := last.toward % 4
	var sides [2][]ray
	for _, r := range rays {
		if turn := (r.toward - line + 8) % 8; turn%4 != 0 {
			sides[turn/4] = append(sides[turn/4], r)
		}
	}
	units := [2][8]int{layers(sides[0], false), layers(sides[1], false)}
	onto := (last.lean - line + 8) % 8 / 4 // the side that it leans to
	open = open || last.lean < 0
	var count [8]int
	for sector := range count {
		side := (sector - line + 8) % 8 / 4
		folded := (2*line - sector + 7) % 8 // the sector beyond the seam that is folded onto this one
		count[sector] = units[side][sector]
		if open || side == onto {
			count[sector] += units[side][folded]
		}
		if !open && side == onto {
			count[sector] += units[1-side][sector]
		}
	}
	return count
}
