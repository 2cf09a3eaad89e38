package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
)

func TestRowsComeInTheLedgersOrder(t *testing.T) {
	s := book(t, estuary())
	rows := s.Rows()
	assert.Len(t, rows, len(s.Ledger.Operations))
	for i, row := range rows {
		assert.Equal(t, s.Ledger.Operations[i], row.Operation)
	}
}

func TestARowSaysWhatIsDoneOfEachBlock(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "dune=3")
	row, ok := s.Row("sew-pairs", dune)
	assert.True(t, ok)
	assert.Equal(t, []BlockCount{{"dune-01", 2}, {"dune-02", 1}, {"dune-03", 0}, {"dune-04", 0}}, row.Blocks)
	cut, _ := s.Row("cut", kelp)
	assert.Nil(t, cut.Blocks)
}

func TestWhatIsNotInTheRouteIsNotDone(t *testing.T) {
	s := cutAndKitted(t)
	_, ok := s.Row("sew-pairs", kelp)
	assert.False(t, ok)
	assert.Zero(t, s.Done("sew-pairs", kelp))
	assert.Zero(t, s.Left("sew-pairs", kelp))
	assert.Zero(t, s.BlockDone("gannet-01", "sew-pairs"))
	assert.Zero(t, s.BlockDone("tide-01", "lay-out-top"))
	assert.Zero(t, s.BlockDone("tide-01", "test"))

	none, err := Fold(nil)
	assert.NoError(t, err)
	assert.Zero(t, none.Done("cut", kelp))
	assert.Zero(t, none.Left("cut", kelp))
	assert.Zero(t, none.BlockDone("tide-01", "kit"))
	assert.Empty(t, none.Rows())
	assert.Empty(t, none.Remaining())
}

func TestBlocksAreFinishedWhenTheyAreSquaredUp(t *testing.T) {
	s := book(t, madeLedger(2, colourwayRun{"tide", 4}, colourwayRun{"dune", 2}))
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "tide=5", "dune=1")))
	for _, c := range []struct {
		lot              Lot
		blocks, finished int
	}{
		{Lot{}, 12, 6}, {tide, 8, 5}, {dune, 4, 1}, {quiltLot(1), 6, 5}, {quiltLot(2), 6, 1}, {kelp, 0, 0}, {colourwayLot("gannet"), 0, 0},
	} {
		assert.Equal(t, c.blocks, s.Blocks(c.lot), c.lot)
		assert.Equal(t, c.finished, s.FinishedBlocks(c.lot), c.lot)
	}
}

func TestAJobIsFinishedWhenItsLastQuiltIsHandedOver(t *testing.T) {
	s := book(t, madeLedger(2, colourwayRun{"tide", 4}))
	s = accepted(t, s, caughtUp(request(t, s, "hand-over", "quilt-1=1")))
	assert.Equal(t, 1, s.FinishedQuilts())
	_, finished := s.FinishedAt()
	assert.False(t, finished)
	r := caughtUp(request(t, s, "hand-over", "quilt-2=1"))
	r.At = monday.AddDate(0, 0, 4)
	s = accepted(t, s, r)
	assert.Equal(t, 2, s.FinishedQuilts())
	at, finished := s.FinishedAt()
	assert.True(t, finished)
	assert.True(t, at.Equal(r.At))
	s = recounted(t, s, Part{Operation: "hand-over", Lot: quiltLot(2), Count: 0})
	_, finished = s.FinishedAt()
	assert.False(t, finished)
	s = undone(t, s, "", "u1")
	at, finished = s.FinishedAt()
	assert.True(t, finished)
	assert.True(t, at.Equal(r.At), "an entry that was taken back finished nothing")
}

// Table times in the tests' job: 5 minutes of setup, 1 a count.
func TestRemainingTimeHasTheSetupOnlyBeforeTheFirstCount(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=12", "dune=all")
	var rests []Rest
	for _, rest := range s.Remaining() {
		assert.NotZero(t, rest.Left)
		if rest.Key == "sew-pairs" || rest.Key == "press-pairs" {
			rests = append(rests, Rest{Operation: Operation{Key: rest.Key, Lot: rest.Lot}, Left: rest.Left, Setup: rest.Setup, Minutes: rest.Minutes})
		}
	}
	assert.Equal(t, []Rest{
		{Operation{Key: "sew-pairs", Lot: tide}, 4, false, 4},
		{Operation{Key: "press-pairs", Lot: tide}, 16, true, 21},
		{Operation{Key: "press-pairs", Lot: dune}, 8, true, 13},
	}, rests)
}

func TestMinutesOfARowAreThoseOfStandingEntries(t *testing.T) {
	s := cutAndKitted(t)
	for _, took := range []planner.Minutes{20, 15} {
		r := request(t, s, "sew-pairs", "tide=4")
		r.Took = &took
		s = accepted(t, s, r)
	}
	s = logged(t, s, "sew-pairs", "tide=4")
	row, _ := s.Row("sew-pairs", tide)
	assert.Equal(t, planner.Minutes(35), row.Minutes)
	s = undone(t, s, "e6", "u1")
	row, _ = s.Row("sew-pairs", tide)
	assert.Equal(t, planner.Minutes(20), row.Minutes)
}
