package render

import "quiltrun/planner"

// jsonBorder is one border of a quilt, from the inside out: its finished width, the
// size inside and outside it, and how wide and long its strips are cut as planned.
// Fabric is null and blocks is more than 0 where it is made of blocks.
type jsonBorder struct {
	Fabric  *string  `json:"fabric"`
	Width   number   `json:"width"`
	Cut     number   `json:"cut"`
	Inside  jsonSize `json:"inside"`
	Outside jsonSize `json:"outside"`
	Sides   number   `json:"sides"` // raw length of each of the two
	Ends    number   `json:"ends"`
	Blocks  int      `json:"blocks"`
}

func (s shown) border(b planner.BorderPlan) jsonBorder {
	return jsonBorder{
		Fabric: known(b.Fabric), Width: s.length(b.Width), Cut: s.length(b.Cut), Inside: s.size(b.Inside), Outside: s.size(b.Outside),
		Sides: s.length(b.Sides), Ends: s.length(b.Ends), Blocks: b.Blocks,
	}
}

// jsonSashing is the sashing of one quilt: its pieces beside blocks and between rows,
// as long as a block, its cornerstones, and strips as long as a row where it has none.
type jsonSashing struct {
	Fabric       string  `json:"fabric"`
	Width        number  `json:"width"` // finished
	Cut          number  `json:"cut"`
	Edge         bool    `json:"edge"` // all round
	Upright      int     `json:"upright"`
	Level        int     `json:"level"`
	Stones       *string `json:"cornerstones"` // their fabric
	Cornerstones int     `json:"cornerstone_count"`
	Strips       int     `json:"strips"`
	StripLength  *number `json:"strip_length"` // raw
}

func (s shown) sashing(p *planner.SashingPlan) *jsonSashing {
	if p == nil {
		return nil
	}
	out := &jsonSashing{
		Fabric: p.Fabric, Width: s.length(p.Width), Cut: s.length(p.Cut), Edge: p.Edge, Upright: p.Upright, Level: p.Level,
		Stones: known(p.Sashing.Cornerstones), Cornerstones: p.Cornerstones, Strips: p.Strips,
	}
	if p.Strips > 0 {
		out.StripLength = some(s.length(p.StripLength))
	}
	return out
}

// jsonTriangles is the setting triangles of one quilt, and the squares of the run that
// they are cut from: side triangles four, corners two from each.
type jsonTriangles struct {
	Fabric        string `json:"fabric"`
	Sides         int    `json:"sides"`
	Corners       int    `json:"corners"`
	SideSquare    number `json:"side_square"` // raw
	SideSquares   int    `json:"side_squares"`
	Over          int    `json:"over"` // side triangles left of the run's squares
	CornerSquare  number `json:"corner_square"`
	CornerSquares int    `json:"corner_squares"`
}

func (s shown) triangles(t *planner.TrianglesPlan) *jsonTriangles {
	if t == nil {
		return nil
	}
	return &jsonTriangles{
		Fabric: t.Fabric, Sides: t.Sides, Corners: t.Corners, SideSquare: s.length(t.SideSquare), SideSquares: t.SideSquares,
		Over: t.Over, CornerSquare: s.length(t.CornerSquare), CornerSquares: t.CornerSquares,
	}
}

// jsonPickup is the blocks that are sewn together in one run, in the order in which
// they are picked up.
type jsonPickup struct {
	Quilt  int      `json:"quilt"`
	Name   string   `json:"name"` // row 3; border 1, left
	Blocks []string `json:"blocks"`
}

func pickupsOf(p planner.Plan) []jsonPickup {
	all := []jsonPickup{}
	for quilt := 1; quilt <= p.Job.Quantity; quilt++ {
		for _, up := range p.Pickups(quilt) {
			all = append(all, jsonPickup{quilt, up.Name, list(up.Blocks, func(b planner.Block) string { return b.ID })})
		}
	}
	return all
}
