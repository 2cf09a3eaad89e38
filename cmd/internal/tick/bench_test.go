package tick

import "testing"

// BenchmarkLines lays the screen out, in the middle of a chain.
func BenchmarkLines(b *testing.B) {
	d := sit(b, "sew-pairs", "tide")
	d.press("b", "3", "space", "space")
	for b.Loop() {
		d.screen.Lines(80, 24)
	}
}
