package tracker

import (
	"math"
	"time"

	"quiltrun/planner"
)

// Stock is what a job takes of one thing that lies on a shelf: what booking
// froze of it, how much was used up when, and how much is still to be used.
// Amounts are in the need's own: ticks, sheets, or quilts of batting.
type Stock struct {
	planner.StockNeed
	Uses []StockUse
	Left planner.Amount
	Lost planner.Amount // of the uses, what was cut beyond the plan because pieces were lost
}

// StockUse is how much was used up at a time.
type StockUse struct {
	At     time.Time
	Amount planner.Amount
}

// Used is all that was used up.
func (s Stock) Used() planner.Amount {
	var sum planner.Amount
	for _, u := range s.Uses {
		sum += u.Amount
	}
	return sum
}

// Stock is what the job takes, in the ledger's order; then what it has used of
// what a revision no longer needs. It is nil where the ledger says nothing of it.
// A row that cuts pieces uses cloth in proportion; pieces that a recount lost
// have used theirs, and are cut anew from spare pieces first. A job whose quilts
// are handed over needs no more.
func (s State) Stock() []Stock {
	f := s.foldStock()
	_, made := s.FinishedAt()
	for i := range f.stock {
		n := &f.stock[i]
		if n.Left = 0; !made && i < len(f.ledger.Cloth) {
			n.Left = n.Whole - f.share(n.StockNeed, f.needed)
		}
		n.Lost = max(0, n.Used()-n.Whole)
	}
	return f.stock
}

// foldStock goes through what was cut and lost.
func (s State) foldStock() *stockFolding {
	f := &stockFolding{cut: map[rowKey]int{}, done: map[rowKey]int{}, lost: map[rowKey]int{}}
	undone := s.undone()
	for i := range s.events {
		if ev := &s.events[i]; !undone[ev.ID] {
			f.apply(ev)
		}
	}
	return f
}

// stockFolding is a fold of what was used up.
type stockFolding struct {
	ledger Ledger
	stock  []Stock
	cut    map[rowKey]int // ever made, whatever became of it
	done   map[rowKey]int // there is of it
	lost   map[rowKey]int // of cut, what a recount did not find
}

func (f *stockFolding) apply(ev *Event) {
	switch ev.Kind {
	case Booked, Revised, Amended:
		if ev.Ledger != nil {
			f.adopt(*ev.Ledger)
		}
	case Ripped: // the cloth is there again; thread is sewn anew
		for _, p := range ev.Parts {
			f.done[rowKey{p.Operation, p.Lot}] -= p.Count
		}
	case Spoilt:
		for _, p := range ev.Parts {
			k := rowKey{p.Operation, p.Lot}
			f.done[k] -= p.Count
			f.lost[k] += p.Count
		}
	case Logged:
		before := f.used()
		for _, p := range ev.Parts {
			k := rowKey{p.Operation, p.Lot}
			f.cut[k] += p.Count
			f.done[k] += p.Count
		}
		f.use(ev.At, before)
	case Recount:
		before := f.used()
		for _, p := range ev.Parts {
			k := rowKey{p.Operation, p.Lot}
			f.cut[k] += max(0, p.Count-f.done[k])
			f.lost[k] += max(0, f.done[k]-p.Count)
			f.done[k] = p.Count
		}
		f.use(ev.At, before)
	}
}

// adopt goes over to a ledger's needs. What was used stays used.
func (f *stockFolding) adopt(l Ledger) {
	names := carriedNames(f.ledger, l)
	for _, m := range []*map[rowKey]int{&f.cut, &f.done, &f.lost} {
		kept := make(map[rowKey]int, len(*m))
		for k, n := range *m {
			kept[k.renamed(names)] = n
		}
		*m = kept
	}
	old := f.stock
	f.ledger, f.stock = l, nil
	for _, n := range l.Cloth {
		f.stock = append(f.stock, Stock{StockNeed: n})
	}
	for _, was := range old {
		if len(was.Uses) == 0 {
			continue
		}
		at := 0
		for at < len(f.stock) && !sameThing(f.stock[at].StockNeed, was.StockNeed) {
			at++
		}
		if at < len(f.stock) {
			f.stock[at].Uses = was.Uses
		} else {
			f.stock = append(f.stock, was)
		}
	}
}

// sameThing reports that two needs are of one thing, whatever they come to.
func sameThing(a, b planner.StockNeed) bool {
	return a.Material == b.Material && a.Name == b.Name && a.Form == b.Form && a.For == b.For
}

// used is what the ledger's needs come to with what was cut so far.
func (f *stockFolding) used() []planner.Amount {
	all := make([]planner.Amount, len(f.ledger.Cloth))
	for i, n := range f.ledger.Cloth {
		all[i] = f.share(n, func(p planner.StockPart) int { return f.cut[keyOf(p)] })
	}
	return all
}

// use notes what was used up since.
func (f *stockFolding) use(at time.Time, before []planner.Amount) {
	for i, now := range f.used() {
		if more := now - before[i]; more > 0 {
			f.stock[i].Uses = append(f.stock[i].Uses, StockUse{at, more})
		}
	}
}

// needed is how much of a part needs no more cloth: what is there, and what was
// lost as far as it is made up from spare pieces.
func (f *stockFolding) needed(p planner.StockPart) int {
	return min(p.Count, f.done[keyOf(p)]+f.madeUp(p))
}

// madeUp is how many lost pieces of a part are made up from spare ones.
func (f *stockFolding) madeUp(p planner.StockPart) int { return min(p.Spare, f.lost[keyOf(p)]) }

// sparesCut reports that a fabric's spare pieces were cut, with the last of the
// blocks'.
func (f *stockFolding) sparesCut(fabric string) bool {
	for _, n := range f.ledger.Cloth {
		for _, p := range n.Parts {
			if n.Name == fabric && p.Spare > 0 && f.cut[keyOf(p)] >= p.Count {
				return true
			}
		}
	}
	return false
}

// spares is how many lost pieces of each row are made up from spare ones.
func (f *stockFolding) spares() map[rowKey]int {
	all := map[rowKey]int{}
	for _, n := range f.ledger.Cloth {
		for _, p := range n.Parts {
			all[keyOf(p)] = max(all[keyOf(p)], f.madeUp(p))
		}
	}
	return all
}

func keyOf(p planner.StockPart) rowKey {
	return rowKey{p.Operation, Lot{p.LotKind, p.Lot}}
}

// share is what a need comes to for so many counts of its parts. A sheet is used
// up when all of its pieces are cut: until then it lies there for its job.
func (f *stockFolding) share(n planner.StockNeed, counts func(planner.StockPart) int) planner.Amount {
	sum, whole := 0.0, len(n.Parts) > 0
	for _, p := range n.Parts {
		c := counts(p)
		sum += p.Share * float64(c) / float64(p.Count)
		whole = whole && c == p.Count
	}
	switch amount := float64(n.Whole) * sum; {
	case whole:
		return n.Whole
	case n.Form.Counted():
		return planner.Amount(math.Floor(amount + 1e-6))
	default:
		return planner.Amount(math.Round(amount))
	}
}
