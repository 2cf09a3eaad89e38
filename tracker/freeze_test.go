package tracker

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// plan is a small plan, as the planner gives it.
func plan(colourways []planner.Colourway, blocks []planner.Block, keys map[string]int) planner.Plan {
	p := planner.Plan{
		Job: planner.Job{
			ID: "kelp-cot", Title: "Kelp cot quilt", Client: "Saltmarsh Surgery",
			Due: planner.Date{Year: 2027, Month: 2, Day: 12}, Quantity: 2,
			Fabrics:    []planner.Fabric{{Name: "Kelp"}, {Name: "Foam"}},
			Colourways: colourways,
		},
		Blocks: blocks,
	}
	for _, key := range []string{"cut", "kit", "press", "square-up"} {
		if number, ok := keys[key]; ok {
			p.Operations = append(p.Operations, planner.Operation{
				Number: number, Key: key, Name: key, Lot: planner.Lot{Kind: planner.FabricLot, Name: "Kelp"}, CountedIn: "piece", Count: 4,
			})
		}
	}
	return p
}

func planned(id, colourway string, quilt int) planner.Block {
	return planner.Block{ID: id, Quilt: quilt, Colourway: colourway, Fabrics: []planner.RoleFabric{{Role: "print", Fabric: "Kelp"}}, Row: 1, Column: 2, Turn: 90}
}

func TestFreezingKeepsWhatBookingPromises(t *testing.T) {
	p := plan([]planner.Colourway{{Name: "tide"}, {Name: "dune"}}, []planner.Block{planned("tide-01", "tide", 1), planned("dune-01", "dune", 2)}, nil)
	p.Operations = []planner.Operation{{
		Number: 40, Key: "kit", Name: "kit", Lot: planner.Lot{Kind: planner.ColourwayLot, Name: "tide"}, CountedIn: "block", PerBlock: 1, Count: 1,
		After: []planner.Ref{{Key: "cut", Lot: planner.Lot{Kind: planner.FabricLot, Name: "Kelp"}, Takes: []planner.Take{{Block: "tide-01", Count: 2}}}},
		Place: planner.CuttingTable, Setup: planner.Span{Mean: 5, Spread: 0.4}, Unit: planner.Span{Mean: 1.5, Spread: 0.3}, Wait: 3,
		Doing: "stack the pieces", Care: []string{"mind the edge"},
	}}
	want := Ledger{
		Job: "kelp-cot", Title: "Kelp cot quilt", Client: "Saltmarsh Surgery", Due: planner.Date{Year: 2027, Month: 2, Day: 12},
		Revision: 1, Quantity: 2, Fabrics: []string{"Kelp", "Foam"}, Colourways: []string{"tide", "dune"},
		Operations: []Operation{{
			Number: 40, Key: "kit", Name: "kit", Lot: tide, CountedIn: "block", PerBlock: 1, Count: 1,
			After: []Ref{{Key: "cut", Lot: kelp, Takes: []Take{{"tide-01", 2}}}},
			Place: planner.CuttingTable, Setup: planner.Span{Mean: 5, Spread: 0.4}, Unit: planner.Span{Mean: 1.5, Spread: 0.3}, Wait: 3,
		}},
		Blocks: []Block{
			{ID: "tide-01", Quilt: 1, Colourway: "tide", Fabrics: []planner.RoleFabric{{Role: "print", Fabric: "Kelp"}}, Row: 1, Column: 2, Turn: 90},
			{ID: "dune-01", Quilt: 2, Colourway: "dune", Fabrics: []planner.RoleFabric{{Role: "print", Fabric: "Kelp"}}, Row: 1, Column: 2, Turn: 90},
		},
	}
	got := Freeze(p)
	assert.Equal(t, want, got)

	p.Blocks[0].Fabrics[0].Fabric = "Foam"
	p.Operations[0].After[0].Takes[0].Count = 9
	assert.Equal(t, want, got, "the plan is another's")

	text, err := json.Marshal(got)
	require.NoError(t, err)
	var back Ledger
	require.NoError(t, json.Unmarshal(text, &back))
	assert.Equal(t, want, back, "a ledger is the same after the store")
}

func TestRevisingRetiresWhatThePlanNoLongerHas(t *testing.T) {
	colourways := []planner.Colourway{{Name: "tide"}, {Name: "dune"}}
	all := []planner.Block{planned("tide-01", "tide", 1), planned("tide-02", "tide", 1), planned("dune-01", "dune", 1)}
	first := Freeze(plan(colourways, all, map[string]int{"cut": 10, "kit": 20, "press": 30, "square-up": 40}))
	first.Received = planner.Date{Year: 2026, Month: 11, Day: 2}

	second := Refreeze(first, plan(colourways, []planner.Block{all[0], all[2]}, map[string]int{"cut": 10, "kit": 20, "square-up": 40}))
	assert.Equal(t, 2, second.Revision)
	assert.Equal(t, first.Received, second.Received, "the job came in when it came in")
	assert.Equal(t, map[string]int{"press": 30}, second.Retired)
	assert.Equal(t, []string{"tide-01", "dune-01", "tide-02"}, ids(second.Blocks))
	assert.Equal(t, []bool{false, false, true}, retired(second.Blocks))
	assert.Equal(t, planner.Prior{
		Numbers: map[string]int{"cut": 10, "kit": 20, "press": 30, "square-up": 40},
		Blocks: []planner.PriorBlock{
			{ID: "tide-01", Quilt: 1, Colourway: "tide"}, {ID: "dune-01", Quilt: 1, Colourway: "dune"},
			{ID: "tide-02", Quilt: 1, Colourway: "tide", Retired: true},
		},
	}, second.Prior(), "no number and no id is given twice")

	third := Refreeze(second, plan(colourways, all[:1], map[string]int{"cut": 10, "press": 30}))
	assert.Equal(t, 3, third.Revision)
	assert.Equal(t, map[string]int{"kit": 20, "square-up": 40}, third.Retired, "what comes back is retired no more")
	assert.Equal(t, []string{"tide-01", "dune-01", "tide-02"}, ids(third.Blocks))
	assert.Equal(t, []bool{false, true, true}, retired(third.Blocks))
}

func ids(blocks []Block) []string {
	var all []string
	for _, b := range blocks {
		all = append(all, b.ID)
	}
	return all
}

func retired(blocks []Block) []bool {
	var all []bool
	for _, b := range blocks {
		all = append(all, b.Retired)
	}
	return all
}

func TestAColourwayIsKnownByTheNameItWasBookedUnder(t *testing.T) {
	type names = map[string]string
	type step struct {
		colourways []planner.Colourway
		renamed    names // in the ledger
		carried    names // old name to new, from the ledger before
	}
	for name, steps := range map[string][]step{
		"renamed, and the file goes on saying so": {
			{[]planner.Colourway{{Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"teal": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"ink": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "ink"}, {Name: "rose"}}, names{"ink": "teal"}, names{"ink": "ink", "rose": "rose"}},
		},
		"renamed twice": {
			{[]planner.Colourway{{Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"teal": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "slate", Was: "ink"}, {Name: "rose"}}, names{"slate": "teal"}, names{"ink": "slate", "rose": "rose"}},
		},
		"renamed, then exchanged with another": {
			{[]planner.Colourway{{Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"teal": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "ink", Was: "rose"}, {Name: "rose", Was: "ink"}}, names{"ink": "rose", "rose": "teal"}, names{"ink": "rose", "rose": "ink"}},
		},
		"renamed back": {
			{[]planner.Colourway{{Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"teal": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "teal", Was: "ink"}, {Name: "rose"}}, nil, names{"ink": "teal", "rose": "rose"}},
		},
		"two names exchanged": {
			{[]planner.Colourway{{Name: "teal", Was: "rose"}, {Name: "rose", Was: "teal"}}, names{"teal": "rose", "rose": "teal"}, names{"teal": "rose", "rose": "teal"}},
			{[]planner.Colourway{{Name: "teal", Was: "rose"}, {Name: "rose", Was: "teal"}}, names{"teal": "rose", "rose": "teal"}, names{"teal": "teal", "rose": "rose"}},
		},
		"the old name goes to a new colourway": {
			{[]planner.Colourway{{Name: "teal"}, {Name: "ink", Was: "teal"}, {Name: "rose"}}, names{"ink": "teal"}, names{"teal": "ink", "rose": "rose"}},
			{[]planner.Colourway{{Name: "teal"}, {Name: "slate", Was: "ink"}, {Name: "rose"}}, names{"slate": "teal"}, names{"teal": "teal", "ink": "slate", "rose": "rose"}},
		},
		"a name that was never booked": {
			{[]planner.Colourway{{Name: "teal"}, {Name: "rose", Was: "gannet"}}, nil, names{"teal": "teal", "rose": "rose"}},
		},
		"dropped": {
			{[]planner.Colourway{{Name: "rose"}}, nil, names{"rose": "rose"}},
		},
	} {
		before := Freeze(plan([]planner.Colourway{{Name: "teal"}, {Name: "rose"}}, nil, nil))
		for _, step := range steps {
			now := Refreeze(before, plan(step.colourways, nil, nil))
			assert.Equal(t, step.renamed, now.Renamed, name)
			assert.Equal(t, step.carried, carriedNames(before, now), name)
			before = now
		}
	}
}

func TestRetiredBlocksGoByTheNameTheirColourwayHasNow(t *testing.T) {
	first := Freeze(plan([]planner.Colourway{{Name: "teal"}}, []planner.Block{planned("teal-01", "teal", 1), planned("teal-02", "teal", 1)}, nil))
	second := Refreeze(first, plan([]planner.Colourway{{Name: "ink", Was: "teal"}}, []planner.Block{planned("teal-01", "ink", 1)}, nil))
	assert.Equal(t, "ink", second.Blocks[1].Colourway)
	assert.True(t, second.Blocks[1].Retired)
}
