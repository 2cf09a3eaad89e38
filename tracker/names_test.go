package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// onTheWall is a planned job with one pair sewn, whose operations have the names
// that are on the wall.
func onTheWall(t *testing.T) State {
	s := book(t, Freeze(reedbedPlan(t, 5, 3, planner.Prior{})))
	return accepted(t, s, caughtUp(request(t, s, "sew-pairs", "tide=1")))
}

func TestAnOperationIsMeantByItsNameOnTheWall(t *testing.T) {
	s := onTheWall(t)
	at, ok := s.find("sew-pairs", tide)
	require.True(t, ok)
	title := s.Ledger.Operations[at].Title()
	require.Equal(t, "80 chain-sew pairs", title)
	for _, typed := range []string{"chain-sew pairs", "Chain-Sew Pairs", "chain sew  pairs", "chain-sew p", title, "sew pairs"} {
		ev, err := s.Log(request(t, s, typed, "tide=1"))
		require.NoError(t, err, typed)
		assert.Equal(t, "sew-pairs", ev.Parts[0].Operation, typed)
	}
	ev, err := s.Log(request(t, s, "chain-sew pairs..press pairs", "tide=1"))
	require.NoError(t, err)
	assert.Len(t, ev.Parts, 2)
}

// Keys never change, so that a script which types the beginning of one goes on
// meaning it whatever operations are called.
func TestTheBeginningOfAKeyGoesBeforeThatOfAName(t *testing.T) {
	l := estuary()
	for i := range l.Operations {
		if l.Operations[i].Key == "kit" {
			l.Operations[i].Name = "layers in stacks"
		}
	}
	s := book(t, l)
	for typed, want := range map[string]string{"layer": "layer", "laye": "layer", "layers in": "kit"} {
		key, err := s.operation(typed)
		require.NoError(t, err, typed)
		assert.Equal(t, want, key, typed)
	}
}

func TestRefusalsCallOperationsAsTheWallDoes(t *testing.T) {
	s := onTheWall(t)
	for typed, want := range map[string]string{
		"chain-sew":        `"chain-sew" may be any of 80 chain-sew pairs and 100 chain-sew units`,
		"chain-sow pairs":  `there is no operation "chain-sow pairs"; there are 80 chain-sew pairs and 100 chain-sew units`,
		"9 hem the pillow": `there is no operation "9 hem the pillow": the route goes from 10 prepare the fabric to 360 hand over`,
	} {
		_, err := s.Log(request(t, s, typed, "1"))
		assert.EqualError(t, err, want)
	}
}

func TestTheUnitOfACountIsTheOperationsOwn(t *testing.T) {
	s := cutAndKitted(t)
	for _, count := range []string{"2 pairs", "2 PAIR", "1 block"} {
		ev, err := s.Log(request(t, s, "sew-pairs", "tide="+count))
		require.NoError(t, err, count)
		assert.Equal(t, 2, ev.Parts[0].Count, count)
	}
	r := refused(t, s, request(t, s, "sew-pairs", "tide=2 units"))
	assert.Equal(t, said{MissingCount, "50 sew-pairs counts pairs, not units: tide has 16 pairs left", 0, 16, 16}, whatIsSaid(r))
}

func TestTheBlockThatIsTestedMayBeNamedForItsTest(t *testing.T) {
	s := cutAndKitted(t)
	r := refused(t, s, request(t, s, "test", "tide=1"))
	assert.Equal(t, "sew tide-01 first: log its steps with --block tide-01, or catch up (--catch-up)", r.Hint)
	plain, err := s.Log(caughtUp(request(t, s, "test", "tide=1")))
	require.NoError(t, err)
	named, err := s.Log(caughtUp(atBlocks(request(t, s, "test", "tide=1"), "tide-1")))
	require.NoError(t, err)
	assert.Equal(t, plain, named, "it is the same entry")
	r = refused(t, s, atBlocks(request(t, s, "test", "tide=1"), "tide-02"))
	assert.EqualError(t, r, "20 test is of tide-01, not of tide-02")
}

// Of a job just booked the fabrics can be prepared; of one with 12 pairs sewn
// those can be pressed, and all else waits or is done.
func TestWhatCanGoOnNow(t *testing.T) {
	keys := func(rows []Row) (all []string) {
		for _, row := range rows {
			all = append(all, row.Key+" "+row.Lot.Name)
		}
		return all
	}
	assert.Equal(t, []string{"prepare Kelp", "prepare Foam"}, keys(book(t, estuary()).Next(5)))
	s := logged(t, cutAndKitted(t), "sew-pairs", "tide=12")
	assert.Equal(t, []string{"sew-pairs tide", "sew-pairs dune", "press-pairs tide"}, keys(s.Next(5)))
	assert.Len(t, s.Next(2), 2)
	assert.Empty(t, State{}.Next(5))
}
