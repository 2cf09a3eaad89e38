package tracker

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

// remarked is the state after a note or a parking that has to be accepted.
func remarked(t require.TestingT, s State, kind Kind, text, id string) State {
	ev, err := s.remark(kind, text, id, monday, "Runa")
	require.NoError(t, err)
	return after(t, s, ev)
}

func TestAJobIsParkedUntilItIsWorkedOnAgain(t *testing.T) {
	s := remarked(t, cutAndKitted(t), Parked, " blue box 3; row 4 half joined ", "p1")
	parked, ok := s.Parked()
	require.True(t, ok)
	assert.Equal(t, "blue box 3; row 4 half joined", parked.Reason)
	_, ok = remarked(t, s, Noted, "a new needle is in", "n1").Parked()
	assert.True(t, ok, "a note is no work")

	worked := logged(t, s, "sew-pairs", "tide=2")
	_, ok = worked.Parked()
	assert.False(t, ok)
	_, ok = undone(t, worked, "", "u1").Parked()
	assert.True(t, ok, "work that was taken back never was")

	_, ok = remarked(t, s, Parked, "", "p2").Parked()
	assert.False(t, ok)
}

func TestRemarksCountNothing(t *testing.T) {
	s := cutAndKitted(t)
	with := remarked(t, remarked(t, s, Noted, "rain", "n1"), Parked, "box", "p1")
	assert.Equal(t, s.Rows(), with.Rows())
	assert.Equal(t, s.Entries, with.Entries)
	assert.Equal(t, NothingToUndo, asRefusal(t, undoing(with, "p1")).Kind)
}

// undoing is the refusal to take an event back.
func undoing(s State, entry string) error {
	_, err := s.Undo(entry, "u", monday, "Runa")
	return err
}

func TestRemarksWithoutWordsAreRefused(t *testing.T) {
	s := cutAndKitted(t)
	_, err := s.Note(" ", "n1", monday, "Runa")
	assert.EqualError(t, err, "the note is empty")
	_, err = s.Park("", "p1", monday, "Runa")
	assert.EqualError(t, err, "nothing of estuary-lap is parked")
}

func TestARemarkSentAgainCountsOnce(t *testing.T) {
	s := remarked(t, cutAndKitted(t), Noted, "a new needle is in", "n1")
	stored, err := s.Note("a new needle is in", "n1", monday, "Runa")
	require.NoError(t, err)
	assert.NotZero(t, stored.Seq)
	_, err = s.Note("something else", "n1", monday, "Runa")
	assert.Equal(t, IDTaken, asRefusal(t, err).Kind)
}

// idsOf is the events of a history.
func idsOf(told []Told) (ids []string) {
	for _, t := range told {
		ids = append(ids, t.ID)
	}
	return ids
}

func TestAHistoryTellsWhatWasTakenBackAndByWhat(t *testing.T) {
	s := undone(t, logged(t, cutAndKitted(t), "sew-pairs", "tide=2"), "", "oops")
	told, err := s.History(HistoryRequest{})
	require.NoError(t, err)
	require.Len(t, told, 6)
	assert.Equal(t, "oops", told[4].UndoneBy.ID)
	assert.Equal(t, told[4].ID, told[5].Of.ID)
	assert.Nil(t, told[3].UndoneBy)
}

func TestAHistoryIsNarrowedDown(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4", "dune=2") // e5
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "2"), "tide-05"))
	s = undone(t, s, "", "oops")
	for _, c := range []struct {
		name string
		r    HistoryRequest
		want []string
	}{
		{"by operation, what took it back too", HistoryRequest{Operation: "sew-p"}, []string{"e5", "e6", "oops"}},
		{"by lot", HistoryRequest{Operation: "50", Lot: &dune}, []string{"e5"}},
		{"by block, named or not", HistoryRequest{Block: "tide-2"}, []string{"e4", "e5"}},
		{"by block, taken back where it is named", HistoryRequest{Block: "tide-05"}, []string{"e4", "e6", "oops"}},
		{"to a day", HistoryRequest{To: planner.Date{Year: 2026, Month: 11, Day: 8}}, nil},
		{"from a day", HistoryRequest{From: planner.Date{Year: 2026, Month: 11, Day: 9}, Lot: &kelp}, []string{"e2", "e3"}},
	} {
		told, err := s.History(c.r)
		require.NoError(t, err, c.name)
		assert.Equal(t, c.want, idsOf(told), c.name)
	}
	_, err := s.History(HistoryRequest{Lot: &Lot{Kind: planner.ColourwayLot, Name: "tied"}})
	assert.EqualError(t, err, `there is no colourway "tied"; there is tide`)
	_, err = s.History(HistoryRequest{Block: "tide-99"})
	assert.Equal(t, UnknownBlock, asRefusal(t, err).Kind)
}

func TestBlocksSayWhichOperationTheyWaitFor(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=3")
	stands := s.BlockStands()
	require.Len(t, stands, 12)
	assert.Equal(t, []string{"tide-01", "press-pairs"}, []string{stands[0].ID, stands[0].Waits.Key})
	assert.Equal(t, []string{"tide-02", "sew-pairs"}, []string{stands[1].ID, stands[1].Waits.Key})
	assert.Equal(t, 1, stands[1].Done)
	assert.Equal(t, 12, s.InHand(Lot{}), "kitted is begun")
	assert.Equal(t, 8, s.InHand(tide))
	assert.Equal(t, 0, s.InHand(kelp))

	done := accepted(t, s, caughtUp(request(t, s, "square-up", "tide=1")))
	assert.True(t, done.BlockStands()[0].Made)
	assert.Nil(t, done.BlockStands()[0].Waits)
	assert.Equal(t, 7, done.InHand(tide))
}

// Notes and parkings between entries change no count, whatever the order.
func TestRemarksBetweenEntriesChangeNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plain := cutAndKitted(t)
		remarkedOn := plain
		for i := range rapid.IntRange(1, 12).Draw(t, "steps") {
			n := rapid.IntRange(1, 3).Draw(t, "count")
			key := rapid.SampledFrom([]string{"sew-pairs", "press-pairs", "sew-units"}).Draw(t, "operation")
			r := request(t, plain, key, "tide="+strconv.Itoa(n))
			r.ID = "work" + strconv.Itoa(i)
			if ev, err := plain.Log(r); err == nil {
				plain = after(t, plain, ev)
				same, err := remarkedOn.Log(r)
				require.NoError(t, err)
				remarkedOn = after(t, remarkedOn, same)
			}
			kind := rapid.SampledFrom([]Kind{Noted, Parked}).Draw(t, "kind")
			remarkedOn = remarked(t, remarkedOn, kind, "the blue box", "remark"+strconv.Itoa(i))
		}
		assert.Equal(t, plain.Rows(), remarkedOn.Rows())
		for _, row := range remarkedOn.Rows() {
			assert.Equal(t, row.Count, row.Done+row.Left())
		}
	})
}
