package planner

import (
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/require"
)

// topOf is a square top of so many blocks across in four colourways, each recut
// a little further out, so that like and unlike blocks meet.
func topOf(t testing.TB, across int) Job {
	t.Helper()
	n := across * across / 4
	job, err := Parse("job.yaml", fmt.Appendf(nil, `
job: top
fabrics: {Kelp: {form: yardage}, Foam: {form: yardage}}
block: {make: four-patch recut, square: 4, print: Kelp, ground: Foam}
colourways:
  one: {blocks: %[1]d, offset: 3/4}
  two: {blocks: %[1]d, offset: 1}
  three: {blocks: %[1]d, offset: 1 1/8}
  four: {blocks: %[1]d, offset: 7/8}
layout: {across: %[2]d, down: %[2]d}
`, n, across))
	require.NoError(t, err)
	return job
}

// blocksDealt is a plan up to the press plan.
func blocksDealt(job Job) *maker {
	m := &maker{job: job}
	m.colourways()
	m.quilt()
	m.deal()
	return m
}

func benchmarkTops(b *testing.B, run func(b *testing.B, job Job)) {
	for _, across := range []int{10, 20, 40, 80} {
		job := topOf(b, across)
		b.Run(fmt.Sprintf("%dx%d", across, across), func(b *testing.B) { run(b, job) })
	}
	data, err := os.ReadFile("../testdata/breakwater-400.yaml")
	require.NoError(b, err)
	job, err := Parse("breakwater-400.yaml", data)
	require.NoError(b, err)
	b.Run("breakwater", func(b *testing.B) { run(b, job) })
}

// BenchmarkPress is the press plan alone.
func BenchmarkPress(b *testing.B) {
	benchmarkTops(b, func(b *testing.B, job Job) {
		m := blocksDealt(job)
		b.ReportAllocs()
		for b.Loop() {
			m.plan.Press, m.plan.Joins = PressPlan{}, nil
			for i := range m.plan.Blocks {
				m.plan.Blocks[i].Turn = 0
			}
			m.press()
		}
	})
}

// BenchmarkMake is the whole plan of the same tops, press plan included.
func BenchmarkMake(b *testing.B) {
	benchmarkTops(b, func(b *testing.B, job Job) {
		for b.Loop() {
			if _, err := Make(job, Prior{}); err != nil {
				b.Fatal(err)
			}
		}
	})
}

// BenchmarkMakeUnpressed is the same without the press plan, to hold the two
// above against.
func BenchmarkMakeUnpressed(b *testing.B) {
	benchmarkTops(b, func(b *testing.B, job Job) {
		for b.Loop() {
			m := blocksDealt(job)
			m.cloth()
			m.warnings()
			m.route()
		}
	})
}
