package planner

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner/measure"
)

// idsOf is the ids of a job's blocks by colourway, in the order of the layout.
func idsOf(blocks []Block) map[string][]string {
	ids := map[string][]string{}
	for _, b := range blocks {
		ids[b.Colourway] = append(ids[b.Colourway], b.ID)
	}
	return ids
}

func idJob(quantity int, colourways ...Colourway) Job {
	j := Job{Quantity: quantity, Colourways: colourways, Layout: Layout{Down: 1, Order: DealRows}}
	for _, c := range colourways {
		j.Layout.Across += c.Blocks
	}
	return j
}

func prior(blocks []Block) Prior {
	var p Prior
	for _, b := range blocks {
		p.Blocks = append(p.Blocks, PriorBlock{ID: b.ID, Quilt: b.Quilt, Colourway: b.Colourway})
	}
	return p
}

// Quantity 3 of 8 gives 01-08, 09-16, 17-24. Hand-worked.
func TestIdsRunThroughTheRun(t *testing.T) {
	blocks := laidBlocks(idJob(3, Colourway{Name: "tide", Blocks: 8}), Prior{})
	assert.Len(t, blocks, 24)
	assert.Equal(t, "tide-01", blocks[0].ID)
	assert.Equal(t, "tide-09", blocks[8].ID)
	assert.Equal(t, 2, blocks[8].Quilt)
	assert.Equal(t, "tide-24", blocks[23].ID)
}

func TestMoreBlocksTakeNewIdsAndFewerKeepTheirs(t *testing.T) {
	first := laidBlocks(idJob(2, Colourway{Name: "tide", Blocks: 2}), Prior{})
	more := laidBlocks(idJob(2, Colourway{Name: "tide", Blocks: 3}), prior(first))
	assert.Equal(t, []string{"tide-01", "tide-02", "tide-05", "tide-03", "tide-04", "tide-06"}, idsOf(more)["tide"])
	p := prior(first)
	p.Blocks[1].Retired = true
	again := laidBlocks(idJob(2, Colourway{Name: "tide", Blocks: 2}), p)
	assert.Equal(t, []string{"tide-01", "tide-05", "tide-03", "tide-04"}, idsOf(again)["tide"], "a retired id is not given again")
}

func TestARenamedColourwayKeepsItsBlocks(t *testing.T) {
	first := laidBlocks(idJob(1, Colourway{Name: "tide", Blocks: 2}), Prior{})
	renamed := laidBlocks(idJob(1, Colourway{Name: "ebb", Was: "tide", Blocks: 3}), prior(first))
	assert.Equal(t, []string{"tide-01", "tide-02", "ebb-03"}, idsOf(renamed)["ebb"])
	later := laidBlocks(idJob(1, Colourway{Name: "ebb", Was: "tide", Blocks: 3}), prior(renamed))
	assert.Equal(t, idsOf(renamed), idsOf(later), "the next revision changes nothing")
}

func TestANewColourwayDoesNotTakeTheBlocksOfARenamedOne(t *testing.T) {
	first := laidBlocks(idJob(1, Colourway{Name: "tide", Blocks: 2}), Prior{})
	both := laidBlocks(idJob(1, Colourway{Name: "tide", Blocks: 1}, Colourway{Name: "ebb", Was: "tide", Blocks: 2}), prior(first))
	assert.Equal(t, map[string][]string{"tide": {"tide-03"}, "ebb": {"tide-01", "tide-02"}}, idsOf(both))
}

func TestIdsGrowBeyondTwoDigits(t *testing.T) {
	blocks := laidBlocks(idJob(1, Colourway{Name: "Sea glass", Blocks: 101}), Prior{})
	assert.Equal(t, "Sea glass-07", blocks[6].ID)
	assert.Equal(t, "Sea glass-101", blocks[100].ID)
}

// laidBlocks lays a job's blocks out straight.
func laidBlocks(j Job, prior Prior) []Block {
	return blocksOf(j, dealtPlaces(&j, frameOf(&j, measure.Size{})), prior)
}
