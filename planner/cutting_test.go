package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// styles are the ways of cutting.
var styles = []cloth.Style{cloth.Simple, cloth.Nested}

// pieceCounts is how many pieces of each want a plan lays.
func pieceCounts(need FabricNeed, plan cloth.Plan) []int {
	counts := make([]int, len(need.Pieces))
	for _, c := range plan.Cloths {
		for _, p := range c.Pieces {
			counts[p.Want]++
		}
	}
	return counts
}

// The sheet says what strips of each size take; a plan for all sizes together
// is there to save some of it, and must never ask for more than was bought.
func TestCuttingTakesNoMoreThanTheSheetSays(t *testing.T) {
	for name, job := range examples(t) {
		plan, err := Make(job, Prior{})
		require.NoError(t, err)
		for _, need := range plan.Fabrics {
			for _, style := range styles {
				t.Run(name+" "+need.Fabric.Name+" "+string(style), func(t *testing.T) {
					cut, err := CutPlan(job, need, style)
					require.NoError(t, err)
					assert.LessOrEqual(t, cut.Length, need.Plain)
					assert.LessOrEqual(t, cut.Sheets, need.PlainSheets)
					assert.GreaterOrEqual(t, cut.Length, cut.Bound)
					assert.GreaterOrEqual(t, cut.Sheets, cut.SheetBound)
					assert.Empty(t, cut.Missing)
					for i, n := range pieceCounts(need, cut) {
						assert.Equal(t, need.Pieces[i].Count, n, "piece %d", i)
					}
				})
			}
		}
	}
}

// Hand-worked: 42 in hold six squares of 7 in, and twelve are two strips of 7 in,
// which have not an inch to spare.
func TestSquaresThatFillTheirStripsAreCutAtTheBound(t *testing.T) {
	need := FabricNeed{
		Fabric: Fabric{Name: "Foam", Form: Yardage, Width: 42 * measure.Inch},
		Pieces: []PieceCount{{Size: squareOf(7 * measure.Inch), Count: 12, For: forBlocks}},
	}
	for _, style := range styles {
		cut, err := CutPlan(Job{}, need, style)
		require.NoError(t, err)
		assert.Equal(t, 14*measure.Inch, cut.Length)
		assert.Equal(t, 14*measure.Inch, cut.Bound)
		assert.Empty(t, cut.Cloths[0].Offcuts)
		assert.True(t, cut.Best())
	}
}

// A print with a direction is neither turned nor stacked.
func TestAPrintWithADirectionIsCutInOneLayer(t *testing.T) {
	need := FabricNeed{
		Fabric: Fabric{Name: "Terns", Form: Yardage, Width: 42 * measure.Inch, Directional: true},
		Pieces: []PieceCount{{Size: inchSize(t, "5", "9"), Count: 20}},
	}
	cut, err := CutPlan(Job{}, need, cloth.Nested)
	require.NoError(t, err)
	for _, s := range cut.Steps {
		assert.Equal(t, 1, s.Layers)
	}
	for _, p := range cut.Cloths[0].Pieces {
		assert.False(t, p.Turned)
	}
}

func TestPreCutSquaresOfTheRightSizeHaveNoStep(t *testing.T) {
	size := squareOf(5 * measure.Inch)
	need := FabricNeed{Fabric: Fabric{Name: "Buoy", Form: PreCutSquares, Size: size}, Pieces: []PieceCount{{Size: size, Count: 9}}}
	cut, err := CutPlan(Job{}, need, cloth.Simple)
	require.NoError(t, err)
	assert.Empty(t, cut.Steps)
	assert.Equal(t, 9, cut.Sheets)
}

func TestAFabricWithoutPiecesHasAnEmptyPlan(t *testing.T) {
	for _, f := range []Fabric{{Form: Yardage, Width: measure.Yard}, {Form: FatQuarter, Size: inchSize(t, "18", "21")}} {
		cut, err := CutPlan(Job{}, FabricNeed{Fabric: f}, cloth.Simple)
		require.NoError(t, err)
		assert.Empty(t, cut.Steps)
		assert.Zero(t, cut.Length)
		assert.Zero(t, cut.Sheets)
	}
}

func TestAPieceThatNoClothHoldsIsTooLarge(t *testing.T) {
	need := FabricNeed{
		Fabric: Fabric{Name: "Foam", Form: Yardage, Width: 42 * measure.Inch},
		Pieces: []PieceCount{{Size: squareOf(43 * measure.Inch), Count: 1}},
	}
	_, err := CutPlan(Job{}, need, cloth.Simple)
	var large *cloth.TooLarge
	assert.ErrorAs(t, err, &large)
}
