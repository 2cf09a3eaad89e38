package patchwork

import "quiltrun/planner/measure"

// Point is a place in a unit, from its raw top left corner: X to the right,
// Y down.
type Point struct {
	X, Y measure.Length
}

// Patch is one visible area of one role: a simple polygon, corners clockwise
// as seen, in the unit's raw rectangle (its outer seam allowances included).
// Patches are convex, and their sides are upright, level or at 45 degrees.
type Patch struct {
	Role     string
	Corners  []Point
	Quarters uint8 // quarter turns clockwise since it was cut from cloth, 0 to 3
}

// Lean is the way an allowance is pressed: one step right (X) and down (Y),
// each -1, 0 or +1. The zero Lean is pressed open.
type Lean struct {
	X, Y int8
}

// Seam is a sewn line between two points. Its allowance leans as Lean says
// when the choice Choice is taken the first way, and the other way when it is
// taken the second way; so one build holds every way of pressing at once.
type Seam struct {
	A, B   Point
	Lean   Lean
	Choice int // index into Build.Choices
}

// Unit is a sewn or cut rectangle, raw edge to raw edge. Units share their
// slices freely, so none is ever changed in place.
type Unit struct {
	Size    measure.Size
	Patches []Patch
	Seams   []Seam
}

// axis is one of the two directions of a unit.
type axis uint8

const (
	across axis = iota // X: along a row
	down               // Y: along a column
)

func (a axis) other() axis { return down - a }

func (a axis) of(p Point) measure.Length {
	if a == across {
		return p.X
	}
	return p.Y
}

func (a axis) span(size measure.Size) measure.Length {
	if a == across {
		return size.Width
	}
	return size.Height
}

// point is the point with the given place on the axis and the given place on
// the other axis.
func (a axis) point(on, off measure.Length) Point {
	if a == across {
		return Point{on, off}
	}
	return Point{off, on}
}

// size is the size with the given span on the axis and on the other axis.
func (a axis) size(on, off measure.Length) measure.Size {
	p := a.point(on, off)
	return measure.Size{Width: p.X, Height: p.Y}
}
