package patchwork

import (
	"slices"

	"quiltrun/planner/measure"
)

// RecutUnit cuts a unit from top to bottom at each place of xs (from the left
// edge, rising) and from side to side at each of ys (from the top edge,
// rising). The pieces come row by row; patches and seams are sliced alike.
func RecutUnit(u Unit, xs, ys []measure.Length) [][]Unit {
	xs = withEdges(xs, u.Size.Width)
	ys = withEdges(ys, u.Size.Height)
	rows := make([][]Unit, len(ys)-1)
	for r := range rows {
		rows[r] = make([]Unit, len(xs)-1)
		for c := range rows[r] {
			rows[r][c] = u.seen(window{Point{xs[c], ys[r]}, Point{xs[c+1], ys[r+1]}})
		}
	}
	return rows
}

func withEdges(cuts []measure.Length, span measure.Length) []measure.Length {
	all := make([]measure.Length, 0, len(cuts)+2)
	all = append(all, 0)
	all = append(all, cuts...)
	return append(all, span)
}

// TrimUnit cuts all four sides back to a size; the middle is kept, to the
// nearest tick. A size that is not smaller leaves that direction as it is.
func TrimUnit(u Unit, size measure.Size) Unit {
	left, right := middle(u.Size.Width, size.Width)
	top, bottom := middle(u.Size.Height, size.Height)
	return u.seen(window{Point{left, top}, Point{right, bottom}})
}

func middle(span, kept measure.Length) (from, to measure.Length) {
	if kept >= span {
		return 0, span
	}
	from = (span - kept) / 2
	return from, from + kept
}

// Turned is the unit turned in its place by quarter turns clockwise (negative:
// anticlockwise). Patches and seams turn with it, and so does the way each
// seam is pressed.
func (u Unit) Turned(quarters int) Unit {
	quarters &= 3
	if quarters == 0 {
		return u
	}
	turned := Unit{Size: u.Size, Patches: slices.Clone(u.Patches), Seams: slices.Clone(u.Seams)}
	if quarters%2 == 1 {
		turned.Size = u.Size.Turned()
	}
	for i, p := range turned.Patches {
		p.Corners = slices.Clone(p.Corners)
		for j, corner := range p.Corners {
			p.Corners[j] = corner.turned(u.Size, quarters)
		}
		p.Quarters = (p.Quarters + uint8(quarters)) & 3
		turned.Patches[i] = p
	}
	for i, s := range turned.Seams {
		s.A, s.B = s.A.turned(u.Size, quarters), s.B.turned(u.Size, quarters)
		s.Lean = s.Lean.turned(quarters)
		turned.Seams[i] = s
	}
	return turned
}

// turned is where a point of a unit of the given size comes to lie when the
// unit is turned by 1, 2 or 3 quarter turns.
func (p Point) turned(size measure.Size, quarters int) Point {
	switch quarters {
	case 1:
		return Point{size.Height - p.Y, p.X}
	case 2:
		return Point{size.Width - p.X, size.Height - p.Y}
	default:
		return Point{p.Y, size.Width - p.X}
	}
}

func (l Lean) turned(quarters int) Lean {
	for range quarters {
		l = Lean{-l.Y, l.X}
	}
	return l
}
