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
colourways:
  tide:
    blocks: %d
    block: {make: four-patch recut, square: 7, offset: 1 1/4}
    print: Kelp
    ground: Foam
  dune:
    blocks: 4
    block: {make: plain square, square: 13 1/2}
    print: Kelp
layout: {across: 3, down: %d, order: rows}
borders: [{width: 3, fabric: Foam}]
backing: {fabric: Foam, extra: 4}
batting: {extra: 4}
binding: {fabric: Kelp, strip: 2 1/2, finish: hand}
quilting: {by: self, density: medium}
`

func planned(t *testing.T, tideBlocks, down int, prior planner.Prior) planner.Plan {
	job, err := planner.Parse("reedbed.yaml", fmt.Appendf(nil, reedbed, tideBlocks, down))
	require.NoError(t, err)
	plan, err := planner.Make(job, prior)
	require.NoError(t, err)
	return plan
}

func TestAPlannedJobCanBeLoggedFromFirstToLast(t *testing.T) {
	s := book(t, Freeze(planned(t, 5, 3, planner.Prior{})))
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
