package tracker

import (
	"fmt"
	"math"
	"slices"
	"time"

	"quiltrun/planner"
)

// RecountRequest is what somebody found on the table.
type RecountRequest struct {
	Operation string       // as typed: number, key, or a beginning of one
	Counts    []CountAsked // as ParseFound gives them
	Lot       *Lot         // nil: the one that the counts name, else the only one
	Block     string       // as typed: the counts are this block's; "": the lot's
	ID        string       // made by the sender
	At        time.Time
	By        string
	Reason    string
}

// Recount is the event that sets rows to what lies on the table, whatever was
// logged. Where that is less than the log says, what follows is open again as far
// as it cannot have been done. It says so of every row: the later entries count
// from there.
func (s State) Recount(r RecountRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Recount(r) })
	}
	found, err := s.found(r.Operation, r.Lot, r.Block, r.Counts)
	if err != nil {
		return Event{}, err
	}
	l := s.lower()
	for _, f := range found {
		if f.block < 0 {
			l.set(f.row, f.count, nil)
			continue
		}
		if per := s.board.rows[f.row].PerBlock; f.count > per {
			return Event{}, s.board.refusal(TooMany, f.row, fmt.Sprintf("a block has %s in %s, not %d",
				things(per, s.board.rows[f.row].CountedIn), s.board.rows[f.row].Title(), f.count))
		}
		at := slices.Clone(l.at(f.row))
		at[f.block] = f.count
		l.set(f.row, total(at)+s.board.spare(f.row), at)
	}
	ev := s.event(Recount, r.ID, r.At, r.By)
	ev.Parts, ev.Reason = l.counts(), r.Reason
	return ev, nil
}

// RipRequest is work that was taken apart again.
type RipRequest struct {
	Operation string           // as typed
	Counts    []CountAsked     // as ParseCounts gives them
	Lot       *Lot             // as in RecountRequest
	Block     string           // as typed; "": the last ones
	Took      *planner.Minutes // person-minutes of ripping; nil: not timed
	ID        string           // made by the sender
	At        time.Time
	By        string
	Reason    string
}

// Rip is the event that puts counts back to what is left. The minutes that went
// into making them stay spent, and those of ripping are kept apart. What follows
// is open again as by Recount; what came before stays made.
func (s State) Rip(r RipRequest) (Event, error) {
	if err := s.ready(r.ID); err != nil {
		return Event{}, err
	}
	if stored, ok := s.Repeated(r.ID); ok {
		return s.again(stored, func(then State) (Event, error) { return then.Rip(r) })
	}
	if r.Took != nil && !(*r.Took > 0 && !math.IsInf(float64(*r.Took), 0)) {
		return Event{}, &Refusal{Kind: BadTime, What: "the time taken has to be more than no time", Hint: "leave it out where nobody timed the work"}
	}
	found, err := s.found(r.Operation, r.Lot, r.Block, r.Counts)
	if err != nil {
		return Event{}, err
	}
	l := s.lower()
	l.still = true
	weights := make([]planner.Minutes, len(found))
	for i, f := range found {
		if err := l.rip(f); err != nil {
			return Event{}, err
		}
		weights[i] = planner.Minutes(f.count)
	}
	ev := s.event(Ripped, r.ID, r.At, r.By)
	ev.Parts, ev.Reason = l.gone(), r.Reason
	if r.Took != nil {
		shareOut(ev.Parts[:len(found)], weights, *r.Took)
	}
	return ev, nil
}

// rip takes counts off the row that was named, which has to have them.
func (l *lowering) rip(f foundCount) error {
	o, at := l.before.rows[f.row], l.at(f.row)
	has, whose := l.done(f.row), o.Lot.Name
	if f.block >= 0 {
		has, whose = at[f.block], l.blocksOf(f.row)[f.block]
	}
	if f.count > has || f.count == 0 {
		return l.before.refusal(TooMany, f.row, fmt.Sprintf("%s has %s made in %s, so that %d cannot be ripped",
			whose, things(has, o.CountedIn), o.Title(), f.count))
	}
	l.rows = append(l.rows, f.row)
	if f.block < 0 {
		l.set(f.row, l.tallies[f.row].all()-f.count, nil)
		return nil
	}
	at = slices.Clone(at)
	at[f.block] -= f.count
	l.set(f.row, total(at)+l.spare(f.row), at)
	return nil
}

// foundCount is a row, or one block of it, and counts of it.
type foundCount struct {
	row, block int // block is the place among the lot's blocks, -1 for all
	count      int
}

// found is the rows that are meant where nothing has to be left of them. All is all
// of a row, or all that a block has room for.
func (s State) found(operation string, lot *Lot, block string, counts []CountAsked) ([]foundCount, error) {
	key, err := s.operation(operation)
	if err != nil {
		return nil, err
	}
	run := []string{key}
	lots := s.lotsOf(run)
	named, at, err := s.foundIn(run, lots, lot, block)
	if err != nil {
		return nil, err
	}
	if len(counts) == 0 {
		return nil, s.howMany(key, lots)
	}
	var all []foundCount
	for _, c := range counts {
		l := named
		if c.Lot != "" {
			if named != nil {
				return nil, &Refusal{Kind: WhichLot, What: fmt.Sprintf("%s is named, and so is %s in the count: name lots in one way only", named.Name, c.Lot)}
			}
			found, err := s.namedLot(Lot{Name: c.Lot}, run, lots)
			if err != nil {
				return nil, err
			}
			l = &found
		}
		if l == nil {
			return nil, s.howMany(key, lots)
		}
		row, _ := s.find(key, *l)
		n, err := s.countIn(row, at, c)
		if err != nil {
			return nil, err
		}
		all = append(all, foundCount{row, at, n})
	}
	return all, nil
}

// foundIn is the lot that was named, by itself or by a block, or the only one; nil
// where there are several. At is the block's place, -1 for none.
func (s State) foundIn(run []string, lots []Lot, lot *Lot, block string) (*Lot, int, error) {
	if lot != nil {
		found, err := s.namedLot(*lot, run, lots)
		if err != nil {
			return nil, -1, err
		}
		lots = []Lot{found}
	}
	if block != "" {
		named, err := s.namedBlocks([]string{block}, run, lots)
		if err != nil {
			return nil, -1, err
		}
		row, _ := s.find(run[0], named[0].lot)
		if !s.board.byBlock(row) {
			return nil, -1, s.board.notByBlock(row, named[0].ids)
		}
		return &named[0].lot, slices.Index(s.board.blocksOf(row), named[0].ids[0]), nil
	}
	if len(lots) == 1 {
		return &lots[0], -1, nil
	}
	return nil, -1, nil
}

// countIn is a count in a row's own counts.
func (s State) countIn(row, block int, c CountAsked) (int, error) {
	o := s.board.rows[row]
	switch {
	case c.All && block >= 0:
		return o.PerBlock, nil
	case c.All:
		return o.Count, nil
	case c.Blocks && o.PerBlock > 0:
		return c.Number * o.PerBlock, nil
	case c.Blocks && o.CountedIn != "block":
		return 0, s.board.notIn(row, "blocks")
	case !c.Blocks && !o.countsIn(c.Unit):
		return 0, s.board.notIn(row, c.Unit)
	}
	return c.Number, nil
}

// howMany asks for the count, or for the lot, and says what the log has of each.
func (s State) howMany(key string, lots []Lot) *Refusal {
	var items []string
	for _, lot := range lots {
		row, _ := s.find(key, lot)
		items = append(items, fmt.Sprintf("%d of %d for %s", s.board.done(row), s.board.rows[row].Count, lot.Name))
	}
	r := &Refusal{Kind: MissingCount, Near: lotNames(lots), Hint: "write a count such as 12"}
	r.What = fmt.Sprintf("how many? made in %s: %s", s.board.titleOf(key), andList(items))
	if len(lots) > 1 {
		r.Kind, r.Hint = WhichLot, fmt.Sprintf("write a count for each lot, such as %s=12", lots[0].Name)
	}
	return r
}
