package tracker

import (
	"fmt"
	"slices"

	"quiltrun/planner"
)

// Doable is a row of the route that can go on. Room is how many of its Left
// counts can be made now; Setup says that setting up is still to come. Tests are
// the test blocks that the counts are for, none where they are for any block.
type Doable struct {
	Operation
	Done, Left, Room int
	Setup            bool
	Tests            []string
}

// Minutes is the expected time of n of the counts by the ledger's table, setting
// up included where it is still to come.
func (d Doable) Minutes(n int) planner.Minutes {
	return d.SetupMinutes() + planner.Minutes(n)*d.Unit.Mean
}

// SetupMinutes is the expected time of setting up, 0 where that is done.
func (d Doable) SetupMinutes() planner.Minutes {
	if d.Setup {
		return d.Operation.Setup.Mean
	}
	return 0
}

// HeldBy says what sort of thing holds a row up. Sorts may grow.
type HeldBy string

// The sorts of what holds a row up.
const (
	ByOrder HeldBy = "order" // a row before it is not far enough
	ByTest  HeldBy = "test"  // a test block is to be measured first
	ByWait  HeldBy = "wait"  // a quilt was sent out and is not expected back yet
)

// Held is a row with work left that cannot go on, and what holds it up: Behind
// is the row that has to come first, and Why says so in words. Where Behind is
// held up too, Waits is the row that all of it waits for in the end, else it is
// Behind. Back is the day on which a quilt that was sent out is expected, zero
// for any other reason.
type Held struct {
	Operation
	Left          int
	By            HeldBy
	Behind, Waits Operation
	Why           string
	Back          planner.Date
}

// outlook is a job seen for what can go on, on one day.
type outlook struct {
	*draft
	today planner.Date
	away  map[int]Away   // by row that was sent out
	tests map[string]int // rows of tests that are still to come, by colourway
}

// outlook is the job's, with a board that may be tried out.
func (s State) outlook(today planner.Date) *outlook {
	o := &outlook{draft: &draft{board: s.board.copied()}, today: today, away: map[int]Away{}}
	for _, a := range s.Away() {
		if at, ok := s.find(a.Key, a.Lot); ok && today.Before(a.Back()) {
			o.away[at] = a
		}
	}
	return o
}

// Back is the day on which what was sent out is expected again.
func (a Away) Back() planner.Date {
	return planner.DateOf(a.Since.AddDate(0, 0, a.Wait))
}

// Prospect is every row with work left, parted into those that can go on and
// those that are held up, both in the ledger's order; a test that was passed over
// until all blocks were made is in neither. What log would take but a
// maker should not do yet counts as held up: the run beyond a test block that is
// not measured, and what is sent out until the day on which it is expected.
func (s State) Prospect(today planner.Date) ([]Doable, []Held) {
	if s.board == nil {
		return nil, nil
	}
	if _, handedOver := s.FinishedAt(); handedOver {
		return nil, nil
	}
	return s.outlook(today).prospect()
}

// prospect is Prospect of a board as it is now.
func (o *outlook) prospect() (can []Doable, held []Held) {
	o.tests = o.untested()
	for row := range o.rows {
		left := o.left(row)
		if left == 0 || o.isTest(row) && o.allMade(row) {
			continue
		}
		if h, holds := o.holdUp(row, left); holds {
			held = append(held, h)
			continue
		}
		can = append(can, o.doable(row, left))
	}
	for i := range held {
		held[i].Waits = o.root(held, held[i])
	}
	return can, held
}

// root is the row that a held one waits for in the end. The route has no circle,
// but a test block is waited for by its own lot, so that steps are counted.
func (o *outlook) root(held []Held, h Held) Operation {
	for range held {
		at := slices.IndexFunc(held, func(other Held) bool { return other.Key == h.Behind.Key && other.Lot == h.Behind.Lot })
		if at < 0 {
			break
		}
		h = held[at]
	}
	return h.Behind
}

// holdUp is what holds a row up, false where nothing does.
func (o *outlook) holdUp(row, left int) (Held, bool) {
	h := Held{Operation: o.rows[row], Left: left}
	for _, rule := range o.rules[row] {
		if a, out := o.away[rule.earlier[0]]; out {
			h.By, h.Behind, h.Back = ByWait, a.Operation, a.Back()
			h.Why = fmt.Sprintf("%s went out on %s and is expected back on %s", a.Lot.Name, planner.DateOf(a.Since), h.Back)
			return h, true
		}
	}
	if lack, short := o.firstLack(row); short {
		h.By, h.Behind, h.Why = ByOrder, o.rows[lack.earlier()], o.reason(lack)
		return h, true
	}
	if room, tests, _ := o.wise(row); len(tests) > 0 && room <= 0 {
		h.By, h.Behind = ByTest, o.rows[tests[0]]
		h.Why = fmt.Sprintf("%s is to be measured in %s before the rest is begun", o.firstBlock(tests[0]), h.Behind.Title())
		return h, true
	}
	return h, false
}

// firstLack is what the row's next count is short of.
func (o *outlook) firstLack(row int) (lack, bool) {
	was, before := o.tallies[row], o.at(row)
	defer func() { o.tallies[row] = was }()
	o.tallies[row] = was.copied()
	o.tallies[row].put(1, nil)
	lacks := o.lacks(row, before)
	if len(lacks) == 0 {
		return lack{}, false
	}
	return lacks[0], true
}

// doable is a row that nothing holds up.
func (o *outlook) doable(row, left int) Doable {
	d := Doable{Operation: o.rows[row], Done: o.done(row), Left: left, Room: o.room(row, left)}
	d.Setup = d.Done == 0
	if room, tests, free := o.wise(row); len(tests) > 0 && room <= d.Room {
		d.Room = room
		for _, test := range tests {
			if !free {
				d.Tests = append(d.Tests, o.firstBlock(test))
			}
		}
	}
	return d
}

// wise is how many more counts of a row are good to make while tests of its blocks
// are still to come, and the rows of these; none where the row waits for no test.
// Free says that some of the counts are for other blocks.
func (o *outlook) wise(row int) (room int, tests []int, free bool) {
	if !o.byBlock(row) {
		return o.wisePool(row)
	}
	test := o.testOf(o.rows[row].Lot.Name)
	if test < 0 {
		return 0, nil, true
	}
	return o.rows[row].PerBlock - atIndex(o.at(row), 0), []int{test}, false
}

// wisePool is wise for what blocks take from: enough for test blocks, and for
// all blocks of the colourways that are free.
func (o *outlook) wisePool(row int) (room int, tests []int, free bool) {
	room = -o.done(row)
	for _, later := range o.next[row] {
		waits := -1
		if o.byBlock(later) {
			waits = o.testOf(o.rows[later].Lot.Name)
		}
		for _, rule := range o.rules[later] {
			if rule.sort != pool || rule.earlier[0] != row {
				continue
			}
			if waits < 0 {
				room, free = room+rule.sum(), true
				continue
			}
			room += rule.takes[o.blocksOf(later)[0]]
			tests = append(tests, waits)
		}
	}
	return room, tests, free
}

// sum is all that a rule takes from a pool.
func (r *rule) sum() int {
	n := 0
	for _, take := range r.takes {
		n += take
	}
	return n
}

// testOf is the row of a colourway's test that is still to come, -1 where none
// is or where the maker went ahead without it.
func (o *outlook) testOf(colourway string) int {
	if row, waits := o.tests[colourway]; waits {
		return row
	}
	return -1
}

// isTest reports that a row is the test of its colourway's first block.
func (o *outlook) isTest(row int) bool {
	return slices.ContainsFunc(o.rules[row], func(r *rule) bool { return r.sort == firstBlock })
}

// allMade reports that all blocks that a test stands for are made.
func (o *outlook) allMade(test int) bool {
	for _, rule := range o.rules[test] {
		if o.left(rule.earlier[0]) > 0 {
			return false
		}
	}
	return true
}

// firstBlock is the block that a test is about.
func (o *outlook) firstBlock(test int) string { return o.blocksOf(test)[0] }

// untested is the tests that are still to come and are waited for, by colourway:
// of none of these was more begun than the first block.
func (o *outlook) untested() map[string]int {
	tests := map[string]int{}
	for row := range o.rows {
		if o.isTest(row) && o.left(row) > 0 && len(o.blocksOf(row)) > 0 {
			tests[o.rows[row].Lot.Name] = row
		}
	}
	for row := range o.rows {
		name := o.rows[row].Lot.Name
		if _, waits := tests[name]; waits && o.byBlock(row) && o.done(row) > atIndex(o.at(row), 0) {
			delete(tests, name)
		}
	}
	return tests
}

// NextDoable is the next sensible thing to do in the job: the first row of its
// route that can go on, and where that goes by fabric all fabrics of the same
// operation. None is left, or all is held up, where there are none.
func (s State) NextDoable(today planner.Date) []Doable {
	can, _ := s.Prospect(today)
	if len(can) == 0 {
		return nil
	}
	first := can[0]
	if first.Lot.Kind != planner.FabricLot {
		return can[:1]
	}
	return slices.DeleteFunc(can, func(d Doable) bool { return d.Key != first.Key })
}
