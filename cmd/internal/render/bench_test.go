package render

import (
	"io"
	"testing"
)

func BenchmarkScratch(b *testing.B) {
	p := scratch(b, "lighthouse-king")
	b.Logf("%d ops %d blocks", len(p.Operations), len(p.Blocks))
	b.Run("sheet", func(b *testing.B) {
		for b.Loop() {
			Sheet(io.Discard, p, Look{Width: 80, Unicode: true})
		}
	})
	b.Run("json", func(b *testing.B) {
		for b.Loop() {
			PlanJSON(io.Discard, p)
		}
	})
}
