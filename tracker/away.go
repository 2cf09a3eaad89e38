package tracker

import "time"

// Away is a row that is done and whose wait goes on as far as the log says: a
// quilt that was sent out and not collected yet. Since is the time of the entry
// with its last count.
type Away struct {
	Operation
	Since time.Time
}

// Away is every row that is waited for, in the ledger's order. A wait ends with
// the first count of anything that comes after it: what is at hand again is
// waited for no longer, whatever days were agreed.
func (s State) Away() []Away {
	var away []Away
	for i, o := range s.Ledger.Operations {
		if o.Wait == 0 || s.board.left(i) > 0 || s.goneOn(i) {
			continue
		}
		if at, ok := s.lastCounted(rowKey{o.Key, o.Lot}); ok {
			away = append(away, Away{Operation: o, Since: at})
		}
	}
	return away
}

// goneOn reports that something of what waits for a row is done.
func (s State) goneOn(row int) bool {
	for _, later := range s.board.next[row] {
		if s.board.done(later) > 0 {
			return true
		}
	}
	return false
}

// lastCounted is the time of the newest entry standing that counts something of
// a row.
func (s State) lastCounted(row rowKey) (time.Time, bool) {
	for i := len(s.Entries) - 1; i >= 0; i-- {
		e := s.Entries[i]
		if !e.Standing() {
			continue
		}
		for _, p := range e.Parts {
			if p.Count > 0 && (rowKey{p.Operation, p.Lot}) == row {
				return e.At, true
			}
		}
	}
	return time.Time{}, false
}
