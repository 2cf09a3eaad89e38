package planner

import (
	"fmt"

	"quiltrun/planner/english"
)

// turnOf is the turning of a recut block. The shared one belongs to the shared
// block: a colourway that makes another does without.
func (r *jobReader) turnOf(own section, b BuiltIn) *fileNode {
	if n := own.get("turn"); n != nil || b.Rows == 0 {
		return n
	}
	if made := r.blocks.shared.get("make"); made != nil {
		if shared, ok := BuiltInCalled(made.text); ok && shared.Name != b.Name {
			return nil
		}
	}
	return r.either(own, "turn")
}

// pieceTurns reads the turns of a recut block's pieces, one for each.
func (r *jobReader) pieceTurns(n *fileNode, b BuiltIn) [][]int {
	if b.Rows == 0 {
		return nil
	}
	turns := r.turns(n)
	if turns == nil || len(turns) == b.Rows && len(turns[0]) == b.Across {
		return turns
	}
	r.fault(n, fmt.Sprintf("this turns %s, but a %s has %s", rowsOf(len(turns), len(turns[0])), b.Name, rowsOf(b.Rows, b.Across)),
		"give one number of degrees for each piece, row by row")
	return nil
}

// rowsOf is "3 rows of 3 pieces".
func rowsOf(rows, across int) string {
	return counted(rows, "row") + " of " + counted(across, "piece")
}

// counted is english.Count, which most sentences of this room need.
func counted(n int, word string) string { return english.Count(n, word) }

// turns reads rows of degrees clockwise, each row as long as the first, as 0, 90,
// 180 or 270; nil, and reported, for anything else.
func (r *jobReader) turns(n *fileNode) [][]int {
	var turns [][]int
	good := true
	for _, row := range r.items(n, said(n.label), "rows") {
		var degrees []int
		for _, cell := range r.items(row, "a row of "+said(n.label), "degrees") {
			d, ok := r.degrees(cell)
			degrees, good = append(degrees, d), good && ok
		}
		good = good && len(degrees) > 0
		if good && len(turns) > 0 && len(degrees) != len(turns[0]) {
			r.fault(row, fmt.Sprintf("this row of %s has %d, the first row has %d", said(n.label), len(degrees), len(turns[0])), "make all rows the same length")
			good = false
		}
		turns = append(turns, degrees)
	}
	if !good {
		return nil
	}
	return turns
}

// degrees reads a number of quarter turns clockwise.
func (r *jobReader) degrees(n *fileNode) (int, bool) {
	text, ok := r.scalarText(n, "degrees")
	if !ok {
		return 0, false
	}
	degrees, ok := degreesOf(text)
	if !ok {
		r.fault(n, said(text)+" is not a turn by quarter turns", "turns are 0, 90, 180 or 270, in degrees clockwise")
	}
	return degrees, ok
}

// degreesOf reads 0, 90, 180 or 270; 360 is 0.
func degreesOf(text string) (int, bool) {
	d, hint := countOf(text)
	return d % 360, hint == "" && d <= 360 && d%90 == 0
}
