package planner

import (
	"fmt"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// pasted is a job with a fragment pasted into it, in the given units; every role
// of the recipe has a fabric.
func pasted(t require.TestingT, r patchwork.Recipe, units string) (Job, error) {
	roles := map[string]bool{}
	for _, s := range r.Steps {
		roles[s.Role] = true
		roles[s.Roles[0]], roles[s.Roles[1]] = true, true
	}
	delete(roles, "")
	colourway := "blocks: 1"
	for role := range roles {
		colourway += ", " + role + ": Kelp"
	}
	return Parse("job.yaml", fmt.Appendf(nil, "job: pasted\nunits: %s\nfabrics: {Kelp: {width: 60 in}}\n%scolourways: {tide: {%s}}\nlayout: {across: 1, down: 1}\n",
		units, Fragment(r), colourway))
}

// What `blocks` prints of each built-in can be pasted into a job of either unit
// and makes the same block.
func TestTheFragmentOfEveryBuiltInMakesTheSameBlock(t *testing.T) {
	for _, b := range BuiltIns() {
		recipe := b.Sample().Recipe
		require.NotEmpty(t, b.Sample().Measures, b.Name)
		for _, units := range []string{"in", "cm"} {
			job, err := pasted(t, recipe, units)
			require.NoError(t, err, "%s\n%s", b.Name, Fragment(recipe))
			p, err := Make(job, Prior{})
			require.NoError(t, err, b.Name)
			want, err := patchwork.Make(recipe, job.Seam, job.Units)
			require.NoError(t, err, b.Name)
			assert.Equal(t, want.Block(), p.Colourways[0].Build.Block(), b.Name)
			assert.Equal(t, recipe, p.Colourways[0].Recipe, b.Name)
		}
	}
}

func TestAFragmentFitsInEightyColumns(t *testing.T) {
	for _, b := range BuiltIns() {
		recipe := b.Sample().Recipe
		for line := range strings.Lines(Fragment(recipe)) {
			assert.LessOrEqual(t, utf8.RuneCountInString(line), 80, line)
		}
	}
}

// Any recipe that the language can hold, whether it can be sewn or not, is read
// back as it was written.
func TestAFragmentIsReadBackAsTheSameRecipe(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		recipe := drawnRecipe(t)
		job, err := pasted(t, recipe, rapid.SampledFrom([]string{"in", "cm"}).Draw(t, "units"))
		require.NoError(t, err, Fragment(recipe))
		assert.Equal(t, recipe, job.Colourways[0].Block.Steps, Fragment(recipe))
	})
}

func drawnRecipe(t *rapid.T) patchwork.Recipe {
	var r patchwork.Recipe
	for i := range rapid.IntRange(1, 8).Draw(t, "steps") {
		s := patchwork.Step{Name: fmt.Sprintf("step-%d", i), Do: patchwork.Cut}
		if i > 0 {
			s.Do = rapid.SampledFrom([]patchwork.Action{patchwork.Cut, patchwork.Sew, patchwork.Recut, patchwork.Turn, patchwork.Trim,
				patchwork.HalfSquare, patchwork.QuarterSquare, patchwork.Subcut}).Draw(t, "action")
		}
		fillStep(t, &s, i)
		r.Steps = append(r.Steps, s)
	}
	return r
}

// fillStep draws what a step says; earlier is how many steps are before it.
func fillStep(t *rapid.T, s *patchwork.Step, earlier int) {
	of := func() string { return fmt.Sprintf("step-%d", rapid.IntRange(0, earlier-1).Draw(t, "of")) }
	switch s.Do {
	case patchwork.Cut:
		s.Role, s.Size = rapid.SampledFrom([]string{"print", "ground", "sea-2"}).Draw(t, "role"), drawnSize(t)
	case patchwork.Sew:
		if s.Whole = rapid.Bool().Draw(t, "whole"); s.Whole {
			s.Of = of()
			return
		}
		for range rapid.IntRange(2, 4).Draw(t, "rows") {
			var row []patchwork.Cell
			for range rapid.IntRange(1, 12).Draw(t, "cells") {
				row = append(row, patchwork.Cell{Of: of(), Quarters: rapid.IntRange(0, 3).Draw(t, "quarters")})
			}
			s.Rows = append(s.Rows, row)
		}
	case patchwork.Recut:
		s.Of, s.Upright, s.Level = of(), drawnCuts(t), drawnCuts(t)
	case patchwork.Turn:
		s.Of = of()
		s.Exchange = [][2]int{{rapid.IntRange(1, 9).Draw(t, "piece"), rapid.IntRange(1, 9).Draw(t, "piece")}}
		s.Turns = [][]int{{0, 90, 180}, {270, 0, 0}}
	case patchwork.Trim:
		s.Of, s.Size = of(), drawnSize(t)
	case patchwork.Subcut:
		s.Of, s.Every = of(), drawnLength(t)
	default:
		s.Roles, s.TrimTo = [2]string{"print", "ground"}, drawnLength(t)
		if s.Do == patchwork.HalfSquare {
			s.AtATime = rapid.SampledFrom([]int{2, 4, 8}).Draw(t, "at a time")
		}
		if rapid.Bool().Draw(t, "sized") {
			s.Size = squareOf(drawnLength(t))
		}
	}
}

// drawnLength is on the 1/64 in or the 0.1 mm grid, as people write measures.
func drawnLength(t *rapid.T) measure.Length {
	grid := rapid.SampledFrom([]measure.Length{measure.Inch / 64, measure.Millimetre / 10}).Draw(t, "grid")
	return grid * measure.Length(rapid.IntRange(1, 5000).Draw(t, "length"))
}

func drawnSize(t *rapid.T) measure.Size {
	return measure.Size{Width: drawnLength(t), Height: drawnLength(t)}
}

func drawnCuts(t *rapid.T) []patchwork.From {
	switch rapid.IntRange(0, 2).Draw(t, "cuts") {
	case 0:
		return patchwork.Halves()
	case 1:
		return patchwork.Thirds()
	}
	var cuts []patchwork.From
	for range rapid.IntRange(1, 3).Draw(t, "cuts") {
		from := patchwork.From{Edge: rapid.SampledFrom([]patchwork.Edge{patchwork.Centre, patchwork.Near, patchwork.Far}).Draw(t, "edge"), Distance: drawnLength(t)}
		if from.Edge == patchwork.Centre && rapid.Bool().Draw(t, "less") {
			from.Distance = -from.Distance
		}
		cuts = append(cuts, from)
	}
	return cuts
}
