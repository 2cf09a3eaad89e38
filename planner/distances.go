package planner

import (
	"math/big"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// distances is 1/d² between the middles of a top's places, in 2⁻⁴⁰ of what it is for
// the two nearest, rounded to the nearest. There are few distances to the side and
// few down, so the table is small whatever the top.
type distances struct {
	at           []cell
	across, down [][]int   // by two columns of middles, or two rows: which distance it is
	near         [][]int64 // by distance down, then across
}

// cell is a place by the column and the row that its middle is in.
type cell struct{ x, y int }

// distances measures a layout. On point it is measured along the rows and across
// them, where all steps are a block's side.
func (f frame) distances(layout []place) distances {
	xs, ys := make([]measure.Length, len(layout)), make([]measure.Length, len(layout))
	for i, p := range layout {
		corner := f.corner(p)
		xs[i], ys[i] = corner.X, corner.Y
	}
	columns, rows := distinct(xs), distinct(ys)
	d := distances{at: make([]cell, len(layout))}
	for i := range layout {
		d.at[i].x, _ = slices.BinarySearch(columns, xs[i])
		d.at[i].y, _ = slices.BinarySearch(rows, ys[i])
	}
	var aside, below []measure.Length
	d.across, aside = gaps(columns)
	d.down, below = gaps(rows)
	d.near = nearness(aside, below)
	return d
}

// corner is where a place begins. Blocks are of one size: their middles are as far
// apart as their corners.
func (f frame) corner(p place) patchwork.Point {
	if f.onPoint() {
		return patchwork.Point{X: f.block.Width.Times(p.v), Y: f.block.Height.Times(p.u)}
	}
	t := topParts{frame: f, rings: f.rounds()}
	t.left, t.above = t.origin()
	return t.outline(Block{Row: p.row + 1, Column: p.column + 1})[0]
}

// distinct is lengths in order, each once.
func distinct(all []measure.Length) []measure.Length {
	return slices.Compact(slices.Sorted(slices.Values(all)))
}

// gaps numbers the distances between lengths in order.
func gaps(all []measure.Length) (which [][]int, distances []measure.Length) {
	for _, a := range all {
		for _, b := range all {
			distances = append(distances, max(a-b, b-a))
		}
	}
	distances = distinct(distances)
	which = make([][]int, len(all))
	for i, a := range all {
		which[i] = make([]int, len(all))
		for k, b := range all {
			which[i][k], _ = slices.BinarySearch(distances, max(a-b, b-a))
		}
	}
	return which, distances
}

// nearness is 1/d² for all distances across and down: 2⁴⁰ for the least, 0 for none.
func nearness(across, down []measure.Length) [][]int64 {
	square := func(l measure.Length) *big.Int { return new(big.Int).Mul(big.NewInt(int64(l)), big.NewInt(int64(l))) }
	var least measure.Length // the nearest places lie beside or below each other
	for _, some := range [...][]measure.Length{across, down} {
		if len(some) > 1 && (least == 0 || some[1] < least) {
			least = some[1]
		}
	}
	one := new(big.Int).Lsh(square(least), 40)
	table := make([][]int64, len(down))
	for y := range table {
		table[y] = make([]int64, len(across))
		for x := range table[y] {
			d := square(across[x])
			if d.Add(d, square(down[y])).Sign() > 0 {
				half := new(big.Int).Rsh(d, 1)
				table[y][x] = half.Add(half, one).Div(half, d).Int64()
			}
		}
	}
	return table
}

// between is 1/d² of two places.
func (d *distances) between(p, q int) int64 {
	a, b := d.at[p], d.at[q]
	return d.near[d.down[a.y][b.y]][d.across[a.x][b.x]]
}

// row is 1/d² from a place to every other.
func (d *distances) row(p int, row []int64) {
	across, down := d.across[d.at[p].x], d.down[d.at[p].y]
	for q, at := range d.at {
		row[q] = d.near[down[at.y]][across[at.x]]
	}
}
