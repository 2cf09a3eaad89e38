package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// undone is the state after taking back an entry, which has to be accepted.
func undone(t require.TestingT, s State, entry, id string) State {
	ev, err := s.Undo(entry, id, monday, "Runa")
	require.NoError(t, err)
	return after(t, s, ev)
}

func TestUndoTakesBackTheNewestEntryThatStands(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4")
	s = logged(t, s, "sew-pairs", "tide=6")
	ev, err := s.Undo("", "u1", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, Event{Schema: 1, ID: "u1", At: monday, By: "Runa", Kind: Undone, Revision: 1, Target: "e6"}, ev)
	s = after(t, s, ev)
	assert.Equal(t, 4, s.Done("sew-pairs", tide))
	s = undone(t, s, "", "u2")
	assert.Equal(t, 0, s.Done("sew-pairs", tide))
	assert.Len(t, s.Entries, 5, "what was taken back stays on record")
	assert.Equal(t, "u2", s.Entries[3].UndoneBy)
	assert.False(t, s.Entries[3].Standing())
	assert.True(t, s.Entries[2].Standing())
}

// What is older than a revision is taken back only by its name: whoever types
// undo after a revision means the revision.
func TestUndoRightAfterARevisionIsRefused(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4") // e5
	s = revise(t, s, estuary())
	refusedFor := func(s State) {
		_, err := s.Undo("", "u1", monday, "Runa")
		assert.Equal(t, said{Kind: NothingToUndo, What: "the newest entry is a revision (entry 6 of 9 Nov)"}, whatIsSaid(asRefusal(t, err)))
		assert.Equal(t, "revise with the former file to go back, or name the entry to take back with --entry", asRefusal(t, err).Hint)
	}
	refusedFor(s)
	ev, err := s.Undo("e5", "u1", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, "e5", ev.Target)

	s = logged(t, s, "sew-pairs", "dune=1")
	s = undone(t, s, "", "u2")
	refusedFor(s)
}

func TestAnyEntryCanBeTakenBackWhileNothingRestsOnIt(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4") // e5
	s = logged(t, s, "sew-pairs", "dune=8")
	for _, entry := range []string{"e5", "5", "#5"} {
		ev, err := s.Undo(entry, "u1", monday, "Runa")
		require.NoError(t, err, entry)
		assert.Equal(t, "e5", ev.Target, entry)
	}
	s = undone(t, s, "e5", "u1")
	assert.Equal(t, 0, s.Done("sew-pairs", tide))
	assert.Equal(t, 8, s.Done("sew-pairs", dune))
}

func TestTheBeginningOfAnIDIsEnoughWhereItIsTheOnlyOne(t *testing.T) {
	s := cutAndKitted(t)
	for _, id := range []string{"0190-aa", "0190-ab"} {
		r := request(t, s, "sew-pairs", "tide=1")
		r.ID = id
		s = accepted(t, s, r)
	}
	ev, err := s.Undo("0190-aa", "u1", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, "0190-aa", ev.Target)
	_, err = s.Undo("0190-a", "u1", monday, "Runa")
	r := asRefusal(t, err)
	assert.Equal(t, Ambiguous, r.Kind)
	assert.Equal(t, `"0190-a" begins the ids of 2 entries`, r.What)
	assert.Equal(t, []string{"0190-aa", "0190-ab"}, r.Near)
}

func TestWhatCannotBeUndone(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4")
	s = undone(t, s, "", "u1")
	for entry, want := range map[string]said{
		"gannet": {Kind: UnknownEntry, What: `there is no entry "gannet"`},
		"99":     {Kind: UnknownEntry, What: `there is no entry "99"`},
		"booked": {Kind: NothingToUndo, What: "a booking is not undone"},
		"1":      {Kind: NothingToUndo, What: "a booking is not undone"},
		"u1":     {Kind: NothingToUndo, What: "an undo is not undone"},
		"e5":     {Kind: NothingToUndo, What: "entry 5 (4 of tide in 50 sew-pairs) is taken back already"},
	} {
		_, err := s.Undo(entry, "u2", monday, "Runa")
		assert.Equal(t, want, whatIsSaid(asRefusal(t, err)), entry)
	}
	_, err := book(t, estuary()).Undo("", "u1", monday, "Runa")
	assert.EqualError(t, err, "nothing to undo: nothing is logged yet")

	s = logged(t, book(t, estuary()), "prepare", "Kelp=1")
	_, err = undone(t, s, "", "u1").Undo("", "u2", monday, "Runa")
	assert.EqualError(t, err, "nothing to undo: every entry is taken back already")
}

func TestAnEntryThatLaterWorkRestsOnIsNotTakenBackAlone(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=12")     // e5
	s = logged(t, s, "sew-pairs", "dune=8")                     // e6, which rests on nothing of it
	s = logged(t, s, "press-pairs", "tide=8")                   // e7
	s = logged(t, s, "press-pairs..sew-units", "dune=2 blocks") // e8
	s = logged(t, s, "sew-units", "tide=4")                     // e9
	_, err := s.Undo("e5", "u1", monday, "Runa")
	r := asRefusal(t, err)
	assert.Equal(t, said{Kind: BuiltOn, What: "other work rests on entry 5 (12 of tide in 50 sew-pairs): " +
		"undo first entry 9 (4 of tide in 70 sew-units) and entry 7 (8 of tide in 60 press-pairs)"}, whatIsSaid(r))
	assert.Equal(t, []string{"e9", "e7"}, r.Near, "in the order in which they can be undone")

	for i, entry := range append(r.Near, "e5") {
		s = undone(t, s, entry, "u"+string(rune('1'+i)))
	}
	assert.Equal(t, 0, s.Done("sew-pairs", tide))
	assert.Equal(t, 2, s.Done("sew-units", dune))
}

func TestAnEntryIsTakenBackWhereOthersCoverWhatRestsOnIt(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4") // e5
	s = logged(t, s, "press-pairs", "tide=4")
	s = logged(t, s, "sew-pairs", "tide=4") // e7 moves down into the places of e5
	s = undone(t, s, "e5", "u1")
	assert.Equal(t, []int{2, 2, 0, 0}, firstFour(s, "sew-pairs"))
}

func TestCutPiecesThatWereKittedAreNotTakenBack(t *testing.T) {
	s := book(t, estuary())
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all") // e2
	s = logged(t, s, "cut", "Kelp=8", "Foam=8")         // e3
	s = logged(t, s, "cut", "Kelp=4", "Foam=4")         // e4
	s = logged(t, s, "kit", "tide=4")                   // e5
	_, err := s.Undo("e3", "u1", monday, "Runa")
	assert.EqualError(t, err, "other work rests on entry 3 (8 of Foam in 30 cut, and 1 more part): undo first entry 5 (4 of tide in 40 kit)")
	s = undone(t, s, "e4", "u1")
	assert.Equal(t, 8, s.Done("cut", kelp))
}

func TestALongRowOfLaterWorkIsNotListedToItsEnd(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=16")
	for range 8 {
		s = logged(t, s, "press-pairs", "tide=2")
	}
	_, err := s.Undo("e5", "u1", monday, "Runa")
	r := asRefusal(t, err)
	assert.Equal(t, []string{"e13", "e12", "e11", "e10", "e9"}, r.Near)
	assert.Equal(t, "other work rests on entry 5 (16 of tide in 50 sew-pairs): undo first entry 13 (2 of tide in 60 press-pairs), "+
		"entry 12 (2 of tide in 60 press-pairs), entry 11 (2 of tide in 60 press-pairs), entry 10 (2 of tide in 60 press-pairs), "+
		"entry 9 (2 of tide in 60 press-pairs) and more", r.What)
}

func TestUndoingARecountThatLaterWorkFilledIsRefused(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=16")
	s = recounted(t, s, Part{Operation: "sew-pairs", Lot: tide, Count: 12}) // r5, event 6
	s = logged(t, s, "sew-pairs", "tide=4")                                 // e7
	_, err := s.Undo("6", "u1", monday, "Runa")
	assert.EqualError(t, err, "other work rests on entry 6 (12 of tide in 50 sew-pairs): undo first entry 7 (4 of tide in 50 sew-pairs)")
	s = undone(t, s, "e7", "u1")
	s = undone(t, s, "6", "u2")
	assert.Equal(t, 16, s.Done("sew-pairs", tide))
}

func TestWhatARecountBrokeIsNoReasonToKeepAnEntry(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs..press-pairs", "tide=16")
	s = recounted(t, s, Part{Operation: "sew-pairs", Lot: tide, Count: 12})
	s = logged(t, s, "sew-pairs", "tide=4")
	s = undone(t, s, "", "u1")
	assert.Equal(t, 12, s.Done("sew-pairs", tide))
}

func TestAnEntryIsTakenBackWhereARevisionLeftTooMuch(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=10") // e5
	s = logged(t, s, "sew-pairs", "tide=4")                 // e6
	s = revise(t, s, madeLedger(1, colourwayRun{"tide", 4}, colourwayRun{"dune", 4}))
	s = undone(t, s, "e6", "u1")
	row, _ := s.Row("sew-pairs", tide)
	assert.Equal(t, []int{8, 2}, []int{row.Done, row.Spare})
}

func TestAnEntryIsNotToBeUndoneBeforeItself(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4") // e5
	s = logged(t, s, "press-pairs", "tide=4")              // e6
	s = recounted(t, s, Part{Operation: "sew-pairs", Lot: tide, Count: 16}, Part{Operation: "press-pairs", Lot: tide, Count: 4})
	s = undone(t, s, "e5", "u1")
	_, err := s.Undo("7", "u2", monday, "Runa")
	assert.EqualError(t, err, "other work rests on entry 7 (4 of tide in 60 press-pairs, and 1 more part): undo first entry 6 (4 of tide in 60 press-pairs)")
}

func TestLoggingTheSameAgainAfterAnUndoRestoresIt(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=5")
	before := s.Rows()
	s = undone(t, s, "", "u1")
	s = logged(t, s, "sew-pairs", "tide=5")
	assert.Equal(t, before, s.Rows())
}

func TestTheSameIDTwiceCountsOnce(t *testing.T) {
	s := cutAndKitted(t)
	r := request(t, s, "sew-pairs", "tide=12")
	s = accepted(t, s, r)
	s = logged(t, s, "press-pairs", "tide=12") // meanwhile the work goes on
	first, ok := s.Repeated(r.ID)
	require.True(t, ok)

	r.At = monday.AddDate(0, 0, 1)
	again, err := s.Log(r)
	require.NoError(t, err)
	assert.Equal(t, first, again, "the stored event, number and all")
	assert.Equal(t, uint64(5), again.Seq)

	other := r
	other.Counts = []CountAsked{{Lot: "tide", Number: 13}}
	_, err = s.Log(other)
	refusal := asRefusal(t, err)
	assert.Equal(t, IDTaken, refusal.Kind)
	assert.Equal(t, `the id "e5" was used for another entry (event 5)`, refusal.What)
	for name, change := range map[string]func(*LogRequest){
		"reason":   func(r *LogRequest) { r.Reason = "found under the table" },
		"catch-up": func(r *LogRequest) { r.CatchUp = true },
	} {
		other := r
		change(&other)
		assert.Equal(t, IDTaken, refused(t, s, other).Kind, name)
	}
	_, err = s.Undo("", r.ID, monday, "Runa")
	assert.Equal(t, IDTaken, asRefusal(t, err).Kind)
	r.ID = "booked"
	assert.Equal(t, IDTaken, refused(t, s, r).Kind)
	_, ok = s.Repeated("never sent")
	assert.False(t, ok)
}

func TestAnUndoThatIsSentTwiceTakesOneEntryBack(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4")
	s = logged(t, s, "sew-pairs", "tide=6")
	s = undone(t, s, "", "u1")
	again, err := s.Undo("", "u1", monday, "Runa")
	require.NoError(t, err)
	assert.Equal(t, "e6", again.Target)
	assert.NotZero(t, again.Seq)
	_, err = s.Undo("e5", "u1", monday, "Runa")
	assert.Equal(t, IDTaken, asRefusal(t, err).Kind, "not another one")
}

func TestAnIDStaysUsedAfterAnUndo(t *testing.T) {
	s := cutAndKitted(t)
	r := request(t, s, "sew-pairs", "tide=4")
	s = undone(t, accepted(t, s, r), "", "u1")
	again, err := s.Log(r)
	require.NoError(t, err)
	assert.NotZero(t, again.Seq)
	assert.Equal(t, 0, s.Done("sew-pairs", tide))
}

// The tested block tide-01 covers for what two later entries took: without it each
// of the two stands on what the other made. Neither can go first, and the maker is
// told so, not sent in a circle.
func TestEntriesThatRestOnEachOtherAreNotToBeUndoneInTurn(t *testing.T) {
	s := book(t, smallJob())
	catchUp := func(operation, count string, blocks ...string) {
		s = accepted(t, s, atBlocks(caughtUp(request(t, s, operation, count)), blocks...))
	}
	catchUp("prepare", "Kelp=1")                  // e2
	catchUp("kit", "1", "tide-01")                // e3
	catchUp("test", "tide=1")                     // e4
	catchUp("sew-block-column-3", "1", "tide-02") // e5
	catchUp("sew-block-column-3", "tide=4")       // e6
	s = undone(t, s, "e4", "u1")
	for entry, near := range map[string][]string{"e2": {"e5", "e6", "e3"}, "e5": {"e6"}, "e6": {"e5"}} {
		_, err := s.Undo(entry, "u2", monday, "Runa")
		r := asRefusal(t, err)
		assert.Equal(t, near, r.Near, entry)
		assert.Equal(t, "set each operation to what lies on the table with recount", r.Hint, entry)
	}
	_, err := s.Undo("e5", "u2", monday, "Runa")
	assert.EqualError(t, err, "other work rests on entry 5 (1 of tide in 90 sew-block-column-3, and 7 more parts), "+
		"and none of it can be taken back first: entry 6 (4 of tide in 90 sew-block-column-3, and 7 more parts)")
}
