package planner

import (
	"errors"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// Whatever a recipe of any actions says, its plan holds together, or what cannot
// be made is said in words at a place of the file.
func TestAnyRecipeIsPlannedOrRefusedInWords(t *testing.T) {
	planned, pooled := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		recipe := chainOfSteps(t)
		job, err := pasted(t, recipe, "in")
		require.NoError(t, err, Fragment(recipe))
		p, err := Make(job, Prior{})
		if err != nil {
			var problems Problems
			require.True(t, errors.As(err, &problems))
			for _, problem := range problems {
				assert.NotEmpty(t, problem.What)
				assert.Greater(t, problem.At.Line, 2, "%s\n%s", problem, Fragment(recipe))
			}
			return
		}
		planned++
		assertHoldsTogether(t, p)
		for _, s := range p.Colourways[0].Build.Steps {
			if s.Pooled {
				pooled++
				break
			}
		}
	})
	assert.NotZero(t, planned)
	assert.NotZero(t, pooled)
}

// assertHoldsTogether checks what every route must keep.
func assertHoldsTogether(t require.TestingT, p Plan) {
	rows := map[string]Operation{}
	for _, o := range p.Operations {
		id := o.Key + "/" + string(o.Lot.Kind) + "/" + o.Lot.Name
		assert.NotContains(t, rows, id, "one row per lot")
		assert.Positive(t, o.Count, o.Key)
		assert.Positive(t, float64(o.Unit.Mean), o.Key)
		assert.NotEmpty(t, o.Doing, o.Key)
		rows[id] = o
	}
	for _, o := range p.Operations {
		for _, a := range o.After {
			earlier, ok := rows[a.Key+"/"+string(a.Lot.Kind)+"/"+a.Lot.Name]
			require.True(t, ok, "%s comes after a row that is not there", o.Key)
			taken := 0
			for _, take := range a.Takes {
				taken += take.Count
			}
			assert.LessOrEqual(t, taken, earlier.Count, "%s takes from %s", o.Key, a.Key)
		}
	}
	assert.True(t, canBeDone(rows), "the route goes in a circle")
}

// chainOfSteps is a recipe of which every step uses the one before it.
func chainOfSteps(t *rapid.T) patchwork.Recipe {
	sides := rapid.SampledFrom([]measure.Length{5 * measure.Inch / 2, 4 * measure.Inch, 17 * measure.Inch / 2, 30 * measure.Inch})
	r := patchwork.Recipe{Steps: []patchwork.Step{{Name: "step-0", Do: patchwork.Cut, Role: "print", Size: measure.Size{Width: sides.Draw(t, "width"), Height: sides.Draw(t, "height")}}}}
	if rapid.Bool().Draw(t, "triangles") {
		r.Steps[0] = patchwork.Step{Name: "step-0", Do: patchwork.HalfSquare, Roles: [2]string{"print", "ground"}, TrimTo: sides.Draw(t, "side"),
			AtATime: rapid.SampledFrom([]int{2, 4, 8}).Draw(t, "at a time")}
	}
	for i := range rapid.IntRange(0, 6).Draw(t, "more steps") {
		last := fmt.Sprintf("step-%d", i)
		s := patchwork.Step{Name: fmt.Sprintf("step-%d", i+1), Of: last}
		switch rapid.IntRange(0, 5).Draw(t, "action") {
		case 0:
			s.Do, s.Upright, s.Level = patchwork.Recut, patchwork.Thirds(), patchwork.Halves()
		case 1:
			s.Do, s.Exchange = patchwork.Turn, [][2]int{{1, 3}}
		case 2:
			s.Do, s.Whole = patchwork.Sew, true
		case 3:
			s.Do, s.Every = patchwork.Subcut, sides.Draw(t, "every")
		default:
			s.Do, s.Of = patchwork.Sew, ""
			for range rapid.IntRange(1, 3).Draw(t, "rows") {
				s.Rows = append(s.Rows, []patchwork.Cell{{Of: last}, {Of: last, Quarters: 2 * rapid.IntRange(0, 1).Draw(t, "turned")}})
			}
		}
		r.Steps = append(r.Steps, s)
	}
	return r
}
