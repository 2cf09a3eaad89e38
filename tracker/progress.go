package tracker

import (
	"time"

	"quiltrun/planner"
)

// The operations that finish a block and a quilt.
const (
	blockIsMade = "square-up"
	quiltIsMade = "hand-over"
)

// Row is one row of the route with what is done of it. Done is never more than
// the count.
type Row struct {
	Operation
	Done    int
	Minutes planner.Minutes // that went into making it, as far as the log knows and nobody doubts
	Timed   int             // the counts that were made in those minutes
	Ripping planner.Minutes // that went into taking apart again
	Blocks  []BlockCount    // done of each block, in order of their ids; nil where not counted by block
	Spare   int             // logged beyond the count: a revision or an undone recount made it smaller
}

// Left is what remains: done and left always make the count.
func (r Row) Left() int { return r.Count - r.Done }

// Booked reports whether the job is booked.
func (s State) Booked() bool { return s.board != nil }

// Row is one row of the route, false where there is none such.
func (s State) Row(key string, lot Lot) (Row, bool) {
	at, ok := s.find(key, lot)
	if !ok {
		return Row{}, false
	}
	return s.row(at), true
}

// Rows is all rows in the ledger's order.
func (s State) Rows() []Row {
	rows := make([]Row, len(s.Ledger.Operations))
	for i := range rows {
		rows[i] = s.row(i)
	}
	return rows
}

// row is the row at a place in the ledger.
func (s State) row(at int) Row {
	r := Row{Operation: s.board.rows[at], Done: s.board.done(at), Minutes: s.effort[at].minutes, Timed: s.effort[at].timed,
		Ripping: s.effort[at].ripping, Spare: s.board.spare(at)}
	ids := s.board.blocksOf(at)
	for i, n := range s.board.at(at) {
		r.Blocks = append(r.Blocks, BlockCount{Block: ids[i], Count: n})
	}
	return r
}

// find is the place of a row in the ledger.
func (s State) find(key string, lot Lot) (int, bool) {
	if s.board == nil {
		return 0, false
	}
	at, ok := s.board.index[rowKey{key, lot}]
	return at, ok
}

// Blocks is how many blocks a colourway or a quilt of the run has; the zero Lot
// is the whole run.
func (s State) Blocks(lot Lot) int {
	n := 0
	for _, b := range s.Ledger.Blocks {
		if !b.Retired && b.in(lot) {
			n++
		}
	}
	return n
}

// in reports whether a block belongs to a lot; the zero Lot holds them all.
func (b Block) in(lot Lot) bool {
	switch lot.Kind {
	case planner.ColourwayLot:
		return b.Colourway == lot.Name
	case planner.QuiltLot:
		return b.Quilt == quiltNumber(lot)
	}
	return lot == Lot{}
}

// FinishedBlocks is how many blocks of a colourway or a quilt are squared up;
// the zero Lot is the whole run.
func (s State) FinishedBlocks(lot Lot) int {
	n := 0
	for _, c := range s.Ledger.Colourways {
		if lot.Kind == planner.ColourwayLot && lot.Name != c {
			continue
		}
		at, ok := s.find(blockIsMade, Lot{planner.ColourwayLot, c})
		if !ok || lot.Kind == planner.FabricLot {
			continue
		}
		blocks, _ := s.board.through(at, quiltNumber(lot))
		n += blocks
	}
	return n
}

// FinishedQuilts is how many quilts of the run are ready in the client's hands.
func (s State) FinishedQuilts() int {
	n := 0
	for i, o := range s.Ledger.Operations {
		if o.Key == quiltIsMade && s.board.left(i) == 0 {
			n++
		}
	}
	return n
}

// FinishedAt is the time of the entry that handed over the last quilt, false
// while one remains.
func (s State) FinishedAt() (time.Time, bool) {
	if s.Ledger.Quantity == 0 || s.FinishedQuilts() < s.Ledger.Quantity {
		return time.Time{}, false
	}
	for i := len(s.Entries) - 1; i >= 0; i-- {
		e := s.Entries[i]
		for _, p := range e.Parts {
			if e.Standing() && p.Operation == quiltIsMade {
				return e.At, true
			}
		}
	}
	return time.Time{}, false
}

// Rest is what remains of one row: Left counts, and the expected minutes that
// they take by the ledger's table. Setup says that the row's setup time is
// still to come, and is among the minutes: nothing of the row is done.
type Rest struct {
	Operation
	Left    int
	Setup   bool
	Minutes planner.Minutes
}

// Remaining is every row with work left, in the ledger's order.
func (s State) Remaining() []Rest {
	var rest []Rest
	for i, o := range s.Ledger.Operations {
		left := s.board.left(i)
		if left == 0 {
			continue
		}
		r := Rest{Operation: o, Left: left, Setup: s.board.done(i) == 0, Minutes: planner.Minutes(left) * o.Unit.Mean}
		if r.Setup {
			r.Minutes += o.Setup.Mean
		}
		rest = append(rest, r)
	}
	return rest
}

// BookedAt is when the job was taken on.
func (s State) BookedAt() time.Time {
	if len(s.events) == 0 {
		return time.Time{}
	}
	return s.events[0].At
}

// Newest is the number of the job's newest event, 0 where it is not booked.
func (s State) Newest() uint64 {
	if len(s.events) == 0 {
		return 0
	}
	return s.events[len(s.events)-1].Seq
}
