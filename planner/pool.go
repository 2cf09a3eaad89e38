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
// cut for them, by step. They are counted over all blocks of the run.
type pools map[string][]batch

// poolsOf counts a colourway's batches. Pieces that blocks take themselves are
// kitted, and stand in no batch.
func (m *maker) poolsOf(colourway int) pools {
	return poolsFor(m.plan.Colourways[colourway].Build, m.own[colourway])
}

func poolsFor(build *patchwork.Build, own []*Block) pools {
	kitted, pooled := map[string]int{}, false // pieces of each cut that a block takes itself
	for i := range build.Steps {
		s := &build.Steps[i]
		pooled = pooled || s.Pooled
		if s.Step.Do == patchwork.Cut {
			kitted[s.Step.Name] = s.Copies
		}
	}
	if !pooled {
		return nil
	}
	all := pools{}
	for _, b := range build.Batches(len(own), func(block int, role string) string { return fabricOf(own[block].Fabrics, role) }) {
		pieces := kitted[b.Step] * len(b.Blocks)
		all[b.Step] = append(all[b.Step], batch{
			fabrics: ofRoles(own[b.Blocks[0]].Fabrics, build.Roles(b.Step)), units: b.Units - pieces, runs: b.Runs - pieces,
		})
	}
	return all
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
			for _, cloth := range s.Cloth() {
				addPieces(all, fabricOf(batch.fabrics, cloth.Role), forBlock(cloth, batch.runs))
			}
		}
	}
	return all
}

// forBlock is the pieces of cloth that so many runs of a step are cut from.
func forBlock(c patchwork.Cloth, runs int) PieceCount {
	return PieceCount{Size: c.Size, Count: c.Count * runs, For: forBlocks}
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
