package shelf

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Shelf is the stock as it is after all that happened.
type Shelf struct {
	Items   []Item   // in the order in which they came there; those used up too
	Own     []Item   // what job files say their jobs have: no part of the shelf
	Needs   []Need   // what booked jobs take, in the order of booking
	Silent  []string // jobs whose booking says nothing of their cloth
	Entries []Entry  // of the shelf, taken back or not, in order
}

// Need is what a job still takes of one thing, and where it comes from. Amounts
// are the need's own: ticks, sheets, or quilts of batting. Left = Kept + FromOwn
// + Begun + Short.
type Need struct {
	Job string
	tracker.Stock
	Kept    planner.Amount // on the shelf
	FromOwn planner.Amount // of what the job file says is on hand
	Begun   planner.Amount // in rectangles of which some is cut already
	Short   planner.Amount // nowhere
	Lots    int            // dye lots that it comes from; above 1 it may show
}

// Entry is an event of the shelf. UndoneBy is the id of the event that took it
// back, "" while it stands.
type Entry struct {
	tracker.Event
	UndoneBy string
}

// Fold adds up the maker's own events and the booked jobs. What happened at the
// same time goes in this order: what was put on the shelf, what jobs used, what
// was counted, scrapped and taken.
// An error is for events that this program did not write.
func Fold(maker []tracker.Event, jobs []tracker.State) (Shelf, error) {
	f := &folding{asked: map[string][]allotted{}}
	if err := f.read(maker); err != nil {
		return Shelf{}, err
	}
	f.book(jobs)
	for _, m := range f.moments() {
		if err := f.apply(m); err != nil {
			return Shelf{}, err
		}
	}
	f.settle()
	return f.shelf(), nil
}

// folding is a fold under way. Own stock and the shelf's items lie together, so
// that both serve a job in one order.
type folding struct {
	items   []Item
	entries []Entry
	needs   []*need // of all jobs, in the order of booking
	silent  []string
	puts    int
	asked   map[string][]allotted // by thing, what was allotted since anything but a use happened
}

// need is a need on the way.
type need struct {
	Need
	open   bool // its job is booked by now
	booked time.Time
	now    planner.Amount // still to be used at the moment that is looked at
	begun  planner.Amount // of that, what comes from rectangles that are begun
	first  int            // number of its first leftover
}

// read keeps the events of the shelf.
func (f *folding) read(maker []tracker.Event) error {
	at := map[string]int{}
	for _, ev := range maker {
		switch i, known := at[ev.Target]; {
		case ev.Kind == tracker.Shelved && ev.Shelf == nil:
			return fmt.Errorf("entry %d of the maker's own says nothing of the shelf", ev.Seq)
		case ev.Kind == tracker.Shelved:
			at[ev.ID] = len(f.entries)
			f.entries = append(f.entries, Entry{Event: ev})
		case ev.Kind == tracker.Undone && known:
			f.entries[i].UndoneBy = ev.ID
		}
	}
	return nil
}

// book takes in what jobs take, in the order of booking.
func (f *folding) book(jobs []tracker.State) {
	for _, s := range jobs {
		id, stock := s.Ledger.Job, s.Stock()
		if len(stock) == 0 {
			f.silent = append(f.silent, id)
		}
		first := 1
		for _, st := range stock {
			n := &need{Need: Need{Job: id, Stock: st}, booked: s.BookedAt(), now: st.Left + st.Used(), first: first}
			first += len(st.StockNeed.Left)
			f.needs = append(f.needs, n)
			if st.Own > 0 {
				f.items = append(f.items, ownItem(n))
			}
		}
	}
	slices.SortStableFunc(f.needs, func(a, b *need) int { return a.booked.Compare(b.booked) })
}

// ownItem is what a job file says is on hand.
func ownItem(n *need) Item {
	return Item{
		ID: n.Job + ":" + n.Name, Job: n.Job, Own: true, Since: n.booked, Put: n.StockNeed.Own,
		Shelf: tracker.Shelf{Material: n.Material, Name: n.Name, Form: n.Form, Width: n.Width, Height: n.Height, Metric: n.Metric},
	}
}

// moment is one thing that happened: an entry of the shelf, a booking, of which each
// need is told by itself, or a use by a job. Last says that the need is all cut with
// it.
type moment struct {
	at     time.Time
	entry  *Entry
	need   *need
	amount planner.Amount // 0 of a booking
	last   bool
}

// rank orders what happened at the same time, as on a day whose clock stands
// still: what was put there could be cut, and what was counted was counted last.
func (m moment) rank() int {
	switch {
	case m.need != nil && m.amount == 0:
		return 1
	case m.need != nil:
		return 2
	case m.entry.Shelf.Do == tracker.PutOn:
		return 0
	}
	return 3
}

// moments puts all that happened in its order. A clock that was set back does
// not change the order within a log.
func (f *folding) moments() []moment {
	var all []moment
	var clock time.Time
	for i := range f.entries {
		clock = later(clock, f.entries[i].At)
		all = append(all, moment{at: clock, entry: &f.entries[i]})
	}
	for _, n := range f.needs {
		clock = n.booked
		all = append(all, moment{at: clock, need: n})
		for i, u := range n.Uses {
			clock = later(clock, u.At)
			last := i == len(n.Uses)-1 && n.Used() >= n.Whole
			all = append(all, moment{at: clock, need: n, amount: u.Amount, last: last})
		}
	}
	slices.SortStableFunc(all, func(a, b moment) int { return cmp.Or(a.at.Compare(b.at), a.rank()-b.rank()) })
	return all
}

func later(a, b time.Time) time.Time {
	if b.After(a) {
		return b
	}
	return a
}

func (f *folding) apply(m moment) error {
	switch {
	case m.need != nil && m.amount == 0:
		m.need.open = true
		delete(f.asked, m.need.thing())
		return nil
	case m.need != nil:
		f.use(m)
		return nil
	}
	clear(f.asked)
	return f.enter(m)
}

// enter takes in an entry of the shelf. An entry that was taken back still gave
// its item a number: those on the labels stay right. What would make less than
// nothing of an item takes all of it: an entry before it was taken back.
func (f *folding) enter(m moment) error {
	e := m.entry.Shelf
	if e.Do == tracker.PutOn {
		f.puts++
	}
	switch {
	case m.entry.UndoneBy != "":
		return nil
	case e.Amount < 0:
		return fmt.Errorf("entry %d of the maker's own is of less than nothing", m.entry.Seq)
	case e.Do == tracker.PutOn:
		f.items = append(f.items, Item{ID: fmt.Sprint(f.puts), Shelf: *e, Since: m.at, Put: e.Amount})
		return nil
	}
	i := f.item(e.Item)
	if i == nil {
		return nil
	}
	switch most := min(e.Amount, i.Lies()); e.Do {
	case tracker.CountedAnew:
		i.Found += e.Amount - i.Lies()
	case tracker.Scrapped:
		i.Scrapped += most
	case tracker.TakenOff:
		i.TakenOff += most
	default:
		return fmt.Errorf("entry %d of the maker's own does %q with the shelf: use a newer quiltrun", m.entry.Seq, e.Do)
	}
	return nil
}

func (f *folding) item(id string) *Item {
	for i := range f.items {
		if f.items[i].ID == id && !f.items[i].Own {
			return &f.items[i]
		}
	}
	return nil
}

// settle keeps what jobs still need, and says what is free.
func (f *folding) settle() {
	for i := range f.items {
		f.items[i].Free = f.items[i].Lies()
	}
	for _, a := range f.allot(nil) {
		i, n := &f.items[a.item], a.need
		i.Kept += a.amount
		i.Free -= a.amount
		i.For = append(i.For, Claim{n.Job, n.purpose(), a.amount})
		if i.Own {
			n.FromOwn += a.units
		} else {
			n.Need.Kept += a.units
		}
	}
	for _, n := range f.needs {
		n.Begun = min(n.begun, n.Stock.Left)
		n.Short = n.Stock.Left - n.Need.Kept - n.FromOwn - n.Begun
		n.Lots = f.lotsOf(n)
	}
}

// purpose is what a claim is for beside a fabric's pieces.
func (n *need) purpose() string {
	if n.Material == planner.ThreadMaterial {
		return n.Name
	}
	return n.StockNeed.For
}

// lotsOf is how many dye lots a need comes from, used and kept.
func (f *folding) lotsOf(n *need) int {
	lots := map[string]bool{}
	for _, i := range f.items {
		for _, c := range slices.Concat(i.For, i.By) {
			if c.Job == n.Job && c.For == n.purpose() && n.Material == i.Material && (i.Material != planner.ClothMaterial || i.Name == n.Name) && !i.Own {
				lots[i.lot()] = true
			}
		}
	}
	return len(lots)
}

// shelf is what it all comes to.
func (f *folding) shelf() Shelf {
	s := Shelf{Silent: f.silent, Entries: f.entries}
	for _, i := range f.items {
		if i.Own {
			s.Own = append(s.Own, i)
		} else {
			s.Items = append(s.Items, i)
		}
	}
	for _, n := range f.needs {
		s.Needs = append(s.Needs, n.Need)
	}
	return s
}
