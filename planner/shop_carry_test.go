package planner

import (
	"fmt"
	"maps"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// Every example is carried to a shop once more with spare pieces and cloth that shrinks
// in the wash, two of it in one list. Cloth, batting and thread last; what each kind of
// piece is for is among the examples, or the test says what is missing.
func TestNothingRunsOutWithSparesAndShrinkage(t *testing.T) {
	uses := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(examples(t))) {
		job := examples(t)[name]
		job.Spares = Spares{Pieces: 4, Blocks: 1}
		job.Fabrics = slices.Clone(job.Fabrics)
		for i := range job.Fabrics {
			if !job.Fabrics[i].Form.Sheets() { // a sheet of a size that just does would not
				job.Fabrics[i].Shrinkage = Shrinkage{Width: 200, Length: 300}
			}
		}
		plan, err := Make(job, Prior{})
		require.NoError(t, err, name)
		w := plan.Wanted()
		for _, f := range w.Fabrics {
			for _, p := range f.Pieces {
				uses[p.For] = true
			}
		}
		t.Run(name, func(t *testing.T) {
			for _, wanted := range [][]Wanted{{w}, {w, w}} {
				s, err := Shop(wanted, Stocked{})
				require.NoError(t, err)
				nothingRunsOut(t, wanted, s, ownOfAll(wanted))
				battingLasts(t, wanted, s)
				assert.GreaterOrEqual(t, s.Thread.Buy, w.Thread.Total*measure.Length(len(wanted)))
				assert.GreaterOrEqual(t, measure.Metre.Times(500*s.Thread.Spools(500*measure.Metre)), s.Thread.Buy)
			}
		})
	}
	for _, use := range []string{forBlocks, forBorder, forSashing, forBinding, forBacking, forSpare} {
		assert.True(t, uses[use], "no example has pieces for %s", use)
	}
}

// battingLasts cuts every quilt's batting of what a list buys.
func battingLasts(t *testing.T, wanted []Wanted, s Shopping) {
	var sizes []measure.Size
	for _, w := range wanted {
		if w.Batting != nil && !w.Batting.Quilter {
			sizes = append(sizes, slices.Repeat([]measure.Size{w.Batting.Size}, w.Battings)...)
		}
	}
	need := 0
	for _, b := range s.Battings {
		need += b.Need
		switch {
		case b.Roll > 0 && b.Length > 0:
			length, ok := cloth.RollFor(sizes, b.Roll)
			assert.True(t, ok)
			assert.LessOrEqual(t, length, b.Length)
		case b.Together():
			p, n, _, ok := cloth.PackagesFor(sizes, []cloth.Package{b.Package})
			assert.Equal(t, fmt.Sprint(b.Package, b.Buy, true), fmt.Sprint(p, n, ok))
		case b.Package.Size.Width > 0:
			_, ok := cloth.BattingFor(b.Size, []cloth.Package{b.Package})
			assert.True(t, ok)
			assert.Equal(t, b.Need, b.Buy)
		}
	}
	assert.Equal(t, len(sizes), need)
}
