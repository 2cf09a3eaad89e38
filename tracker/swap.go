package tracker

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"time"

	"quiltrun/planner"
)

// A ledger holds its blocks where they were planned. Blocks that have changed places
// since are exchanged each time that the events are added up, so that an exchange
// can be taken back at any time, and outlasts a revision.

// Swap is the event that two blocks have changed places on the floor. A block that
// is not in the job, or the same one twice, is refused with a *Refusal. An id that
// the job has already is answered as by Log.
func (s State) Swap(one, other, id string, at time.Time, by string) (Event, error) {
	if err := s.ready(id); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(id); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Swap(one, other, id, at, by) })
	}
	a, err := s.block(one)
	if err != nil {
		return Event{}, err
	}
	b, err := s.block(other)
	if err != nil {
		return Event{}, err
	}
	if a == b {
		return Event{}, &Refusal{Kind: Ambiguous, What: fmt.Sprintf("block %s cannot change places with itself", a),
			Hint: "name the block that lies in its place now"}
	}
	ev := s.event(Amended, id, at, by)
	ev.Amendment = &Amendment{Swap: &planner.Swap{A: a, B: b}}
	return ev, nil
}

// Dealt is the ledger as it was frozen, with every block where it was planned.
func (s State) Dealt() Ledger {
	l := s.Ledger
	l.Blocks = s.dealt
	return l
}

// soundSwap checks an exchange by itself.
func (f *folding) soundSwap(s planner.Swap) error {
	for _, id := range [...]string{s.A, s.B} {
		if _, known := f.board.known[id]; !known {
			return fmt.Errorf("there is no block %s", quoted(id))
		}
	}
	if s.A == s.B {
		return errors.New("it exchanges a block with itself")
	}
	return nil
}

// exchange puts the blocks that changed places there. An exchange with a block that
// a revision has retired is over: the other lies where the revision planned it.
func (f *folding) exchange() {
	f.dealt = f.ledger.Blocks
	at := map[string]int{}
	for i, b := range f.dealt {
		if !b.Retired {
			at[b.ID] = i
		}
	}
	blocks := slices.Clone(f.dealt)
	var stand []planner.Swap
	for _, s := range f.amend.Swaps {
		a, live := at[s.A]
		b, too := at[s.B]
		if !live || !too {
			continue
		}
		blocks[a], blocks[b] = exchanged(blocks[a], blocks[b])
		stand = append(stand, s)
	}
	f.amend.Swaps = stand
	if len(stand) == 0 {
		return
	}
	slices.SortStableFunc(blocks, byPlace)
	f.ledger.Blocks = blocks
	f.board.lie(blocks)
}

// exchanged puts two blocks into each other's places.
func exchanged(a, b Block) (Block, Block) {
	a.Quilt, b.Quilt = b.Quilt, a.Quilt
	a.Row, b.Row = b.Row, a.Row
	a.Column, b.Column = b.Column, a.Column
	a.Turn, b.Turn = b.Turn, a.Turn
	return a, b
}

// byPlace orders blocks by quilt, then row by row; retired ones come last.
func byPlace(a, b Block) int {
	switch {
	case a.Retired && b.Retired:
		return 0
	case a.Retired:
		return 1
	case b.Retired:
		return -1
	}
	return cmp.Or(cmp.Compare(a.Quilt, b.Quilt), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
}

// lie has a route's blocks lie where they are now.
func (r *route) lie(blocks []Block) {
	r.order = r.order[:0]
	for _, b := range blocks {
		r.known[b.ID] = b
		if !b.Retired {
			r.live[b.ID] = b
			r.order = append(r.order, b.ID)
		}
	}
}

// dealt is a plan's blocks where they were planned: what changed places is put
// back, the last exchange first.
func dealt(plan planner.Plan) []planner.Block {
	if len(plan.Swaps) == 0 {
		return plan.Blocks
	}
	blocks := slices.Clone(plan.Blocks)
	at := make(map[string]int, len(blocks))
	for i, b := range blocks {
		at[b.ID] = i
	}
	for _, s := range slices.Backward(plan.Swaps) {
		a, b := at[s.A], at[s.B]
		blocks[a], blocks[b] = planner.Exchanged(blocks[a], blocks[b])
	}
	slices.SortFunc(blocks, func(a, b planner.Block) int {
		return cmp.Or(cmp.Compare(a.Quilt, b.Quilt), cmp.Compare(a.Row, b.Row), cmp.Compare(a.Column, b.Column))
	})
	return blocks
}
