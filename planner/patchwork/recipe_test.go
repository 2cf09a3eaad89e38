package patchwork

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// Every field of a step counts, those to come as well.
func TestRecipesAreEqualWhereEveryFieldIs(t *testing.T) {
	filled := map[string]any{
		"Name": "a", "Do": Sew, "Role": "a", "Size": measure.Size{Width: 1}, "Of": "a", "Rows": [][]Cell{{{Of: "a"}}}, "Whole": true,
		"Upright": Halves(), "Level": Thirds(), "Turns": [][]int{{90}}, "Exchange": [][2]int{{1, 2}},
		"Roles": [2]string{"a", "b"}, "AtATime": 2, "TrimTo": measure.Inch, "Every": measure.Inch,
	}
	step := reflect.TypeFor[Step]()
	for i := range step.NumField() {
		name := step.Field(i).Name
		var s Step
		reflect.ValueOf(&s).Elem().Field(i).Set(reflect.ValueOf(filled[name]))
		one, other := Recipe{Steps: []Step{s}}, Recipe{Steps: []Step{s}}
		assert.True(t, one.Equal(other), name)
		other.Steps = []Step{{}}
		assert.False(t, one.Equal(other), name)
	}
	assert.False(t, Recipe{Steps: []Step{{}}}.Equal(Recipe{}))
	assert.False(t, Recipe{Steps: []Step{{Turns: [][]int{{90}}}}}.Equal(Recipe{Steps: []Step{{Turns: [][]int{{180}}}}}))
}

// Of the built-ins each is itself and no other.
func TestEveryBuiltInEqualsItselfAlone(t *testing.T) {
	again := builtIns()
	for name, r := range builtIns() {
		for other, o := range again {
			assert.Equal(t, name == other, r.Equal(o), "%s and %s", name, other)
		}
	}
}
