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
