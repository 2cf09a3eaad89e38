package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
)

const rails = `
job: rails
fabrics:
  Kelp: {form: yardage, width: 40}
block: {make: plain square, square: 5, print: Kelp}
colourways: {tide: {blocks: 10}}
layout: {across: 5, down: 2, order: rows}
`

// Hand-worked: 10 squares of 5 in; 5 in off the bolt give 8, a piece of 5 × 10 two
// more. A scrap that holds none is no fault.
func TestPiecesMakeBlocksToo(t *testing.T) {
	a := ask(t, rails)
	a.Have = map[string]Have{"Kelp": {Lengths: []measure.Length{inches(t, "5")}}}
	assert.Equal(t, 8, answer(t, a).Colourways[0].Makes)
	a.Have["Kelp"] = Have{Lengths: []measure.Length{inches(t, "5")}, Sheets: []HaveSheets{{inchSize(t, "4", "30"), 2}, {inchSize(t, "5", "10"), 1}}}
	e := answer(t, a)
	assert.Equal(t, 10, e.Colourways[0].Makes)
	assert.True(t, e.Fits)
}

// However it is asked for, a sheet does not give fewer than when it is cut by itself.
func TestASheetGivesWhatItGivesByItself(t *testing.T) {
	plan, err := Make(ask(t, rails).Plan.Job, Prior{})
	require.NoError(t, err)
	f := Fabric{Name: "Kelp", Form: FatQuarter, Size: inchSize(t, "18", "21")}
	for _, side := range []string{"2 1/2", "3", "4 1/4", "5", "6 1/2"} {
		one := []PieceCount{{Size: squareOf(inches(t, side)), Count: 1}}
		n, err := setsFrom(plan.Job, f, one, Have{Sheets: []HaveSheets{{f.Size, 3}}})
		require.NoError(t, err)
		assert.GreaterOrEqual(t, n, 3*mostOfOne(plan.Job, f, one, f.Size))
		assert.Positive(t, mostOfOne(plan.Job, f, one, f.Size))
	}
}
