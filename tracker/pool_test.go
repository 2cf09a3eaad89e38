package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// stripSets is nine-patches from strip sets that are made for the lot, beside
// pinwheels whose triangles are made eight at a time. Twelve blocks of tide take
// 24 segments of one kind, from two sets of 16, and 12 of the other, from one;
// three of dune take 12 triangles, from two pairs of squares.
const stripSets = `job: ropewalk
fabrics: {Kelp: {width: 40}, Foam: {width: 40}}
block: {print: Kelp, ground: Foam}
colourways:
  tide:
    blocks: 12
    steps:
      dark: {cut: print, size: 40 x 2 1/2}
      light: {cut: ground, size: 40 x 2 1/2}
      set: {sew: [[dark], [light], [dark]]}
      other: {sew: [[light], [dark], [light]]}
      slices: {subcut: set, every: 2 1/2}
      pale: {subcut: other, every: 2 1/2}
      nine: {sew: [[slices@90], [pale@90], [slices@90]]}
  dune: {blocks: 3, make: pinwheel, unit: 3 1/2, method: eight}
layout: {across: 5, down: 3}
`

func stripSetsBooked(t *testing.T) State {
	job, err := planner.Parse("ropewalk.yaml", []byte(stripSets))
	require.NoError(t, err)
	plan, err := planner.Make(job, planner.Prior{})
	require.NoError(t, err)
	return book(t, Freeze(plan))
}

// Freezing keeps what is taken from each pool, and how much one of it makes.
func TestTheLedgerKeepsWhatIsTakenFromPools(t *testing.T) {
	s := stripSetsBooked(t)
	row, ok := s.Row("subcut-slices", tide)
	require.True(t, ok)
	assert.Zero(t, row.PerBlock)
	assert.Equal(t, []Ref{{Key: "press-set", Lot: tide, Takes: []Take{{Count: 2}}, Makes: 16}}, row.After)
	kit, ok := s.Row("kit", tide)
	require.True(t, ok)
	assert.Equal(t, Take{Block: "tide-01", Count: 2}, kit.After[0].Takes[0])
}

// One pressed set gives 16 segments and no more; 9 segments are enough for 4
// blocks of two.
func TestUnitsMadeForTheLotAreAPool(t *testing.T) {
	s := stripSetsBooked(t)
	s = accepted(t, s, caughtUp(request(t, s, "press-set", "1")))
	assert.Equal(t, 3, s.Done("cut", kelp)+s.Done("cut", Lot{planner.FabricLot, "Foam"}), "one set is two strips and one")
	r := refused(t, s, request(t, s, "subcut-slices", "17"))
	assert.Equal(t, "tide is ready for 16 more pieces in 150 subcut slices, not 17: 110 press set has 1 of 2 units of tide made, 2 needed", r.What)
	s = logged(t, s, "subcut-slices", "9")
	s = accepted(t, s, caughtUp(request(t, s, "subcut-pale", "all")))
	r = refused(t, s, request(t, s, "kit", "tide=5"))
	assert.Equal(t, "tide is ready for 4 more blocks in 170 kit, not 5: 150 subcut slices has 9 of 24 pieces of tide made, 10 needed", r.What)
	s = logged(t, s, "kit", "tide=4")
	assert.Equal(t, 4, s.Done("kit", tide))
}

// Pairs of squares are taken from the same cut pieces as strips: of the pieces of
// Kelp in the plan, 2 each for 2 pairs.
func TestCuttingForTrianglesNeedNotWaitForTheStrips(t *testing.T) {
	s := stripSetsBooked(t)
	s = accepted(t, s, caughtUp(request(t, s, "seam-test", "1")))
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=1", "Foam=1")
	s = logged(t, s, "sew-half-squares", "1")
	r := refused(t, s, request(t, s, "sew-half-squares", "1"))
	assert.Equal(t, "dune is not ready for 50 sew half-squares: 40 cut has 1 of 7 pieces of Kelp made, 2 needed", r.What)
	s = logged(t, s, "cut-apart-half-squares", "1")
	s = logged(t, s, "press-half-squares", "8")
	assert.Equal(t, OutOfOrder, refused(t, s, request(t, s, "press-half-squares", "1")).Kind)
	s = logged(t, s, "trim-half-squares", "8")
	s = accepted(t, s, atBlocks(request(t, s, "kit", "2"), "dune-01", "dune-03"))
	assert.Equal(t, OutOfOrder, refused(t, s, atBlocks(request(t, s, "kit", "1"), "dune-02")).Kind, "8 triangles are two blocks")
}

// Whatever is open is logged until nothing is left: no rule waits for ever, and
// done and left make the count all the way.
func TestAJobOfStripSetsCanBeLoggedFromFirstToLast(t *testing.T) {
	s := stripSetsBooked(t)
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
	assert.Equal(t, 15, s.FinishedBlocks(Lot{}))
	for _, row := range s.Rows() {
		assert.Equal(t, row.Count, row.Done+row.Left())
		assert.Zero(t, row.Spare)
	}
}

// Catching up to a kitted block makes its segments, and their sets, without time.
func TestCatchingUpMakesWhatThePoolIsShortOf(t *testing.T) {
	s := stripSetsBooked(t)
	s = accepted(t, s, caughtUp(request(t, s, "square-up", "tide=9")))
	assert.Equal(t, []int{18, 9, 2, 1}, []int{
		s.Done("subcut-slices", tide), s.Done("subcut-pale", tide), s.Done("press-set", tide), s.Done("press-other", tide),
	}, "18 segments are more than one set of 16")
}

// Undoing the sets on which segments rest is refused, naming them.
func TestAPoolCannotBeUndoneFromUnderWhatWasTaken(t *testing.T) {
	s := stripSetsBooked(t)
	s = accepted(t, s, caughtUp(request(t, s, "press-set", "1")))
	made := s.Entries[len(s.Entries)-1].ID
	s = logged(t, s, "subcut-slices", "3")
	_, err := s.Undo(made, "u1", monday, "Ada")
	assert.Equal(t, BuiltOn, asRefusal(t, err).Kind)
}
