package draw

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// benchmark draws one drawing again and again, and gives its size.
func benchmark(b *testing.B, p planner.Plan, d Drawing) {
	var out bytes.Buffer
	b.ReportAllocs()
	for b.Loop() {
		out.Reset()
		require.NoError(b, d.Draw(&out, p))
	}
	b.ReportMetric(float64(out.Len()), "bytes")
}

// BenchmarkTopOf400Blocks draws a top of 400 blocks in four colourways.
func BenchmarkTopOf400Blocks(b *testing.B) {
	benchmark(b, fileAt(b, "../../../testdata/breakwater-400.yaml"), Drawing{Quilt: 1})
}

// BenchmarkBlock draws one of its blocks step by step.
func BenchmarkBlock(b *testing.B) {
	benchmark(b, fileAt(b, "../../../testdata/breakwater-400.yaml"), Drawing{Colourway: "pier"})
}

// BenchmarkCharacters draws the same block for a terminal.
func BenchmarkCharacters(b *testing.B) {
	c := fileAt(b, "../../../testdata/breakwater-400.yaml").Colourways[0]
	b.ReportAllocs()
	for b.Loop() {
		require.NotEmpty(b, Characters(c.Build, c.Press, 80, true))
	}
}
