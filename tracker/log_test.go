package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

func TestAnEntrySaysWhatWasDone(t *testing.T) {
	s := cutAndKitted(t)
	r := request(t, s, "sew-pairs", "tide=12")
	took := planner.Minutes(35)
	r.Took, r.Reason = &took, "before supper"
	ev, err := s.Log(r)
	require.NoError(t, err)
	assert.Equal(t, Event{
		Schema: 1, ID: r.ID, At: monday, By: "Runa", Kind: Logged, Revision: 1, Reason: "before supper",
		Parts: []Part{{Operation: "sew-pairs", Lot: tide, Count: 12, Minutes: &took}},
	}, ev)
	s = after(t, s, ev)
	row, ok := s.Row("sew-pairs", tide)
	require.True(t, ok)
	assert.Equal(t, 12, row.Done)
	assert.Equal(t, 4, row.Left())
	assert.Equal(t, took, row.Minutes)
}

func TestAnOperationIsMeantByNumberKeyOrBeginning(t *testing.T) {
	s := cutAndKitted(t)
	for _, typed := range []string{"50", "sew-pairs", "sew-p", "SEW-PAIRS", " sew-pairs "} {
		ev, err := s.Log(request(t, s, typed, "tide=1"))
		require.NoError(t, err, typed)
		assert.Equal(t, "sew-pairs", ev.Parts[0].Operation, typed)
	}
}

func TestAKeyThatBeginsAnotherIsMeantItself(t *testing.T) {
	l := estuary()
	for i := range l.Operations {
		if l.Operations[i].Key == "layer" {
			l.Operations[i].Key = "lay"
		}
		for j, ref := range l.Operations[i].After {
			if ref.Key == "layer" {
				l.Operations[i].After[j].Key = "lay"
			}
		}
	}
	key, err := book(t, l).operation("lay")
	require.NoError(t, err)
	assert.Equal(t, "lay", key)
}

func TestCountsInEveryForm(t *testing.T) {
	for name, c := range map[string]struct {
		operation string
		counts    []string
		want      []Part
	}{
		"a number of the operation's own": {"sew-pairs", []string{"tide=3"}, []Part{{"sew-pairs", tide, 3, nil, nil}}},
		"blocks":                          {"sew-pairs", []string{"tide=3 blocks"}, []Part{{"sew-pairs", tide, 6, nil, nil}}},
		"the rest":                        {"sew-pairs", []string{"dune=all"}, []Part{{"sew-pairs", dune, 8, nil, nil}}},
		"several lots":                    {"sew-pairs", []string{"tide=12", "dune=8"}, []Part{{"sew-pairs", tide, 12, nil, nil}, {"sew-pairs", dune, 8, nil, nil}}},
		"a name in other capitals":        {"sew-pairs", []string{"Tide=1"}, []Part{{"sew-pairs", tide, 1, nil, nil}}},
		"a run in its own counts":         {"sew-pairs..press-pairs", []string{"tide=4"}, []Part{{"sew-pairs", tide, 4, nil, nil}, {"press-pairs", tide, 4, nil, nil}}},
		"a run in blocks": {"50..sew-u", []string{"tide=2 blocks"},
			[]Part{{"sew-pairs", tide, 4, nil, nil}, {"press-pairs", tide, 4, nil, nil}, {"sew-units", tide, 2, nil, nil}}},
		"a run of one": {"sew-pairs..sew-pairs", []string{"tide=1"}, []Part{{"sew-pairs", tide, 1, nil, nil}}},
		"a run over several lots": {"sew-pairs..press-pairs", []string{"tide=4", "dune=2"},
			[]Part{{"sew-pairs", tide, 4, nil, nil}, {"sew-pairs", dune, 2, nil, nil}, {"press-pairs", tide, 4, nil, nil}, {"press-pairs", dune, 2, nil, nil}}},
	} {
		s := cutAndKitted(t)
		ev, err := s.Log(request(t, s, c.operation, c.counts...))
		require.NoError(t, err, name)
		assert.Equal(t, c.want, ev.Parts, name)
	}
}

func TestTheRestOfARunPassesOverWhatIsDone(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=all")
	ev, err := s.Log(request(t, s, "sew-pairs..press-pairs", "tide=all"))
	require.NoError(t, err)
	assert.Equal(t, []Part{{"press-pairs", tide, 16, nil, nil}}, ev.Parts)
}

func TestTheOnlyLotWithWorkLeftNeedsNoName(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "dune=all")
	ev, err := s.Log(request(t, s, "sew-pairs", "5"))
	require.NoError(t, err)
	assert.Equal(t, []Part{{"sew-pairs", tide, 5, nil, nil}}, ev.Parts)

	r := request(t, s, "press-pairs", "8")
	r.Lot = &dune
	ev, err = s.Log(r)
	require.NoError(t, err)
	assert.Equal(t, []Part{{"press-pairs", dune, 8, nil, nil}}, ev.Parts, "a lot that is named is meant")
}

func TestBlocksAreFilledInTheOrderTheyAreNamed(t *testing.T) {
	for name, c := range map[string]struct {
		counts []string
		blocks []string
		want   []BlockCount
	}{
		"one block":                      {[]string{"2"}, []string{"tide-03"}, []BlockCount{{"tide-03", 2}}},
		"without its nought":             {[]string{"1"}, []string{"tide-3"}, []BlockCount{{"tide-03", 1}}},
		"in other capitals":              {[]string{"1"}, []string{"Tide-03"}, []BlockCount{{"tide-03", 1}}},
		"the last one is not full":       {[]string{"3"}, []string{"tide-05", "tide-02"}, []BlockCount{{"tide-05", 2}, {"tide-02", 1}}},
		"counted in blocks":              {[]string{"2 blocks"}, []string{"tide-05", "tide-02"}, []BlockCount{{"tide-05", 2}, {"tide-02", 2}}},
		"the rest of the blocks":         {[]string{"all"}, []string{"tide-05", "tide-02"}, []BlockCount{{"tide-05", 2}, {"tide-02", 2}}},
		"with the colourway's own count": {[]string{"tide=2"}, []string{"tide-05"}, []BlockCount{{"tide-05", 2}}},
	} {
		s := cutAndKitted(t)
		ev, err := s.Log(atBlocks(request(t, s, "sew-pairs", c.counts...), c.blocks...))
		require.NoError(t, err, name)
		require.Len(t, ev.Parts, 1, name)
		assert.Equal(t, c.want, ev.Parts[0].Blocks, name)
		assert.Equal(t, tide, ev.Parts[0].Lot, name)
	}
}

func TestANamedBlockTakesItsPlaceFromUnnamedCountsWhichMoveOn(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=5")
	assert.Equal(t, []int{2, 2, 1, 0}, firstFour(s, "sew-pairs"))
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "2"), "tide-01"))
	assert.Equal(t, []int{2, 2, 2, 1}, firstFour(s, "sew-pairs"))
	assert.Equal(t, 7, s.Done("sew-pairs", tide))
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "all"), "tide-06"))
	assert.Equal(t, 2, s.BlockDone("tide-06", "sew-pairs"))
	assert.Equal(t, 9, s.Done("sew-pairs", tide))
}

func firstFour(s State, key string) []int {
	var at []int
	for _, id := range []string{"tide-01", "tide-02", "tide-03", "tide-04"} {
		at = append(at, s.BlockDone(id, key))
	}
	return at
}

// Table times in the tests' job: 5 minutes of setup and 1 a count. 12 + 5 and
// 8 + 5 of 30 in all; of 45 minutes 25.5 and 19.5.
func TestTimeIsSharedByTheTable(t *testing.T) {
	s := cutAndKitted(t)
	r := request(t, s, "sew-pairs", "tide=12", "dune=8")
	took := planner.Minutes(45)
	r.Took = &took
	ev, err := s.Log(r)
	require.NoError(t, err)
	assert.InDelta(t, 25.5, float64(*ev.Parts[0].Minutes), 1e-9)
	assert.InDelta(t, 19.5, float64(*ev.Parts[1].Minutes), 1e-9)
}

func TestTimeIsSharedByCountsWhereTheTableHasNone(t *testing.T) {
	l := estuary()
	for i := range l.Operations {
		l.Operations[i].Setup, l.Operations[i].Unit = planner.Span{}, planner.Span{}
	}
	s := book(t, l)
	s = accepted(t, s, caughtUp(request(t, s, "kit", "tide=all", "dune=all")))
	r := request(t, s, "sew-pairs", "tide=12", "dune=4")
	took := planner.Minutes(40)
	r.Took = &took
	ev, err := s.Log(r)
	require.NoError(t, err)
	assert.InDelta(t, 30, float64(*ev.Parts[0].Minutes), 1e-9)
	assert.InDelta(t, 10, float64(*ev.Parts[1].Minutes), 1e-9)
}

func TestAnEntryWithoutAnIDIsNone(t *testing.T) {
	s := cutAndKitted(t)
	r := request(t, s, "sew-pairs", "tide=1")
	r.ID = ""
	_, err := s.Log(r)
	assert.EqualError(t, err, "an entry needs an id")
}

func TestTheRestOfABlockIsNoMoreThanTheRestOfItsLot(t *testing.T) {
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=15")
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "all"), "tide-08"))
	assert.Equal(t, 16, s.Done("sew-pairs", tide))

	s = recounted(t, cutAndKitted(t), Part{Operation: "sew-pairs", Lot: tide, Count: 5, Blocks: []BlockCount{{"tide-01", 5}}})
	s = accepted(t, s, atBlocks(request(t, s, "sew-pairs", "all"), "tide-01", "tide-02"))
	assert.Equal(t, []int{2, 2, 0, 0}, firstFour(s, "sew-pairs"), "a block that has too many takes nothing from its neighbour")
}
