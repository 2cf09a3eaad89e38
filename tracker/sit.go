package tracker

import (
	"fmt"
	"slices"
)

// SitDown is the row that somebody sits down to: of the operation that was typed,
// or any where none was, and of the lot that was named, nil for any. The row of
// the newest entry goes on where it can; else it is the next after it that can,
// else the first that can, else the first with work left. It is refused with a
// *Refusal where nothing is left, or no such operation or lot is in the route.
func (s State) SitDown(operation string, lot *Lot) (Row, error) {
	if !s.Booked() {
		return Row{}, s.ready("")
	}
	wanted, err := s.rowsMeant(operation, lot)
	if err != nil {
		return Row{}, err
	}
	wanted = slices.DeleteFunc(wanted, func(row int) bool { return s.board.left(row) == 0 })
	if len(wanted) == 0 {
		return Row{}, s.nothingToSitDownTo(operation, lot)
	}
	d := &draft{board: s.board.copied()}
	open := slices.DeleteFunc(slices.Clone(wanted), func(row int) bool { return d.room(row, 1) == 0 })
	if len(open) == 0 {
		// Whoever logs what comes before along can go on there all the same.
		return s.row(wanted[0]), nil
	}
	// Chains go lot by lot: what was worked on last lies under the needle, and what
	// comes after it in the route lies nearest.
	newest, _ := s.newestRow()
	if at := slices.IndexFunc(open, func(row int) bool { return row >= newest }); at >= 0 {
		return s.row(open[at]), nil
	}
	return s.row(open[0]), nil
}

// rowsMeant is the rows of an operation and a lot as they were typed.
func (s State) rowsMeant(operation string, lot *Lot) ([]int, error) {
	run := s.keys()
	if operation != "" {
		key, err := s.operation(operation)
		if err != nil {
			return nil, err
		}
		run = []string{key}
	}
	var lots []Lot
	for _, o := range s.Ledger.Operations {
		if slices.Contains(run, o.Key) && !slices.Contains(lots, o.Lot) {
			lots = append(lots, o.Lot)
		}
	}
	if lot != nil {
		// A name that is near is offered from what the operation has, not from all lots.
		named, err := s.namedLot(*lot, run[:1], lots)
		if err != nil {
			return nil, err
		}
		lots = []Lot{named}
	}
	var rows []int
	for i, o := range s.Ledger.Operations {
		if slices.Contains(run, o.Key) && slices.Contains(lots, o.Lot) {
			rows = append(rows, i)
		}
	}
	return rows, nil
}

// newestRow is the row that the newest entry standing speaks of, by the part that
// was asked for last.
func (s State) newestRow() (int, bool) {
	for _, e := range slices.Backward(s.Entries) {
		if e.Standing() && e.Kind == Logged { // what is ripped or counted is no chain to go on with
			p := e.Parts[len(e.Parts)-1]
			return s.find(p.Operation, p.Lot)
		}
	}
	return 0, false
}

// nothingToSitDownTo says what is done already.
func (s State) nothingToSitDownTo(operation string, lot *Lot) *Refusal {
	what := s.Ledger.Job
	if operation != "" {
		if key, err := s.operation(operation); err == nil {
			what = s.board.titleOf(key)
		}
	}
	if lot != nil {
		what += " of " + lot.Name
	}
	return &Refusal{Kind: NothingLeft, What: fmt.Sprintf("nothing is left of %s", what), Hint: "quiltrun left " + s.Ledger.Job + " shows what is"}
}
