package tracker

import "quiltrun/planner"

// Short ways for tests to look at one number of a state.

// Done is the counts that are done of a row, 0 where there is none such.
func (s State) Done(key string, lot Lot) int {
	at, ok := s.find(key, lot)
	if !ok {
		return 0
	}
	return s.board.done(at)
}

// Left is the counts that remain of a row, 0 where there is none such.
func (s State) Left(key string, lot Lot) int {
	at, ok := s.find(key, lot)
	if !ok {
		return 0
	}
	return s.board.left(at)
}

// BlockDone is the counts of an operation that are done at a block, 0 where the
// operation is not counted by block.
func (s State) BlockDone(block, key string) int {
	if s.board == nil {
		return 0
	}
	lot := Lot{planner.ColourwayLot, s.board.live[block].Colourway}
	at, ok := s.find(key, lot)
	if !ok {
		return 0
	}
	return s.board.doneAt(at, block)
}
