package tracker

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// sameState compares all that a state says, whichever way it was come by.
func sameState(t require.TestingT, want, got State) {
	assert.Equal(t, want.Ledger, got.Ledger)
	assert.Equal(t, want.File, got.File)
	assert.Equal(t, want.Entries, got.Entries)
	assert.Equal(t, want.events, got.events)
	assert.Equal(t, want.board.tallies, got.board.tallies)
	assert.Equal(t, want.effort, got.effort)
	assert.Equal(t, want.timing, got.timing)
	assert.Equal(t, want.Rows(), got.Rows())
	for i, ev := range want.events {
		at, ok := got.at(ev.ID)
		assert.True(t, ok && at == i, ev.ID)
	}
}

func TestOneMoreEventIsTheFoldOfAllOfThem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := newMachine(t)
		t.Repeat(map[string]func(*rapid.T){"log": m.log, "catch up": m.catchUp, "undo": m.undo, "": func(t *rapid.T) {
			all, err := Fold(m.s.events)
			require.NoError(t, err)
			sameState(t, all, m.s)
		}})
	})
}

// Two states that go on from one do not meet, and the one stays as it was.
func TestStatesThatGoOnFromOneDoNotMeet(t *testing.T) {
	s := cutAndKitted(t)
	s = logged(t, s, "sew-pairs", "tide=2")
	before := s.Rows()
	var ends [8]State
	var all sync.WaitGroup
	for i := range ends {
		all.Go(func() {
			ends[i] = s
			for range i + 1 {
				ends[i] = logged(t, ends[i], "sew-pairs", "tide=1")
			}
		})
	}
	all.Wait()
	for i, end := range ends {
		assert.Equal(t, 3+i, end.Done("sew-pairs", tide))
		assert.Len(t, end.Entries, len(s.Entries)+i+1)
	}
	assert.Equal(t, before, s.Rows())
}

func TestAnIDIsFoundAmongTheNewestEventsAndTheListedOnes(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 500}))
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	for i := range mostUnlisted + 5 {
		ev := s.event(Logged, fmt.Sprintf("t%d", i), monday, "Runa")
		ev.Parts = []Part{{Operation: "cut", Lot: kelp, Count: 1}}
		s = after(t, s, ev)
	}
	for _, id := range []string{"booked", "t0", fmt.Sprintf("t%d", mostUnlisted+4)} {
		ev, ok := s.Repeated(id)
		assert.True(t, ok)
		assert.Equal(t, id, ev.ID)
	}
	_, ok := s.Repeated("nobody")
	assert.False(t, ok)
	_, err := s.With(Event{Schema: 1, ID: "t0", Seq: uint64(len(s.events)) + 1, Kind: Logged})
	assert.ErrorContains(t, err, `its id "t0" was used before`)
}

func TestAStateGoesOnThroughWhatOthersLogged(t *testing.T) {
	s := cutAndKitted(t)
	theirs := logged(t, logged(t, s, "sew-pairs", "tide=2"), "sew-pairs", "dune=1")
	got, err := s.Through(theirs.Events())
	require.NoError(t, err)
	sameState(t, theirs, got)

	same, err := theirs.Through(theirs.Events())
	require.NoError(t, err)
	sameState(t, theirs, same)

	// A copy from before was put back, and another hand went on with it.
	other := logged(t, cutAndKitted(t), "sew-pairs", "tide=7")
	got, err = theirs.Through(other.Events())
	require.NoError(t, err)
	assert.Equal(t, 7, got.Done("sew-pairs", tide))
}
