package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a job file may say of each block stays as it is: files written today rely
// on it.
func TestTheBuiltInsTakeTheirRolesAndMeasures(t *testing.T) {
	assert.Equal(t, []BuiltIn{
		{Name: "plain square", Roles: []string{"print"}, Measures: []Measure{{Name: "square"}}, Computed: true},
		{Name: "four-patch", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "square"}}, Computed: true},
		{Name: "nine-patch", Roles: []string{"corner", "side", "centre"}, Measures: []Measure{{Name: "square"}}, Computed: true},
		{Name: "rail", Roles: []string{"strips"}, Measures: []Measure{{Name: "strip"}, {Name: "length"}}, Strips: true},
		{Name: "half-square triangle", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "unit"}}, Method: true},
		{Name: "pinwheel", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "unit"}}, Method: true},
		{Name: "hourglass", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "unit"}}},
		{Name: "four-patch recut", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "square"}, {Name: "offset"}}, Rows: 3, Across: 3, Computed: true},
		{Name: "nine-patch recut", Roles: []string{"corner", "side", "centre"}, Measures: []Measure{{Name: "square"}}, Rows: 2, Across: 2, Computed: true},
		{Name: "pinwheel recut", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "unit"}, {Name: "offset", Optional: true}}, Method: true, Rows: 3, Across: 3},
		{Name: "hourglass recut", Roles: []string{"print", "ground"}, Measures: []Measure{{Name: "unit"}, {Name: "offset", Optional: true}}, Method: true, Rows: 3, Across: 3},
	}, BuiltIns())
}

func TestEveryBuiltInIsFoundByItsOwnName(t *testing.T) {
	for _, b := range BuiltIns() {
		found, ok := BuiltInNamed(b.Name)
		require.True(t, ok, b.Name)
		assert.Equal(t, b, found)
		said, ok := blockNamed(b.Name)
		require.True(t, ok, b.Name)
		assert.Equal(t, b, said)
	}
	_, ok := BuiltInNamed("log cabin")
	assert.False(t, ok)
}

func TestChangingACopyOfTheTableChangesNothing(t *testing.T) {
	BuiltIns()[0].Name = "other"
	assert.Equal(t, "plain square", BuiltIns()[0].Name)
}

func TestEveryKeyThatMayBeMissingHasAnExample(t *testing.T) {
	for _, b := range BuiltIns() {
		for _, key := range b.keys() {
			assert.NotEmpty(t, keyExamples[key], key)
		}
	}
}
