package render

import (
	"strconv"
	"strings"

	"quiltrun/planner"
)

// swaps says which blocks lie in each other's places.
func (s *sheet) swaps() {
	var said []string
	for _, swap := range s.plan.Swaps {
		said = append(said, swap.A+" and "+swap.B)
	}
	switch len(said) {
	case 0:
	case 1:
		s.para(1, said[0]+" have changed places on the floor; the map shows them so.")
	default:
		s.para(1, "Blocks have changed places on the floor, and the map shows them so. In that order: "+strings.Join(said, "; ")+".")
	}
}

// inOrder reports whether each colourway's blocks are numbered along the rows, so that
// their places need no map of their own beside another quilt's.
func inOrder(blocks []planner.Block) bool {
	last := map[string]int{}
	for _, b := range blocks {
		n, err := strconv.Atoi(idNumber(b.ID))
		if err != nil || n <= last[b.Colourway] {
			return false
		}
		last[b.Colourway] = n
	}
	return true
}
