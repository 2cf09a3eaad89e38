package planner

import (
	"cmp"
	"fmt"
	"strings"
)

// readMap reads an order that is a list of rows of colourways. Whether it fits
// the layout, and which colourway each cell means, can be said when both are
// known: checkMap does.
func (r *jobReader) readMap(n *fileNode) {
	for _, row := range r.items(n, `"order"`, "rows") {
		var cells []MapCell
		for _, cell := range r.items(row, `a row of "order"`, "colourways") {
			text, _ := r.scalarText(cell, "a colourway")
			cells = append(cells, MapCell{Colourway: text})
		}
		r.job.Layout.Map = append(r.job.Layout.Map, cells)
	}
	r.mapped = n
}

// checkMap checks a mapped layout's shape, its colourways and how often it uses
// each.
func (r *jobReader) checkMap() {
	n, l := r.mapped, &r.job.Layout
	if n == nil || n.kind != list || !r.mapFits(n) {
		return
	}
	uses := map[string]int{}
	known := true
	for i, row := range l.Map {
		for j := range row {
			known = r.cell(n.items[i].items[j], &row[j]) && known
			uses[row[j].Colourway]++
		}
	}
	for _, c := range r.job.Colourways {
		if known && r.blocks.counts && !r.job.hasBlockBorder() && uses[c.Name] != c.Blocks {
			r.fault(n, fmt.Sprintf("the map has %s %s, but that colourway has %s",
				said(c.Name), times(uses[c.Name]), counted(c.Blocks, "block")), "make the two agree")
		}
	}
	if l.Setting == OnPoint && l.rowsAreDiagonals(n) {
		l.Map = l.hangUp(l.Map)
	}
}

func times(n int) string { return counted(n, "time") }

// mapFits checks the number of rows and the length of each. On point they are the
// level lines as the quilt hangs: those of the layout's rows, and between each two
// of them one that is a block shorter; or the diagonal rows as they are sewn.
func (r *jobReader) mapFits(n *fileNode) bool {
	l := r.job.Layout
	if l.Across == 0 || l.Down == 0 || l.Setting == "" {
		return false
	}
	rows, agree := l.Down, "make the two agree"
	if l.Setting == OnPoint {
		if l.rowsAreDiagonals(n) {
			return true
		}
		rows, agree = 2*l.Down-1, fmt.Sprintf("on point, write the level lines as the quilt hangs, %d and %d blocks by turns, %s in all, or the diagonal rows as the job sheet counts them",
			l.Across, l.Across-1, counted(2*l.Down-1, "line"))
	}
	fits := len(n.items) == rows
	if !fits {
		r.fault(n, fmt.Sprintf("the map has %s, but the layout has %d down", counted(len(n.items), "row"), l.Down), agree)
	}
	for i, row := range n.items {
		across := l.Across
		if l.Setting == OnPoint {
			across -= i % 2
		}
		if row.kind == list && len(row.items) != across {
			r.fault(row, fmt.Sprintf("row %d of the map has %s, but the layout has %d across",
				i+1, counted(len(row.items), "block"), across), agree)
			fits = false
		}
		fits = fits && row.kind == list
	}
	return fits
}

// cell reads "tide" or "tide@90"; a colourway whose own name ends so is itself.
func (r *jobReader) cell(n *fileNode, cell *MapCell) bool {
	text := cell.Colourway
	if text == "" || r.isColourway(text) {
		return text != ""
	}
	name, degrees := text, ""
	if at := strings.LastIndex(text, "@"); at >= 0 {
		name, degrees = trimmed(text[:at]), trimmed(text[at+1:])
	}
	switch {
	case !r.isColourway(name):
		r.fault(n, "the map names the colourway "+said(name)+", which is not described",
			cmp.Or(didYouMean(name, r.colourwayNames()), "the colourways are "+listed(r.colourwayNames(), "and")))
		return false
	case degrees == "" && name == text:
		return true
	}
	turn, ok := degreesOf(degrees)
	if !ok {
		r.fault(n, said(text)+" is not turned by quarter turns", "write the degrees clockwise, 0, 90, 180 or 270, as in "+name+"@90")
	}
	cell.Colourway, cell.Turn = name, turn
	return ok
}

// isColourway reports whether a name is one of the job's colourways.
func (r *jobReader) isColourway(name string) bool {
	for _, c := range r.job.Colourways {
		if c.Name == name {
			return true
		}
	}
	return false
}

// colourwayNames is their names, in file order.
func (r *jobReader) colourwayNames() []string {
	names := make([]string, len(r.job.Colourways))
	for i, c := range r.job.Colourways {
		names[i] = c.Name
	}
	return names
}
