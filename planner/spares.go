package planner

// sparePieces are pieces beyond those that blocks take, by fabric: of each size so
// many more, and so many more blocks' worth of each colourway, beginning with its
// first block's fabrics again. Nothing has to be made of them, so they are counted
// in no operation.
func (m *maker) sparePieces(taken map[string][]PieceCount) map[string][]PieceCount {
	spare := map[string][]PieceCount{}
	for i := range m.plan.Colourways {
		if own := m.own[i]; m.job.Spares.Blocks > 0 && len(own) > 0 {
			m.spareBlocks(spare, i, own)
		}
	}
	for fabric, pieces := range taken {
		for _, p := range pieces {
			if p.For == forBlocks {
				addPieces(spare, fabric, PieceCount{Size: p.Size, Count: m.job.Spares.Pieces, For: forSpare})
			}
		}
	}
	return spare
}

// spareBlocks adds the pieces of a colourway's spare blocks: what its blocks and
// they would take, less what its blocks take.
func (m *maker) spareBlocks(spare map[string][]PieceCount, colourway int, own []*Block) {
	blocks := append([]*Block(nil), own...)
	for k := range m.job.Spares.Blocks {
		blocks = append(blocks, own[k%len(own)])
	}
	build := m.plan.Colourways[colourway].Build
	more, less := map[string][]PieceCount{}, map[string][]PieceCount{}
	blocksPieces(more, build, blocks)
	blocksPieces(less, build, own)
	for fabric, pieces := range more {
		for _, p := range pieces {
			for _, have := range less[fabric] {
				if have.Size == p.Size {
					p.Count -= have.Count
				}
			}
			p.For = forSpare
			addPieces(spare, fabric, p)
		}
	}
}
