package tracker

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

// shift is a job at which two people work by a clock that does what it likes.
type shift struct {
	*machine
	now time.Time
}

func (m *shift) id() string { m.next++; return fmt.Sprintf("s%d", m.next) }

func (m *shift) who(t *rapid.T) string {
	return rapid.SampledFrom([]string{"Runa", "Maren"}).Draw(t, "who")
}

// tell takes an event in where it is accepted.
func (m *shift) tell(t *rapid.T, ev Event, err error) {
	if err != nil {
		m.refusal(t, err)
		return
	}
	m.s = after(t, m.s, ev)
}

func (m *shift) row(t *rapid.T) Operation {
	rows := m.model.ledger.Operations
	return rows[rapid.IntRange(0, len(rows)-1).Draw(t, "row")]
}

// pass lets time go by: mostly minutes, at times a night, and at times the clock
// is set back.
func (m *shift) pass(t *rapid.T) {
	minutes := rapid.SampledFrom([]int{0, 1, 3, 7, 12, 50, 300, 900, -1, -16, -60, -700}).Draw(t, "minutes")
	seconds := rapid.IntRange(0, 59).Draw(t, "seconds")
	zone := time.FixedZone("", 3600*rapid.IntRange(-3, 3).Draw(t, "zone"))
	m.now = m.now.Add(time.Duration(minutes)*time.Minute + time.Duration(seconds)*time.Second).In(zone)
}

func (m *shift) log(t *rapid.T) {
	r, _ := m.work(t)
	r.At, r.By, r.CatchUp = m.now, m.who(t), true
	r.Ticked = rapid.Bool().Draw(t, "ticked")
	if r.Ticked && rapid.Bool().Draw(t, "seen") {
		since := m.now.Add(-time.Duration(rapid.IntRange(-5, 15*60).Draw(t, "since")) * time.Second)
		r.Since = &since
	}
	if rapid.IntRange(0, 4).Draw(t, "timed") == 0 {
		took := planner.Minutes(rapid.IntRange(1, 90).Draw(t, "took"))
		r.Took = &took
	}
	ev, err := m.s.Log(r)
	m.tell(t, ev, err)
}

func (m *shift) start(t *rapid.T) {
	o := m.row(t)
	ev, err := m.s.Start(StartRequest{Operation: o.Key, Lot: &o.Lot, Ticked: rapid.Bool().Draw(t, "ticked"), ID: m.id(), At: m.now, By: m.who(t)})
	m.tell(t, ev, err)
}

func (m *shift) stop(t *rapid.T) {
	var end *time.Time
	if rapid.Bool().Draw(t, "end") {
		early := m.now.Add(-time.Duration(rapid.IntRange(-5, 600).Draw(t, "early")) * time.Minute)
		end = &early
	}
	ev, err := m.s.Stop(m.id(), end, m.now, m.who(t))
	m.tell(t, ev, err)
}

func (m *shift) recount(t *rapid.T) {
	r, part := m.work(t)
	request := RecountRequest{Operation: r.Operation, Counts: []CountAsked{{Number: r.Counts[0].Number - 1}}, Lot: &part.Lot, ID: r.ID, At: m.now, By: m.who(t)}
	if part.Blocks != nil {
		request.Block = part.Blocks[0].Block
	}
	ev, err := m.s.Recount(request)
	m.tell(t, ev, err)
}

func (m *shift) rip(t *rapid.T) {
	r, part := m.work(t)
	took := planner.Minutes(12)
	request := RipRequest{Operation: r.Operation, Counts: []CountAsked{{Number: r.Counts[0].Number}}, Lot: &part.Lot, Took: &took, ID: r.ID, At: m.now, By: m.who(t)}
	if part.Blocks != nil {
		request.Block = part.Blocks[0].Block
	}
	ev, err := m.s.Rip(request)
	m.tell(t, ev, err)
}

func (m *shift) scrap(t *rapid.T) {
	r, part := m.work(t)
	ev, err := m.s.Scrap(ScrapRequest{Operation: r.Operation, Counts: r.Counts, Block: blockOf(part), ID: r.ID, At: m.now, By: m.who(t)})
	m.tell(t, ev, err)
}

func (m *shift) undo(t *rapid.T) {
	ev, err := m.s.Undo("", m.id(), m.now, m.who(t))
	m.tell(t, ev, err)
}

func (m *shift) settle(t *rapid.T) {
	all := m.s.Sittings(m.now)
	if len(all) == 0 {
		return
	}
	took := planner.Minutes(rapid.IntRange(0, 90).Draw(t, "took"))
	r := SettleRequest{Entry: rapid.SampledFrom(all).Draw(t, "sitting").ID, Took: &took, ID: m.id(), At: m.now, By: m.who(t)}
	if rapid.Bool().Draw(t, "end") {
		r.Took, r.End = nil, &m.now
	}
	ev, err := m.s.Settle(r)
	m.tell(t, ev, err)
}

// check holds the state against what must hold whatever happened.
func (m *shift) check(t *rapid.T) {
	all, err := Fold(m.s.events)
	require.NoError(t, err)
	sameState(t, all, m.s)
	var rows planner.Minutes
	for _, row := range m.s.Rows() {
		assert.True(t, 0 <= row.Done && row.Done <= row.Count && row.Spare >= 0, row)
		assert.True(t, row.Minutes >= 0 && row.Ripping >= 0 && row.Timed >= 0, row)
		rows += row.Minutes + row.Ripping
	}
	worked := m.s.Worked()
	assert.InDelta(t, float64(worked.Minutes), float64(rows), 1e-6, "what the rows have is what was worked")
	assert.LessOrEqual(t, float64(worked.Minutes), 2*float64(worked.Elapsed)+1e-6, "two people, twice the time that went by at most")
	spans := map[string][]Span{}
	for _, sitting := range m.s.timing.sittings {
		if sitting.Counted() && sitting.Settled == nil {
			spans[sitting.By] = append(spans[sitting.By], sitting.Spans...)
		}
	}
	for who, own := range spans {
		var sum planner.Minutes
		for _, span := range own {
			sum += span.Minutes()
		}
		assert.InDelta(t, float64(union(own)), float64(sum), 1e-6, "no minute of %s counts twice", who)
	}
	for _, sitting := range m.s.Sittings(m.now) {
		assert.GreaterOrEqual(t, float64(sitting.Minutes()), 0.0)
		for _, share := range sitting.Shares {
			assert.GreaterOrEqual(t, float64(share.Minutes), 0.0)
		}
		for i, span := range sitting.Spans {
			assert.True(t, span.To.After(span.From))
			assert.True(t, i == 0 || !span.From.Before(sitting.Spans[i-1].To) || sitting.Doubt != "" || sitting.Settled != nil, sitting)
		}
	}
}

// Whatever order ticks, take-backs, pauses, clocks, recounts and jumps of the
// computer's clock come in, nothing gets below 0 or beyond what it can be, nobody
// is counted twice, and one event more is the fold of all.
func TestNoTimeIsAbsurdWhateverHappens(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := &shift{newMachine(t), monday}
		t.Repeat(map[string]func(*rapid.T){
			"pass": m.pass, "log": m.log, "start": m.start, "stop": m.stop, "recount": m.recount, "rip": m.rip, "scrap": m.scrap, "undo": m.undo, "settle": m.settle,
			"pause":  func(t *rapid.T) { ev, err := m.s.Pause(m.id(), m.now, m.who(t)); m.tell(t, ev, err) },
			"resume": func(t *rapid.T) { ev, err := m.s.Resume(m.id(), m.now, m.who(t)); m.tell(t, ev, err) },
			"":       m.check,
		})
	})
}
