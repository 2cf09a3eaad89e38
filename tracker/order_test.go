package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// The sentence of the contract: 12 pressed pairs let 6 units be sewn while 20
// pairs wait. A block takes 2 pairs and 1 unit; 16 blocks are 32 pairs.
func TestTwelvePressedPairsLetSixUnitsBeSewn(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 16}))
	s = accepted(t, s, caughtUp(request(t, s, "press-pairs", "12")))
	require.Equal(t, 20, s.Left("press-pairs", tide))
	r := refused(t, s, request(t, s, "sew-units", "7"))
	assert.Equal(t, said{OutOfOrder, "tide is ready for 6 more units in 70 sew-units, not 7: 60 press-pairs has 12 of 32 pairs made, none at tide-07", 0, 16, 16}, whatIsSaid(r))
	assert.Equal(t, "log 60 press-pairs first, or catch up (--catch-up)", r.Hint)
	s = logged(t, s, "sew-units", "6")
	assert.Equal(t, 6, s.Done("sew-units", tide))
	assert.Equal(t, OutOfOrder, refused(t, s, request(t, s, "sew-units", "1")).Kind)
}

func TestAHalfPressedBlockWaits(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 16}))
	s = accepted(t, s, caughtUp(request(t, s, "press-pairs", "13")))
	r := refused(t, s, request(t, s, "sew-units", "7"))
	assert.Equal(t, "tide is ready for 6 more units in 70 sew-units, not 7: 60 press-pairs has 13 of 32 pairs made, 1 of 2 at tide-07", r.What)
}

func TestOneColourwayDoesNotWaitForAnother(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs..square-up", "dune=all")
	assert.Equal(t, 4, s.FinishedBlocks(dune))
	assert.Equal(t, 0, s.FinishedBlocks(tide))
}

// Every block takes 2 pieces of each fabric: 12 of Kelp are 6 blocks, whichever
// colourway takes them.
func TestKittingTakesFromThePoolOfCutPieces(t *testing.T) {
	s := book(t, estuary())
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=12", "Foam=all")
	r := refused(t, s, request(t, s, "kit", "tide=7"))
	assert.Equal(t, "tide is ready for 6 more blocks in 40 kit, not 7: 30 cut has 12 of 24 pieces of Kelp made, 14 needed", r.What)
	s = logged(t, s, "kit", "tide=4")
	r = refused(t, s, request(t, s, "kit", "dune=3"))
	assert.Equal(t, "dune is ready for 2 more blocks in 40 kit, not 3: 30 cut has 12 of 24 pieces of Kelp made, 14 needed", r.What)
	s = logged(t, s, "kit", "dune=2")
	r = refused(t, s, atBlocks(request(t, s, "kit", "1"), "dune-04"))
	assert.Equal(t, "dune-04 is not ready for 40 kit: 30 cut has 12 of 24 pieces of Kelp made, 14 needed", r.What)
	s = logged(t, s, "cut", "Kelp=2")
	s = accepted(t, s, atBlocks(request(t, s, "kit", "1"), "dune-04"))
	assert.Equal(t, 1, s.BlockDone("dune-04", "kit"))
}

func TestABlockThatTakesNothingOfAFabricDoesNotWaitForIt(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "kit" && o.Lot == dune { // dune is all Foam
			l.Operations[i].After = o.After[1:]
		}
	}
	s := book(t, l)
	s = logged(t, s, "prepare", "Foam=all")
	s = logged(t, s, "cut", "Foam=8")
	s = logged(t, s, "kit", "dune=4")
	assert.Equal(t, 4, s.Done("kit", dune))
}

// 12 blocks lie in the top and 6 joins sew them into rows: half the blocks laid
// out let half the joins be sewn.
func TestLotsOfAnotherSortGoOnInProportion(t *testing.T) {
	s := cutAndKitted(t)
	s = logged(t, s, "sew-pairs..square-up", "tide=3 blocks", "dune=2 blocks")
	r := refused(t, s, request(t, s, "lay-out", "6"))
	assert.Equal(t, "quilt-1 is ready for 5 more blocks in 110 lay-out-top, not 6: 100 square-up has 5 of its blocks made, 6 needed", r.What)
	s = logged(t, s, "lay-out", "5")
	r = refused(t, s, request(t, s, "sew-top-rows", "3"))
	assert.Equal(t, "quilt-1 is ready for 2 more joins in 120 sew-top-rows, not 3: 110 lay-out-top has 5 of 12 blocks made", r.What)
	s = logged(t, s, "sew-top-rows", "2")
	r = refused(t, s, request(t, s, "layer", "1"))
	assert.Equal(t, "quilt-1 is not ready for 130 layer: 120 sew-top-rows has 2 of 6 joins made", r.What)
}

func TestFabricsGoOnInProportionToo(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "prepare" && o.Lot == kelp {
			l.Operations[i].Count = 4 // four fat quarters, 6 pieces each
		}
	}
	s := logged(t, book(t, l), "prepare", "Kelp=2")
	r := refused(t, s, request(t, s, "cut", "Kelp=13"))
	assert.Equal(t, "Kelp is ready for 12 more pieces in 30 cut, not 13: 10 prepare has 2 of 4 pieces made", r.What)
}

func TestAQuiltWaitsForItsOwnBlocksOnly(t *testing.T) {
	s := book(t, madeLedger(2, colourwayRun{"tide", 4}, colourwayRun{"dune", 2}))
	s = accepted(t, s, caughtUp(request(t, s, "kit", "tide=all", "dune=all")))
	second := []string{"tide-05", "tide-06", "tide-07", "tide-08"}
	for _, key := range []string{"sew-pairs", "press-pairs", "sew-units", "sew-block-column-2", "sew-block-column-3", "square-up"} {
		s = accepted(t, s, atBlocks(request(t, s, key, "tide=all"), second...))
		s = accepted(t, s, atBlocks(request(t, s, key, "dune=all"), "dune-03", "dune-04"))
	}
	assert.Equal(t, 6, s.FinishedBlocks(quiltLot(2)))
	assert.Equal(t, 0, s.FinishedBlocks(quiltLot(1)))
	s = logged(t, s, "lay-out-top", "quilt-2=all")
	r := refused(t, s, request(t, s, "lay-out-top", "quilt-1=1"))
	assert.Equal(t, "quilt-1 is not ready for 110 lay-out-top: 100 square-up has 0 of its blocks made, 1 needed", r.What)
}

func TestTheTestWaitsForTheFirstBlockOfItsLot(t *testing.T) {
	s := cutAndKitted(t)
	r := refused(t, s, request(t, s, "test", "tide=1"))
	assert.Equal(t, "tide is not ready for 20 test: 100 square-up has 0 of 8 blocks made, none at tide-01", r.What)
	for _, key := range []string{"sew-pairs", "press-pairs", "sew-units", "sew-block-column-2", "sew-block-column-3", "square-up"} {
		s = accepted(t, s, atBlocks(request(t, s, key, "all"), "tide-01"))
	}
	s = logged(t, s, "test", "tide=1")
	assert.Equal(t, 1, s.Done("test", tide))
}

// The test block goes through before the rest is cut: its 2 pieces of each
// fabric are enough.
func TestTheTestBlockCanBeMadeBeforeTheRestIsCut(t *testing.T) {
	s := book(t, estuary())
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=2", "Foam=2")
	s = accepted(t, s, atBlocks(request(t, s, "kit..square-up", "all"), "tide-01"))
	s = logged(t, s, "test", "tide=1")
	assert.Equal(t, 1, s.FinishedBlocks(tide))
}

func TestABlockReopenedByARecountIsNotWorkedOn(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs..press-pairs", "tide=8")
	s = accepted(t, s, atBlocks(request(t, s, "sew-units", "1"), "tide-02"))
	s = recounted(t, s, Part{Operation: "press-pairs", Lot: tide, Count: 2})
	assert.Equal(t, 1, s.Done("sew-units", tide), "only the row itself is set")
	r := refused(t, s, atBlocks(request(t, s, "sew-block-column-2", "1"), "tide-01"))
	assert.Equal(t, OutOfOrder, r.Kind)
	s = accepted(t, s, atBlocks(request(t, s, "sew-units", "1"), "tide-01"))
	assert.Equal(t, 2, s.Done("sew-units", tide), "what was touched before is none of this entry's business")
	r = refused(t, s, atBlocks(request(t, s, "sew-units", "1"), "tide-03"))
	assert.Equal(t, "tide-03 is not ready for 70 sew-units: 60 press-pairs has 2 of 16 pairs made, none at tide-03", r.What)
}

// recounted is the state after a count of what lies on the table.
func recounted(t require.TestingT, s State, parts ...Part) State {
	ev := s.event(Recount, "r"+string(rune('0'+len(s.events))), monday, "Runa")
	ev.Parts = parts
	return after(t, s, ev)
}

func TestCatchingUpLogsTheOperationsBeforeAlong(t *testing.T) {
	s := book(t, estuary())
	r := caughtUp(request(t, s, "sew-units", "tide=3"))
	took := planner.Minutes(20)
	r.Took = &took
	ev, err := s.Log(r)
	require.NoError(t, err)
	assert.True(t, ev.CatchUp)
	assert.Equal(t, []Part{
		{"prepare", kelp, 1, nil, nil},
		{"cut", kelp, 6, nil, nil},
		{"prepare", foam, 1, nil, nil},
		{"cut", foam, 6, nil, nil},
		{"kit", tide, 3, nil, nil},
		{"sew-pairs", tide, 6, nil, nil},
		{"press-pairs", tide, 6, nil, nil},
		{"sew-units", tide, 3, nil, &took},
	}, ev.Parts, "in the order of work, without times but that of what was asked for")
	s = after(t, s, ev)
	ev, err = s.Log(caughtUp(request(t, s, "sew-units", "tide=2")))
	require.NoError(t, err)
	assert.Equal(t, []Part{
		{"cut", kelp, 4, nil, nil}, {"cut", foam, 4, nil, nil}, {"kit", tide, 2, nil, nil},
		{"sew-pairs", tide, 4, nil, nil}, {"press-pairs", tide, 4, nil, nil}, {"sew-units", tide, 2, nil, nil},
	}, ev.Parts, "only what is missing")
}

func TestCatchingUpWithNamedBlocksNamesThemWhereTheyMatter(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4")
	ev, err := s.Log(caughtUp(atBlocks(request(t, s, "press-pairs", "all"), "tide-02", "tide-05")))
	require.NoError(t, err)
	both := []BlockCount{{"tide-02", 2}, {"tide-05", 2}}
	assert.Equal(t, []Part{{"sew-pairs", tide, 2, []BlockCount{{"tide-05", 2}}, nil}, {"press-pairs", tide, 4, both, nil}}, ev.Parts)
}

func TestCatchingUpToAQuiltMakesItsBlocks(t *testing.T) {
	s := cutAndKitted(t)
	s = accepted(t, s, caughtUp(request(t, s, "hand-over", "1")))
	for _, row := range s.Rows() {
		if row.Key != "test" && row.Key != "cut" && row.Key != "prepare" {
			assert.Equal(t, row.Count, row.Done, row.Key+" "+row.Lot.Name)
		}
	}
	assert.Equal(t, 12, s.FinishedBlocks(Lot{}))
	assert.Equal(t, 1, s.FinishedQuilts())
}

func TestCatchingUpToPartOfAQuiltMakesBlocksInTheOrderTheyAreLaidOut(t *testing.T) {
	s := book(t, madeLedger(2, colourwayRun{"tide", 4}, colourwayRun{"dune", 2}))
	s = accepted(t, s, caughtUp(request(t, s, "kit", "tide=all", "dune=all")))
	s = accepted(t, s, caughtUp(request(t, s, "lay-out-top", "quilt-2=3")))
	assert.Equal(t, 3, s.FinishedBlocks(quiltLot(2)))
	for _, id := range []string{"tide-05", "tide-06", "tide-07"} {
		assert.Equal(t, 1, s.BlockDone(id, "square-up"), id)
	}
	assert.Equal(t, 0, s.FinishedBlocks(quiltLot(1)))
}

func TestCatchingUpToTheTestMakesItsBlock(t *testing.T) {
	s := book(t, estuary())
	s = accepted(t, s, caughtUp(request(t, s, "test", "dune=1")))
	assert.Equal(t, 1, s.BlockDone("dune-01", "square-up"))
	assert.Equal(t, 1, s.FinishedBlocks(Lot{}))
}

func TestCatchingUpPutsPartsOfOneRowTogether(t *testing.T) {
	s := book(t, estuary())
	ev, err := s.Log(caughtUp(request(t, s, "kit", "tide=2", "dune=1")))
	require.NoError(t, err)
	assert.Equal(t, []Part{
		{"prepare", kelp, 1, nil, nil}, {"cut", kelp, 6, nil, nil},
		{"prepare", foam, 1, nil, nil}, {"cut", foam, 6, nil, nil},
		{"kit", tide, 2, nil, nil}, {"kit", dune, 1, nil, nil},
	}, ev.Parts)
}

func TestCatchingUpCannotCutMoreThanThePlanHas(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "cut" && o.Lot == kelp {
			l.Operations[i].Count = 5
		}
	}
	s := book(t, l)
	r := refused(t, s, caughtUp(request(t, s, "kit", "tide=3")))
	assert.Equal(t, said{OutOfOrder, "30 cut has 0 of 5 pieces of Kelp made, 6 needed", 0, 5, 5}, whatIsSaid(r))
}

func TestAPoolThatARecountOverdrewStopsOnlyWhoTakesFromIt(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "kit" && o.Lot == dune { // of dune, only its first two blocks take Kelp
			l.Operations[i].After[0].Takes = o.After[0].Takes[:2]
		}
	}
	s := book(t, l)
	s = accepted(t, s, caughtUp(atBlocks(request(t, s, "kit", "1"), "dune-01")))
	s = logged(t, s, "cut", "Foam=all")
	s = recounted(t, s, Part{Operation: "cut", Lot: kelp, Count: 1})
	s = accepted(t, s, atBlocks(request(t, s, "kit", "1"), "dune-03"))
	assert.Equal(t, 1, s.BlockDone("dune-03", "kit"))
	r := refused(t, s, atBlocks(request(t, s, "kit", "1"), "dune-02"))
	assert.Equal(t, "dune-02 is not ready for 40 kit: 30 cut has 1 of 24 pieces of Kelp made, 4 needed", r.What)
}

func TestARowThatIsNamedTwiceIsWaitedForOnce(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "kit" {
			l.Operations[i].After = append(o.After, o.After...)
		}
	}
	s := book(t, l)
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=4", "Foam=4")
	s = logged(t, s, "kit", "tide=2")
	assert.Equal(t, 2, s.Done("kit", tide))
}

func TestCatchingUpSuppliesEachOfSeveralOperationsWithItsOwn(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "press-pairs" {
			l.Operations[i].After = append(o.After, Ref{Key: "kit", Lot: o.Lot})
		}
	}
	s := book(t, l)
	s = accepted(t, s, caughtUp(atBlocks(request(t, s, "press-pairs", "all"), "tide-02")))
	assert.Equal(t, []int{2, 2, 1}, []int{s.Done("press-pairs", tide), s.Done("sew-pairs", tide), s.Done("kit", tide)})
}

// 3 pairs sewn and 3 pressed: the third pressed pair is the first of tide-02,
// which wants both its pairs sewn before. That fourth pair nobody timed.
func TestCatchingUpBesideWhatWasAskedForHasNoTime(t *testing.T) {
	s := cutAndKitted(t)
	r := caughtUp(request(t, s, "sew-pairs..press-pairs", "tide=3"))
	took := planner.Minutes(16)
	r.Took = &took
	ev, err := s.Log(r)
	require.NoError(t, err)
	half := planner.Minutes(8)
	assert.Equal(t, []Part{
		{"sew-pairs", tide, 3, nil, &half}, {"sew-pairs", tide, 1, nil, nil}, {"press-pairs", tide, 3, nil, &half},
	}, ev.Parts)
}

func TestCatchingUpToTwoQuiltsNamesBlocksOnlyWhereItMust(t *testing.T) {
	s := book(t, madeLedger(2, colourwayRun{"tide", 3}))
	s = accepted(t, s, caughtUp(request(t, s, "sew-block-column-3", "tide=all")))
	ev, err := s.Log(caughtUp(request(t, s, "lay-out-top", "quilt-1=2", "quilt-2=2")))
	require.NoError(t, err)
	assert.Equal(t, []Part{
		{"square-up", tide, 2, nil, nil}, {"lay-out-top", quiltLot(1), 2, nil, nil},
		{"square-up", tide, 2, []BlockCount{{"tide-04", 1}, {"tide-05", 1}}, nil}, {"lay-out-top", quiltLot(2), 2, nil, nil},
	}, ev.Parts)
	assert.Equal(t, 4, after(t, s, ev).FinishedBlocks(Lot{}))
}
