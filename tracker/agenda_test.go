package tracker

import (
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"quiltrun/planner"
)

var today = planner.Date{Year: 2026, Month: 11, Day: 24}

// tasksOf is an agenda in short: what, of which lot, how many.
func tasksOf(a Agenda) []string {
	var all []string
	for _, b := range a.Batches {
		for _, t := range b.Tasks {
			all = append(all, t.Job+" "+t.Key+" "+t.Lot.Name+" "+things(t.Count, t.CountedIn))
		}
	}
	return all
}

func TestWhatCanGoOnIsWhatLogWouldTake(t *testing.T) {
	s := cutAndKitted(t)
	can, held := s.Prospect(today)
	for _, d := range can {
		_, err := s.Log(request(t, s, d.Key, d.Lot.Name+"="+strconv.Itoa(d.Room)))
		assert.NoError(t, err, "%s of %s: %d", d.Key, d.Lot.Name, d.Room)
	}
	for _, h := range held {
		_, err := s.Log(request(t, s, h.Key, h.Lot.Name+"=1"))
		assert.Equal(t, OutOfOrder, asRefusal(t, err).Kind, "%s of %s", h.Key, h.Lot.Name)
		assert.NotEmpty(t, h.Why)
	}
	assert.Equal(t, len(s.Remaining()), len(can)+len(held), "every row with work left is one or the other")
}

func TestAJobDueFirstComesFirstAndOthersJoinItsSetUp(t *testing.T) {
	early, late, never := withPlaces(estuary()), withPlaces(estuary()), withPlaces(estuary())
	early.Job, late.Job, never.Job = "mat", "lap", "aunt"
	early.Due, never.Due = planner.Date{Year: 2026, Month: 12, Day: 1}, planner.Date{}
	a := NewAgenda([]State{book(t, never), book(t, late), book(t, early)}, AgendaRequest{Today: today, At: planner.Iron})
	assert.Equal(t, []string{
		"mat prepare Kelp 1 piece", "mat prepare Foam 1 piece",
		"lap prepare Kelp 1 piece", "lap prepare Foam 1 piece",
		"aunt prepare Kelp 1 piece", "aunt prepare Foam 1 piece",
	}, tasksOf(a))
	require.Len(t, a.Batches, 1)
	// Hand-worked from the tests' ledger: 5 min to set up, once, and 1 min each.
	assert.InDelta(t, 11, float64(a.Batches[0].Minutes), 1e-9)
}

// withPlaces gives the tests' ledger its places of work.
func withPlaces(l Ledger) Ledger {
	for i := range l.Operations {
		o := &l.Operations[i]
		switch o.Key {
		case "prepare", "press-pairs":
			o.Place = planner.Iron
		case "sew-pairs", "sew-units":
			o.Place = planner.Machine
		default:
			o.Place = planner.CuttingTable
		}
	}
	return l
}

// Hand-worked: set-up 5 min and a minute a pair, so that 17 min take 12 of tide's
// 16 pairs.
func TestCountsAreTakenAsTheyFit(t *testing.T) {
	s := allKitted(t)
	a := NewAgenda([]State{s}, AgendaRequest{For: 17, Today: today, At: planner.Machine})
	assert.Equal(t, []string{"estuary-lap sew-pairs tide 12 pairs"}, tasksOf(a))
	assert.InDelta(t, 17, float64(a.Minutes), 1e-9)
	assert.Equal(t, 16, a.Batches[0].Tasks[0].Left)
}

// What is sewn can be pressed in the same hour. Hand-worked: 5 + 16 + 8 min sew
// all pairs in one set-up, 5 + 24 min press them: 58 of 60 min; what is left has no
// room for another set-up.
func TestWhatWorkMakesPossibleIsReckonedWith(t *testing.T) {
	a := NewAgenda([]State{allKitted(t)}, AgendaRequest{For: 60, Today: today})
	assert.Equal(t, []string{
		"estuary-lap sew-pairs tide 16 pairs", "estuary-lap sew-pairs dune 8 pairs",
		"estuary-lap press-pairs tide 16 pairs", "estuary-lap press-pairs dune 8 pairs",
	}, tasksOf(a))
	assert.InDelta(t, 58, float64(a.Minutes), 1e-9)
}

// Hand-worked: 5 + 24 min sew all pairs. The 10 min that are left would press 5 of
// 24 pairs after 5 min of setting up, which is worth it; 9 min would press 4, which
// is not.
func TestARestOfTheTimeIsNotFilledWithBits(t *testing.T) {
	s := allKitted(t)
	assert.Contains(t, tasksOf(NewAgenda([]State{s}, AgendaRequest{For: 39, Today: today})), "estuary-lap press-pairs tide 5 pairs")
	assert.Len(t, tasksOf(NewAgenda([]State{s}, AgendaRequest{For: 38, Today: today})), 2)
}

func TestWorkThatIsLongerThanTheTimeIsSaid(t *testing.T) {
	a := NewAgenda([]State{allKitted(t)}, AgendaRequest{For: 5, Today: today})
	assert.Empty(t, a.Batches)
	require.NotEmpty(t, a.Longer)
	assert.Equal(t, "sew-pairs", a.Longer[0].Key)
}

// allKitted is a job whose blocks are all stacked.
func allKitted(t require.TestingT) State {
	s := book(t, withPlaces(estuary()))
	s = logged(t, s, "prepare", "Kelp=all", "Foam=all")
	s = logged(t, s, "cut", "Kelp=all", "Foam=all")
	return logged(t, s, "kit", "tide=all", "dune=all")
}

// sentOut is a job of which all is done but handing over; layer stands for the
// operation that sends the quilt out for 42 days.
func sentOut(t require.TestingT) State {
	l := estuary()
	for i := range l.Operations {
		if l.Operations[i].Key == "layer" {
			l.Operations[i].Wait = 42
		}
	}
	return accepted(t, book(t, l), caughtUp(request(t, book(t, l), "layer", "1")))
}

// The entry is of 9 November 2026; 42 days later is 21 December (hand-worked).
func TestAQuiltThatWasSentOutHoldsWhatComesAfterUntilItsDay(t *testing.T) {
	s := sentOut(t)
	_, held := s.Prospect(planner.Date{Year: 2026, Month: 12, Day: 20})
	at := slices.IndexFunc(held, func(h Held) bool { return h.Key == "hand-over" })
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, "quilt-1 went out on 2026-11-09 and is expected back on 2026-12-21", held[at].Why)
	assert.Equal(t, planner.Date{Year: 2026, Month: 12, Day: 21}, held[at].Back)
	can, _ := s.Prospect(planner.Date{Year: 2026, Month: 12, Day: 21})
	assert.True(t, slices.ContainsFunc(can, func(d Doable) bool { return d.Key == "hand-over" }))
}

// The first block of each colourway is sewn and measured before the rest is cut.
// Hand-worked: it takes 2 pieces of each fabric and 2 pairs; borders are cut with
// the rest.
func TestTheRunWaitsForItsTestBlock(t *testing.T) {
	s := logged(t, book(t, estuary()), "prepare", "Kelp=all", "Foam=all")
	next := s.NextDoable(today)
	require.NotEmpty(t, next)
	assert.Equal(t, "cut", next[0].Key)
	assert.Equal(t, []int{4, 4}, []int{next[0].Room, next[1].Room}, "2 each for tide-01 and dune-01")
	assert.Equal(t, []string{"tide-01", "dune-01"}, next[0].Tests)
	s = logged(t, s, "cut", "Kelp=4", "Foam=4")
	s = logged(t, s, "kit..sew-pairs", "tide=1 block")
	_, held := s.Prospect(today)
	at := slices.IndexFunc(held, func(h Held) bool { return h.Key == "kit" && h.Lot == tide })
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, "tide-01 is to be measured in 20 test before the rest is begun", held[at].Why)

	ahead := accepted(t, s, caughtUp(request(t, s, "kit", "tide=all")))
	can, _ := ahead.Prospect(today)
	at = slices.IndexFunc(can, func(d Doable) bool { return d.Key == "sew-pairs" && d.Lot == tide })
	require.GreaterOrEqual(t, at, 0)
	assert.Equal(t, 14, can[at].Room, "a maker who went ahead is not held up")
}

// Whatever there is time for: counts fit the time and what is left, and can be
// logged in that order.
func TestAgendasFitTheTimeAndCanBeLogged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		minutes := planner.Minutes(rapid.IntRange(1, 400).Draw(t, "for"))
		s := book(t, withPlaces(madeLedger(rapid.IntRange(1, 2).Draw(t, "quilts"), colourwayRun{"tide", rapid.IntRange(1, 6).Draw(t, "tide")}, colourwayRun{"dune", 3})))
		a := NewAgenda([]State{s}, AgendaRequest{For: minutes, Today: today})
		assert.LessOrEqual(t, float64(a.Minutes), float64(minutes)+1e-6)
		for _, b := range a.Batches {
			for _, task := range b.Tasks {
				assert.Positive(t, task.Count)
				s = accepted(t, s, request(t, s, task.Key, task.Lot.Name+"="+strconv.Itoa(task.Count)))
			}
		}
	})
}
