package tracker

// Next is the rows that can go on now, at most so many, in the ledger's order:
// those with work left that nothing before them holds up.
func (s State) Next(most int) []Row {
	if s.board == nil {
		return nil
	}
	var next []Row
	d := &draft{board: s.board.copied()}
	for i := range s.Ledger.Operations {
		if len(next) < most && s.board.left(i) > 0 && d.room(i, 1) > 0 {
			next = append(next, s.row(i))
		}
	}
	return next
}
