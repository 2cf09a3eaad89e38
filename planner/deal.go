package planner

// place is one place of a layout, counted from zero.
type place struct {
	row, column int
	colourway   int
	nth         int // which of a quilt's blocks of the colourway lies here, in the order in which fabrics are dealt
	turn        int
}

// places gives every place of one quilt its block and its turn, row by row. A
// scattered layout, which needs more than the job to be worked out, is dealt here
// as rows are.
func places(j Job) []place {
	all := grid(j.Layout)
	if j.Layout.Order == Mapped {
		fromMap(all, j)
	} else {
		deal(walk(all, j.Layout), j)
	}
	numberBlocks(all, len(j.Colourways))
	for i := range all {
		all[i].turn = (all[i].turn + patternTurn(j.Layout.Turn, all[i])) % 360
	}
	return all
}

func grid(l Layout) []place {
	all := make([]place, 0, l.Across*l.Down)
	for r := range l.Down {
		for c := range l.Across {
			all = append(all, place{row: r, column: c})
		}
	}
	return all
}

// numberBlocks has each colourway's blocks lie in the order in which they are dealt, row
// by row.
func numberBlocks(all []place, colourways int) {
	next := make([]int, colourways)
	for i := range all {
		all[i].nth = next[all[i].colourway]
		next[all[i].colourway]++
	}
}

func fromMap(all []place, j Job) {
	index := make(map[string]int, len(j.Colourways))
	for i, c := range j.Colourways {
		index[c.Name] = i
	}
	for i := range all {
		cell := j.Layout.Map[all[i].row][all[i].column]
		all[i].colourway, all[i].turn = index[cell.Colourway], cell.Turn
	}
}

// walk is the places in the order in which they are given out: along the
// diagonals from the top left, each from its upper end, or along the rows.
func walk(all []place, l Layout) []*place {
	path := make([]*place, 0, len(all))
	if l.Order != DealDiagonal && l.Order != FillDiagonal {
		for i := range all {
			path = append(path, &all[i])
		}
		return path
	}
	for diagonal := range l.Across + l.Down - 1 {
		for row := max(0, diagonal-l.Across+1); row <= min(diagonal, l.Down-1); row++ {
			path = append(path, &all[row*l.Across+diagonal-row])
		}
	}
	return path
}

// deal gives places out along the path: the next colourway at each place, or
// one colourway until it is used up.
func deal(path []*place, j Job) {
	fill := j.Layout.Order == FillDiagonal || j.Layout.Order == FillRows
	left := make([]int, len(j.Colourways))
	for i, c := range j.Colourways {
		left[i] = c.Blocks
	}
	next := 0
	for _, p := range path {
		for left[next] == 0 {
			next = (next + 1) % len(left)
		}
		p.colourway = next
		left[next]--
		if !fill {
			next = (next + 1) % len(left)
		}
	}
}

func patternTurn(pattern [][]int, p place) int {
	if len(pattern) == 0 {
		return 0
	}
	row := pattern[p.row%len(pattern)]
	return row[p.column%len(row)]
}

// dealt says which fabric each of a quilt's blocks of a colourway gets in a
// role: a list is dealt block by block; a counted role gives each fabric to as
// many blocks as it says, in turn.
func dealt(role RoleFabrics, blocks int) []string {
	out := make([]string, 0, blocks)
	left := make([]int, len(role.Fabrics))
	for i, f := range role.Fabrics {
		left[i] = f.Blocks
	}
	for i := 0; len(out) < blocks; i = (i + 1) % len(role.Fabrics) {
		if role.Counted {
			if left[i] == 0 {
				continue
			}
			left[i]--
		}
		out = append(out, role.Fabrics[i].Fabric)
	}
	return out
}
