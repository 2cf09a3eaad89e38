package tracker

import (
	"errors"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// model is the tests' own idea of a job: all entries, and nothing else. What is
// done it finds anew each time by letting counts take seats one by one, and the
// rules of order it checks over the whole job, word by word of the contract.
type model struct {
	ledger  Ledger
	entries []Event
	gone    map[string]bool
}

func (m *model) without(id string) *model {
	gone := map[string]bool{id: true}
	for k := range m.gone {
		gone[k] = true
	}
	return &model{m.ledger, m.entries, gone}
}

func (m *model) with(ev Event) *model {
	return &model{m.ledger, append(slices.Clone(m.entries), ev), m.gone}
}

// blocks is the ids of a colourway; the tests' ledger has them in order.
func (m *model) blocks(colourway string) []string {
	var all []string
	for _, b := range m.ledger.Blocks {
		if b.Colourway == colourway {
			all = append(all, b.ID)
		}
	}
	return all
}

// at is the counts of a row by block, or one number where it has no blocks;
// false where the entries are more than the row takes.
func (m *model) at(o Operation) ([]int, bool) {
	blocks, per := m.blocks(o.Lot.Name), o.PerBlock
	if per == 0 {
		blocks, per = []string{""}, o.Count
	}
	s := newSeats(len(blocks), per)
	for _, ev := range m.entries {
		for _, p := range ev.Parts {
			if m.gone[ev.ID] || p.Operation != o.Key || p.Lot != o.Lot {
				continue
			}
			if !seatPart(s, p, blocks) {
				return nil, false
			}
		}
	}
	return s.perBlock(len(blocks)), true
}

func seatPart(s seats, p Part, blocks []string) bool {
	for _, b := range p.Blocks {
		for range b.Count {
			if !s.sitAt(slices.Index(blocks, b.Block)) {
				return false
			}
		}
	}
	if p.Blocks != nil {
		return true
	}
	for range p.Count {
		if !s.sit() {
			return false
		}
	}
	return true
}

func (m *model) row(key string, lot Lot) Operation {
	for _, o := range m.ledger.Operations {
		if o.Key == key && o.Lot == lot {
			return o
		}
	}
	panic("no such row in the tests' ledger: " + key)
}

func (m *model) done(key string, lot Lot) int {
	at, _ := m.at(m.row(key, lot))
	return total(at)
}

// right reports whether everything was done in its turn.
func (m *model) right() bool {
	for _, o := range m.ledger.Operations {
		if _, ok := m.at(o); !ok {
			return false
		}
	}
	for _, o := range m.ledger.Operations {
		if at, _ := m.at(o); !m.inTurn(o, at) {
			return false
		}
	}
	return m.cutEnough(kelp) && m.cutEnough(foam)
}

func (m *model) inTurn(o Operation, at []int) bool {
	chain := []string{"kit", "sew-pairs", "press-pairs", "sew-units", "sew-block-column-2", "sew-block-column-3", "square-up"}
	done := total(at)
	switch o.Key {
	case "prepare", "kit":
		return true
	case "cut":
		return done <= o.Count*m.done("prepare", o.Lot)
	case "test":
		squared, _ := m.at(m.row("square-up", o.Lot))
		return done == 0 || squared[0] == 1
	case "lay-out-top":
		return done <= m.squared(o.Lot)
	case "sew-top-rows":
		before := m.row("lay-out-top", o.Lot)
		return done <= o.Count*m.done("lay-out-top", o.Lot)/before.Count
	case "layer":
		return done == 0 || m.done("sew-top-rows", o.Lot) == m.row("sew-top-rows", o.Lot).Count
	case "hand-over":
		return done <= m.done("layer", o.Lot)
	}
	before := m.row(chain[slices.Index(chain, o.Key)-1], o.Lot)
	through, _ := m.at(before)
	for i, n := range at {
		if n > 0 && through[i] < before.PerBlock {
			return false
		}
	}
	return true
}

// squared is how many of a quilt's blocks are squared up.
func (m *model) squared(quilt Lot) int {
	n := 0
	for _, b := range m.ledger.Blocks {
		lot := colourwayLot(b.Colourway)
		at, _ := m.at(m.row("square-up", lot))
		if quiltLot(b.Quilt) == quilt {
			n += at[slices.Index(m.blocks(b.Colourway), b.ID)]
		}
	}
	return n
}

// cutEnough: every kitted block took 2 pieces.
func (m *model) cutEnough(fabric Lot) bool {
	return 2*(m.done("kit", tide)+m.done("kit", dune)) <= m.done("cut", fabric)
}

// smallJob is small enough for blocks and lots to get in each other's way.
func smallJob() Ledger { return madeLedger(2, colourwayRun{"tide", 2}, colourwayRun{"dune", 1}) }

// machine drives a job and its model with the same random work.
type machine struct {
	t     *rapid.T
	s     State
	model *model
	next  int
}

func newMachine(t *rapid.T) *machine {
	l := smallJob()
	return &machine{t: t, s: book(t, l), model: &model{ledger: l, gone: map[string]bool{}}}
}

// work is a random request of one row, and the event that it is to become.
func (m *machine) work(t *rapid.T) (LogRequest, Part) {
	m.next++
	rows := m.model.ledger.Operations
	o := rows[rapid.IntRange(0, len(rows)-1).Draw(t, "row")]
	n := rapid.IntRange(1, o.Count+1).Draw(t, "count")
	r := LogRequest{Operation: o.Key, ID: fmt.Sprintf("w%d", m.next), At: monday, By: "Runa", Counts: []CountAsked{{Lot: o.Lot.Name, Number: n}}}
	part := Part{Operation: o.Key, Lot: o.Lot, Count: n}
	if o.PerBlock > 0 && rapid.Bool().Draw(t, "named") {
		block := rapid.SampledFrom(m.model.blocks(o.Lot.Name)).Draw(t, "block")
		r.Blocks, part.Blocks = []string{block}, []BlockCount{{block, n}}
	}
	return r, part
}

// log logs work that the model finds right, and sees it refused otherwise.
func (m *machine) log(t *rapid.T) {
	r, part := m.work(t)
	ev, err := m.s.Log(r)
	with := m.model.with(Event{ID: r.ID, Parts: []Part{part}})
	if !with.right() {
		m.refusal(t, err)
		return
	}
	require.NoError(t, err)
	assert.Equal(t, []Part{part}, ev.Parts)
	m.take(t, r, ev)
}

// catchUp logs work with all before it: right by the model whatever it was.
func (m *machine) catchUp(t *rapid.T) {
	r, part := m.work(t)
	r.CatchUp = true
	ev, err := m.s.Log(r)
	if err != nil {
		assert.Equal(t, TooMany, m.kindOf(t, err, NothingLeft, TooMany), "only what is not left cannot be caught up with")
		at, ok := m.model.with(Event{ID: r.ID, Parts: []Part{part}}).at(m.model.row(part.Operation, part.Lot))
		assert.False(t, ok, at)
		return
	}
	assert.True(t, m.model.with(ev).right(), ev.Parts)
	m.take(t, r, ev)
}

// measure keeps a measured piece, which says nothing of any count.
func (m *machine) measure(t *rapid.T) {
	m.next++
	width := 3.25 + float64(rapid.IntRange(0, 8).Draw(t, "width"))/16
	ev, err := m.s.Measure(strips(width, "window"), fmt.Sprintf("m%d", m.next), monday, "Runa")
	require.NoError(t, err)
	m.s = after(t, m.s, ev)
	m.model = m.model.with(Event{ID: ev.ID})
}

// kindOf is the last of the kinds where the error is any of them.
func (m *machine) kindOf(t *rapid.T, err error, kinds ...RefusalKind) RefusalKind {
	r := m.refusal(t, err)
	if slices.Contains(kinds, r.Kind) {
		return kinds[len(kinds)-1]
	}
	return r.Kind
}

func (m *machine) refusal(t *rapid.T, err error) *Refusal {
	var r *Refusal
	require.True(t, errors.As(err, &r), "a refusal, not %v", err)
	assert.NotEmpty(t, r.What)
	assert.Equal(t, r.Count, r.Done+r.Left)
	return r
}

// undo takes any standing entry back where the model stays right without it,
// and sees it refused otherwise.
func (m *machine) undo(t *rapid.T) {
	var standing []string
	for _, e := range m.s.Entries {
		if e.Standing() {
			standing = append(standing, e.ID)
		}
	}
	if len(standing) == 0 {
		return
	}
	m.next++
	target := rapid.SampledFrom(standing).Draw(t, "entry")
	ev, err := m.s.Undo(target, fmt.Sprintf("u%d", m.next), monday, "Runa")
	if without := m.model.without(target); !without.right() {
		r := m.refusal(t, err)
		assert.Equal(t, BuiltOn, r.Kind)
		m.undoInTurn(t, r, target)
		return
	}
	require.NoError(t, err)
	before := m.s.Rows()
	m.s = after(t, m.s, ev)
	m.model = m.model.without(target)
	m.restores(t, target, before)
}

// undoInTurn follows a refusal to undo: what it names can be taken back one
// after the other, unless it says that there is more.
func (m *machine) undoInTurn(t *rapid.T, r *Refusal, target string) {
	s := m.s
	if r.Hint != "" {
		m.tied(t, r)
		return
	}
	for i, id := range r.Near {
		ev, err := s.Undo(id, fmt.Sprintf("then%d", i), monday, "Runa")
		if len(r.Near) == mostBuiltOn && err != nil {
			return
		}
		require.NoError(t, err)
		s = after(t, s, ev)
	}
	if len(r.Near) < mostBuiltOn {
		_, err := s.Undo(target, "last", monday, "Runa")
		assert.NoError(t, err)
	}
}

// tied follows a refusal that says what rests on each other: none of it can be
// taken back.
func (m *machine) tied(t *rapid.T, r *Refusal) {
	assert.NotEmpty(t, r.Near)
	for _, id := range r.Near {
		_, err := m.s.Undo(id, "then", monday, "Runa")
		assert.Equal(t, BuiltOn, m.refusal(t, err).Kind)
		assert.False(t, m.model.without(id).right(), id)
	}
}

// restores: logging the same once more gives what was before the undo.
func (m *machine) restores(t *rapid.T, target string, before []Row) {
	was, _ := m.s.Repeated(target)
	was.ID = "again"
	assert.Equal(t, before, after(t, m.s, was).Rows())
}

// take stores an event; the same request sent again is then answered with it.
func (m *machine) take(t *rapid.T, r LogRequest, ev Event) {
	ev = stored(t, m.s, ev)
	s, err := m.s.With(ev)
	require.NoError(t, err)
	again, err := s.Log(r)
	require.NoError(t, err)
	assert.Equal(t, ev, again)
	m.s, m.model = s, m.model.with(ev)
}

// check compares all rows with the model.
func (m *machine) check(t *rapid.T) {
	for _, row := range m.s.Rows() {
		at, ok := m.model.at(row.Operation)
		require.True(t, ok)
		assert.Equal(t, total(at), row.Done, row.Key+" "+row.Lot.Name)
		for i, b := range row.Blocks {
			assert.Equal(t, at[i], b.Count, row.Key+" "+b.Block)
		}
		assert.Zero(t, row.Spare)
		assert.True(t, 0 <= row.Done && row.Done <= row.Count)
		assert.Equal(t, row.Count, row.Done+row.Left())
	}
	again, err := Fold(m.s.events)
	require.NoError(t, err)
	assert.Equal(t, m.s.Rows(), again.Rows(), "the fold of all events is the state they led to")
}

func TestAnyWorkIsTakenOrRefusedAsANaiveModelSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := newMachine(t)
		t.Repeat(map[string]func(*rapid.T){"log": m.log, "catch up": m.catchUp, "measure": m.measure, "undo": m.undo, "": m.check})
	})
}

// blockOf is the block that a part names, "" where it names none.
func blockOf(p Part) string {
	if len(p.Blocks) == 0 {
		return ""
	}
	return p.Blocks[0].Block
}

func TestWhateverIsCountedAndRecountedDoneAndLeftMakeTheCount(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := newMachine(t)
		try := func(ev Event, err error) {
			if err != nil {
				m.refusal(t, err)
				return
			}
			m.s = after(t, m.s, ev)
		}
		t.Repeat(map[string]func(*rapid.T){
			"log":      func(t *rapid.T) { r, _ := m.work(t); try(m.s.Log(r)) },
			"catch up": func(t *rapid.T) { r, _ := m.work(t); r.CatchUp = true; try(m.s.Log(r)) },
			"undo":     func(*rapid.T) { m.next++; try(m.s.Undo("", fmt.Sprintf("u%d", m.next), monday, "Runa")) },
			"undo any": func(t *rapid.T) {
				m.next++
				try(m.s.Undo(fmt.Sprint(rapid.IntRange(2, 30).Draw(t, "entry")), fmt.Sprintf("u%d", m.next), monday, "Runa"))
			},
			"scrap": func(t *rapid.T) {
				r, part := m.work(t)
				try(m.s.Scrap(ScrapRequest{Operation: r.Operation, Counts: r.Counts, ID: r.ID, At: monday, By: "Runa", Block: blockOf(part)}))
			},
			"recount": func(t *rapid.T) {
				r, part := m.work(t)
				ev := m.s.event(Recount, r.ID, monday, "Runa")
				ev.Parts = []Part{part}
				m.s = after(t, m.s, ev)
				o := m.model.row(part.Operation, part.Lot)
				room := o.Count
				if part.Blocks != nil {
					room = o.PerBlock
				}
				assert.Equal(t, min(part.Count, room), m.s.Done(part.Operation, part.Lot), "what lies on the table, as far as there is room")
			},
			"": func(t *rapid.T) {
				for _, row := range m.s.Rows() {
					assert.True(t, 0 <= row.Done && row.Done <= row.Count && row.Spare >= 0)
					assert.Equal(t, row.Count, row.Done+row.Left())
				}
			},
		})
	})
}
