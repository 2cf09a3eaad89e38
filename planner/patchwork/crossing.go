package patchwork

import (
	"cmp"
	"slices"

	"quiltrun/planner/measure"
)

// Side is an edge of a unit.
type Side uint8

// The sides of a unit, clockwise from the left.
const (
	LeftSide Side = iota
	TopSide
	RightSide
	BottomSide
)

// Crossing is a place where a seam of a unit crosses the sewing line of one of
// its sides.
type Crossing struct {
	At    measure.Length // along the side, from the raw corner at the left or top
	Along int8           // lean along the side: +1 right or down, -1 left or up, 0 open
}

// Crossings lists the seams of a unit that cross the sewing line of a side, in
// order along it, with their leans when the unit is pressed as w says. What
// falls into the allowances at the two ends is left out.
func Crossings(u Unit, side Side, seam measure.Length, w Way) []Crossing {
	found := crossings(u, side, seam)
	list := make([]Crossing, len(found))
	for i, c := range found {
		list[i] = Crossing{At: c.at, Along: c.pressed(w)}
	}
	return list
}

// Meet tallies the match points of a join between two edges of the given raw
// length, whose crossings are a and b. Both count from the same end.
func Meet(a, b []Crossing, length, seam measure.Length) Tally {
	return TallyMatches(meet(fixed(a, length, seam), fixed(b, length, seam), seam), nil)
}

// fixed makes crossings that no choice can change.
func fixed(list []Crossing, length, seam measure.Length) []crossing {
	found := make([]crossing, 0, len(list))
	for _, c := range list {
		if inside(c.At, length, seam) {
			found = append(found, crossing{c.At, Signed{Along: c.Along}})
		}
	}
	return found
}

// crossing is a crossing that still depends on a choice.
type crossing struct {
	at measure.Length
	Signed
}

// sewingLine is where a seam along the side is sewn: an axis, and the place of
// the line on the other axis.
func (u Unit) sewingLine(side Side, seam measure.Length) (along axis, at measure.Length) {
	switch side {
	case LeftSide:
		return down, seam
	case TopSide:
		return across, seam
	case RightSide:
		return down, u.Size.Width - seam
	default:
		return across, u.Size.Height - seam
	}
}

func crossings(u Unit, side Side, seam measure.Length) []crossing {
	along, line := u.sewingLine(side, seam)
	length := along.span(u.Size)
	var found []crossing
	for _, s := range u.Seams {
		at, ok := s.crosses(along, line)
		if ok && inside(at, length, seam) {
			found = append(found, crossing{at, Signed{Choice: s.Choice, Along: s.Lean.on(along)}})
		}
	}
	slices.SortStableFunc(found, func(a, b crossing) int { return cmp.Compare(a.at, b.at) })
	return found
}

// inside reports whether a place on a side lies outside the allowances at its
// ends. A seam that runs to the corner of the sewing lines, as a diagonal does,
// is at the end.
func inside(at, length, seam measure.Length) bool {
	return at > seam+same && at < length-seam-same
}

// crosses finds where a seam meets a line that runs along an axis. A seam that
// ends on the line meets it, though a tick may be missing to it; one that runs
// along it does not.
func (s Seam) crosses(along axis, line measure.Length) (measure.Length, bool) {
	off := along.other()
	a, b := off.of(s.A), off.of(s.B)
	if a == b || line < min(a, b)-same || line > max(a, b)+same {
		return 0, false
	}
	return along.of(halfPlane{axis: off, sign: 1, limit: line}.meet(s.A, s.B)), true
}

// on is the lean's part along an axis.
func (l Lean) on(a axis) int8 {
	if a == across {
		return l.X
	}
	return l.Y
}
