package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
)

func (b *bench) recount(operation, count string, change ...func(*RecountRequest)) {
	asked, err := ParseFound([]string{count})
	if err != nil {
		b.t.Errorf("%v", err)
	}
	r := RecountRequest{Operation: operation, Counts: asked, ID: b.id(), At: monday, By: "Runa"}
	for _, c := range change {
		c(&r)
	}
	b.take(b.s.Recount(r))
}

func (b *bench) rip(operation, count string, took planner.Minutes, change ...func(*RipRequest)) {
	asked, err := ParseCounts([]string{count})
	if err != nil {
		b.t.Errorf("%v", err)
	}
	r := RipRequest{Operation: operation, Counts: asked, ID: b.id(), At: monday, By: "Runa"}
	if took > 0 {
		r.Took = &took
	}
	for _, c := range change {
		c(&r)
	}
	b.take(b.s.Rip(r))
}

// Log says 81 of 81 are through; on the floor lie 77 units. The 4 are open again,
// and so is all that follows them: seams of 3 a block 12, blocks 4. Then they turn
// up: a second recount.
func TestUnitsThatAreMissingOpenWhatFollowsThem(t *testing.T) {
	b := &bench{t: t, s: book(t, madeLedger(1, colourwayRun{"tide", 81}))}
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "square-up", "81")))
	before := len(b.s.Entries)
	b.recount("sew-units", "77")
	left := func() []int {
		var left []int
		for _, key := range []string{"press-pairs", "sew-units", "sew-block-column-2", "sew-block-column-3", "square-up"} {
			left = append(left, b.s.Left(key, tide))
		}
		return left
	}
	assert.Equal(t, []int{0, 4, 12, 12, 4}, left())
	assert.Equal(t, 77, b.s.FinishedBlocks(Lot{}))
	assert.Len(t, b.s.Entries, before+1, "the history is kept")

	b.recount("sew-units", "81")
	assert.Equal(t, []int{0, 0, 12, 12, 4}, left(), "what turned up is as far as it was counted")
	b.recount("sew-units", "0")
	assert.Equal(t, []int{0, 81, 243, 243, 81}, left())
}

func TestARecountOfOneBlock(t *testing.T) {
	b := newBench(t)
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "sew-units", "tide=5")))
	b.recount("sew-pairs", "1", func(r *RecountRequest) { r.Block = "tide-2" })
	assert.Equal(t, []int{2, 1, 2}, []int{b.s.BlockDone("tide-01", "sew-pairs"), b.s.BlockDone("tide-02", "sew-pairs"), b.s.BlockDone("tide-03", "sew-pairs")})
	assert.Equal(t, 1, b.s.BlockDone("tide-02", "press-pairs"), "one pair is pressed still")
	assert.Equal(t, 0, b.s.BlockDone("tide-02", "sew-units"), "and makes no unit")
	assert.Equal(t, 4, b.s.Done("sew-units", tide))
	assert.Equal(t, 1, b.s.BlockDone("tide-05", "sew-units"))

	r := RecountRequest{Operation: "sew-pairs", Counts: []CountAsked{{Number: 3}}, Block: "tide-02", ID: "x", At: monday}
	_, err := b.s.Recount(r)
	assert.Equal(t, "a block has 2 pairs in 50 sew-pairs, not 3", asRefusal(t, err).What)
}

func TestARecountAsksForWhatIsOpen(t *testing.T) {
	s := cutAndKitted(t)
	_, err := s.Recount(RecountRequest{Operation: "kit", Counts: []CountAsked{{Number: 3}}, ID: "x", At: monday})
	r := asRefusal(t, err)
	assert.Equal(t, WhichLot, r.Kind)
	assert.Equal(t, "how many? made in 40 kit: 8 of 8 for tide and 4 of 4 for dune", r.What)
	_, err = s.Recount(RecountRequest{Operation: "kit", Lot: &tide, ID: "x", At: monday})
	assert.Equal(t, WhichLot, asRefusal(t, err).Kind)
}

// 80 blocks are made and 16 of them joined as two rows of eight and to each other,
// all facing one way: 2 × 7 + 1 joins. Ripped, the 15 go back to what is left, the
// 80 blocks stay made, the minutes stay spent, and those of ripping are not
// among the pace of joining.
func TestRowsThatWereJoinedTheWrongWayAreRipped(t *testing.T) {
	b := &bench{t: t, s: book(t, madeLedger(1, colourwayRun{"tide", 80}))}
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "lay-out-top", "80")))
	b.log("10:00", "sew-top-rows", "15", 75)
	b.rip("sew-top-rows", "15", 40)
	row, _ := b.s.Row("sew-top-rows", quiltLot(1))
	assert.Equal(t, []int{0, 40}, []int{row.Done, row.Left()})
	assert.Equal(t, 80, b.s.FinishedBlocks(Lot{}))
	assert.Equal(t, []planner.Minutes{75, 40}, []planner.Minutes{row.Minutes, row.Ripping})
	assert.Equal(t, 15, row.Timed)
	assert.Equal(t, WorkedTime{Minutes: 115, Elapsed: 115, Ripping: 40}, b.s.Worked())

	b.log("11:00", "sew-top-rows", "15", 60)
	row, _ = b.s.Row("sew-top-rows", quiltLot(1))
	assert.Equal(t, 15, row.Done)
	assert.Equal(t, planner.Minutes(135), row.Minutes)
}

func TestWhatIsRippedOpensWhatFollowsAndCanBeTakenBack(t *testing.T) {
	b := newBench(t)
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "square-up", "tide=3")))
	before := b.s.Rows()
	b.rip("sew-units", "1 block", 0, func(r *RipRequest) { r.Block = "tide-01" })
	assert.Equal(t, []int{0, 1}, []int{b.s.BlockDone("tide-01", "sew-units"), b.s.BlockDone("tide-02", "square-up")})
	assert.Equal(t, 2, b.s.FinishedBlocks(Lot{}))
	assert.Equal(t, 2, b.s.BlockDone("tide-01", "press-pairs"), "what came before stays made")
	ev := b.s.Entries[len(b.s.Entries)-1]
	assert.Equal(t, Part{Operation: "sew-block-column-2", Lot: tide, Count: 3, Blocks: []BlockCount{{"tide-01", 3}}}, ev.Parts[1])
	b.take(b.s.Undo("", b.id(), monday, "Runa"))
	assert.Equal(t, before, b.s.Rows())

	_, err := b.s.Rip(RipRequest{Operation: "sew-units", Lot: &tide, Counts: []CountAsked{{Number: 4}}, ID: "x", At: monday})
	assert.Equal(t, said{TooMany, "tide has 3 units made in 70 sew-units, so that 4 cannot be ripped", 3, 8, 5}, whatIsSaid(asRefusal(t, err)))
}

func TestNothingIsAFindAndNoCount(t *testing.T) {
	found, err := ParseFound([]string{"0"})
	assert.NoError(t, err)
	assert.Equal(t, []CountAsked{{}}, found)
	found, err = ParseFound([]string{"tide=0", "dune=3"})
	assert.NoError(t, err)
	assert.Equal(t, []CountAsked{{Lot: "tide"}, {Lot: "dune", Number: 3}}, found)
	_, err = ParseCounts([]string{"0"})
	assert.Error(t, err)
	_, err = ParseFound([]string{"-1"})
	assert.Error(t, err)
}

// Unnamed counts of a later row move on to blocks that have what they take: one
// unit is pressed, of whichever block.
func TestUnnamedCountsMoveOnToBlocksThatHaveWhatTheyTake(t *testing.T) {
	b := newBench(t)
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "sew-units", "tide=2")))
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "sew-block-column-2", "tide=3")))
	b.recount("sew-units", "0", func(r *RecountRequest) { r.Block = "tide-01" })
	assert.Equal(t, 1, b.s.Done("sew-units", tide))
	assert.Equal(t, []int{0, 3}, []int{b.s.BlockDone("tide-01", "sew-block-column-2"), b.s.BlockDone("tide-02", "sew-block-column-2")})
}

// Three pairs are logged of tide-02, which has room for two, as a revision may leave
// it, and one of tide-03. Two are ripped at tide-02: the third moves on to tide-01,
// which has none, and is no part of what was ripped.
func TestARipWhereABlockHasMoreThanItsRoom(t *testing.T) {
	b := &bench{t: t, s: book(t, smallJob())}
	ev := b.s.event(Logged, "many", monday, "Runa")
	ev.Parts = []Part{{Operation: "sew-pairs", Lot: tide, Count: 4, Blocks: []BlockCount{{"tide-02", 3}, {"tide-03", 1}}}}
	b.take(ev, nil)
	b.rip("sew-pairs", "2", 0, func(r *RipRequest) { r.Block = "tide-02" })
	ripped := b.s.Entries[len(b.s.Entries)-1]
	assert.Equal(t, []Part{{Operation: "sew-pairs", Lot: tide, Count: 2, Blocks: []BlockCount{{"tide-02", 2}}}}, ripped.Parts)
	assert.Equal(t, []int{1, 0, 1, 0}, firstFour(b.s, "sew-pairs"))
}
