package tracker

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// reedbed is a job file with most of what a route can have: two makes, two
// alike quilts, a shared fabric, borders, backing and binding.
const reedbed = `job: reedbed-pair
client: Saltmarsh Surgery
received: 2026-11-02
due: 2027-02-12
quantity: 2
fabrics:
  Kelp: {form: yardage, width: 42}
  Foam: {form: yardage, width: 42}
block: {make: four-patch recut, square: 7, offset: 1 1/4}
colourways:
  tide:
    blocks: %d
    print: Kelp
    ground: Foam
  dune:
    blocks: 4
    make: plain square
    square: 12 1/2
    print: Kelp
layout: {across: 3, down: %d, order: rows}
borders: [{width: 3, fabric: Foam}]
backing: {fabric: Foam, extra: 4}
batting: {extra: 4}
binding: {fabric: Kelp, strip: 2 1/2, finish: hand}
quilting: {by: self, density: medium}
`

func reedbedPlan(t *testing.T, tideBlocks, down int, prior planner.Prior) planner.Plan {
	job, err := planner.Parse("reedbed.yaml", fmt.Appendf(nil, reedbed, tideBlocks, down))
	require.NoError(t, err)
	plan, err := planner.Make(job, prior)
	require.NoError(t, err)
	return plan
}

func TestAPlannedJobCanBeLoggedFromFirstToLast(t *testing.T) {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	for left := s.Remaining(); len(left) > 0; {
		for _, rest := range left {
			r := request(t, s, rest.Key, rest.Lot.Name+"=all")
			if ev, err := s.Log(r); err == nil {
				s = after(t, s, ev)
			} else {
				assert.Equal(t, OutOfOrder, asRefusal(t, err).Kind)
			}
		}
		now := s.Remaining()
		require.Less(t, len(now), len(left), "work goes on")
		left = now
	}
	assert.Equal(t, 2, s.FinishedQuilts())
	assert.Equal(t, 18, s.FinishedBlocks(Lot{}))
	assert.Equal(t, 9, s.FinishedBlocks(quiltLot(2)))
	for _, row := range s.Rows() {
		assert.Zero(t, row.Spare)
	}
}

// Three more blocks of tide for each of two quilts: of 10 made, none is lost;
// 6 more are to be made. Taken out again, those begun meanwhile are spare.
func TestAPlannedJobIsRevisedAndKeepsWhatIsOnTheWall(t *testing.T) {
	first := Freeze(reedbedPlan(t, 5, 3, planner.Prior{}))
	s := accepted(t, book(t, first), LogRequest{
		Operation: "square-up", Counts: []CountAsked{{Lot: "tide", All: true}}, CatchUp: true, ID: "e2", At: monday,
	})
	second := Refreeze(first, reedbedPlan(t, 8, 4, first.Prior()))
	s = revise(t, s, second)
	assert.Equal(t, []int{10, 6}, []int{s.Done("square-up", tide), s.Left("square-up", tide)})
	assert.Equal(t, first.numbers(), second.numbers(), "no operation has a new number")
	for _, b := range first.Blocks {
		assert.Equal(t, 1, s.BlockDone(b.ID, "square-up")+boolean(b.Colourway != "tide"), b.ID)
	}

	s = accepted(t, s, LogRequest{
		Operation: "sew-pairs", Counts: []CountAsked{{Lot: "tide", Number: 2, Blocks: true}}, CatchUp: true, ID: "e4", At: monday,
	})
	third := Refreeze(second, reedbedPlan(t, 5, 3, second.Prior()))
	s = revise(t, s, third)
	assert.Equal(t, []int{10, 0}, []int{s.Done("square-up", tide), s.Left("square-up", tide)})
	pairs, _ := s.Row("sew-pairs", tide)
	assert.Equal(t, []int{20, 4}, []int{pairs.Done, pairs.Spare})
	assert.Len(t, third.Blocks, 24, "18 live, 6 retired")
}

func boolean(yes bool) int {
	if yes {
		return 1
	}
	return 0
}
