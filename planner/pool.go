package planner

import (
	"slices"
	"strings"

	"quiltrun/planner/patchwork"
)

// batch is the runs of a pooled step for all blocks that take the same fabrics
// for it: a strip set of Kelp and Foam gives no segments to a block of
// Cormorant. Units is what blocks and later batches take of it; the last run may
// leave some over.
type batch struct {
	fabrics []RoleFabric // of the roles that go into the step
	units   int
	runs    int
}

// pools is the batches of a colourway's pooled steps, and of the pieces that are
// cut for them, by step. They are counted from the block back to the cloth, over
// all blocks of the run.
type pools map[string][]batch

// poolsOf counts a colourway's batches.
func poolsOf(c ColourwayPlan, blocks []Block) pools {
	all := pools{}
	steps, into := c.Build.Steps, rolesInto(c.Build)
	for i := len(steps) - 1; i >= 0; i-- {
		s := steps[i]
		if !s.Pooled {
			continue
		}
		roles := into[s.Step.Name]
		var batches []batch
		if s.Copies > 0 && s.Step.Do != patchwork.Cut {
			for _, b := range blocks {
				if b.Colourway == c.Name {
					batches = addUnits(batches, ofRoles(b.Fabrics, roles), s.Copies)
				}
			}
		}
		for _, feed := range s.Feeds {
			for _, later := range all[feed.Step] {
				batches = addUnits(batches, ofRoles(later.fabrics, roles), later.runs*feed.PerRun)
			}
		}
		for i := range batches {
			batches[i].runs = (batches[i].units + s.Yield - 1) / s.Yield
		}
		all[s.Step.Name] = batches
	}
	return all
}

// addUnits adds to the batch of a list of fabrics.
func addUnits(batches []batch, fabrics []RoleFabric, units int) []batch {
	i := slices.IndexFunc(batches, func(b batch) bool { return slices.Equal(b.fabrics, fabrics) })
	if i < 0 {
		i = len(batches)
		batches = append(batches, batch{fabrics: fabrics})
	}
	batches[i].units += units
	return batches
}

// ofRoles is the fabrics of some roles.
func ofRoles(fabrics []RoleFabric, roles []string) []RoleFabric {
	var some []RoleFabric
	for _, f := range fabrics {
		if slices.Contains(roles, f.Role) {
			some = append(some, f)
		}
	}
	return some
}

// rolesInto is the roles of all cloth that goes into each step, cut away later or
// not, by step.
func rolesInto(b *patchwork.Build) map[string][]string {
	into := make(map[string][]string, len(b.Steps))
	for _, s := range b.Steps {
		var roles []string
		add := func(role string) {
			if !slices.Contains(roles, role) {
				roles = append(roles, role)
			}
		}
		for _, p := range piecesOfRun(s) {
			add(p.role)
		}
		for _, source := range sources(s.Step) {
			for _, role := range into[source] {
				add(role)
			}
		}
		into[s.Step.Name] = roles
	}
	return into
}

// sources are the steps whose units a step takes, each once.
func sources(s patchwork.Step) []string {
	var names []string
	if s.Of != "" {
		names = append(names, s.Of)
	}
	for _, row := range s.Rows {
		for _, cell := range row {
			if !slices.Contains(names, cell.Of) {
				names = append(names, cell.Of)
			}
		}
	}
	return names
}

// runs is how often a pooled step is made for the run.
func (p pools) runs(step string) int {
	sum := 0
	for _, b := range p[step] {
		sum += b.runs
	}
	return sum
}

// units is what is taken of a pooled step over the run.
func (p pools) units(step string) int {
	sum := 0
	for _, b := range p[step] {
		sum += b.units
	}
	return sum
}

// fabricsText names a batch's fabrics, each once.
func (b batch) fabricsText() string {
	var names []string
	for _, f := range b.fabrics {
		if !slices.Contains(names, f.Fabric) {
			names = append(names, f.Fabric)
		}
	}
	return listed(names, "and")
}

// pieces is what pooled steps take of each fabric's cut pieces.
func (p pools) pieces(b *patchwork.Build) map[string][]PieceCount {
	all := map[string][]PieceCount{}
	for _, s := range b.Steps {
		for _, batch := range p[s.Step.Name] {
			for _, cut := range piecesOfRun(s) {
				fabric := fabricOf(batch.fabrics, cut.role)
				cut.Count *= batch.runs
				addPieces(all, fabric, cut.PieceCount)
			}
		}
	}
	return all
}

// rolePiece is pieces of one role.
type rolePiece struct {
	role string
	PieceCount
}

// piecesOfRun is the cloth that one run of a step is cut from: a piece, or the two
// squares of triangles. Other steps cut none.
func piecesOfRun(s patchwork.Made) []rolePiece {
	switch s.Step.Do {
	case patchwork.Cut:
		return []rolePiece{{s.Step.Role, PieceCount{Size: s.Step.Size, Count: 1, For: forBlocks}}}
	case patchwork.HalfSquare, patchwork.QuarterSquare:
		size := squareOf(s.Square)
		return []rolePiece{
			{s.Step.Roles[0], PieceCount{Size: size, Count: 1, For: forBlocks}},
			{s.Step.Roles[1], PieceCount{Size: size, Count: 1, For: forBlocks}},
		}
	}
	return nil
}

func fabricOf(fabrics []RoleFabric, role string) string {
	i := slices.IndexFunc(fabrics, func(f RoleFabric) bool { return f.Role == role })
	if i < 0 {
		return ""
	}
	return fabrics[i].Fabric
}

// batchWords lists how many runs each batch has, where there are several.
func batchWords(batches []batch, of string) string {
	if len(batches) < 2 {
		return ""
	}
	parts := make([]string, len(batches))
	for i, b := range batches {
		parts[i] = counted(b.runs, of) + " of " + b.fabricsText()
	}
	return " (" + strings.Join(parts, "; ") + ")"
}
