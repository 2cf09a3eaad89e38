package planner

import (
	"cmp"
	"slices"
)

// place is one place of a top, counted from zero.
type place struct {
	row, column int // as its block's are counted, over the whole; on point, rows are diagonals
	line, nth   int // as the quilt hangs: the level line, and the place in it; the layout's first block is 0, 0
	u, v        int // in the grid in which blocks are sewn: on point that of the diagonal rows
	ring        int // 0: inside all borders; else the border that it is of, from 1
	colourway   int
	dealt       int // which of a quilt's blocks of the colourway lies here, in the order in which fabrics are dealt
	turn        int
}

// places is all places of one quilt, row by row.
func (f frame) places() []place {
	all := f.centre()
	for _, r := range f.rounds() {
		if r.ofBlocks() {
			all = f.around(all, r)
		}
	}
	return all
}

// centre is the places inside all borders.
func (f frame) centre() []place {
	if f.onPoint() {
		return f.pointPlaces()
	}
	l := f.layout
	all := make([]place, 0, l.Across*l.Down)
	for row := range l.Down {
		for column := range l.Across {
			all = append(all, place{row: row, column: column, line: row, nth: column, u: row, v: column})
		}
	}
	return all
}

// around puts a border of blocks round what is there: its left and its upper blocks
// become the first column and the first row.
func (f frame) around(all []place, r round) []place {
	shift := 1
	for _, p := range all {
		shift = max(shift, p.row-p.line+1)
	}
	for i := range all {
		p := &all[i]
		p.row, p.column, p.u, p.v = p.row+1, p.column+1, p.u+1, p.v+1
	}
	across, down := f.along(r)
	all = slices.Grow(all, f.ringBlocks(r))
	for row := range down + 2 {
		for column := range across + 2 {
			if row == 0 || row == down+1 || column == 0 || column == across+1 {
				all = append(all, place{
					row: row, column: column, line: row - shift, nth: column - shift, u: row, v: column, ring: r.nth + 1,
				})
			}
		}
	}
	slices.SortFunc(all, func(a, b place) int { return cmp.Or(cmp.Compare(a.row, b.row), cmp.Compare(a.column, b.column)) })
	return all
}

// grid is how many rows and columns the places take up in the grid in which they
// are sewn.
func (f frame) grid() (rows, columns int) {
	if f.onPoint() {
		return f.layout.pointRows(), f.layout.pointRows()
	}
	rows, columns = f.layout.Down, f.layout.Across
	for _, r := range f.rounds() {
		if r.ofBlocks() {
			across, down := f.along(r)
			rows, columns = down+2, across+2
		}
	}
	return rows, columns
}

// sewnAt is where a block lies in the grid in which blocks are sewn.
func (f frame) sewnAt(b *Block) (u, v int) {
	if !f.onPoint() {
		return b.Row - 1, b.Column - 1
	}
	first, _ := f.layout.span(b.Row - 1)
	return b.Row - 1, b.Column - 1 + first + f.layout.Down - 1
}
