package planner

import "quiltrun/planner/measure"

// On point, blocks stand on a corner. They are sewn in diagonal rows, which run up
// to the right: with the quilt turned an eighth clockwise the rows lie level, and
// the blocks are a straight grid again. In that grid u counts the rows, from the
// top left corner of the quilt, and v the places along a row, from its lower left
// end. As the quilt hangs, the blocks stand in level lines: those of the layout's
// rows, and the ones between.

// halfDiagonals is so many halves of a block's diagonal, n times side/√2, rounded
// down to the tick: it is what a top yields.
func (f frame) halfDiagonals(n int) measure.Length {
	return f.block.Width.Times(n).OverRoot2(measure.Down)
}

// pointRows is how many diagonal rows there are.
func (l *Layout) pointRows() int { return l.Across + l.Down - 1 }

// span is the first and the last place of a diagonal row, as steps to the right of
// the row's middle line through the top left corner.
func (l *Layout) span(row int) (first, last int) {
	return max(-row, row-2*(l.Down-1)), min(row, 2*(l.Across-1)-row)
}

// hung is where a place of a diagonal row is as the quilt hangs: so many halves of
// a diagonal right of the first block and below it.
func (l *Layout) hung(row, step int) (right, below int) { return row + step, row - step }

// pointPlaces is the places on point, diagonal row by diagonal row.
func (f frame) pointPlaces() []place {
	l := f.layout
	all := make([]place, 0, placesOf(*l))
	for row := range l.pointRows() {
		first, last := l.span(row)
		for step := first; step <= last; step++ {
			right, below := l.hung(row, step)
			all = append(all, place{
				row: row, column: step - first, u: row, v: step + l.Down - 1,
				line: below, nth: right / 2,
			})
		}
	}
	return all
}

// common is how many seams of two neighbouring diagonal rows meet where the rows
// are joined: those between their blocks, and between blocks and side triangles.
func (l *Layout) common(row int) int {
	first, last := l.span(row)
	first2, last2 := l.span(row + 1)
	return min(last, last2) - max(first, first2) + 2
}

// pointJoin is how many sides of a block the join below a diagonal row is long.
func (l *Layout) pointJoin(row int) int {
	c := 2*row + 3 // twice the way down the quilt's edge, in diagonals
	return min(2*l.Across, c) - max(0, c-2*l.Down)
}

// sideTriangles and cornerTriangles are how many setting triangles one quilt has.
func (l *Layout) sideTriangles() int { return 2*(l.Across-1) + 2*(l.Down-1) }

const cornerTriangles = 4

// rowsAreDiagonals reports whether a map's rows are as long as the diagonal rows.
func (l *Layout) rowsAreDiagonals(n *fileNode) bool {
	if len(n.items) != l.pointRows() {
		return false
	}
	for row, item := range n.items {
		first, last := l.span(row)
		if item.kind != list || len(item.items) != last-first+1 {
			return false
		}
	}
	return true
}

// hangUp turns a map of diagonal rows into one of level lines.
func (l *Layout) hangUp(rows [][]MapCell) [][]MapCell {
	lines := make([][]MapCell, 2*l.Down-1)
	for line := range lines {
		lines[line] = make([]MapCell, l.Across-line%2)
	}
	for row, cells := range rows {
		first, _ := l.span(row)
		for i, cell := range cells {
			right, below := l.hung(row, first+i)
			lines[below][right/2] = cell
		}
	}
	return lines
}
