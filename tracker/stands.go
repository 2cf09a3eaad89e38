package tracker

import "quiltrun/planner"

// BlockStand is how far one block is. Waits is the first operation of its
// colourway that it is not through, with Done of its PerBlock counts in; it is
// nil for a block that is made.
type BlockStand struct {
	Block
	Begun bool // something of it is done
	Made  bool // it is squared up
	Waits *Operation
	Done  int // counts of Waits that are in
}

// BlockStands is how far every block of the run is, by place.
func (s State) BlockStands() []BlockStand {
	if s.board == nil {
		return nil
	}
	at := make(map[string]*BlockStand, len(s.board.live))
	for _, name := range s.Ledger.Colourways {
		for id, stand := range s.standsOf(name) {
			at[id] = stand
		}
	}
	stands := make([]BlockStand, 0, len(s.board.order))
	for _, id := range s.board.order {
		if stand := at[id]; stand != nil {
			stands = append(stands, *stand)
		}
	}
	return stands
}

// standsOf is how far the blocks of one colourway are, by id. A block that is
// squared up is made, whatever was never logged before.
func (s State) standsOf(colourway string) map[string]*BlockStand {
	ids := s.board.blocks[colourway]
	stands := make(map[string]*BlockStand, len(ids))
	for _, id := range ids {
		stands[id] = &BlockStand{Block: s.board.live[id]}
	}
	for row := range s.board.rows {
		o := &s.board.rows[row]
		if !s.board.byBlock(row) || o.Lot.Name != colourway {
			continue
		}
		for i, n := range s.board.at(row) {
			stand := stands[ids[i]]
			stand.Begun = stand.Begun || n > 0
			stand.Made = stand.Made || o.Key == blockIsMade && n == o.PerBlock
			if stand.Waits == nil && n < o.PerBlock {
				stand.Waits, stand.Done = o, n
			}
		}
	}
	for _, stand := range stands {
		if stand.Made {
			stand.Waits, stand.Done = nil, 0
		}
	}
	return stands
}

// InHand is how many blocks of a colourway or a quilt are begun and not made;
// the zero Lot is the whole run.
func (s State) InHand(lot Lot) int {
	if s.board == nil || lot.Kind == planner.FabricLot {
		return 0
	}
	n := 0
	for _, name := range s.Ledger.Colourways {
		if lot.Kind == planner.ColourwayLot && lot.Name != name {
			continue
		}
		for _, stand := range s.standsOf(name) {
			if stand.Begun && !stand.Made && stand.Block.in(lot) {
				n++
			}
		}
	}
	return n
}
