package render

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func sheetWith(t *testing.T, job planner.Job, swaps ...planner.Swap) string {
	t.Helper()
	plan, err := planner.Make(job, planner.Prior{Amend: planner.Amendments{Swaps: swaps}})
	require.NoError(t, err)
	return shownBy(t, func(w *bytes.Buffer) error { return Sheet(w, plan, looks["pipe"]) })
}

// Two blocks of one colourway that changed places in the second quilt would be missed
// where its map is left out for being like the first one's.
func TestASwapInALaterQuiltIsOnTheMap(t *testing.T) {
	job := example(t, "harbour-pair").Job
	assert.Contains(t, sheetWith(t, job), "Quilt 2  the same places")
	swapped := sheetWith(t, job, planner.Swap{A: "float-35", B: "float-40"})
	assert.NotContains(t, swapped, "the same places")
	assert.Contains(t, swapped, "float-35 and float-40 have changed places on the floor; the map shows them so.")
}

// Scattered blocks are not numbered along the rows: every quilt has its map.
func TestEveryScatteredQuiltHasItsMap(t *testing.T) {
	job := example(t, "estuary-lap").Job
	job.Layout.Order, job.Quantity = planner.Scatter, 2
	assert.NotContains(t, sheetWith(t, job), "the same places")
}
