package planner

import "fmt"

// Pickup is the blocks that are sewn together in one run, in the order in which
// they are picked up from the floor or the design wall: a row from its left end, on
// point its lower left one, or a strip of a border from its left or upper end.
type Pickup struct {
	Name   string // "row 3", "border 1, left"
	Blocks []Block
}

// Pickups is the rows of one quilt, quilts counted from 1, then the strips of its
// borders of blocks in the order in which they are sewn on.
func (p Plan) Pickups(quilt int) []Pickup {
	if len(p.Colourways) == 0 {
		return nil
	}
	t := topParts{frame: frameOf(&p.Job, p.Colourways[0].Finished)}
	t.rings = t.rounds()
	var rows []Pickup
	strips := make([][4]Pickup, len(t.rings))
	for _, b := range p.Blocks {
		if b.Quilt != quilt {
			continue
		}
		if ring := t.ringOf(b); ring > 0 {
			strip := &strips[ring-1][t.stripOf(b, ring-1)]
			strip.Blocks = append(strip.Blocks, b)
			continue
		}
		if n := len(rows); n == 0 || rows[n-1].Blocks[0].Row != b.Row {
			rows = append(rows, Pickup{Name: fmt.Sprintf("row %d", b.Row)})
		}
		last := &rows[len(rows)-1]
		last.Blocks = append(last.Blocks, b)
	}
	for i, ring := range strips {
		for side, strip := range ring {
			if strip.Blocks != nil {
				strip.Name = fmt.Sprintf("border %d, %s", i+1, sides[side])
				rows = append(rows, strip)
			}
		}
	}
	return rows
}

// sides are the strips of a border, in the order in which they are sewn on.
var sides = [4]string{"left", "right", "top", "bottom"}

// stripOf is the side of a border that a block is of: the upper and the lower strip
// have the corners.
func (t *topParts) stripOf(b Block, ring int) int {
	off := t.ringsWithin(len(t.rings)) - t.ringsWithin(ring+1)
	_, down := t.along(t.rings[ring])
	switch row, column := b.Row-1-off, b.Column-1-off; {
	case row == 0:
		return 2
	case row == down+1:
		return 3
	case column == 0:
		return 0
	default:
		return 1
	}
}
