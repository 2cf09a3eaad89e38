package draw

import (
	"cmp"
	"slices"
	"strconv"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// lean is the way a seam's allowance lies when its unit is pressed as w says.
func lean(s patchwork.Seam, w patchwork.Way) patchwork.Lean {
	if s.Choice < len(w) && w[s.Choice] {
		return patchwork.Lean{X: -s.Lean.X, Y: -s.Lean.Y}
	}
	return s.Lean
}

// turned is how far the arrow that points right has to turn to point along a
// lean, in degrees clockwise.
func turned(l patchwork.Lean) int {
	return map[patchwork.Lean]int{
		{X: 1}: 0, {X: 1, Y: 1}: 45, {Y: 1}: 90, {X: -1, Y: 1}: 135,
		{X: -1}: 180, {X: -1, Y: -1}: 225, {Y: -1}: 270, {X: 1, Y: -1}: 315,
	}[l]
}

// stretch is the longest part of a seam that no other seam runs into: there is
// the most room for an arrow.
func stretch(u patchwork.Unit, seam patchwork.Seam) (from, to patchwork.Point) {
	stops := []patchwork.Point{seam.A, seam.B}
	for _, other := range u.Seams {
		for _, end := range []patchwork.Point{other.A, other.B} {
			if onSeam(seam, end) {
				stops = append(stops, end)
			}
		}
	}
	slices.SortFunc(stops, func(p, q patchwork.Point) int {
		return cmp.Or(cmp.Compare(p.X, q.X), cmp.Compare(p.Y, q.Y))
	})
	for i := 1; i < len(stops); i++ {
		if long(stops[i-1], stops[i]) > long(from, to) {
			from, to = stops[i-1], stops[i]
		}
	}
	return from, to
}

// long compares how long level, upright and diagonal stretches are among each
// other of the same seam.
func long(p, q patchwork.Point) measure.Length { return max(q.X-p.X, p.X-q.X, q.Y-p.Y, p.Y-q.Y) }

// onSeam reports whether a point lies between the ends of a seam. Seams are
// level, upright or diagonal.
func onSeam(s patchwork.Seam, p patchwork.Point) bool {
	inside := p.X >= min(s.A.X, s.B.X) && p.X <= max(s.A.X, s.B.X) &&
		p.Y >= min(s.A.Y, s.B.Y) && p.Y <= max(s.A.Y, s.B.Y)
	switch {
	case !inside:
		return false
	case s.A.X == s.B.X || s.A.Y == s.B.Y:
		return true
	case (s.A.X < s.B.X) == (s.A.Y < s.B.Y):
		return p.X-p.Y == s.A.X-s.A.Y
	default:
		return p.X+p.Y == s.A.X+s.A.Y
	}
}

// The ids of the signs that stand over seams.
const (
	arrowNew   = "a" // an allowance pressed in this step
	arrowOld   = "b" // one pressed in an earlier step
	openedSign = "o" // an allowance pressed open
)

// spot is a place on the page.
type spot struct{ x, y span }

// arrows draws a sign over every seam of a unit: an arrow the way the allowance
// is pressed, strong where the seam's choice is fresh. It returns where they
// stand.
func (d *drawing) arrows(c *canvas, u patchwork.Unit, s scale, w patchwork.Way, fresh func(choice int) bool) []spot {
	spots := make([]spot, len(u.Seams))
	rooms := make([]span, len(u.Seams))
	for i, seam := range u.Seams {
		from, to := stretch(u, seam)
		rooms[i] = s.of(long(from, to))
		// Old and new stand apart where a seam leaves room for it.
		part := span(2)
		if !fresh(seam.Choice) && rooms[i] > 60*unit {
			part = 4
		}
		spots[i] = spot{s.of(from.X) + s.of(to.X-from.X)/part, s.of(from.Y) + s.of(to.Y-from.Y)/part}
	}
	for i, seam := range u.Seams {
		id := arrowOld
		if fresh(seam.Choice) {
			id = arrowNew
		}
		d.sign(c, id, spots[i], lean(seam, w), min(rooms[i], 2*nearestOf(spots, i)))
	}
	return spots
}

// nearestOf is how far the nearest other place lies from one of several.
func nearestOf(spots []spot, i int) span {
	nearest := span(1 << 20)
	for j, p := range spots {
		if j != i {
			nearest = min(nearest, p.far(spots[i]))
		}
	}
	return nearest
}

// far is the larger of the distances across and down.
func (p spot) far(q spot) span { return max(p.x-q.x, q.x-p.x, p.y-q.y, q.y-p.y) }

// sign puts an arrow, or the sign of a seam pressed open, over a seam with so
// much room for it.
func (d *drawing) sign(c *canvas, id string, place spot, l patchwork.Lean, room span) {
	transform := "translate(" + pair(place.x, place.y) + ")"
	if l == (patchwork.Lean{}) {
		id = openedSign
	} else if angle := turned(l); angle != 0 {
		transform += "rotate(" + strconv.Itoa(angle) + ")"
	}
	switch {
	case room < 14*unit:
		transform += "scale(.5)"
	case room < 28*unit:
		transform += "scale(.7)"
	}
	d.needs(id)
	c.void("use", ref("href", d.prefix+id), is("transform", transform))
}

// signs are the drawings of what stands over seams, pointing right.
var signs = map[string]string{
	arrowNew: `<path d="M-7 0H3M1-5L8.5 0L1 5Z" fill="` + paper + `" stroke="` + paper + `" stroke-width="4" stroke-linejoin="round"/>` +
		`<path d="M-7 0H3" stroke="` + ink + `" stroke-width="2.2"/><path d="M1-5L8.5 0L1 5Z" fill="` + ink + `"/>`,
	arrowOld: `<path d="M-6 0H3M2-4L7 0L2 4" fill="none" stroke="` + paper + `" stroke-width="4" stroke-linejoin="round"/>` +
		`<path d="M-6 0H6M2-4L7 0L2 4" fill="none" stroke="` + ink + `" stroke-width="1.3"/>`,
	openedSign: `<path d="M0-5L6 0L0 5L-6 0Z" fill="` + paper + `" stroke="` + ink + `" stroke-width="1.6"/>`,
}

// needs defines a sign the first time that it is used.
func (d *drawing) needs(id string) {
	if d.known[d.prefix+id] {
		return
	}
	d.known[d.prefix+id] = true
	d.defs.open("g", is("id", d.prefix+id))
	d.defs.WriteString(signs[id])
	d.defs.shut("g")
}
