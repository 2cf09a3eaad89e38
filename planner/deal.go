package planner

import (
	"cmp"
	"slices"
)

// dealtPlaces gives every place of one quilt its colourway and its turn, row by row.
// Borders of blocks take theirs first; the layout's order deals out the rest. A
// scattered layout, which is found from all others, is dealt here as rows are.
func dealtPlaces(j *Job, f frame) []place {
	all := f.places()
	index, left := make(map[string]int, len(j.Colourways)), make([]int, len(j.Colourways))
	for i, c := range j.Colourways {
		index[c.Name], left[i] = i, c.Blocks
	}
	for _, r := range f.rounds() {
		if r.ofBlocks() {
			dealRing(ringPath(all, r.nth+1), r.Border, index, left)
		}
	}
	if j.Layout.Order == Mapped {
		fromMap(all, j.Layout.Map, index)
	} else {
		deal(walk(all, f), left, j.Layout.Order == FillDiagonal || j.Layout.Order == FillRows)
	}
	numberBlocks(all, len(j.Colourways))
	for i := range all {
		all[i].turn = (all[i].turn + patternTurn(j.Layout.Turn, all[i])) % 360
	}
	return all
}

// numberBlocks has each colourway's blocks lie in the order in which they are dealt,
// row by row.
func numberBlocks(all []place, colourways int) {
	next := make([]int, colourways)
	for i := range all {
		all[i].dealt = next[all[i].colourway]
		next[all[i].colourway]++
	}
}

func fromMap(all []place, rows [][]MapCell, index map[string]int) {
	for i := range all {
		if all[i].ring == 0 {
			cell := rows[all[i].line][all[i].nth]
			all[i].colourway, all[i].turn = index[cell.Colourway], cell.Turn
		}
	}
}

// walk is the places inside all borders in the order in which they are given out:
// along the diagonals from the top left, each from its upper end, or along the
// level lines as the quilt hangs, each from the left.
func walk(all []place, f frame) []*place {
	diagonal := f.layout.Order == DealDiagonal || f.layout.Order == FillDiagonal
	keys := make([]int, 0, len(all)) // the way along, a place in it, the index
	for i := range all {
		p := &all[i]
		if p.ring > 0 {
			continue
		}
		way, along := p.line, p.nth
		if diagonal {
			way, along = p.line+p.nth, p.line
		}
		if diagonal && f.onPoint() {
			way, along = p.u, MostBlocks-p.v
		}
		keys = append(keys, (way*2*MostBlocks+along)*MostBlocks+i)
	}
	if diagonal || f.onPoint() {
		slices.Sort(keys)
	}
	path := make([]*place, len(keys))
	for i, key := range keys {
		path[i] = &all[key%MostBlocks]
	}
	return path
}

// ringPath is a border's places clockwise from its top left corner.
func ringPath(all []place, ring int) []*place {
	var path []*place
	last := place{}
	for i := range all {
		if all[i].ring == ring {
			path = append(path, &all[i])
			last = all[i]
		}
	}
	first := *path[0]
	way := func(p *place) int { // the side that a place is on, clockwise, and how far along it
		switch {
		case p.u == first.u:
			return p.v
		case p.v == last.v:
			return 1<<20 + p.u
		case p.u == last.u:
			return 2<<20 - p.v
		default:
			return 3<<20 - p.u
		}
	}
	slices.SortFunc(path, func(a, b *place) int { return cmp.Compare(way(a), way(b)) })
	return path
}

// dealRing gives a border's places their colourways in turn, and takes them off
// what is left.
func dealRing(path []*place, b Border, index map[string]int, left []int) {
	counts := make([]int, len(b.Blocks))
	for i, s := range b.Blocks {
		counts[i] = s.Blocks
	}
	for i, share := range inTurn(counts, b.Counted, len(path)) {
		path[i].colourway = index[b.Blocks[share].Colourway]
		left[path[i].colourway]--
	}
}

// deal gives places out along the path: the next colourway at each place, or
// one colourway until it is used up.
func deal(path []*place, left []int, fill bool) {
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

// patternTurn repeats a pattern from the layout's first block on, to all sides.
func patternTurn(pattern [][]int, p place) int {
	if len(pattern) == 0 {
		return 0
	}
	row := pattern[wrapped(p.line, len(pattern))]
	return row[wrapped(p.nth, len(row))]
}

// wrapped is n modulo size, never below nought.
func wrapped(n, size int) int { return (n%size + size) % size }

// dealt says which fabric each of a quilt's blocks of a colourway gets in a
// role: a list is dealt block by block; a counted role gives each fabric to as
// many blocks as it says, in turn.
func dealt(role RoleFabrics, blocks int) []string {
	counts := make([]int, len(role.Fabrics))
	for i, f := range role.Fabrics {
		counts[i] = f.Blocks
	}
	out := make([]string, blocks)
	for i, share := range inTurn(counts, role.Counted, blocks) {
		out[i] = role.Fabrics[share].Fabric
	}
	return out
}

// inTurn deals n places to shares in turn, and passes over those that are counted
// and used up. Counts must suffice where they are counted.
func inTurn(counts []int, counted bool, n int) []int {
	out := make([]int, 0, n)
	left := slices.Clone(counts)
	for i := 0; len(out) < n; i = (i + 1) % len(counts) {
		if counted {
			if left[i] == 0 {
				continue
			}
			left[i]--
		}
		out = append(out, i)
	}
	return out
}
