package planner

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every command that takes a job file makes its plan, so that must not be felt, for
// the examples as for four hundred blocks and for a hundred fabrics.
func BenchmarkMakeJobs(b *testing.B) {
	jobs := examples(b)
	for name, job := range jobs {
		b.Run(name, func(b *testing.B) { benchmarkMake(b, job) })
	}
	data, err := os.ReadFile("../testdata/breakwater-400.yaml")
	require.NoError(b, err)
	big, err := Parse("breakwater-400.yaml", data)
	require.NoError(b, err)
	b.Run("breakwater-400.yaml", func(b *testing.B) { benchmarkMake(b, big) })
	b.Run("a hundred fabrics", func(b *testing.B) { benchmarkMake(b, manyFabrics(b)) })
}

func benchmarkMake(b *testing.B, job Job) {
	b.ReportAllocs()
	for b.Loop() {
		_, err := Make(job, Prior{})
		require.NoError(b, err)
	}
}

// manyFabrics is a quilt whose prints come from 99 fabrics, one to nine blocks each,
// and whose ground, backing and binding come from one.
func manyFabrics(b *testing.B) Job {
	b.Helper()
	var text strings.Builder
	text.WriteString("job: hundred\nfabrics:\n  Foam: {form: yardage, width: 42}\n")
	var counts []string
	blocks := 0
	for i := range 99 {
		fmt.Fprintf(&text, "  Tide %d: {form: yardage, width: 42}\n", i+1)
		counts = append(counts, fmt.Sprintf("Tide %d: %d", i+1, 1+i%9))
		blocks += 1 + i%9
	}
	fmt.Fprintf(&text, "block: {make: four-patch recut, square: 5, offset: 1, ground: Foam}\ncolourways:\n  all: {blocks: %d, print: {%s}}\n", blocks, strings.Join(counts, ", "))
	fmt.Fprintf(&text, "layout: {across: %d, down: %d, order: rows}\nbinding: {fabric: Foam}\nbacking: {fabric: Foam}\n", 15, blocks/15)
	job, err := Parse("hundred.yaml", []byte(text.String()))
	require.NoError(b, err)
	return job
}
