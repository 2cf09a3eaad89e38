package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// A log with measures and an amended seam, as the program of their day wrote it.
func TestMeasuresAreReadAsTheyWereWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "measured.store"))
	events := must(s.Events("cove-mat"))
	var kinds []tracker.Kind
	for _, ev := range events {
		kinds = append(kinds, ev.Kind)
	}
	require.Equal(t, []tracker.Kind{tracker.Booked, tracker.Measured, tracker.Measured, tracker.Amended, tracker.Revised}, kinds)

	strips, small, amended, forgotten := events[1].Measure, events[2].Measure, events[3], events[4]
	require.NotNil(t, strips)
	assert.Equal(t, "Maren", events[1].By)
	assert.Equal(t, []string{"three-strips", "seam-test", "window", "in"}, []string{strips.Step, strips.Operation, strips.Machine, strips.Unit})
	assert.Equal(t, measure.Inch*7/2, strips.Should.Width)
	assert.Equal(t, measure.Inch*27/8, strips.Sizes[0].Size.Width)
	assert.Equal(t, measure.Inch*9/32, strips.Seam)
	assert.Equal(t, measure.Inch/4, strips.Planned)
	assert.Equal(t, 2.0, strips.Seams)
	require.NotNil(t, small)
	assert.Equal(t, "after the recut", events[2].Reason)
	assert.Equal(t, []string{"tide-01"}, small.Sizes[0].Blocks)
	assert.Equal(t, []string{"tide", "dune"}, small.Colourways)

	require.NotNil(t, amended.Amendment)
	assert.Equal(t, measure.Inch*17/64, amended.Amendment.Seam)
	assert.True(t, amended.Measure.Moved)
	require.NotNil(t, amended.Ledger)
	assert.Equal(t, 2, amended.Ledger.Revision)
	assert.Equal(t, &tracker.Amendment{FileSeam: true}, forgotten.Amendment)

	then := must(tracker.Fold(events[:4]))
	assert.Equal(t, measure.Inch*17/64, then.Prior().Amend.Seam)
	assert.Equal(t, events[0].File, then.File, "an amendment keeps the job file")
	now := must(tracker.Fold(events))
	assert.Zero(t, now.Prior().Amend.Seam)
	assert.Len(t, now.Measurements(), 3)
}
