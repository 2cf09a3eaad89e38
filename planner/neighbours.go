package planner

import "slices"

// seamSort is what sort of seam two blocks meet at.
type seamSort uint8

const (
	noSeam      seamSort = iota
	inRow                // of a row
	betweenRows          // of two rows
	inBorder             // along a border of blocks
	ofBorder             // of a border of blocks and what it goes round
	seamKinds   = iota
)

// neighbourhood knows which blocks of a top lie against each other.
type neighbourhood struct {
	frame
	columns int
	places  []place
	at      []int    // in the grid, row by row: the place that lies there, from 1; 0 for none
	touches []bool   // per border: of blocks that lie against other blocks
	ends    [][2]int // per border: its first and its last row
}

func (f frame) neighbourhood(places []place) neighbourhood {
	rows, columns := f.grid()
	borders := len(f.borders) + 1
	n := neighbourhood{
		frame: f, columns: columns, places: places,
		at: make([]int, rows*columns), touches: make([]bool, borders), ends: make([][2]int, borders),
	}
	for i, p := range places {
		n.at[p.u*columns+p.v] = i + 1
		n.ends[p.ring][1] = p.u
	}
	for _, p := range slices.Backward(places) {
		n.ends[p.ring][0] = p.u
	}
	for _, r := range f.rounds() {
		n.touches[r.nth+1] = r.touching
	}
	return n
}

// left is the block to the left of a place, and the seam between them; noSeam where
// none lies there or something lies between.
func (n neighbourhood) left(p place) (int, seamSort) {
	if p.v == 0 {
		return 0, noSeam
	}
	return n.seam(p, n.at[p.u*n.columns+p.v-1]-1, false)
}

// above is the block above a place.
func (n neighbourhood) above(p place) (int, seamSort) {
	if p.u == 0 {
		return 0, noSeam
	}
	return n.seam(p, n.at[(p.u-1)*n.columns+p.v]-1, true)
}

func (n neighbourhood) seam(p place, other int, above bool) (int, seamSort) {
	if other < 0 {
		return 0, noSeam
	}
	o := n.places[other]
	switch {
	case o.ring != p.ring && !n.touches[max(o.ring, p.ring)]:
		return other, noSeam
	case o.ring != p.ring:
		return other, ofBorder
	case p.ring > 0:
		return other, n.inStrip(o, p, above)
	case n.layout.Sashing != nil:
		return other, noSeam
	case above:
		return other, betweenRows
	default:
		return other, inRow
	}
}

// inStrip is the seam of two blocks of one border: along its left or right strip,
// along its upper or lower one, or between the two, since the upper and lower ones
// are sewn on over the ends of the others.
func (n neighbourhood) inStrip(o, p place, above bool) seamSort {
	if ends := n.ends[p.ring]; above && (o.u == ends[0] || p.u == ends[1]) {
		return ofBorder
	}
	return inBorder
}
