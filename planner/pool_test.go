package planner

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// However fabrics are dealt: the runs of a batch make what is taken of it, and
// one run fewer would not; the segments of all batches are what the blocks take.
func TestRunsOfABatchSufficeAndNoneIsSpare(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		blocks := rapid.IntRange(1, 40).Draw(t, "blocks")
		length := rapid.IntRange(4, 40).Draw(t, "length")
		prints := rapid.SampledFrom([]string{"Kelp", "[Kelp, Reed]", "[Kelp, Reed, Foam, Kelp]"}).Draw(t, "prints")
		job, err := Parse("job.yaml", fmt.Appendf(nil, `
job: sets
fabrics: {Kelp: {width: 42}, Foam: {width: 42}, Reed: {width: 42}}
block:
  steps:
    red: {cut: red, size: %[1]d x 2 1/2}
    white: {cut: white, size: %[1]d x 2 1/2}
    set: {sew: [[red], [white]]}
    slices: {subcut: set, every: 2 1/2 in}
    four: {sew: [[slices, slices@180]]}
colourways: {tide: {blocks: %[2]d, red: %[3]s, white: Foam}}
layout: {across: %[2]d, down: 1}
`, length+1, blocks, prints))
		require.NoError(t, err)
		p, err := Make(job, Prior{})
		require.NoError(t, err)
		c := p.Colourways[0]
		slices := c.Build.Steps[3]
		if !slices.Pooled {
			return // sets of two segments come out even with a block
		}
		taken := 0
		for _, b := range blocksDealt(job).poolsOf(0)["slices"] {
			assert.GreaterOrEqual(t, b.runs*slices.Yield, b.units)
			assert.Less(t, (b.runs-1)*slices.Yield, b.units)
			taken += b.units
		}
		assert.Equal(t, 2*blocks, taken)
		strips := 0
		for _, n := range p.Fabrics {
			for _, piece := range n.Pieces {
				strips += piece.Count
			}
		}
		assert.Equal(t, 2*count(p, "sew-set"), strips, "two strips a set")
	})
}
