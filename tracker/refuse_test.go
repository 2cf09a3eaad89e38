package tracker

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// said is what a refusal tells: its kind, its sentence and its numbers.
type said struct {
	Kind              RefusalKind
	What              string
	Done, Count, Left int
}

func whatIsSaid(r *Refusal) said { return said{r.Kind, r.What, r.Done, r.Count, r.Left} }

// halfway is the usual job with 12 of tide's 16 pairs sewn and all of dune's.
func halfway(t *testing.T) State {
	return logged(t, cutAndKitted(t), "sew-pairs", "tide=12", "dune=all")
}

func TestRefusalsSayWhatIsLeftAndWhatWasMeant(t *testing.T) {
	for _, c := range []struct {
		operation string
		counts    []string
		want      said
	}{
		{"sew-pairs", []string{"tide=5"}, said{TooMany, "tide has 4 pairs left to chain-sew (12 of 16 made), not 5", 12, 16, 4}},
		{"sew-pairs", []string{"tide=5 blocks"}, said{TooMany, "tide has 4 pairs left to chain-sew (12 of 16 made), not 10", 12, 16, 4}},
		{"sew-pairs", []string{"1000000"}, said{TooMany, "tide has 4 pairs left to chain-sew (12 of 16 made), not 1000000", 12, 16, 4}},
		{"sew-pairs", []string{"dune=1"}, said{NothingLeft, "dune: all 8 pairs are chain-sewn already", 8, 8, 0}},
		{"sew-pairs", []string{"dune=all"}, said{NothingLeft, "dune: all 8 pairs are chain-sewn already", 8, 8, 0}},
		{"sew-block-column-2", []string{"tide=25"}, said{TooMany, "tide has 24 seams left in 80 sew-block-column-2 (0 of 24 made), not 25", 0, 24, 24}},
		{"kit", []string{"4"}, said{NothingLeft, "40 kit is done already for tide and dune", 0, 0, 0}},
		{"prepare", []string{"Kelp=1"}, said{NothingLeft, "Kelp: the one piece is prepared already", 1, 1, 0}},
		{"cut..cut", []string{"all"}, said{NothingLeft, "30 cut is done already for Kelp and Foam", 0, 0, 0}},

		{"sew-pairs", nil, said{MissingCount, "how many? left in 50 sew-pairs: 4 of 16 pairs for tide", 12, 16, 4}},
		{"press-pairs", nil, said{MissingCount, "how many? left in 60 press-pairs: 16 of 16 pairs for tide and 8 of 8 pairs for dune", 0, 0, 0}},
		{"press-pairs", []string{"4"}, said{WhichLot, "which colourway? left in 60 press-pairs: 16 of 16 pairs for tide and 8 of 8 pairs for dune", 0, 0, 0}},
		{"sew-pairs..press-pairs", []string{"4"}, said{WhichLot, "which colourway? left in 50 sew-pairs to 60 press-pairs: 4 of 16 pairs for tide in 50 sew-pairs and 8 of 8 pairs for dune in 60 press-pairs", 0, 0, 0}},
		{"press-pairs..sew-units", []string{"tide=4"}, said{MissingCount, "4 of what? 60 press-pairs counts pairs, 2 a block, 70 sew-units counts units, 1 a block", 0, 0, 0}},
		{"sew-top-rows", []string{"2 blocks"}, said{MissingCount, "120 sew-top-rows counts joins, not blocks: quilt-1 has 6 joins left", 0, 6, 6}},

		{"press-pairs", []string{"tyde=4"}, said{UnknownLot, `60 press-pairs has no colourway "tyde"; there is tide`, 0, 0, 0}},
		{"press-pairs", []string{"gannet=4"}, said{UnknownLot, `60 press-pairs has no colourway "gannet": it has tide and dune`, 0, 0, 0}},
		{"sew-pairs..lay-out", []string{"4"}, said{WhichLot, "50 sew-pairs goes by colourway and 110 lay-out-top by quilt: no lot goes through both", 0, 0, 0}},

		{"press-pair", []string{"tide=13"}, said{OutOfOrder, "tide is ready for 12 more pairs in 60 press-pairs, not 13: 50 sew-pairs has 12 of 16 pairs made, none at tide-07", 0, 16, 16}},
		{"prss-pairs", []string{"tide=4"}, said{UnknownOperation, `there is no operation "prss-pairs"; there is 60 press-pairs`, 0, 0, 0}},
		{"embroider", []string{"tide=4"}, said{UnknownOperation, `there is no operation "embroider": the route goes from 10 prepare to 140 hand-over`, 0, 0, 0}},
		{"", []string{"tide=4"}, said{UnknownOperation, `there is no operation "": the route goes from 10 prepare to 140 hand-over`, 0, 0, 0}},
		{"sew-pairs..", []string{"tide=4"}, said{UnknownOperation, `there is no operation "": the route goes from 10 prepare to 140 hand-over`, 0, 0, 0}},
		{"sew", []string{"tide=4"}, said{Ambiguous, `"sew" may be any of 50 sew-pairs, 70 sew-units, 80 sew-block-column-2, 90 sew-block-column-3 and 120 sew-top-rows`, 0, 0, 0}},
		{"55", []string{"tide=4"}, said{UnknownOperation, "no operation has the number 55: near it are 50 sew-pairs and 60 press-pairs", 0, 0, 0}},
		{"5", []string{"tide=4"}, said{UnknownOperation, "no operation has the number 5: near it is 10 prepare", 0, 0, 0}},
		{"press-pairs..sew-pairs", []string{"tide=4"}, said{Ambiguous, "60 press-pairs comes after 50 sew-pairs: write sew-pairs..press-pairs", 0, 0, 0}},
	} {
		s := halfway(t)
		assert.Equal(t, c.want, whatIsSaid(refused(t, s, request(t, s, c.operation, c.counts...))), c.operation+fmt.Sprint(c.counts))
	}
}

func TestRefusalsOfNamedBlocks(t *testing.T) {
	for _, c := range []struct {
		operation string
		count     string
		blocks    []string
		want      said
	}{
		{"sew-pairs", "3", []string{"tide-05"}, said{TooMany, "tide-05 has room for 2 pairs in 50 sew-pairs, not 3", 12, 16, 4}},
		{"sew-pairs", "tide=1", []string{"tide-08", "tide-07"}, said{MissingCount, "1 pair is not enough for tide-07 too: 50 sew-pairs takes 2 a block", 12, 16, 4}},
		{"sew-pairs", "1", []string{"tide-9"}, said{UnknownBlock, `there is no block "tide-9": tide has 8, from tide-01 to tide-08`, 0, 0, 0}},
		{"sew-pairs", "1", []string{"tyde-01"}, said{UnknownBlock, `there is no block "tyde-01"; there is tide-01`, 0, 0, 0}},
		{"sew-pairs", "1", []string{"tide"}, said{UnknownBlock, `there is no block "tide": tide has 8, from tide-01 to tide-08`, 0, 0, 0}},
		{"sew-pairs", "1", []string{"gannet"}, said{UnknownBlock, `there is no block "gannet": a block is called such as tide-01`, 0, 0, 0}},
		{"sew-pairs", "2", []string{"tide-07", "tide-7"}, said{Ambiguous, "block tide-07 is named twice", 0, 0, 0}},
		{"sew-pairs", "2", []string{"tide-07", "dune-01"}, said{WhichLot, "the blocks are of tide and dune: write a count for each", 0, 0, 0}},
		{"sew-pairs", "dune=2", []string{"tide-07"}, said{UnknownBlock, "tide-07 is a block of tide, and the count is of dune", 0, 0, 0}},
		{"lay-out-top", "1", []string{"tide-07"}, said{UnknownLot, "110 lay-out-top goes by quilt, not by colourway: quilt-1", 0, 0, 0}},
		{"test", "1", []string{"tide-02"}, said{UnknownBlock, "20 test is of tide-01, not of tide-02", 0, 1, 1}},
		{"press-pairs", "4", []string{"tide-02", "tide-07"}, said{OutOfOrder, "tide-07 is not ready for 60 press-pairs: 50 sew-pairs has 12 of 16 pairs made, none at tide-07", 0, 16, 16}},
		{"press-pairs", "2", []string{"tide-07"}, said{OutOfOrder, "tide-07 is not ready for 60 press-pairs: 50 sew-pairs has 12 of 16 pairs made, none at tide-07", 0, 16, 16}},
	} {
		s := halfway(t)
		r := refused(t, s, atBlocks(request(t, s, c.operation, c.count), c.blocks...))
		assert.Equal(t, c.want, whatIsSaid(r), c.operation+fmt.Sprint(c.blocks))
	}
}

func TestABlockThatHasAllItsNamedCountsTakesNoMore(t *testing.T) {
	s := cutAndKitted(t)
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "all"), "tide-02"))
	for _, count := range []string{"all", "1"} {
		r := refused(t, s, atBlocks(request(t, s, "sew-pairs", count), "tide-02"))
		assert.Equal(t, said{TooMany, "block tide-02 has all 2 pairs of 50 sew-pairs already", 2, 16, 14}, whatIsSaid(r))
	}
}

func TestNamingABlockCannotMoveOthersWhereTheyCannotBe(t *testing.T) {
	s := logged(t, halfway(t), "press-pairs", "tide=12") // all that are sewn, at tide-01 to tide-06
	r := refused(t, s, atBlocks(request(t, s, "press-pairs", "2"), "tide-02"))
	assert.Equal(t, said{OutOfOrder, "naming tide-02 moves other counts of 60 press-pairs on to tide-07, which is not ready: " +
		"50 sew-pairs has 12 of 16 pairs made, none at tide-07", 12, 16, 4}, whatIsSaid(r))
}

func TestALotIsNamedInOneWay(t *testing.T) {
	s := halfway(t)
	r := request(t, s, "press-pairs", "tide=4")
	r.Lot = &dune
	assert.EqualError(t, refused(t, s, r), "dune is named, and so is tide in the count: name lots in one way only")

	r = request(t, s, "press-pairs", "4")
	r.Lot = &kelp
	assert.Equal(t, said{UnknownLot, "60 press-pairs goes by colourway, not by fabric: tide and dune", 0, 0, 0}, whatIsSaid(refused(t, s, r)))

	assert.EqualError(t, refused(t, s, request(t, s, "press-pairs", "tide=4", "TIDE=4")), "tide has two counts: write one")
}

// twoKinds is the usual job with an operation that a fabric and a colourway go
// through, both called tide, and the colourway dune.
func twoKinds(t *testing.T) State {
	l := estuary()
	for _, lot := range []Lot{fabricLot("tide"), tide, dune} {
		l.Operations = append(l.Operations, Operation{Number: 150, Key: "label", Lot: lot, CountedIn: "piece", Count: 3})
	}
	return book(t, l)
}

func TestLotsOfTwoKindsInOneOperation(t *testing.T) {
	s := twoKinds(t)
	ev, err := s.Log(request(t, s, "label", "Dune=2"))
	require.NoError(t, err)
	assert.Equal(t, []Part{{"label", dune, 2, nil, nil}}, ev.Parts, "the only lot of that name, whatever the first lot's kind is")

	r := request(t, s, "label", "2")
	r.Lot = &tide
	ev, err = s.Log(r)
	require.NoError(t, err)
	assert.Equal(t, []Part{{"label", tide, 2, nil, nil}}, ev.Parts)

	both := refused(t, s, request(t, s, "label", "tide=1"))
	assert.Equal(t, said{Kind: Ambiguous, What: `"tide" may be more than one lot of 150 label: fabric tide and colourway tide`}, whatIsSaid(both))
	assert.Equal(t, "say which: --lot fabric:tide or --lot colourway:tide", both.Hint)

	for name, want := range map[string]string{
		"gannet": `150 label has no lot "gannet": it has tide, tide and dune`,
		"dunes":  `150 label has no lot "dunes"; there is dune`,
	} {
		assert.EqualError(t, refused(t, s, request(t, s, "label", name+"=1")), want)
	}
	r.Lot = &Lot{planner.ColourwayLot, "gannet"}
	assert.EqualError(t, refused(t, s, r), `150 label has no colourway "gannet": it has tide and dune`)
	r.Lot = &Lot{planner.QuiltLot, "quilt-1"}
	assert.EqualError(t, refused(t, s, r), "150 label goes by fabric and colourway, not by quilt: tide, tide and dune")
	assert.EqualError(t, refused(t, s, request(t, s, "label", "1")),
		"which lot? left in 150 label: 3 of 3 pieces for fabric tide, 3 of 3 pieces for colourway tide and 3 of 3 pieces for colourway dune")
}

func TestNamesThatDifferByCapitalsAlone(t *testing.T) {
	s := book(t, madeLedger(1, colourwayRun{"Tide", 4}, colourwayRun{"tide", 4}))
	s = accepted(t, s, caughtUp(request(t, s, "kit", "tide=1")))
	assert.Equal(t, 1, s.Done("kit", tide), "the exact name is meant")
	assert.EqualError(t, refused(t, s, request(t, s, "kit", "TIDE=1")), `"TIDE" may be more than one lot of 40 kit: colourway Tide and colourway tide`)
}

func TestNearNamesAreGivenForTheShellToo(t *testing.T) {
	s := halfway(t)
	assert.Equal(t, []string{"press-pairs"}, refused(t, s, request(t, s, "prss-pairs", "4")).Near)
	assert.Equal(t, []string{"tide"}, refused(t, s, request(t, s, "sew-pairs", "tyde=4")).Near)
	assert.Equal(t, []string{"tide", "dune"}, refused(t, s, request(t, s, "press-pairs", "4")).Near)
}

func TestHintsSayWhatToTypeInstead(t *testing.T) {
	s := halfway(t)
	for hint, r := range map[string]*Refusal{
		"write a count such as 12, 4 blocks or all; for several lots such as tide=12": refused(t, s, request(t, s, "press-pairs")),
		"say which, such as --lot colourway:tide or tide=12":                          refused(t, s, request(t, s, "press-pairs", "4")),
		"log 50 sew-pairs first, or catch up (--catch-up)":                            refused(t, s, request(t, s, "press-pairs", "tide=13")),
		"type its number, its name, or a beginning that only one has":                 refused(t, s, request(t, s, "embroider", "tide=4")),
	} {
		assert.Equal(t, hint, r.Hint)
	}
}

func TestTimeTakenIsSomeTime(t *testing.T) {
	s := halfway(t)
	for _, took := range []planner.Minutes{0, -35, planner.Minutes(math.NaN()), planner.Minutes(math.Inf(1))} {
		r := request(t, s, "sew-pairs", "tide=1")
		r.Took = &took
		assert.Equal(t, BadTime, refused(t, s, r).Kind, fmt.Sprint(took))
	}
}

func TestAHundredFabricsStillRead(t *testing.T) {
	var items []Lot
	l := estuary()
	for i := range 98 {
		lot := fabricLot(fmt.Sprintf("print %02d", i+1))
		l.Operations = append([]Operation{{Number: 10, Key: "prepare", Lot: lot, CountedIn: "piece", Count: 1}}, l.Operations...)
		items = append(items, lot)
	}
	s := book(t, l)
	r := refused(t, s, request(t, s, "prepare"))
	assert.Equal(t, "how many? left in 10 prepare: 1 of 1 piece for print 98, 1 of 1 piece for print 97, 1 of 1 piece for print 96, "+
		"1 of 1 piece for print 95, 1 of 1 piece for print 94, 1 of 1 piece for print 93 and 94 more", r.What)
	assert.Len(t, r.Near, len(items)+2)
}

func TestNothingIsLoggedOnAJobThatIsNotBooked(t *testing.T) {
	s, err := Fold(nil)
	assert.NoError(t, err)
	assert.False(t, s.Booked())
	r := refused(t, s, LogRequest{Operation: "sew-pairs", ID: "e1"})
	assert.Equal(t, said{Kind: UnknownJob, What: "the job is not booked"}, whatIsSaid(r))
	_, err = s.Undo("", "u1", monday, "Runa")
	assert.EqualError(t, err, "the job is not booked")
}

func TestABareNumberMeansTheSameInAllOfARun(t *testing.T) {
	l := estuary()
	for i, o := range l.Operations {
		if o.Key == "sew-block-column-3" && o.Lot == tide {
			l.Operations[i].PerBlock, l.Operations[i].Count = 2, 16
		}
	}
	s := book(t, l)
	r := refused(t, s, request(t, s, "sew-block-column-2..sew-block-column-3", "tide=6"))
	assert.Equal(t, said{Kind: MissingCount, What: "6 of what? 80 sew-block-column-2 counts seams, 3 a block, 90 sew-block-column-3 counts seams, 2 a block"}, whatIsSaid(r))
	assert.Equal(t, "write the count in blocks, such as 4 blocks, or all", r.Hint)
}
