package planner

import "quiltrun/planner/patchwork"

// The joins of blocks with one another.
const (
	blockColumns = "block columns"
	blockRows    = "block rows"
)

// topJoins sums up where the blocks of one quilt meet. Rows of the top are
// pressed right and left in turn.
func topJoins(q Quilt, met patchwork.Met) []Join {
	right := make([]bool, q.Down)
	for row := range right {
		right[row] = rowToTheRight(row)
	}
	return []Join{
		{blockColumns, met.Columns},
		{blockRows, met.Rows},
		{"block corners", corners(q.Across, right)},
	}
}

// rowToTheRight says which way a row of the top is pressed, rows counted from
// zero: odd rows of the map to the right, even rows to the left.
func rowToTheRight(row int) bool { return row%2 == 0 }

// corners is what becomes of the seams between blocks where they cross the joins
// of rows: they nest where the two rows are pressed opposite ways.
func corners(across int, right []bool) patchwork.Tally {
	var t patchwork.Tally
	for row := 1; row < len(right); row++ {
		if right[row] == right[row-1] {
			t.Clash += across - 1
		} else {
			t.Nest += across - 1
		}
	}
	return t
}
