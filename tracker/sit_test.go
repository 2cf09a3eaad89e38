package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestSittingDownGoesOnWhereWorkWas(t *testing.T) {
	s := book(t, estuary())
	sat := func(operation string, lot *Lot) (string, string) {
		row, err := s.SitDown(operation, lot)
		require.NoError(t, err)
		return row.Key, row.Lot.Name
	}
	check := func(key, lot string, operation string, named *Lot) {
		t.Helper()
		gotKey, gotLot := sat(operation, named)
		assert.Equal(t, [2]string{key, lot}, [2]string{gotKey, gotLot})
	}
	check("prepare", "Kelp", "", nil)
	check("sew-pairs", "dune", "sew-pairs", &Lot{Name: "Dune"})
	check("sew-pairs", "tide", "sew-p", nil)

	s = accepted(t, s, LogRequest{Operation: "sew-pairs", Counts: []CountAsked{{Lot: "dune", Number: 2}}, CatchUp: true, ID: "a", At: monday})
	check("sew-pairs", "tide", "sew-pairs", &tide)
	// Both pairs of dune-01 are sewn, and no other block of dune has its kit: the
	// next row that can go on is their pressing. Hand-worked.
	check("press-pairs", "dune", "", nil)
	check("press-pairs", "dune", "", &dune)
}

func TestSittingDownToWhatIsDoneIsRefused(t *testing.T) {
	s := logged(t, book(t, estuary()), "prepare", "Kelp=1")
	_, err := s.SitDown("prepare", &kelp)
	assert.Equal(t, "nothing is left of 10 prepare of Kelp", asRefusal(t, err).What)
	_, err = s.SitDown("juggle", nil)
	assert.Equal(t, UnknownOperation, asRefusal(t, err).Kind)
	_, err = s.SitDown("sew-pairs", &Lot{Name: "kelp forest"})
	assert.Equal(t, UnknownLot, asRefusal(t, err).Kind)
	_, err = State{}.SitDown("", nil)
	assert.Equal(t, UnknownJob, asRefusal(t, err).Kind)
}

func TestABobbinLastsFromWhenItWentIn(t *testing.T) {
	s := logged(t, book(t, estuary()), "prepare", "Kelp=1")
	_, known := s.SinceBobbin()
	assert.False(t, known)

	ev, err := s.NewBobbin("bobbin", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, Bobbin, ev.Kind)
	s = after(t, s, ev)
	parts, known := s.SinceBobbin()
	assert.True(t, known)
	assert.Empty(t, parts)

	s = accepted(t, s, LogRequest{Operation: "sew-pairs", Counts: []CountAsked{{Lot: "tide", Number: 3}}, CatchUp: true, ID: "c", At: monday})
	parts, _ = s.SinceBobbin()
	require.Len(t, parts, 1, "what was logged along was sewn nobody knows when")
	assert.Equal(t, 3, parts[0].Count)

	undo, err := s.Undo("c", "d", monday, "Runa")
	require.NoError(t, err)
	s = after(t, s, undo)
	parts, _ = s.SinceBobbin()
	assert.Empty(t, parts, "what was taken back was not sewn")

	again, err := s.NewBobbin("bobbin", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, uint64(3), again.Seq, "sent twice it is one")
	gone, err := s.Undo("bobbin", "e", monday, "Runa")
	require.NoError(t, err)
	_, known = after(t, s, gone).SinceBobbin()
	assert.False(t, known, "a slip of the finger went in no machine")
}
