package draw

import (
	"cmp"
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// recutting is a sewn unit with the lines along which it is cut again: how far
// apart they lie, and how far from what they are measured from.
func (m *making) recutting(made patchwork.Made) panel {
	size := made.Unit.Size
	upright, level := made.Cuts[0], made.Cuts[1]
	right := dimsRight
	if slices.Equal(made.Step.Upright, made.Step.Level) || len(m.measured(made.Step.Level, size.Height, m.scale)) == 0 {
		right = 0 // what stands below holds for both ways, or there is nothing to say
	}
	s := m.scale.fitted(size, panelWidth-dimsLeft-right-unit, unitRoom)
	width, height := s.of(size.Width), s.of(size.Height)
	art := picture{dimsLeft + width + right, dimsAbove + height + dimsBelow, func(c *canvas) {
		c.open("g", shifted(dimsLeft, dimsAbove))
		m.unit(c, made.Unit, s, m.wear)
		m.arrows(c, made.Unit, s, m.way, m.freshIn(""))
		c.cutLines(cutPath(upright, level, s, width, height))
		c.chainAbove(m.chain(upright, size.Width, s))
		c.chainLeft(m.chain(level, size.Height, s))
		c.fromBelow(m.measured(made.Step.Upright, size.Width, s), height)
		if right > 0 {
			c.fromRight(m.measured(made.Step.Level, size.Height, s), width)
		}
		c.shut("g")
	}}
	return panel{named(made), art, []string{m.recutWords(made), inUnits(m.units())}}
}

// cutPath is the lines of cuts, a little longer than the unit.
func cutPath(upright, level []measure.Length, s scale, width, height span) *path {
	const over = 5 * unit
	var p path
	for _, x := range upright {
		p.stroke(s.of(x), -over, s.of(x), height+over)
	}
	for _, y := range level {
		p.stroke(-over, s.of(y), width+over, s.of(y))
	}
	return &p
}

// mostGaps is how many measures a chain writes one by one.
const mostGaps = 5

// chain is the measures between cuts, from edge to edge. Of many equal ones it
// gives the first and what is left over.
func (m *making) chain(cuts []measure.Length, length measure.Length, s scale) []dim {
	if len(cuts) == 0 {
		return nil
	}
	ends := append(slices.Clone(cuts), length)
	var chain []dim
	var from measure.Length
	for i, to := range ends {
		if i == 0 || len(ends) <= mostGaps || i == len(ends)-1 && to-from != ends[0] {
			chain = append(chain, dim{s.of(from), s.of(to), number(to-from, m.units())})
		}
		from = to
	}
	return chain
}

// measured is how far cuts lie from the line or edge that they are measured
// from. There is nothing to measure for a cut on that line, and nothing to add
// to the chain for a single cut from an edge.
func (m *making) measured(cuts []patchwork.From, length measure.Length, s scale) []dim {
	var dims []dim
	for _, cut := range cuts {
		origin, distance := origin(cut, length)
		edge := cut.Edge == patchwork.Near || cut.Edge == patchwork.Far
		if cut.Distance == 0 || edge && len(cuts) == 1 {
			continue
		}
		dims = append(dims, dim{s.of(origin), s.of(origin + distance), number(cut.Distance.Times(sign(cut.Distance)), m.units())})
	}
	return dims
}

// origin is the place that a cut is measured from, and how far to the right of it
// or below it the cut lies.
func origin(cut patchwork.From, length measure.Length) (place, distance measure.Length) {
	switch cut.Edge {
	case patchwork.Near:
		return 0, cut.Distance
	case patchwork.Far:
		return length, -cut.Distance
	case patchwork.FirstThird:
		return length / 3, cut.Distance
	case patchwork.SecondThird:
		return length - length/3, cut.Distance
	default:
		return length / 2, cut.Distance
	}
}

func sign(l measure.Length) int { return cmp.Compare(l, 0) }

// The gap between pieces that are pulled apart.
const apartGap = 14 * unit

// apart is the pieces of a recut, pulled apart in their places.
func (m *making) apart(made patchwork.Made) panel {
	rows, columns := len(made.Pieces), len(made.Pieces[0])
	line := fmt.Sprintf("%d pieces, pulled apart.", rows*columns)
	return panel{made.Step.Name + ", apart", m.grid(made.Pieces, nil), []string{line}}
}

// turning is the pieces turned in their places, with a mark on each that was.
func (m *making) turning(made patchwork.Made) panel {
	from := exchanged(made.Step.Exchange, len(made.Pieces), len(made.Pieces[0]))
	art := m.grid(made.Pieces, func(c *canvas, row, column int, size spot, taken []spot) {
		piece := from[row*len(made.Pieces[0])+column]
		place := freeSpot(size, taken)
		if degrees := turnOf(made.Step.Turns, piece, len(made.Pieces[0])); degrees != 0 {
			c.turnMark(place, degrees)
		}
		if piece != row*len(made.Pieces[0])+column {
			c.fromMark(piece+1, size)
		}
	})
	return panel{named(made), art, m.turnWords(made)}
}

// turnOf is the turn of a piece, in degrees clockwise from 0 to 270.
func turnOf(turns [][]int, piece, columns int) int {
	if turns == nil {
		return 0
	}
	return (turns[piece/columns][piece%columns]%360 + 360) % 360
}

// exchanged is which piece, numbered row by row from 0, comes to lie in each
// place.
func exchanged(pairs [][2]int, rows, columns int) []int {
	order := make([]int, rows*columns)
	for i := range order {
		order[i] = i
	}
	for _, pair := range pairs {
		order[pair[0]-1], order[pair[1]-1] = order[pair[1]-1], order[pair[0]-1]
	}
	return order
}

// extent is how much room pieces take edge to edge.
func extent(pieces [][]patchwork.Unit) measure.Size {
	var all measure.Size
	for _, row := range pieces {
		var width measure.Length
		for _, piece := range row {
			width += piece.Size.Width
		}
		all.Width = max(all.Width, width)
		all.Height += row[0].Size.Height
	}
	return all
}

// grid draws pieces in their places with gaps between, and on each what mark
// adds, if anything, knowing where signs of seams stand.
func (m *making) grid(pieces [][]patchwork.Unit, mark func(c *canvas, row, column int, size spot, taken []spot)) picture {
	s := m.scale.fitted(extent(pieces), panelText-span(len(pieces[0])-1)*apartGap, unitRoom*6/5)
	var all picture
	for r, row := range pieces {
		var width span
		for _, piece := range row {
			width += s.of(piece.Size.Width) + apartGap
		}
		all.width = max(all.width, width-apartGap)
		all.height += s.of(row[0].Size.Height)
		if r > 0 {
			all.height += apartGap
		}
	}
	all.paint = func(c *canvas) {
		var y span
		for r, row := range pieces {
			var x span
			for i, piece := range row {
				size := spot{s.of(piece.Size.Width), s.of(piece.Size.Height)}
				c.open("g", shifted(x, y))
				m.unit(c, piece, s, m.wear)
				taken := m.arrows(c, piece, s, m.way, m.freshIn(""))
				if mark != nil {
					mark(c, r, i, size, taken)
				}
				c.shut("g")
				x += size.x + apartGap
			}
			y += s.of(row[0].Size.Height) + apartGap
		}
	}
	return all
}
