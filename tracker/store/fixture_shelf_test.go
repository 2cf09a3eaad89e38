package store_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
)

// A shelf and a job that takes of it are read as the program of their day wrote
// them: 3 yd were put there, 10 in cut, 80 in counted then; 10 in were taken off,
// and put back.
func TestAShelfIsReadAsItWasWritten(t *testing.T) {
	s := openToRead(t, fixture(t, "shelf.store"))
	own := must(s.MakerEvents())
	var deeds []tracker.ShelfDeed
	for _, ev := range own {
		assert.Equal(t, "Maren", ev.By)
		if ev.Kind == tracker.Shelved {
			deeds = append(deeds, ev.Shelf.Do)
		}
	}
	assert.Equal(t, []tracker.ShelfDeed{"put", "put", "put", "scrap", "recount", "take"}, deeds)
	assert.Equal(t, "take-1", own[6].Target)
	assert.Equal(t, tracker.Shelf{
		Do: "put", Material: "cloth", Name: "Foam", Form: "yardage", Width: 42 * measure.Inch,
		Amount: planner.Amount(3 * measure.Yard), DyeLot: "A7", Place: "blue box",
	}, *own[0].Shelf)

	job, err := tracker.Fold(must(s.Events("spit")))
	require.NoError(t, err)
	require.NotEmpty(t, job.Ledger.Cloth)
	assert.Equal(t, planner.StockPart{Operation: "cut", LotKind: planner.FabricLot, Lot: "Kelp", Count: 12, Share: 1}, job.Ledger.Cloth[0].Parts[0])

	stock, err := shelf.Fold(own, []tracker.State{job})
	require.NoError(t, err)
	require.Len(t, stock.Items, 4)
	inch := planner.Amount(measure.Inch)
	foam, kelp, left := stock.Items[0], stock.Items[1], stock.Items[3]
	assert.Equal(t, []planner.Amount{108 * inch, -18 * inch, 10 * inch, 34 * inch, 46 * inch}, []planner.Amount{foam.Put, foam.Found, foam.Used, foam.Kept, foam.Free})
	assert.Equal(t, []planner.Amount{2, 1, 1}, []planner.Amount{kelp.Put, kelp.Scrapped, kelp.Kept})
	assert.Equal(t, []string{"spit.2", "spit", "A7"}, []string{left.ID, left.Job, left.DyeLot})
}
