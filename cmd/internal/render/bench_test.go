package render

import (
	"io"
	"testing"

	"github.com/stretchr/testify/require"
)

// BenchmarkSheet renders the job sheet of a quilt of 400 blocks at 80 columns.
func BenchmarkSheet(b *testing.B) {
	plan := fourHundred(b)
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, Sheet(io.Discard, plan, Look{Width: 80, Unicode: true}))
	}
}

// BenchmarkPlanJSON writes the same plan for scripts.
func BenchmarkPlanJSON(b *testing.B) {
	plan := fourHundred(b)
	b.ReportAllocs()
	for b.Loop() {
		require.NoError(b, PlanJSON(io.Discard, plan))
	}
}

// BenchmarkLeft shows what remains of it.
func BenchmarkLeft(b *testing.B) {
	state := booked(b, fourHundred(b), 2)
	b.ReportAllocs()
	for b.Loop() {
		p := &page{look: Look{Width: 80, Unicode: true}}
		p.left(state, friday)
		require.NoError(b, p.writeTo(io.Discard))
	}
}

// BenchmarkTable sets one table of forty rows, as tablewriter does it.
func BenchmarkTable(b *testing.B) {
	g := &grid{columns: []column{{title: "Fabric", flexible: true}, {title: "Form"}, {title: "Need", right: true}, {title: "Buy", right: true}}}
	for range 40 {
		g.add("Slack water", "yardage 42 in wide", "2 1/8 yd", "5/8 yd")
	}
	b.ReportAllocs()
	for b.Loop() {
		p := &page{look: Look{Width: 80, Unicode: true}}
		require.NoError(b, p.table(g))
	}
}

// BenchmarkColumns sets the same forty rows as the job sheet does.
func BenchmarkColumns(b *testing.B) {
	g := &grid{columns: []column{{title: "Fabric", flexible: true}, {title: "Form"}, {title: "Need", right: true}, {title: "Buy", right: true}}}
	for range 40 {
		g.add("Slack water", "yardage 42 in wide", "2 1/8 yd", "5/8 yd")
	}
	b.ReportAllocs()
	for b.Loop() {
		p := &page{look: Look{Width: 80, Unicode: true}}
		p.records(0, g)
	}
}
