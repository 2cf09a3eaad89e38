package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a job file may say of each block stays as it is: files written today rely
// on it.
func TestTheBuiltInsTakeTheirRolesAndMeasures(t *testing.T) {
	square, unit := Measure{Name: "square", Sides: true}, Measure{Name: "unit"}
	offset, thirds := Measure{Name: "offset"}, Measure{Name: "offset", Optional: true}
	assert.Equal(t, []BuiltIn{
		{Name: "plain square", Roles: []string{"print"}, Measures: []Measure{square}},
		{Name: "four-patch", Roles: []string{"print", "ground"}, Measures: []Measure{square}},
		{Name: "nine-patch", Roles: []string{"corner", "side", "centre"}, Measures: []Measure{square}},
		{Name: "rail", Roles: []string{"strips"}, Measures: []Measure{{Name: "strip"}, {Name: "length"}}, Strips: true},
		{Name: "half-square triangle", Roles: []string{"print", "ground"}, Measures: []Measure{unit}, Method: true},
		{Name: "pinwheel", Roles: []string{"print", "ground"}, Measures: []Measure{unit}, Method: true},
		{Name: "hourglass", Roles: []string{"print", "ground"}, Measures: []Measure{unit}},
		{Name: "four-patch recut", Roles: []string{"print", "ground"}, Measures: []Measure{square, offset}, Rows: 3, Across: 3},
		{Name: "nine-patch recut", Roles: []string{"corner", "side", "centre"}, Measures: []Measure{square}, Rows: 2, Across: 2},
		{Name: "pinwheel recut", Roles: []string{"print", "ground"}, Measures: []Measure{unit, thirds}, Method: true, Rows: 3, Across: 3},
		{Name: "hourglass recut", Roles: []string{"print", "ground"}, Measures: []Measure{unit, thirds}, Method: true, Rows: 3, Across: 3},
	}, BuiltIns())
}

func TestEveryBuiltInIsFoundByItsOwnName(t *testing.T) {
	for _, b := range BuiltIns() {
		found, ok := BuiltInNamed(b.Name)
		require.True(t, ok, b.Name)
		assert.Equal(t, b, found)
		said, ok := BuiltInCalled(b.Name)
		require.True(t, ok, b.Name)
		assert.Equal(t, b, said)
	}
	_, ok := BuiltInNamed("log cabin")
	assert.False(t, ok)
}

func TestEveryKeyThatMayBeMissingHasAnExample(t *testing.T) {
	for _, b := range BuiltIns() {
		for _, key := range b.keys() {
			assert.NotEmpty(t, keyExamples()[key], key)
		}
	}
}
