package planner

import "quiltrun/planner/patchwork"

// TopPress is how the seams between the parts of a top are pressed: one direction
// for each row and for each strip.
type TopPress struct {
	Rows    []string    // of each row of blocks, from the top; on point the diagonal rows: right, left, toward the sashing …
	Sashing string      // of rows of sashing and cornerstones; "" where there are none
	Borders []RingPress // of the borders of blocks

	corners, stones, ring patchwork.Tally
	stoneWay              sashWay // of rows of sashing
}

// RingPress is how a border of blocks is pressed: its upper and lower strips to
// the right or left, its left and right ones up or down, and the seams of these
// two to the right or left.
type RingPress struct {
	Border                   int // from 1
	Upper, Lower             string
	Left, Right              string
	LeftSeam, RightSeam      string
	upper, lower, leftStrip  int8
	rightStrip, leftOn, onTo int8
}

// lean is a direction along a join: +1 to the right or down, -1 to the left or up.
func leanWord(lean int8, back, forth string) string {
	if lean < 0 {
		return back
	}
	return forth
}

// meets counts n crossings of two seams that lean so.
func meets(a, b int8, n int) patchwork.Tally {
	if a == b {
		return patchwork.Tally{Clash: n}
	}
	return patchwork.Tally{Nest: n}
}

// rowLean is how a row of blocks is pressed, rows counted from zero: odd rows of
// the map to the right, even rows to the left.
func rowLean(row int) int8 {
	if row%2 == 0 {
		return 1
	}
	return -1
}

// pressRows finds how the seams between the parts of a top are pressed.
func (m *maker) pressRows() TopPress {
	var t TopPress
	l := m.frame.layout
	if l.Sashing != nil {
		m.pressSashing(&t)
	} else {
		leans := make([]int8, m.frame.rowsOfBlocks())
		for row := range leans {
			leans[row] = rowLean(row)
			t.Rows = append(t.Rows, leanWord(leans[row], "left", "right"))
		}
		t.corners = m.frame.corners(leans)
	}
	m.pressRings(&t)
	return t
}

// corners is what becomes of the seams within rows where they cross the joins of
// rows: they nest where the two rows are pressed opposite ways.
func (f frame) corners(rows []int8) patchwork.Tally {
	var t patchwork.Tally
	for row := 1; row < len(rows); row++ {
		crossings := f.layout.Across - 1
		if f.onPoint() {
			crossings = f.layout.common(row - 1)
		}
		t = t.Plus(meets(rows[row-1], rows[row], crossings))
	}
	return t
}

// sashWay is a way of pressing the seams on both sides of what stands in a line of
// upright sashing: how those on its left lean, and those on its right.
type sashWay struct {
	block, stone string // as it is said of a row of blocks, and of a row of sashing
	left, right  int8
}

// sashWays are all of them, the trade's common practice first: toward the sashing
// is toward what stands in the line in a row of blocks, and away from it in a row of
// sashing.
var sashWays = []sashWay{
	{"toward the sashing", "toward the cornerstones", 1, -1},
	{"toward the blocks", "toward the sashing", -1, 1},
	{"right", "right", 1, 1},
	{"left", "left", -1, -1},
}

// pressSashing tries every way of pressing rows of blocks with every way of
// pressing rows of sashing and keeps the one with the fewest clashes. Without
// cornerstones nothing meets, and the seams go toward the sashing.
func (m *maker) pressSashing(t *TopPress) {
	f := m.frame
	block := sashWays[0]
	if f.stones() {
		best, first := patchwork.Tally{}, true
		for _, one := range sashWays {
			for _, other := range sashWays {
				met := f.sashMeets(one, other)
				if first || met.Clash < best.Clash {
					best, first = met, false
					block, t.stoneWay, t.stones = one, other, met
				}
			}
		}
		if best == (patchwork.Tally{}) {
			block, t.stoneWay = sashWays[0], sashWays[1]
		}
		t.Sashing = t.stoneWay.stone
	}
	for range f.layout.Down {
		t.Rows = append(t.Rows, block.block)
	}
}

// sashMeets is what the seams of rows of blocks and of rows of sashing come to where
// these are joined. A line of sashing at the edge has a seam on its inner side only.
func (f frame) sashMeets(block, stone sashWay) patchwork.Tally {
	each := f.layout.Across - boolean(!f.edged()) // seams on either side, in a row
	joins := f.layout.Down + f.levels() - 1
	return meets(block.left, stone.left, each*joins).Plus(meets(block.right, stone.right, each*joins))
}
