package cloth

import (
	"slices"

	"quiltrun/planner/measure"
)

// mostLevels bounds the table of Lost.
const mostLevels = 1 << 16

// Lost is what is left over of a length, shorter than the plan's, when the plan's
// strips are cut from it as far as it goes, in whatever order leaves least, and
// the others from a second length. It is found on a grid of the strips' own
// measure, and by longest first where that grid is too fine.
func (p Plan) Lost(length measure.Length) measure.Length {
	var unit measure.Length
	for _, level := range p.Levels {
		unit = gcd(unit, level)
	}
	if unit == 0 {
		return 0
	}
	cells := measure.FloorDiv(length, unit)
	if cells > mostLevels {
		return p.lostGreedily(length)
	}
	reached := make([]bool, cells+1)
	reached[0] = true
	for _, level := range p.Levels {
		n := measure.FloorDiv(level, unit)
		for at := cells; at >= n; at-- {
			reached[at] = reached[at] || reached[at-n]
		}
	}
	for !reached[cells] {
		cells--
	}
	return length - unit.Times(cells)
}

func (p Plan) lostGreedily(length measure.Length) measure.Length {
	levels := slices.Sorted(slices.Values(p.Levels))
	for _, level := range slices.Backward(levels) {
		if level <= length {
			length -= level
		}
	}
	return length
}
