package planner

import (
	"cmp"
	"slices"

	"quiltrun/planner/patchwork"
)

// What pieces are cut for.
const (
	forBlocks  = "blocks"
	forBorder  = "border"
	forBinding = "binding"
	forBacking = "backing"
	forSpare   = "spare"

	forSashing      = "sashing"
	forCornerstones = "cornerstones"
	forTriangles    = "setting triangles"
)

// cloth works out what the run needs of every fabric.
func (m *maker) cloth() {
	m.layers()
	pieces := m.pieces()
	for fabric, spare := range m.sparePieces(pieces) {
		for _, p := range spare {
			addPieces(pieces, fabric, p)
		}
	}
	for _, f := range m.job.Fabrics {
		m.plan.Fabrics = append(m.plan.Fabrics, m.need(f, pieces[f.Name]))
	}
	slices.SortFunc(m.plan.Materials.Borders, func(a, b BorderCut) int { return cmp.Compare(a.Nth, b.Nth) })
	for i := range m.plan.Fabrics { // once the grain of borders is chosen
		m.saveNested(&m.plan.Fabrics[i])
	}
}

// pieces is what the run needs of each fabric, in no order yet. Borders are not in
// it: how they are cut depends on all else that is cut from their fabric.
func (m *maker) pieces() map[string][]PieceCount {
	all := map[string][]PieceCount{}
	for i, c := range m.plan.Colourways {
		blocksPieces(all, c.Build, m.own[i])
	}
	for _, p := range slices.Concat(m.sashingPieces(), m.trianglePieces()) {
		addPieces(all, p.fabric, p.PieceCount)
	}
	if b := m.plan.Materials.Binding; b != nil {
		addPieces(all, b.Fabric, m.bindingPieces(b))
	}
	if b := m.plan.Materials.Backing; b != nil {
		for _, panel := range b.Cut {
			addPieces(all, b.Fabric, PieceCount{Size: panel, Count: m.job.Quantity, For: forBacking, Long: true})
		}
	}
	return all
}

// blocksPieces adds what some blocks of one make take of each fabric.
func blocksPieces(all map[string][]PieceCount, build *patchwork.Build, blocks []*Block) {
	perBlock := blockPieces(build)
	for _, b := range blocks {
		for _, f := range b.Fabrics {
			for _, p := range perBlock[f.Role] {
				addPieces(all, f.Fabric, p)
			}
		}
	}
	for fabric, pieces := range poolsFor(build, blocks).pieces(build) {
		for _, p := range pieces {
			addPieces(all, fabric, p)
		}
	}
}

// blockPieces is what one block takes of cut pieces, by role. What goes into
// pooled steps is counted with those.
func blockPieces(b *patchwork.Build) map[string][]PieceCount {
	perRole := map[string][]PieceCount{}
	for _, s := range b.Steps {
		if s.Pooled && s.Step.Do != patchwork.Cut {
			continue
		}
		for _, cloth := range s.Cloth() {
			if p := forBlock(cloth, s.Copies/s.Yield); p.Count > 0 {
				addPieces(perRole, cloth.Role, p)
			}
		}
	}
	return perRole
}

func addPieces(all map[string][]PieceCount, fabric string, p PieceCount) {
	if p.Count == 0 {
		return
	}
	for i, have := range all[fabric] {
		if have.Size == p.Size && have.For == p.For && have.Long == p.Long {
			all[fabric][i].Count += p.Count
			return
		}
	}
	all[fabric] = append(all[fabric], p)
}

// sortedPieces puts the longest first, as they are cut.
func sortedPieces(ps []PieceCount) []PieceCount {
	slices.SortStableFunc(ps, func(a, b PieceCount) int {
		return cmp.Or(cmp.Compare(max(b.Size.Width, b.Size.Height), max(a.Size.Width, a.Size.Height)),
			cmp.Compare(min(b.Size.Width, b.Size.Height), min(a.Size.Width, a.Size.Height)),
			cmp.Compare(a.For, b.For))
	})
	return ps
}

func (m *maker) fabric(name string) Fabric {
	for _, f := range m.job.Fabrics {
		if f.Name == name {
			return f
		}
	}
	return Fabric{Name: name}
}
