package tracker

import (
	"fmt"
	"slices"
	"time"

	"quiltrun/planner"
)

// ScrapRequest is work that is spoilt beyond use.
type ScrapRequest struct {
	Operation string       // as typed
	Counts    []CountAsked // as ParseCounts gives them
	Lot       *Lot         // as in RecountRequest
	Block     string       // as typed; "": the last ones
	ID        string       // made by the sender
	At        time.Time
	By        string
	Reason    string
}

// Scrap is the event that puts counts back to what is left, and with them what they
// were made of, back to the cut pieces, which have to be cut anew. What follows is
// open again as by Rip. A block loses of each operation before as much as the counts
// are of the block, rounded down, and of its pieces just so many: where that is no
// whole number it is refused, since nobody knows which piece it was. It is refused
// too for work on whole quilts, of which it is not known which blocks are spoilt,
// and for pieces that other work has taken.
func (s State) Scrap(r ScrapRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Scrap(r) })
	}
	found, err := s.found(r.Operation, r.Lot, r.Block, r.Counts)
	if err != nil {
		return Event{}, err
	}
	l := &wasting{lowering: s.lower(), seen: map[int]bool{}, ever: s.spoilt()}
	l.still = true
	for _, f := range found {
		if err := l.scrap(f); err != nil {
			return Event{}, err
		}
	}
	ev := s.event(Spoilt, r.ID, r.At, r.By)
	ev.Parts, ev.Reason = l.gone(), r.Reason
	return ev, nil
}

// wasting takes counts off together with what they were made of.
type wasting struct {
	*lowering
	seen map[int]bool   // rows of blocks that were gone back to from the counts that are scrapped
	ever map[rowKey]int // what was spoilt of each row, with what is scrapped now
}

// spoilt is what the entries that stand say was spoilt of each row.
func (s State) spoilt() map[rowKey]int {
	all := map[rowKey]int{}
	for i := range s.Entries {
		if e := &s.Entries[i]; e.Kind == Spoilt && e.Standing() {
			for _, p := range e.Parts {
				all[rowKey{p.Operation, p.Lot}] += p.Count
			}
		}
	}
	return all
}

// scrap takes counts off the row that was named, and off all before it.
func (l *wasting) scrap(f foundCount) error {
	if err := l.scrappable(f); err != nil {
		return err
	}
	at := l.at(f.row)
	if err := l.rip(f); err != nil {
		return err
	}
	clear(l.seen)
	if !l.byBlock(f.row) {
		return l.wastePool(f.row, f.count)
	}
	spoilt := slices.Clone(at)
	for i, n := range l.at(f.row) {
		spoilt[i] = max(0, spoilt[i]-n)
	}
	return l.wasteBlocks(f.row, spoilt, l.board.rows[f.row].PerBlock)
}

// scrappable refuses what cannot be traced back.
func (l *wasting) scrappable(f foundCount) error {
	o := l.board.rows[f.row]
	switch {
	case l.byBlock(f.row):
		return nil
	case !l.isPool(f.row):
		r := l.before.refusal(WrongPlace, f.row, fmt.Sprintf("what is spoilt in %s is not known by its pieces", o.Title()))
		r.Hint = "scrap the blocks that are spoilt, at square-up with --block; rip takes joins apart, and recount sets any count"
		return r
	}
	if free := l.done(f.row) - l.allTaken(f.row); f.count > max(0, free) && f.count <= l.done(f.row) {
		r := l.before.refusal(TooMany, f.row, fmt.Sprintf("%s has %s in %s that no other work has taken, not %d",
			o.Lot.Name, things(max(0, free), o.CountedIn), o.Title(), f.count))
		r.Hint = "scrap what they were sewn into, with its operation"
		return r
	}
	return nil
}

// isPool reports whether other rows take pieces or units from a row.
func (l *wasting) isPool(row int) bool {
	return slices.ContainsFunc(l.next[row], func(later int) bool {
		return slices.ContainsFunc(l.rules[later], func(r *rule) bool { return r.sort == pool && r.earlier[0] == row })
	})
}

// wasteBlocks takes off what spoilt counts of blocks were made of, of being how many
// make a block whole.
func (l *wasting) wasteBlocks(row int, spoilt []int, of int) error {
	for _, r := range l.rules[row] {
		earlier := r.earlier[0]
		if l.seen[earlier] || r.sort != eachBlock && r.sort != pool {
			continue
		}
		if l.seen[earlier] = r.sort == eachBlock; r.sort == pool {
			n, err := l.piecesOf(r, spoilt, of)
			if err == nil {
				err = l.takeOff(earlier, n)
			}
			if err != nil {
				return err
			}
			continue
		}
		at := slices.Clone(l.at(earlier))
		for i, n := range spoilt {
			at[i] = max(0, at[i]-l.board.rows[earlier].PerBlock*n/of)
		}
		if !slices.Equal(at, l.at(earlier)) {
			l.set(earlier, total(at)+l.spare(earlier), at)
		}
		if err := l.wasteBlocks(earlier, spoilt, of); err != nil {
			return err
		}
	}
	return nil
}

// piecesOf is how many of a pool spoilt counts of blocks had taken.
func (l *wasting) piecesOf(r *rule, spoilt []int, of int) (int, error) {
	ids, sum := l.blocksOf(r.later), 0
	for i, n := range spoilt {
		share := r.takes[ids[i]] * n
		if share%of != 0 {
			o := l.board.rows[r.earlier[0]]
			refused := l.before.refusal(MissingCount, r.later, fmt.Sprintf("%s took %s of %s, which do not come out even with %d of %d",
				ids[i], things(r.takes[ids[i]], o.CountedIn), o.Lot.Name, n, of))
			refused.Hint = fmt.Sprintf("scrap the block's %d together, or rip what is spoilt and recount the pieces that are gone", of)
			return 0, refused
		}
		sum += share / of
	}
	return sum, nil
}

// takeOff takes counts off a pool, as far as it has them, and off what they were
// made of.
func (l *wasting) takeOff(row, n int) error {
	if n = min(n, l.done(row)); n == 0 {
		return nil
	}
	l.set(row, l.tallies[row].all()-n, nil)
	return l.wastePool(row, n)
}

// wastePool takes off what n counts of a pool were made of. Where one that is taken
// makes several, it is lost only once the plan's own make too few for what is
// needed and spoilt together. Cut pieces were cut of cloth, which nothing gives back.
func (l *wasting) wastePool(row, n int) error {
	o := l.board.rows[row]
	key := rowKey{o.Key, o.Lot}
	needed := o.Count + l.ever[key]
	l.ever[key] += n
	for _, r := range l.rules[row] {
		earlier, lost := r.earlier[0], 0
		switch {
		case o.Count == 0:
		case r.sort == pool && r.makes > 0:
			lost = upTo(needed+n, r.makes) - upTo(needed, r.makes)
		case r.sort == pool:
			lost = upTo(r.takes[""]*n, o.Count)
		case r.sort == proportion && l.madeOf(row, earlier):
			lost = upTo(l.board.rows[earlier].Count*n, o.Count)
		}
		if err := l.takeOff(earlier, lost); err != nil {
			return err
		}
	}
	return nil
}

// upTo is n divided by d, rounded up.
func upTo(n, d int) int { return (n + d - 1) / d }

// madeOf reports whether a row is made of what another of the same lot counts. A
// fabric's pieces are cut of its cloth, and what was done to that stays done.
func (l *wasting) madeOf(row, earlier int) bool {
	lot := l.board.rows[row].Lot
	return lot == l.board.rows[earlier].Lot && lot.Kind != planner.FabricLot
}
