package tracker

import (
	"encoding/json"
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// The tests' job is a lap quilt of four-patch blocks in two colourways. Every
// block takes 2 pieces of Kelp and 2 of Foam; 4 more pieces of Foam are
// borders. All counts below are hand-worked from that.

func fabricLot(name string) Lot    { return Lot{planner.FabricLot, name} }
func colourwayLot(name string) Lot { return Lot{planner.ColourwayLot, name} }
func quiltLot(n int) Lot           { return Lot{planner.QuiltLot, fmt.Sprintf("quilt-%d", n)} }

var (
	kelp, foam = fabricLot("Kelp"), fabricLot("Foam")
	tide, dune = colourwayLot("tide"), colourwayLot("dune")
)

// colourwayRun is how many blocks of a colourway one quilt has.
type colourwayRun struct {
	name   string
	blocks int
}

// estuary is the usual job: one quilt, 8 blocks of tide and 4 of dune.
func estuary() Ledger {
	return madeLedger(1, colourwayRun{"tide", 8}, colourwayRun{"dune", 4})
}

// madeLedger is the tests' job in other numbers.
func madeLedger(quantity int, runs ...colourwayRun) Ledger {
	l := Ledger{
		Job: "estuary-lap", Title: "Estuary lap quilt", Client: "Pilot Lane Library",
		Received: planner.Date{Year: 2026, Month: 11, Day: 2}, Due: planner.Date{Year: 2027, Month: 2, Day: 12},
		Revision: 1, Quantity: quantity, Fabrics: []string{"Kelp", "Foam"},
	}
	perQuilt := 0
	for _, run := range runs {
		l.Colourways = append(l.Colourways, run.name)
		perQuilt += run.blocks
	}
	for q := 1; q <= quantity; q++ {
		for _, run := range runs {
			for i := range run.blocks {
				l.Blocks = append(l.Blocks, Block{
					ID: planner.BlockID(run.name, (q-1)*run.blocks+i+1), Quilt: q, Colourway: run.name, Row: 1, Column: i + 1,
				})
			}
		}
	}
	b := ledgerMaker{l: &l, quantity: quantity, perQuilt: perQuilt, runs: runs}
	b.fabricRows()
	b.colourwayRows()
	b.quiltRows()
	b.inOrder()
	return l
}

type ledgerMaker struct {
	l                  *Ledger
	quantity, perQuilt int
	runs               []colourwayRun
}

func (m ledgerMaker) row(number int, key string, lot Lot, unit planner.CountUnit, perBlock, count int, after ...Ref) {
	m.l.Operations = append(m.l.Operations, Operation{
		Number: number, Key: key, Name: key, Lot: lot, CountedIn: unit, PerBlock: perBlock, Count: count, After: after,
		Setup: planner.Span{Mean: 5, Spread: 0.3}, Unit: planner.Span{Mean: 1, Spread: 0.3},
	})
}

func (m ledgerMaker) fabricRows() {
	blocks := m.perQuilt * m.quantity
	m.row(10, "prepare", kelp, "piece", 0, 1)
	m.row(10, "prepare", foam, "piece", 0, 1)
	m.row(30, "cut", kelp, "piece", 0, 2*blocks, Ref{Key: "prepare", Lot: kelp})
	m.row(30, "cut", foam, "piece", 0, 2*blocks+4*m.quantity, Ref{Key: "prepare", Lot: foam})
}

func (m ledgerMaker) colourwayRows() {
	for _, run := range m.runs {
		lot, n := colourwayLot(run.name), run.blocks*m.quantity
		var takes []Take
		for _, b := range m.l.Blocks {
			if b.Colourway == run.name {
				takes = append(takes, Take{b.ID, 2})
			}
		}
		m.row(20, "test", lot, "block", 0, 1, Ref{Key: "square-up", Lot: lot})
		m.row(40, "kit", lot, "block", 1, n,
			Ref{Key: "cut", Lot: kelp, Takes: takes}, Ref{Key: "cut", Lot: foam, Takes: takes})
		m.row(50, "sew-pairs", lot, "pair", 2, 2*n, Ref{Key: "kit", Lot: lot})
		m.row(60, "press-pairs", lot, "pair", 2, 2*n, Ref{Key: "sew-pairs", Lot: lot})
		m.row(70, "sew-units", lot, "unit", 1, n, Ref{Key: "press-pairs", Lot: lot})
		m.row(80, "sew-block-column-2", lot, "seam", 3, 3*n, Ref{Key: "sew-units", Lot: lot})
		m.row(90, "sew-block-column-3", lot, "seam", 3, 3*n, Ref{Key: "sew-block-column-2", Lot: lot})
		m.row(100, "square-up", lot, "block", 1, n, Ref{Key: "sew-block-column-3", Lot: lot})
	}
}

func (m ledgerMaker) quiltRows() {
	var squared []Ref
	for _, run := range m.runs {
		squared = append(squared, Ref{Key: "square-up", Lot: colourwayLot(run.name)})
	}
	for q := 1; q <= m.quantity; q++ {
		lot := quiltLot(q)
		m.row(110, "lay-out-top", lot, "block", 0, m.perQuilt, squared...)
		m.row(120, "sew-top-rows", lot, "join", 0, m.perQuilt/2, Ref{Key: "lay-out-top", Lot: lot})
		m.row(130, "layer", lot, "quilt", 0, 1, Ref{Key: "sew-top-rows", Lot: lot})
		m.row(140, "hand-over", lot, "quilt", 0, 1, Ref{Key: "layer", Lot: lot})
	}
}

// inOrder puts rows by number, then lot in the order in which they were made.
func (m ledgerMaker) inOrder() {
	rows := m.l.Operations
	for i := range rows {
		for j := i; j > 0 && rows[j-1].Number > rows[j].Number; j-- {
			rows[j-1], rows[j] = rows[j], rows[j-1]
		}
	}
}

var monday = time.Date(2026, 11, 9, 19, 30, 0, 0, time.FixedZone("", 3600))

// book is the state of a job just booked.
func book(t require.TestingT, l Ledger) State {
	s, err := Fold([]Event{{Schema: EventSchema, ID: "booked", Seq: 1, At: monday, By: "Runa", Kind: Booked, Revision: l.Revision, File: "job: estuary-lap", Ledger: &l}})
	require.NoError(t, err)
	return s
}

// stored is an event as the store gives it back: numbered, and through JSON.
func stored(t require.TestingT, s State, ev Event) Event {
	ev.Seq = uint64(len(s.events)) + 1
	text, err := json.Marshal(ev)
	require.NoError(t, err)
	var back Event
	require.NoError(t, json.Unmarshal(text, &back))
	return back
}

// after is the state with an event that the store has taken.
func after(t require.TestingT, s State, ev Event) State {
	next, err := s.With(stored(t, s, ev))
	require.NoError(t, err)
	return next
}

// request is work as it is typed: "tide=12", "4 blocks", "12", "all".
func request(t require.TestingT, s State, operation string, counts ...string) LogRequest {
	asked, err := ParseCounts(counts)
	require.NoError(t, err)
	return LogRequest{Operation: operation, Counts: asked, ID: fmt.Sprintf("e%d", len(s.events)+1), At: monday, By: "Runa"}
}

// logged is the state after work that has to be accepted.
func logged(t require.TestingT, s State, operation string, counts ...string) State {
	ev, err := s.Log(request(t, s, operation, counts...))
	require.NoError(t, err)
	return after(t, s, ev)
}

// atBlocks names blocks in a request.
func atBlocks(r LogRequest, ids ...string) LogRequest {
	r.Blocks = ids
	return r
}

// accepted is the state after a request that has to be accepted.
func accepted(t require.TestingT, s State, r LogRequest) State {
	ev, err := s.Log(r)
	require.NoError(t, err)
	return after(t, s, ev)
}

// refused is the refusal of a request.
func refused(t *testing.T, s State, r LogRequest) *Refusal {
	_, err := s.Log(r)
	return asRefusal(t, err)
}

func asRefusal(t require.TestingT, err error) *Refusal {
	var refusal *Refusal
	require.ErrorAs(t, err, &refusal)
	return refusal
}

// caughtUp is a request that catches up.
func caughtUp(r LogRequest) LogRequest {
	r.CatchUp = true
	return r
}

// ready is the usual job with all cutting done, so that sewing is free to go on
// in both colourways.
func cutAndKitted(t require.TestingT) State {
	s := book(t, estuary())
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=all", "Foam=all")
	return logged(t, s, "kit", "tide=all", "dune=all")
}
