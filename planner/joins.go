package planner

import (
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// face is a colourway's block at one turn: its crossings on each side.
type face [4][]patchwork.Crossing

// meeting is two faces side by side, or one above the other.
type meeting struct {
	first, second faceKey
	above         bool
}

// topJoins sums up where the blocks of one quilt meet, all blocks pressed as
// their colourway's plan says, rows of the top pressed left and right in turn.
// A top has many joins and few kinds of them: each kind is looked at once.
func topJoins(p Plan, seam measure.Length) []Join {
	grid := quiltGrid(p)
	counts := map[meeting]int{}
	for r := range grid {
		for c := range grid[r] {
			if c > 0 {
				counts[meeting{grid[r][c-1], grid[r][c], false}]++
			}
			if r > 0 {
				counts[meeting{grid[r-1][c], grid[r][c], true}]++
			}
		}
	}
	var columns, rows patchwork.Tally
	faces := map[faceKey]face{}
	size := p.Colourways[0].Raw
	for m, n := range counts {
		a, b := faceOf(p, m.first, seam, faces), faceOf(p, m.second, seam, faces)
		if m.above {
			rows = rows.Plus(patchwork.Meet(a[patchwork.BottomSide], b[patchwork.TopSide], size.Width, seam).Times(n))
		} else {
			columns = columns.Plus(patchwork.Meet(a[patchwork.RightSide], b[patchwork.LeftSide], size.Height, seam).Times(n))
		}
	}
	corners := patchwork.Tally{Nest: (p.Quilt.Across - 1) * (p.Quilt.Down - 1)}
	return []Join{{"block columns", columns}, {"block rows", rows}, {"block corners", corners}}
}

type faceKey struct{ colourway, turn int }

// quiltGrid is the colourway and turn at each place of the first quilt.
func quiltGrid(p Plan) [][]faceKey {
	index := make(map[string]int, len(p.Colourways))
	for i, c := range p.Colourways {
		index[c.Name] = i
	}
	grid := make([][]faceKey, p.Quilt.Down)
	for _, b := range p.Blocks {
		if b.Quilt == 1 {
			grid[b.Row-1] = append(grid[b.Row-1], faceKey{index[b.Colourway], b.Turn})
		}
	}
	return grid
}

func faceOf(p Plan, k faceKey, seam measure.Length, known map[faceKey]face) face {
	if f, ok := known[k]; ok {
		return f
	}
	c := p.Colourways[k.colourway]
	block := c.Build.Block().Turned(k.turn / 90)
	var f face
	for side := range f {
		f[side] = patchwork.Crossings(block, patchwork.Side(side), seam, c.Press)
	}
	known[k] = f
	return f
}
