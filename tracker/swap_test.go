package tracker

import (
	"encoding/json"
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

func swapped(t require.TestingT, s State, one, other, id string) State {
	ev, err := s.Swap(one, other, id, monday, "Maren")
	require.NoError(t, err)
	return after(t, s, ev)
}

// spots is where a job's live blocks lie, by their ids.
func spots(s State) map[string]planner.Spot {
	at := map[string]planner.Spot{}
	for _, b := range s.Ledger.Blocks {
		if !b.Retired {
			at[b.ID] = planner.Spot{Quilt: b.Quilt, Row: b.Row, Column: b.Column}
		}
	}
	return at
}

func turnOf(s State, id string) int {
	i := slices.IndexFunc(s.Ledger.Blocks, func(b Block) bool { return b.ID == id })
	return s.Ledger.Blocks[i].Turn
}

func TestSwappedBlocksLieInEachOthersPlaces(t *testing.T) {
	l := Freeze(reedbedPlan(t, 5, 3, planner.Prior{}))
	l.Blocks[0].Turn = 180
	s := book(t, l)
	a, b := l.Blocks[0].ID, l.Blocks[7].ID
	was := spots(s)
	s = swapped(t, s, a, b, "e2")
	is := spots(s)
	assert.Equal(t, [2]planner.Spot{was[b], was[a]}, [2]planner.Spot{is[a], is[b]})
	assert.Equal(t, [2]int{0, 180}, [2]int{turnOf(s, a), turnOf(s, b)}, "the turn belongs to the place")
	assert.Equal(t, b, s.Ledger.Blocks[0].ID, "blocks come by place")
	assert.Equal(t, l.Blocks, s.Dealt().Blocks, "and are kept where they were planned")
	assert.Equal(t, []planner.Swap{{A: a, B: b}}, s.Amendments().Swaps)

	s = undone(t, s, "", "e3")
	assert.Equal(t, was, spots(s))
	assert.Empty(t, s.Amendments().Swaps)
}

func TestWhatCannotChangePlaces(t *testing.T) {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	s = revise(t, s, Refreeze(s.Dealt(), reedbedPlan(t, 2, 2, s.Prior())))
	for _, c := range []struct {
		one, other, want string
		kind             RefusalKind
	}{
		{"tide-1", "tide-01", "block tide-01 cannot change places with itself", Ambiguous},
		{"tide-01", "tyde-2", `there is no block "tyde-2"; there is tide-02`, UnknownBlock},
		{"tide-05", "tide-01", "block tide-05 is no longer in the job: it was revised without it", UnknownBlock},
	} {
		_, err := s.Swap(c.one, c.other, "x", monday, "Maren")
		r := asRefusal(t, err)
		assert.Equal(t, c.kind, r.Kind)
		assert.Equal(t, c.want, r.What)
	}
}

func TestTheSameSwapSentTwiceCountsOnce(t *testing.T) {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	s = swapped(t, s, "tide-01", "dune-01", "e2")
	ev, err := s.Swap("tide-1", "dune-1", "e2", monday, "Maren")
	require.NoError(t, err)
	assert.Equal(t, uint64(2), ev.Seq, "the stored one")
	_, err = s.Swap("tide-01", "dune-02", "e2", monday, "Maren")
	assert.Equal(t, IDTaken, asRefusal(t, err).Kind)
}

// A swap outlasts a revision, and is over when one of its blocks is retired.
func TestARevisionKeepsSwapsOfBlocksThatStay(t *testing.T) {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	s = swapped(t, s, "tide-01", "dune-02", "e2")
	s = swapped(t, s, "tide-05", "dune-01", "e3")
	plan := reedbedPlan(t, 2, 2, s.Prior())
	s = revise(t, s, Refreeze(s.Dealt(), plan))
	assert.Equal(t, []planner.Swap{{A: "tide-01", B: "dune-02"}}, s.Amendments().Swaps)
	dealt := spots(book(t, s.Dealt()))
	assert.Equal(t, dealt["dune-02"], spots(s)["tide-01"])
	assert.Equal(t, dealt["dune-01"], spots(s)["dune-01"], "the other lies as it was planned")
	for _, b := range plan.Blocks {
		assert.Equal(t, b.Spot(), spots(s)[b.ID], "the plan shows what the ledger does: %s", b.ID)
	}
	assert.Contains(t, fmt.Sprint(plan.Warnings), "tide-05 is no longer in the job")
	s = undone(t, s, "e2", "e5")
	assert.Equal(t, dealt, spots(s), "and it can be taken back after it")
}

// Whatever changes places, is taken back and planned anew: every block of the plan
// lies in one place of its tops, and no place is empty.
func TestSwappingNeverLosesABlock(t *testing.T) {
	sizes := [][2]int{{5, 3}, {8, 4}, {2, 2}}
	rapid.Check(t, func(rt *rapid.T) {
		s := book(rt, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
		plan := planner.Plan{}
		for n := range rapid.IntRange(1, 12).Draw(rt, "steps") {
			id := fmt.Sprint("step-", n)
			switch rapid.IntRange(0, 4).Draw(rt, "step") {
			case 0:
				size := rapid.SampledFrom(sizes).Draw(rt, "size")
				plan = reedbedPlan(t, size[0], size[1], s.Prior())
				s = revise(rt, s, Refreeze(s.Dealt(), plan))
			case 1:
				if ev, err := s.Undo(entryOf(rt, s), id, monday, "Maren"); err == nil {
					s = after(rt, s, ev)
				}
			default:
				live := rapid.SampledFrom(liveIDs(s))
				if one, other := live.Draw(rt, "one"), live.Draw(rt, "other"); one != other {
					s = swapped(rt, s, one, other, id)
				}
			}
			soundTop(rt, s)
		}
		again := reedbedPlanLike(t, s)
		require.Equal(rt, len(spots(s)), len(again.Blocks))
		for _, b := range again.Blocks {
			require.Equal(rt, b.Spot(), spots(s)[b.ID], "the plan shows what the ledger does")
		}
	})
}

// entryOf draws an entry to be taken back, or none for the newest.
func entryOf(t *rapid.T, s State) string {
	if len(s.Entries) == 0 {
		return ""
	}
	return rapid.SampledFrom(s.Entries).Draw(t, "entry").ID
}

func liveIDs(s State) []string {
	var ids []string
	for _, b := range s.Ledger.Blocks {
		if !b.Retired {
			ids = append(ids, b.ID)
		}
	}
	return ids
}

// soundTop checks that the blocks that are planned fill the places that are planned.
func soundTop(t *rapid.T, s State) {
	dealt, lie := map[planner.Spot]bool{}, map[planner.Spot]string{}
	ids := map[string]bool{}
	for _, b := range s.Dealt().Blocks {
		if !b.Retired {
			dealt[planner.Spot{Quilt: b.Quilt, Row: b.Row, Column: b.Column}] = true
			ids[b.ID] = true
		}
	}
	for id, at := range spots(s) {
		require.Empty(t, lie[at], "two blocks in one place")
		require.True(t, dealt[at] && ids[id], "%s lies nowhere in the top", id)
		lie[at] = id
	}
	require.Len(t, lie, len(dealt))
	require.Equal(t, len(s.Dealt().Blocks), len(s.Ledger.Blocks), "retired ones stay on record")
}

// reedbedPlanLike plans the job anew in the size that it has.
func reedbedPlanLike(t *testing.T, s State) planner.Plan {
	tide := s.Blocks(Lot{planner.ColourwayLot, "tide"}) / 2
	return reedbedPlan(t, tide, (tide+4)/3, s.Prior())
}

// What a swap looks like in the log: nothing of it may change.
func TestASwapIsReadAsItWasWritten(t *testing.T) {
	var ev Event
	require.NoError(t, json.Unmarshal([]byte(`{"schema":1,"id":"moved","seq":2,"at":"2026-11-25T19:30:00+01:00",
		"by":"Maren","kind":"amend","revision":1,"amendment":{"swap":{"a":"tide-01","b":"dune-02"}}}`), &ev))
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	s = after(t, s, ev)
	assert.Equal(t, spots(book(t, s.Dealt()))["dune-02"], spots(s)["tide-01"])
}

func TestASwapThatNobodyCanHaveMadeIsDamage(t *testing.T) {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	for _, swap := range []planner.Swap{{A: "tide-01", B: "ghost-01"}, {A: "tide-01", B: "tide-01"}} {
		ev := s.event(Amended, "x", monday, "Maren")
		ev.Seq, ev.Amendment = 2, &Amendment{Swap: &swap}
		_, err := s.With(ev)
		assert.ErrorContains(t, err, "not one that quiltrun wrote")
	}
}
