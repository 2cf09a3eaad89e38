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
	Spun   int   // the layers if that seam is spun there; 0 where seams meet it from one side only
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
// pressed open. A seam is spun (the four-patch's centre fanned, katecollerandesigns.com,
// "Rotate pressing technique") where the few stitches that cross its allowance are
// undone and its two halves pressed opposite ways, the better way about. Of the
// sectors between the seams the thickest counts. Seams that
// come together within 1/64 in make one junction. Of two seams the one with the
// later choice was sewn later, which is so in all that Make makes. Allowances of
// seams beside the junction are left out; they reach over it only where a patch
// finishes narrower than an allowance.
func (u Unit) Junctions(seam measure.Length, w Way) []Junction {
	var junctions []Junction
	var rays []ray
	lines := u.lines()
	for _, spot := range u.spots() {
		if !inside(spot.X, u.Size.Width, seam) || !inside(spot.Y, u.Size.Height, seam) {
			continue
		}
		rays = lines.raysAt(rays[:0], spot, w)
		if !cross(rays) {
			continue
		}
		junctions = append(junctions, Junction{
			At: spot, Layers: thickest(rays, asPressed), Open: thickest(rays, pressOpen), Spun: spun(rays), Choice: latest(rays).choice,
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
	spots := ends[:0]
	for _, end := range ends {
		if !isTaken(spots, end) {
			spots = append(spots, end)
		}
	}
	return spots
}

// isTaken reports whether one of the spots, from the top down, lies together with
// an end that is no higher.
func isTaken(spots []Point, end Point) bool {
	for _, spot := range slices.Backward(spots) {
		if spot.Y < end.Y-together {
			return false
		}
		if max(spot.X-end.X, end.X-spot.X) <= together {
			return true
		}
	}
	return false
}
