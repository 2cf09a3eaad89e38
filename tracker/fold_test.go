package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func TestAJobJustBookedHasEverythingLeft(t *testing.T) {
	s := book(t, estuary())
	assert.True(t, s.Booked())
	assert.Equal(t, estuary(), s.Ledger)
	assert.Equal(t, "job: estuary-lap", s.File)
	assert.Empty(t, s.Entries)
	for _, row := range s.Rows() {
		assert.Equal(t, 0, row.Done)
		assert.Equal(t, row.Count, row.Left())
	}
	_, finished := s.FinishedAt()
	assert.False(t, finished)
}

// A recount sets the row to what lies on the table, and keeps the history:
// 81 of 81 were logged and 77 lie there, so 4 are left; then they turn up.
func TestARecountSetsWhatLiesOnTheTable(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 81}))
	s = accepted(t, s, caughtUp(request(t, s, "sew-units", "81")))
	s = recounted(t, s, Part{Operation: "sew-units", Lot: tide, Count: 77})
	assert.Equal(t, 77, s.Done("sew-units", tide))
	assert.Equal(t, 4, s.Left("sew-units", tide))
	assert.Equal(t, 0, s.BlockDone("tide-78", "sew-units"))
	assert.Len(t, s.Entries, 2)
	s = recounted(t, s, Part{Operation: "sew-units", Lot: tide, Count: 81})
	assert.Equal(t, 0, s.Left("sew-units", tide))
}

func TestARecountAboveTheCountIsKeptAsSpare(t *testing.T) {
	s := recounted(t, book(t, estuary()), Part{Operation: "cut", Lot: kelp, Count: 30})
	row, _ := s.Row("cut", kelp)
	assert.Equal(t, []int{24, 0, 6}, []int{row.Done, row.Left(), row.Spare})
}

// Nothing done, everything done, one more than everything.
func TestNoRowIsEverBeyondItsCount(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 20}))
	assert.Equal(t, 20, s.Left("kit", tide))
	s = accepted(t, s, caughtUp(request(t, s, "kit", "20")))
	assert.Equal(t, 0, s.Left("kit", tide))
	assert.Equal(t, NothingLeft, refused(t, s, request(t, s, "kit", "1")).Kind)
	s = undone(t, s, "", "u1")
	r := refused(t, s, caughtUp(request(t, s, "kit", "21")))
	assert.Equal(t, said{TooMany, "tide has 20 blocks left to kit (0 of 20 made), not 21", 0, 20, 20}, whatIsSaid(r))
}

// revise is the state after a revision to a ledger made by hand.
func revise(t require.TestingT, s State, l Ledger) State {
	l.Revision = s.Ledger.Revision + 1
	ev := s.event(Revised, "v"+string(rune('0'+len(s.events))), monday, "Runa")
	ev.Ledger, ev.File, ev.Revision = &l, "job: estuary-lap # revised", l.Revision
	return after(t, s, ev)
}

// One more column and row: 30 blocks are made, and of 42 then 12 are left.
func TestARevisionKeepsWhatIsMade(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"tide", 30}))
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "30")))
	s = revise(t, s, madeLedger(1, colourwayRun{"tide", 42}))
	assert.Equal(t, 2, s.Ledger.Revision)
	assert.Equal(t, "job: estuary-lap # revised", s.File)
	assert.Equal(t, 30, s.FinishedBlocks(tide))
	assert.Equal(t, 12, s.Left("square-up", tide))
	assert.Equal(t, 24, s.Left("sew-pairs", tide))
	assert.Equal(t, 2, s.event(Logged, "x", monday, "").Revision, "new entries are made against the new ledger")
}

// Teal's cloth runs out after 3 of 6 blocks; the other 3 become navy. Targets
// are then 3, 9, 6 and 6, which is 24 as before.
func TestAColourwayIsReplacedInMidRun(t *testing.T) {
	teal, navy := colourwayLot("teal"), colourwayLot("navy")
	run := func(teal, navy int) Ledger {
		return madeLedger(1, colourwayRun{"teal", teal}, colourwayRun{"navy", navy}, colourwayRun{"rose", 6}, colourwayRun{"ochre", 6})
	}
	s := book(t, run(6, 6))
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "teal=3")))
	s = accepted(t, s, caughtUp(request(t, s, "sew-pairs", "teal=2 blocks"))) // begun, and now not wanted
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "navy=2")))
	l := run(3, 9)
	for _, id := range []string{"teal-04", "teal-05", "teal-06"} {
		l.Blocks = append(l.Blocks, Block{ID: id, Quilt: 1, Colourway: "teal", Retired: true})
	}
	s = revise(t, s, l)
	assert.Equal(t, 24, s.Blocks(Lot{}))
	assert.Equal(t, 0, s.Left("square-up", teal))
	assert.Equal(t, 7, s.Left("square-up", navy), "4 before, and 3 more")
	pairs, _ := s.Row("sew-pairs", teal)
	assert.Equal(t, []int{6, 0, 4}, []int{pairs.Done, pairs.Left(), pairs.Spare}, "what was sewn beyond is spare, not lost")
	r := refused(t, s, atBlocks(request(t, s, "square-up", "1"), "teal-5"))
	assert.Equal(t, "block teal-05 is no longer in the job: it was revised without it", r.What)

	s = revise(t, s, run(6, 6))
	pairs, _ = s.Row("sew-pairs", teal)
	assert.Equal(t, []int{10, 2, 0}, []int{pairs.Done, pairs.Left(), pairs.Spare}, "revised back, it counts again")
}

func TestCountsNamedForARetiredBlockAreSpare(t *testing.T) {
	s := cutAndKitted(t)
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "2"), "tide-08"))
	l := madeLedger(1, colourwayRun{"tide", 7}, colourwayRun{"dune", 4})
	l.Blocks = append(l.Blocks, Block{ID: "tide-08", Quilt: 1, Colourway: "tide", Retired: true})
	s = revise(t, s, l)
	row, _ := s.Row("sew-pairs", tide)
	assert.Equal(t, []int{0, 14, 2}, []int{row.Done, row.Left(), row.Spare})
	s = undone(t, s, "e5", "u1")
	row, _ = s.Row("sew-pairs", tide)
	assert.Equal(t, 0, row.Spare, "what was logged before a revision can still be taken back")
}

// underANewName is a ledger in which a colourway has another name. Block ids
// stay as they were given.
func underANewName(l Ledger, was, name string) Ledger {
	rename := func(text *string) {
		if *text == was {
			*text = name
		}
	}
	l.Renamed = map[string]string{name: was}
	for i := range l.Colourways {
		rename(&l.Colourways[i])
	}
	for i := range l.Blocks {
		rename(&l.Blocks[i].Colourway)
	}
	for i := range l.Operations {
		rename(&l.Operations[i].Lot.Name)
		for j := range l.Operations[i].After {
			rename(&l.Operations[i].After[j].Lot.Name)
		}
	}
	return l
}

func TestARenamedColourwayKeepsItsWork(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=5", "dune=3")
	l := underANewName(estuary(), "tide", "spindrift")
	s = revise(t, s, l)
	spindrift := colourwayLot("spindrift")
	assert.Equal(t, 5, s.Done("sew-pairs", spindrift))
	assert.Equal(t, 3, s.Done("sew-pairs", dune))
	assert.Equal(t, 2, s.BlockDone("tide-02", "sew-pairs"))
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "1"), "tide-03"))
	assert.Equal(t, spindrift, s.Entries[4].Parts[0].Lot)
	r := refused(t, s, request(t, s, "press-pairs", "tide=1"))
	assert.Equal(t, `60 press-pairs has no colourway "tide"; there is spindrift`, r.What)
	s = undone(t, s, "e5", "u1")
	assert.Equal(t, 1, s.Done("sew-pairs", spindrift), "entries under the old name are still its own")
}

func TestAnOperationThatLeavesTheRouteAndComesBackKeepsItsWork(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs..sew-units", "tide=2 blocks")
	without := estuary()
	var rows []Operation
	for _, o := range without.Operations {
		if o.Key == "press-pairs" {
			continue
		}
		if o.Key == "sew-units" {
			o.After = []Ref{{Key: "sew-pairs", Lot: o.Lot}}
		}
		rows = append(rows, o)
	}
	without.Operations, without.Retired = rows, map[string]int{"press-pairs": 60}
	s = revise(t, s, without)
	for _, typed := range []string{"press-pairs", "60"} {
		r := refused(t, s, request(t, s, typed, "tide=1"))
		assert.Equal(t, "press-pairs (60) is no longer in the route: the job was revised without it", r.What, typed)
	}
	assert.Equal(t, 2, s.Done("sew-units", tide))
	assert.Equal(t, 4, revise(t, s, estuary()).Done("press-pairs", tide))

	s = revise(t, s, underANewName(without, "tide", "spindrift"))
	s = revise(t, s, underANewName(estuary(), "tide", "spindrift"))
	assert.Equal(t, 4, s.Done("press-pairs", colourwayLot("spindrift")), "under a new name too")
}

func TestOnlyColourwaysAreRenamed(t *testing.T) {
	names := map[string]string{"tide": "spindrift"}
	assert.Equal(t, rowKey{"kit", colourwayLot("spindrift")}, rowKey{"kit", tide}.renamed(names))
	assert.Equal(t, rowKey{"cut", fabricLot("tide")}, rowKey{"cut", fabricLot("tide")}.renamed(names), "a fabric of the same name is another thing")
}

func TestARevisionIsUndoneByAnother(t *testing.T) {
	s := revise(t, cutAndKitted(t), estuary())
	_, err := s.Undo("v4", "u1", monday, "Runa")
	r := asRefusal(t, err)
	assert.Equal(t, said{Kind: NothingToUndo, What: "a booking is not undone"}, whatIsSaid(r))
	assert.Equal(t, "revise the job instead", r.Hint)
}

func TestHoursOfTheMakerAreNoneOfAJobsBusiness(t *testing.T) {
	s := cutAndKitted(t)
	before := s.Rows()
	ev := s.event(Hours, "h1", monday, "Runa")
	ev.Week = []DayTime{{From: planner.Date{Year: 2026, Month: 11, Day: 9}, Day: 1, Minutes: 90}}
	assert.Equal(t, before, after(t, s, ev).Rows())
}

func TestEventsThatNoProgramWroteAreNamed(t *testing.T) {
	l := estuary()
	booked := Event{Schema: 1, ID: "b", Seq: 1, Kind: Booked, Revision: 1, Ledger: &l}
	log := func(change func(*Event)) Event {
		ev := Event{Schema: 1, ID: "e", Seq: 2, Kind: Logged, Revision: 1, Parts: []Part{{Operation: "cut", Lot: kelp, Count: 4}}}
		change(&ev)
		return ev
	}
	minus, circle := planner.Minutes(-1), estuary()
	circle.Operations[0].After = []Ref{{Key: "hand-over", Lot: quiltLot(1)}}
	circle.Operations[len(circle.Operations)-1].After = []Ref{{Key: circle.Operations[0].Key, Lot: circle.Operations[0].Lot}}
	const not = "event 2 of the job is not one that quiltrun wrote: "
	for want, ev := range map[string]Event{
		not + "its schema is 2 and this quiltrun reads up to 1: use a newer quiltrun": log(func(e *Event) { e.Schema = 2 }),
		not + "it has no schema":           log(func(e *Event) { e.Schema = 0 }),
		not + "it has no id":               log(func(e *Event) { e.ID = "" }),
		not + `its id "b" was used before`: log(func(e *Event) { e.ID = "b" }),
		"event 1 of the job is not one that quiltrun wrote: it does not come after event 1": log(func(e *Event) { e.Seq = 1 }),
		not + "the job was booked before":                                                          log(func(e *Event) { e.Kind = Booked }),
		not + `its kind "steamed" is not known: use a newer quiltrun`:                              log(func(e *Event) { e.Kind = "steamed" }),
		not + "it says of no operation what was done":                                              log(func(e *Event) { e.Parts = nil }),
		not + `"fold" of "Kelp" is not in the route`:                                               log(func(e *Event) { e.Parts[0].Operation = "fold" }),
		not + `"cut" of "tide" is not in the route`:                                                log(func(e *Event) { e.Parts[0].Lot = tide }),
		not + "its count of cut is 0":                                                              log(func(e *Event) { e.Parts[0].Count = 0 }),
		not + "its count of cut is -4":                                                             log(func(e *Event) { e.Kind, e.Parts[0].Count = Recount, -4 }),
		not + "its minutes of cut are below 0":                                                     log(func(e *Event) { e.Parts[0].Minutes = &minus }),
		not + `cut of Kelp has no block "tide-01"`:                                                 log(func(e *Event) { e.Parts[0].Blocks = []BlockCount{{"tide-01", 4}} }),
		not + `kit of tide has no block "dune-01"`:                                                 log(func(e *Event) { e.Parts[0] = Part{"kit", tide, 1, []BlockCount{{"dune-01", 1}}, nil} }),
		not + `kit of tide has no block "tide-09"`:                                                 log(func(e *Event) { e.Parts[0] = Part{"kit", tide, 1, []BlockCount{{"tide-09", 1}}, nil} }),
		not + "its count of block tide-01 is 0":                                                    log(func(e *Event) { e.Parts[0] = Part{"kit", tide, 1, []BlockCount{{"tide-01", 0}}, nil} }),
		not + "its count of kit is 2 and its blocks have 1":                                        log(func(e *Event) { e.Parts[0] = Part{"kit", tide, 2, []BlockCount{{"tide-01", 1}}, nil} }),
		not + `it takes back "x", which is no entry of this job`:                                   log(func(e *Event) { e.Kind, e.Target = Undone, "x" }),
		not + `it takes back "b", which is no entry of this job`:                                   log(func(e *Event) { e.Kind, e.Target = Undone, "b" }),
		not + "it has no ledger":                                                                   log(func(e *Event) { e.Kind = Revised }),
		not + "its operations wait for each other in a circle through " + circle.Operations[0].Key: log(func(e *Event) { e.Kind, e.Ledger = Revised, &circle }),
	} {
		_, err := Fold([]Event{booked, ev})
		assert.EqualError(t, err, want)
	}
	_, err := Fold([]Event{log(func(*Event) {})})
	assert.EqualError(t, err, not+"it comes before the job was booked")

	take := func(id string, seq uint64) Event {
		return Event{Schema: 1, ID: id, Seq: seq, Kind: Undone, Target: "e"}
	}
	_, err = Fold([]Event{booked, log(func(*Event) {}), take("u1", 3), take("u2", 4)})
	assert.EqualError(t, err, `event 4 of the job is not one that quiltrun wrote: it takes back "e" a second time`)
}

func TestLedgersThatNoPlannerMadeAreNamed(t *testing.T) {
	const not = "event 1 of the job is not one that quiltrun wrote: "
	for want, change := range map[string]func(*Ledger){
		"two blocks are called tide-01":                                 func(l *Ledger) { l.Blocks[1].ID = "tide-01" },
		"prepare has two rows for Kelp":                                 func(l *Ledger) { l.Operations[1] = l.Operations[0] },
		"prepare of Kelp has a count below 0":                           func(l *Ledger) { l.Operations[0].Count = -1 },
		"kit of tide has 9 counts for 8 blocks of 1":                    func(l *Ledger) { l.Operations[6].Count = 9 },
		"cut of Kelp waits for wash of Kelp, which is not in the route": func(l *Ledger) { l.Operations[4].After = []Ref{{Key: "wash", Lot: kelp}} },
	} {
		l := estuary()
		change(&l)
		_, err := Fold([]Event{{Schema: 1, ID: "b", Seq: 1, Kind: Booked, Ledger: &l}})
		assert.EqualError(t, err, not+want)
	}
}

func TestFoldLeavesItsEventsAlone(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=4")
	a := logged(t, s, "sew-pairs", "tide=2")
	b := logged(t, s, "sew-pairs", "tide=7")
	assert.Equal(t, []int{4, 6, 11}, []int{s.Done("sew-pairs", tide), a.Done("sew-pairs", tide), b.Done("sew-pairs", tide)},
		"two states that go on from one do not meet")
	again, err := Fold(a.events)
	require.NoError(t, err)
	assert.Equal(t, a.Rows(), again.Rows())
}
