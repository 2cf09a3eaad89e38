package store_test

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// fixture copies a log of the given schema, as the program of its day wrote it,
// to where it may be changed. The originals are never made anew.
func fixture(t *testing.T, name string) (path string) {
	t.Helper()
	path = filepath.Join(t.TempDir(), "log.db")
	data := must(os.ReadFile(filepath.Join("..", "..", "testdata", "store", name)))
	require.NoError(t, os.WriteFile(path, data, 0o600))
	t.Cleanup(func() { checkFile(t, path) })
	return path
}

func TestALogOfSchema1IsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "schema-1.store"))
	assert.Equal(t, []string{"dune-king", "estuary-lap"}, must(s.Jobs()))

	events := must(s.Events("estuary-lap"))
	var kinds []tracker.Kind
	for i, ev := range events {
		kinds = append(kinds, ev.Kind)
		assert.Equal(t, uint64(i)+1, ev.Seq)
		assert.Equal(t, "Maren", ev.By)
	}
	require.Equal(t, []tracker.Kind{tracker.Booked, tracker.Logged, tracker.Undone, tracker.Recount}, kinds)

	booked, logged, undone, counted := events[0], events[1], events[2], events[3]
	assert.Equal(t, "job: estuary-lap\n", booked.File)
	require.NotNil(t, booked.Ledger)
	assert.Equal(t, planner.Date{Year: 2027, Month: 2, Day: 12}, booked.Ledger.Due)
	require.Len(t, booked.Ledger.Operations, 1)
	assert.Equal(t, "sew-pairs", booked.Ledger.Operations[0].Key)
	assert.Equal(t, tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}, booked.Ledger.Operations[0].Lot)
	assert.Equal(t, 16, booked.Ledger.Operations[0].Count)
	assert.Equal(t, planner.Span{Mean: 1.5, Spread: 0.4}, booked.Ledger.Operations[0].Unit)
	assert.Equal(t, []tracker.Take{{Block: "tide-01", Count: 4}}, booked.Ledger.Operations[0].After[0].Takes)
	require.Len(t, booked.Ledger.Blocks, 1)
	assert.Equal(t, []planner.RoleFabric{{Role: "print", Fabric: "Kelp"}}, booked.Ledger.Blocks[0].Fabrics)
	assert.Equal(t, "2026-11-24T14:05:00+01:00", logged.At.Format("2006-01-02T15:04:05Z07:00"))
	require.Len(t, logged.Parts, 1)
	assert.Equal(t, 12, logged.Parts[0].Count)
	assert.Equal(t, planner.Minutes(35), *logged.Parts[0].Minutes)
	assert.Equal(t, logged.ID, undone.Target)
	assert.Equal(t, "miscounted", undone.Reason)
	assert.Nil(t, counted.Parts[0].Minutes)
	assert.Equal(t, []tracker.BlockCount{{Block: "tide-03", Count: 2}}, counted.Parts[0].Blocks)

	own := must(s.MakerEvents())
	require.Len(t, own, 1)
	assert.Equal(t, []tracker.DayTime{{From: planner.Date{Year: 2026, Month: 11, Day: 2}, Day: 1, Minutes: 120}}, own[0].Week)
}

func TestALogOfSchema1IsWrittenOn(t *testing.T) {
	path := fixture(t, "schema-1.store")
	s := openToWrite(t, path)
	assert.Equal(t, uint64(5), add(t, s, "estuary-lap", entry("today")).Seq)
	assert.Equal(t, uint64(2), add(t, s, "", entry("today")).Seq)
	assert.False(t, s.WarnOnce("shared"), "the note that was given is remembered")
}

// Notes, parkings and the job in use, as the first program that had them wrote them.
func TestRemarksAreReadAsTheyWereWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "remarks.store"))
	events := must(s.Events("cove-mat"))
	require.Len(t, events, 4)
	assert.Equal(t, tracker.Event{Schema: 1, ID: "needle", Seq: 2, At: events[1].At, By: "Maren", Kind: tracker.Noted, Revision: 1, Reason: "new needle, size 80"}, events[1])
	assert.Equal(t, tracker.Parked, events[2].Kind)
	assert.Equal(t, "blue box 3; row 4 half joined", events[2].Reason)
	assert.Equal(t, tracker.Parked, events[3].Kind)
	assert.Empty(t, events[3].Reason, "taken up again")
	_, err := tracker.Fold(events)
	require.NoError(t, err)

	used, found, err := s.NewestOwn(tracker.InUse)
	require.NoError(t, err)
	require.True(t, found)
	assert.Equal(t, "cove-mat", used.Target)
	_, found, err = s.NewestOwn("steam")
	require.NoError(t, err)
	assert.False(t, found)
}
