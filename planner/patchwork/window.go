package patchwork

import "quiltrun/planner/measure"

// window is a level rectangle in a unit's coordinates.
type window struct {
	min, max Point
}

// whole is the window that shows all of a unit.
func (u Unit) whole() window {
	return window{max: Point{u.Size.Width, u.Size.Height}}
}

func (w window) size() measure.Size {
	return measure.Size{Width: w.max.X - w.min.X, Height: w.max.Y - w.min.Y}
}

// seen is the part of the unit inside the window, as a unit of its own.
func (u Unit) seen(w window) Unit {
	part := Unit{Size: w.size()}
	part.add(u, w, Point{-w.min.X, -w.min.Y})
	return part
}

// add puts what shows of another unit through the window onto this one, moved
// by shift.
func (u *Unit) add(from Unit, w window, shift Point) {
	pool := make([]Point, 0, 4*len(from.Patches))
	for _, patch := range from.Patches {
		start := len(pool)
		pool = w.clip(pool, patch.Corners)
		corners := pool[start:len(pool):len(pool)]
		if flat(corners) {
			pool = pool[:start]
			continue
		}
		for i := range corners {
			corners[i] = corners[i].plus(shift)
		}
		u.Patches = append(u.Patches, Patch{Role: patch.Role, Corners: corners, Quarters: patch.Quarters})
	}
	for _, seam := range from.Seams {
		if a, b, ok := w.clipLine(seam.A, seam.B); ok {
			seam.A, seam.B = a.plus(shift), b.plus(shift)
			u.Seams = append(u.Seams, seam)
		}
	}
}

func (p Point) plus(q Point) Point { return Point{p.X + q.X, p.Y + q.Y} }

// halfPlane is one side of a window: sign times the place on the axis may not
// be more than limit.
type halfPlane struct {
	axis  axis
	sign  measure.Length
	limit measure.Length
}

func (h halfPlane) room(p Point) measure.Length { return h.limit - h.sign*h.axis.of(p) }

func (w window) sides() [4]halfPlane {
	return [4]halfPlane{
		{across, -1, -w.min.X},
		{across, +1, w.max.X},
		{down, -1, -w.min.Y},
		{down, +1, w.max.Y},
	}
}

// clip appends to dst what of a convex polygon lies in the window (after
// Sutherland and Hodgman, Reentrant polygon clipping, 1974). With sides that
// are upright, level or at 45 degrees every new corner is exact.
func (w window) clip(dst, corners []Point) []Point {
	start := len(dst)
	dst = append(dst, corners...)
	for _, side := range w.sides() {
		if !side.cuts(dst[start:]) {
			continue
		}
		var buffer [16]Point
		kept := side.clip(buffer[:0], dst[start:])
		dst = append(dst[:start], kept...)
	}
	return dst
}

// cuts reports whether any corner lies beyond the side.
func (h halfPlane) cuts(corners []Point) bool {
	for _, p := range corners {
		if h.room(p) < 0 {
			return true
		}
	}
	return false
}

func (h halfPlane) clip(dst, corners []Point) []Point {
	for i, p := range corners {
		q := corners[(i+1)%len(corners)]
		roomP, roomQ := h.room(p), h.room(q)
		if roomP >= 0 {
			dst = append(dst, p)
		}
		if roomP > 0 && roomQ < 0 || roomP < 0 && roomQ > 0 {
			dst = append(dst, h.meet(p, q))
		}
	}
	return dst
}

// meet is where the line from p to q, which crosses the side, meets it.
func (h halfPlane) meet(p, q Point) Point {
	off := h.axis.other()
	at := h.sign * h.limit
	run, rise := h.axis.of(q)-h.axis.of(p), off.of(q)-off.of(p)
	slope := measure.Length(0)
	switch rise {
	case run:
		slope = 1
	case -run:
		slope = -1
	}
	return h.axis.point(at, off.of(p)+slope*(at-h.axis.of(p)))
}

// clipLine is the part of a seam inside the window. A seam that only touches
// the window, or runs along its edge, separates nothing there and is no part.
func (w window) clipLine(a, b Point) (Point, Point, bool) {
	for _, side := range w.sides() {
		roomA, roomB := side.room(a), side.room(b)
		switch {
		case roomA <= 0 && roomB <= 0:
			return a, b, false
		case roomA < 0:
			a = side.meet(a, b)
		case roomB < 0:
			b = side.meet(a, b)
		}
	}
	return a, b, a != b
}

// flat reports whether a polygon clipped at level and upright lines has no
// area left.
func flat(corners []Point) bool {
	if len(corners) < 3 {
		return true
	}
	low, high := corners[0], corners[0]
	for _, p := range corners[1:] {
		low = Point{min(low.X, p.X), min(low.Y, p.Y)}
		high = Point{max(high.X, p.X), max(high.Y, p.Y)}
	}
	return low.X == high.X || low.Y == high.Y
}
