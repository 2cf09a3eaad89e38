package patchwork

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
)

// wildLengths are lengths that a recipe may hold, and some that it must not.
var wildLengths = []measure.Length{
	0, -1, 1, quarter, measure.Inch / 2, measure.Inch + 1, 2 * measure.Inch, 3 * measure.Inch, 4 * measure.Inch, 5*measure.Inch/2 + 3,
	6 * measure.Inch, 10 * measure.Inch, measure.Longest, measure.Longest + 1, math.MaxInt64, math.MinInt64,
}

// wild draws values of steps that need not make sense, with names of steps that
// there are.
type wild struct {
	t     *rapid.T
	names []string
}

// drawWild draws a recipe that can be made with the seam, and spoils it.
func drawWild(t *rapid.T, seam measure.Length) Recipe {
	r := drawRecipe(t, seam)
	d := wild{t: t}
	for _, s := range r.Steps {
		d.names = append(d.names, s.Name)
	}
	for range d.int(0, 3) {
		s := &r.Steps[d.int(0, len(r.Steps)-1)]
		d.spoil(s, d.step())
	}
	return r
}

// spoil takes one value of a step from another.
func (d *wild) spoil(s *Step, from Step) {
	spoils := []func(){
		func() { s.Name = from.Name },
		func() { s.Do = from.Do },
		func() { s.Do, s.Whole, s.Of, s.Rows = Sew, from.Whole, from.Of, from.Rows },
		func() { s.Role, s.Roles = from.Role, from.Roles },
		func() { s.Size = from.Size },
		func() { s.Of = from.Of },
		func() { s.Upright = from.Upright },
		func() { s.Level = from.Level },
		func() { s.Turns = from.Turns },
		func() { s.Exchange = from.Exchange },
		func() { s.AtATime = from.AtATime },
		func() { s.TrimTo = from.TrimTo },
		func() { s.Every = from.Every },
		func() { *s = from },
	}
	spoils[d.int(0, len(spoils)-1)]()
}

func (d *wild) length() measure.Length {
	if d.int(0, 2) > 0 {
		return wildLengths[d.int(5, 11)]
	}
	return rapid.SampledFrom(wildLengths).Draw(d.t, "length")
}

func (d *wild) int(low, high int) int { return rapid.IntRange(low, high).Draw(d.t, "int") }

func (d *wild) of() string {
	return rapid.SampledFrom(append(d.names, "nothing")).Draw(d.t, "of")
}

func (d *wild) size() measure.Size {
	size := square(d.length())
	if d.int(0, 3) == 0 {
		size.Height = d.length()
	}
	return size
}

func (d *wild) step() Step {
	s := Step{Do: Action(d.int(0, 9)), Of: d.of(), AtATime: d.int(0, 5) * 2}
	s.Name = rapid.SampledFrom([]string{"new", "grid", "", "Ä b"}).Draw(d.t, "name")
	s.Role = rapid.SampledFrom([]string{"a", "b", ""}).Draw(d.t, "role")
	s.Roles = [2]string{s.Role, rapid.SampledFrom([]string{"c", "a"}).Draw(d.t, "second")}
	s.Size, s.TrimTo, s.Every = d.size(), d.length(), d.length()
	s.Upright, s.Level = d.cuts(), d.cuts()
	s.Whole = d.int(0, 1) == 0
	if s.Do == Sew && !s.Whole {
		s.Of = ""
		for range d.int(0, 3) {
			row := make([]Cell, d.int(0, 3))
			for c := range row {
				row[c] = Cell{d.of(), d.int(-5, 5)}
			}
			s.Rows = append(s.Rows, row)
		}
	}
	for range d.int(0, 1) * (len(s.Level) + 1) {
		row := make([]int, len(s.Upright)+1)
		for c := range row {
			row[c] = d.int(-4, 4) * 90
		}
		s.Turns = append(s.Turns, row)
	}
	for range d.int(0, 2) {
		s.Exchange = append(s.Exchange, [2]int{d.int(0, 5), d.int(1, 9)})
	}
	return s
}

func (d *wild) cuts() []From {
	var cuts []From
	for range d.int(0, 2) {
		cuts = append(cuts, From{Edge(d.int(0, 5)), d.length()})
	}
	return cuts
}

// wellSewn is a seam that recipes can be drawn for.
func wellSewn(seam measure.Length) measure.Length {
	if seam < 5*mm || seam > measure.Inch/2 {
		return quarter
	}
	return seam
}

// makeWild makes a wild recipe: it is a block in which everything adds up, or a
// fault that says what and what to do.
func makeWild(t *rapid.T) {
	seam := rapid.SampledFrom(seams).Draw(t, "seam")
	if rapid.IntRange(0, 20).Draw(t, "odd seam") == 0 {
		seam = rapid.SampledFrom(wildLengths).Draw(t, "seam")
	}
	b, err := Make(drawWild(t, wellSewn(seam)), seam, measure.Unit(rapid.IntRange(0, 1).Draw(t, "unit")))
	if err != nil {
		var fault *Fault
		require.True(t, errors.As(err, &fault))
		assert.NotEmpty(t, fault.What)
		return
	}
	for _, u := range eachUnit(b) {
		assertPatchesFill(t, u)
	}
	best := b.Best()
	assert.Len(t, best, len(b.Choices))
	b.Batches(3, func(block int, role string) string { return fmt.Sprint(role, block%2) })
	for _, j := range b.Bulk(best) {
		assert.GreaterOrEqual(t, j.Layers, 5)
	}
	b.BlockTally(best)
	b.SeamLength()
}

func TestWildRecipesAreMadeOrRefused(t *testing.T) { rapid.Check(t, makeWild) }

func FuzzMake(f *testing.F) { f.Fuzz(rapid.MakeFuzz(makeWild)) }
