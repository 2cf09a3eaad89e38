package forecast

import (
	"math"
	"slices"
)

// diary is the working time ahead in minutes from now, and what of it is free.
type diary struct {
	free []gap // ascending; the last has no end
}

// gap is a stretch of free minutes.
type gap struct {
	from, to float64
}

// clear frees everything.
func (d *diary) clear() {
	d.free = append(d.free[:0], gap{0, math.Inf(1)})
}

// book takes the first free minutes not before from and returns where they
// end. For no minutes that is the first free moment.
func (d *diary) book(from, minutes float64) float64 {
	i := 0
	for {
		for d.free[i].to <= from {
			i++
		}
		start := max(d.free[i].from, from)
		if minutes <= 0 {
			return start
		}
		end := min(start+minutes, d.free[i].to)
		if end == start+minutes {
			d.take(i, start, end)
			return end
		}
		minutes -= end - start
		i += d.take(i, start, end)
	}
}

// take cuts booked minutes out of gap i and returns how many gaps are left
// before what was booked, out of that one: 0 or 1.
func (d *diary) take(i int, start, end float64) int {
	g := d.free[i]
	before, after := start > g.from, end < g.to
	switch {
	case before && after:
		d.free[i].to = start
		d.free = slices.Insert(d.free, i+1, gap{end, g.to})
	case before:
		d.free[i].to = start
	case after:
		d.free[i].from = end
	default:
		d.free = slices.Delete(d.free, i, i+1)
	}
	if before {
		return 1
	}
	return 0
}
