package tracker

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// longLog is 10,000 events of one job of two quilts of 400 blocks in four
// colourways: entries of a count or two in the order of work, half of them with
// named blocks, most timed, and every twentieth taken back and logged again.
func longLog(b testing.TB) []Event {
	const events = 10_000
	l := madeLedger(2, colourwayRun{"tide", 100}, colourwayRun{"dune", 100}, colourwayRun{"kelp", 100}, colourwayRun{"gannet", 100})
	all := []Event{{Schema: 1, ID: "booked", Seq: 1, At: monday, Kind: Booked, Revision: 1, File: "job: estuary-lap", Ledger: &l}}
	add := func(ev Event) {
		n := len(all) + 1
		ev.Schema, ev.ID, ev.Seq, ev.At, ev.By, ev.Revision = 1, fmt.Sprintf("0190f3a2-%08d", n), uint64(n), monday, "Runa", 1
		all = append(all, ev)
	}
	took := planner.Minutes(2.5)
	for len(all) < events {
		for _, o := range l.Operations {
			for i := 0; i < o.Count && len(all) < events; i++ {
				p := Part{Operation: o.Key, Lot: o.Lot, Count: 1, Minutes: &took}
				if o.PerBlock > 0 && i%2 == 0 {
					p.Blocks = []BlockCount{{planner.BlockID(o.Lot.Name, i/o.PerBlock+1), 1}}
				}
				add(Event{Kind: Logged, Parts: []Part{p}})
				if i%20 == 19 && len(all)+2 <= events {
					add(Event{Kind: Undone, Target: all[len(all)-1].ID})
					add(Event{Kind: Logged, Parts: []Part{p}})
				}
			}
		}
	}
	require.Len(b, all, events)
	return all
}

func BenchmarkFoldOf10000Events(b *testing.B) {
	events := longLog(b)
	for b.Loop() {
		if _, err := Fold(events); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRowsAfter10000Events(b *testing.B) {
	s, err := Fold(longLog(b))
	require.NoError(b, err)
	for b.Loop() {
		if len(s.Rows()) == 0 {
			b.Fatal("no rows")
		}
	}
}

func BenchmarkLogAfter10000Events(b *testing.B) {
	s, err := Fold(longLog(b))
	require.NoError(b, err)
	r := LogRequest{Operation: "square-up", Counts: []CountAsked{{Lot: "gannet", Number: 1}}, CatchUp: true, ID: "next"}
	for b.Loop() {
		if _, err := s.Log(r); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkUndoAfter10000Events(b *testing.B) {
	s, err := Fold(longLog(b))
	require.NoError(b, err)
	for b.Loop() {
		if _, err := s.Undo("", "next", monday, "Runa"); err != nil {
			b.Fatal(err)
		}
	}
}
