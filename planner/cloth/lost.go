package cloth

import (
	"slices"

	"quiltrun/planner/measure"
)

// mostLevels bounds the table of First.
const mostLevels = 1 << 16

// Lost is what is left over of a length, shorter than the plan's, when First of the
// plan's strips are cut from it, and the others from a second length.
func (p Plan) Lost(length measure.Length) measure.Length {
	if len(p.Levels) == 0 {
		return 0
	}
	for _, level := range p.First(length) {
		length -= level
	}
	return length
}

// First is the plan's strips to cut from a length shorter than the plan's, in the
// order in which they stand in the plan, so that least of it is left over. They are
// found on a grid of the strips' own measure, and by longest first where that grid is
// too fine.
func (p Plan) First(length measure.Length) []measure.Length {
	var unit measure.Length
	for _, level := range p.Levels {
		unit = gcd(unit, level)
	}
	if unit == 0 {
		return nil
	}
	cells := measure.FloorDiv(length, unit)
	if cells > mostLevels {
		return p.firstGreedily(length)
	}
	by := make([]int, cells+1) // the strip that first reached a sum, from 1; all before it are earlier ones
	for i, level := range p.Levels {
		n := measure.FloorDiv(level, unit)
		for at := cells; at >= n; at-- {
			if by[at] == 0 && (at == n || by[at-n] != 0) {
				by[at] = i + 1
			}
		}
	}
	for cells > 0 && by[cells] == 0 {
		cells--
	}
	var first []measure.Length
	for cells > 0 {
		level := p.Levels[by[cells]-1]
		first = append(first, level)
		cells -= measure.FloorDiv(level, unit)
	}
	slices.Reverse(first)
	return first
}

func (p Plan) firstGreedily(length measure.Length) []measure.Length {
	var first []measure.Length
	levels := slices.Sorted(slices.Values(p.Levels))
	for _, level := range slices.Backward(levels) {
		if level <= length {
			length -= level
			first = append(first, level)
		}
	}
	return first
}
