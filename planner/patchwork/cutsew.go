package patchwork

import "quiltrun/planner/measure"

// CutPiece is a piece of cloth of the given raw size.
func CutPiece(role string, size measure.Size) Unit {
	unit := Unit{Size: size}
	all := unit.whole()
	unit.Patches = []Patch{{Role: role, Corners: []Point{
		all.min, {all.max.X, 0}, all.max, {0, all.max.Y},
	}}}
	return unit
}

// SewBeside sews right onto the right edge of left. Each loses s at the seam,
// so the result is left + right - 2s wide. The seam's allowance leans left
// where choice is taken the first way. Edges that differ are cut back to the
// shorter; whether they may differ is Make's to judge.
func SewBeside(left, right Unit, s measure.Length, choice int) Unit {
	return SewRow([]Unit{left, right}, s, choice)
}

// SewRow sews units side by side, the first at the left, all seams pressed by
// the same choice: n units of raw widths w1..wn make a raw width of their sum
// less 2(n-1)s.
func SewRow(units []Unit, s measure.Length, choice int) Unit {
	return sewLine(units, s, across, func(int) int { return choice })
}

// SewRows sews units one below the other, the first on top. The join under
// rows[i] is pressed by choices[i], up where that choice is taken the first
// way.
func SewRows(rows []Unit, s measure.Length, choices []int) Unit {
	return sewLine(rows, s, down, func(join int) int { return choices[join] })
}

// sewLine sews units one after the other along an axis.
func sewLine(units []Unit, s measure.Length, along axis, choice func(join int) int) Unit {
	off := along.other()
	width := off.span(units[0].Size)
	for _, u := range units[1:] {
		width = min(width, off.span(u.Size))
	}
	line := roomFor(units)
	last := len(units) - 1
	var at measure.Length // where the unit's raw edge comes to lie
	for i, u := range units {
		from, to := measure.Length(0), along.span(u.Size)
		if i > 0 {
			from = s
		}
		if i < last {
			to -= s
		}
		w := window{min: along.point(from, 0), max: along.point(to, width)}
		line.add(u, w, along.point(at, 0))
		if i < last {
			line.Seams = append(line.Seams, Seam{
				A: along.point(at+to, 0), B: along.point(at+to, width),
				Lean: firstWay(along), Choice: choice(i),
			})
			at += to - s
		} else {
			line.Size = along.size(at+to, width)
		}
	}
	return line
}

// firstWay is the lean of a seam that joins along the axis, pressed the first
// way: back toward the unit before it.
func firstWay(along axis) Lean {
	if along == across {
		return Lean{X: -1}
	}
	return Lean{Y: -1}
}

// roomFor is an empty unit with room for all that the units hold.
func roomFor(units []Unit) Unit {
	patches, seams := 0, len(units)-1
	for _, u := range units {
		patches += len(u.Patches)
		seams += len(u.Seams)
	}
	return Unit{Patches: make([]Patch, 0, patches), Seams: make([]Seam, 0, seams)}
}
