package tracker

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// at is a moment of Monday 9 November 2026 in the tests' zone, or of a day after:
// "19:30", "+1 08:40".
func at(t require.TestingT, text string) time.Time {
	days := 0
	if text[0] == '+' {
		_, err := fmt.Sscanf(text, "+%d %s", &days, &text)
		require.NoError(t, err)
	}
	clock, err := time.Parse("15:04", text)
	require.NoError(t, err)
	return time.Date(2026, 11, 9+days, clock.Hour(), clock.Minute(), 0, 0, monday.Location())
}

// bench is a job at which somebody works.
type bench struct {
	t require.TestingT
	s State
	n int
}

func newBench(t require.TestingT) *bench { return &bench{t: t, s: cutAndKitted(t)} }

func (b *bench) id() string { b.n++; return fmt.Sprintf("t%d", b.n) }

func (b *bench) take(ev Event, err error) string {
	require.NoError(b.t, err)
	b.s = after(b.t, b.s, ev)
	all, err := Fold(b.s.events)
	require.NoError(b.t, err)
	sameState(b.t, all, b.s)
	return ev.ID
}

func (b *bench) start(clock, operation string, lot Lot) string {
	return b.take(b.s.Start(StartRequest{Operation: operation, Lot: &lot, ID: b.id(), At: at(b.t, clock), By: "Runa"}))
}

func (b *bench) screen(clock, operation string, lot Lot) string {
	return b.take(b.s.Start(StartRequest{Operation: operation, Lot: &lot, Ticked: true, ID: b.id(), At: at(b.t, clock), By: "Runa"}))
}

func (b *bench) stop(clock string) string {
	return b.take(b.s.Stop(b.id(), nil, at(b.t, clock), "Runa"))
}

func (b *bench) stopAt(clock, end string) string {
	ended := at(b.t, end)
	return b.take(b.s.Stop(b.id(), &ended, at(b.t, clock), "Runa"))
}

func (b *bench) pause(clock string) { b.take(b.s.Pause(b.id(), at(b.t, clock), "Runa")) }

func (b *bench) resume(clock string) { b.take(b.s.Resume(b.id(), at(b.t, clock), "Runa")) }

// log is an entry at a moment; count such as "tide=2", took such as 35 or 0.
func (b *bench) log(clock, operation, count string, took float64, change ...func(*LogRequest)) string {
	asked, err := ParseCounts([]string{count})
	require.NoError(b.t, err)
	r := LogRequest{Operation: operation, Counts: asked, ID: b.id(), At: at(b.t, clock), By: "Runa"}
	if took > 0 {
		minutes := planner.Minutes(took)
		r.Took = &minutes
	}
	for _, c := range change {
		c(&r)
	}
	return b.take(b.s.Log(r))
}

func (b *bench) tick(clock, operation, count string) string {
	return b.log(clock, operation, count, 0, func(r *LogRequest) { r.Ticked = true })
}

func (b *bench) settle(clock, entry string, took float64) {
	minutes := planner.Minutes(took)
	b.take(b.s.Settle(SettleRequest{Entry: entry, Took: &minutes, ID: b.id(), At: at(b.t, clock), By: "Runa"}))
}

func (b *bench) settleEnd(clock, entry, end string) {
	ended := at(b.t, end)
	b.take(b.s.Settle(SettleRequest{Entry: entry, End: &ended, ID: b.id(), At: at(b.t, clock), By: "Runa"}))
}

func (b *bench) minutes(operation string, lot Lot) float64 {
	row, ok := b.s.Row(operation, lot)
	require.True(b.t, ok)
	return float64(row.Minutes)
}

func (b *bench) timed(operation string, lot Lot) int {
	row, _ := b.s.Row(operation, lot)
	return row.Timed
}

// Ticks tell the time from one to the next; of the first nothing is known, and a
// gap of more than ten minutes is no work. Hand-worked: 4 + 5 + 3 minutes, then a
// gap of 40, then 2.
func TestTicksTellTheTimeBetweenThem(t *testing.T) {
	b := newBench(t)
	for _, clock := range []string{"19:30", "19:34", "19:39", "19:42", "20:22", "20:24"} {
		b.tick(clock, "sew-pairs", "tide=1")
	}
	assert.Equal(t, 14.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 4, b.timed("sew-pairs", tide), "of 6 ticks the first and the one after the gap have no time")
	all := b.s.Sittings(at(t, "20:30"))
	require.Len(t, all, 2)
	assert.Equal(t, []planner.Minutes{12, 2}, []planner.Minutes{all[0].Minutes(), all[1].Minutes()})
	assert.Equal(t, []Share{{"sew-pairs", tide, 3, 12}}, all[0].Shares)
	assert.Empty(t, b.s.Doubts(at(t, "+3 09:00")), "ticks need no stop")
}

// With the screen open from 19:26 the first tick has its four minutes too. What is
// sewn of a pair before a pause counts, and the pause does not.
func TestTheScreenTellsWhenWorkBegan(t *testing.T) {
	b := newBench(t)
	b.screen("19:26", "sew-pairs", tide)
	b.tick("19:30", "sew-pairs", "tide=1")
	b.pause("19:32")
	b.resume("19:52")
	b.tick("19:55", "sew-pairs", "tide=1")
	assert.Equal(t, 9.0, b.minutes("sew-pairs", tide)) // 4 + 2 + 3
	assert.Equal(t, 2, b.timed("sew-pairs", tide))
}

func TestATickAtAnotherRowTakesTheTimeBeforeIt(t *testing.T) {
	b := newBench(t)
	b.screen("19:30", "sew-pairs", tide)
	b.tick("19:34", "sew-pairs", "tide=2")
	b.tick("19:37", "press-pairs", "tide=2")
	assert.Equal(t, []float64{4, 3}, []float64{b.minutes("sew-pairs", tide), b.minutes("press-pairs", tide)})
	assert.Len(t, b.s.Sittings(at(t, "19:40")), 1)
}

func TestATickThatIsTakenBackIsAsIfItHadNeverBeen(t *testing.T) {
	b := newBench(t)
	b.screen("19:30", "sew-pairs", tide)
	b.tick("19:34", "sew-pairs", "tide=1")
	wrong := b.tick("19:35", "sew-pairs", "tide=1")
	b.take(b.s.Undo(wrong, b.id(), at(t, "19:36"), "Runa"))
	b.tick("19:39", "sew-pairs", "tide=1")
	assert.Equal(t, 9.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 2, b.timed("sew-pairs", tide))
}

// Start 23:30, asked at 00:30, stop: half an hour on each day, one hour in all.
func TestAClockRunsPastMidnight(t *testing.T) {
	b := newBench(t)
	b.start("23:30", "sew-pairs", tide)
	assert.Equal(t, []string{"Runa"}, b.s.Working())
	running := b.s.Sittings(at(t, "+1 00:30"))
	assert.Equal(t, planner.Minutes(60), running[0].Minutes())
	assert.True(t, running[0].Running())
	assert.Zero(t, b.minutes("sew-pairs", tide), "what still runs is not counted")

	b.stop("+1 00:30")
	assert.Equal(t, 60.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, WorkedTime{Minutes: 60, Elapsed: 60}, b.s.Worked())
	first, second := planner.DateOf(at(t, "12:00")), planner.DateOf(at(t, "+1 12:00"))
	assert.Equal(t, []planner.Minutes{30, 30}, []planner.Minutes{b.s.WorkedOn(first), b.s.WorkedOn(second)})
	assert.Equal(t, []DayMinutes{{first, 30}, {second, 30}}, b.s.Sittings(at(t, "+1 01:00"))[0].Days(monday.Location()))
}

// Start 10:36, the clock is set to 10:20, stop: no negative time, no crash; how
// long it took is asked, and the log goes on.
func TestAClockThatIsSetBack(t *testing.T) {
	b := newBench(t)
	id := b.start("10:36", "sew-pairs", tide)
	assert.Equal(t, ClockSetBack, b.s.Doubts(at(t, "10:20"))[0].Doubt)
	b.stop("10:20")
	doubts := b.s.Doubts(at(t, "10:21"))
	require.Len(t, doubts, 1)
	assert.Equal(t, ClockSetBack, doubts[0].Doubt)
	assert.Zero(t, doubts[0].Minutes())
	assert.Zero(t, b.minutes("sew-pairs", tide))
	b.start("10:40", "press-pairs", tide)
	b.stop("10:50")
	b.settle("10:55", id, 12)
	assert.Equal(t, 12.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 10.0, b.minutes("press-pairs", tide))
	assert.Empty(t, b.s.Doubts(at(t, "11:00")))
}

// Ticks at times that the clock had shown before are kept and not counted; from
// 10:36 on it shows new ones.
func TestTicksWhileTheClockShowsTimesOnceMore(t *testing.T) {
	b := newBench(t)
	b.screen("10:30", "sew-pairs", tide)
	b.tick("10:36", "sew-pairs", "tide=1")
	var back string
	for i, clock := range []string{"10:20", "10:28", "10:37", "10:40"} {
		if id := b.tick(clock, "sew-pairs", "tide=1"); i == 0 {
			back = id
		}
	}
	assert.Equal(t, 9.0, b.minutes("sew-pairs", tide)) // 10:30-10:36 and 10:37-10:40
	doubts := b.s.Doubts(at(t, "10:41"))
	require.Len(t, doubts, 1)
	assert.Equal(t, []Share{{"sew-pairs", tide, 3, 17}}, doubts[0].Shares)
	b.settle("10:45", back, 18)
	assert.Equal(t, 27.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 5, b.timed("sew-pairs", tide))
}

func TestAClockThatIsPutRightBySecondsRaisesNoDoubt(t *testing.T) {
	b := newBench(t)
	b.screen("10:30", "sew-pairs", tide)
	b.tick("10:36", "sew-pairs", "tide=1")
	b.tick("10:35", "sew-pairs", "tide=1")
	b.tick("10:38", "sew-pairs", "tide=1")
	assert.Equal(t, 8.0, b.minutes("sew-pairs", tide))
	assert.Empty(t, b.s.Doubts(at(t, "10:40")))
}

// Start 17:00, next command 08:40, which is 15 h 40: said at once, an earlier end
// offered, not counted until confirmed, and no end that is still to come.
func TestAClockThatRanOvernight(t *testing.T) {
	b := newBench(t)
	id := b.start("17:00", "sew-pairs", tide)
	assert.Empty(t, b.s.Doubts(at(t, "20:59")))
	b.log("18:10", "sew-pairs", "tide=6", 0)
	morning := at(t, "+1 08:40")
	doubts := b.s.Doubts(morning)
	require.Len(t, doubts, 1)
	assert.Equal(t, planner.Minutes(15*60+40), doubts[0].Minutes())
	assert.Equal(t, ClockForgotten, doubts[0].Doubt)
	assert.Equal(t, at(t, "18:10"), doubts[0].Offer, "the last sign of work")

	future := at(t, "+1 09:00")
	_, err := b.s.Stop("f", &future, morning, "Runa")
	assert.Equal(t, said{Kind: BadTime, What: "the end, 09:00 on Tue 10 Nov, is still to come: it is 08:40 on Tue 10 Nov now"}, whatIsSaid(asRefusal(t, err)))

	left := *b
	left.stopAt("+1 08:40", "18:15")
	assert.Equal(t, 75.0, left.minutes("sew-pairs", tide))
	assert.Empty(t, left.s.Doubts(morning))

	b.stop("+1 08:40")
	assert.Zero(t, b.minutes("sew-pairs", tide))
	require.Len(t, b.s.Doubts(morning), 1)
	b.settleEnd("+1 08:45", id, "18:10")
	assert.Equal(t, 70.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 6, b.timed("sew-pairs", tide))
	assert.Empty(t, b.s.Doubts(morning))
}

func TestAForgottenClockOffersAnEndEvenWithNothingLogged(t *testing.T) {
	b := newBench(t)
	b.start("17:00", "sew-pairs", tide)
	doubts := b.s.Doubts(at(t, "+1 08:40"))
	require.Len(t, doubts, 1)
	assert.Equal(t, at(t, "21:00"), doubts[0].Offer, "as long as a clock may run with nothing logged: four hours")
}

func TestAForgottenClockIsSettledWhileItRuns(t *testing.T) {
	b := newBench(t)
	id := b.start("17:00", "sew-pairs", tide)
	b.settleEnd("+1 08:40", id, "18:30")
	assert.Equal(t, 90.0, b.minutes("sew-pairs", tide))
	assert.Empty(t, b.s.Working())
	b.tick("+1 08:41", "sew-pairs", "tide=1")
	assert.Equal(t, 90.0, b.minutes("sew-pairs", tide))
}

func TestALongDayWithWorkLoggedIsNotDoubted(t *testing.T) {
	b := newBench(t)
	b.start("09:00", "sew-pairs", tide)
	b.log("12:00", "sew-pairs", "tide=6", 0)
	b.log("15:30", "sew-pairs", "tide=6", 0)
	b.stop("18:00")
	assert.Equal(t, 540.0, b.minutes("sew-pairs", tide))
}

// Runa sews from 19:00 to 20:00, Maren presses from 19:30 to 20:30: two
// person-hours in an hour and a half.
func TestTwoPeopleAtWork(t *testing.T) {
	b := newBench(t)
	b.log("18:00", "sew-pairs", "tide=4", 0)
	b.start("19:00", "sew-pairs", tide)
	b.take(b.s.Start(StartRequest{Operation: "press-pairs", Lot: &tide, ID: b.id(), At: at(t, "19:30"), By: "Maren"}))
	b.stop("20:00")
	assert.Equal(t, []string{"Maren"}, b.s.Working())
	b.take(b.s.Stop(b.id(), nil, at(t, "20:30"), "Maren"))
	assert.Equal(t, WorkedTime{Minutes: 120, Elapsed: 90}, b.s.Worked())
	assert.Equal(t, []float64{60, 60}, []float64{b.minutes("sew-pairs", tide), b.minutes("press-pairs", tide)})
}

// The clock is set back by ten minutes in a pause: what was worked before it is
// counted up to 19:20, and what the clock shows once more is not counted again.
func TestAClockThatIsSetBackInAPause(t *testing.T) {
	b := newBench(t)
	b.start("19:10", "sew-pairs", tide)
	b.pause("19:20")
	_, err := b.s.Stop("x", &[]time.Time{at(t, "19:15")}[0], at(t, "19:30"), "Runa")
	assert.Equal(t, BadTime, asRefusal(t, err).Kind, "an end before the pause, when work went on")
	b.stop("19:10")
	b.resume("19:10")
	b.tick("19:12", "sew-pairs", "tide=1")
	assert.InDelta(t, 10, b.minutes("sew-pairs", tide), 1e-9)
	sittings := b.s.Sittings(at(t, "19:12"))
	assert.Equal(t, at(t, "19:20"), sittings[0].To)
	assert.Equal(t, ClockSetBack, sittings[1].Doubt)
}

// One person's clocks never run side by side: beginning one thing ends another.
func TestOnePersonIsAtOneThingAtATime(t *testing.T) {
	b := newBench(t)
	b.start("19:00", "sew-pairs", tide)
	b.start("19:20", "sew-pairs", dune)
	b.stop("19:50")
	assert.Equal(t, []float64{20, 30}, []float64{b.minutes("sew-pairs", tide), b.minutes("sew-pairs", dune)})
	assert.Equal(t, WorkedTime{Minutes: 50, Elapsed: 50}, b.s.Worked())

	_, err := b.s.Stop("x", nil, at(t, "19:51"), "Runa")
	assert.Equal(t, NothingRuns, asRefusal(t, err).Kind)
	b.start("20:00", "sew-pairs", tide)
	_, err = b.s.Start(StartRequest{Operation: "sew-pairs", Lot: &tide, ID: "y", At: at(t, "20:10"), By: "Runa"})
	assert.Equal(t, "the clock runs already for 50 sew-pairs of tide, since 20:00 on Mon 9 Nov", asRefusal(t, err).What)
}

// The clock runs from 19:00 to 20:00; of these 20 minutes are said to have gone
// into pressing: 40 remain for sewing.
func TestWhatIsToldIsNotCountedOnceMoreByTheClock(t *testing.T) {
	b := newBench(t)
	b.start("19:00", "sew-pairs", tide)
	b.log("19:30", "sew-pairs", "tide=4", 0)
	b.log("19:55", "press-pairs", "tide=4", 20)
	b.stop("20:00")
	assert.Equal(t, []float64{40, 20}, []float64{b.minutes("sew-pairs", tide), b.minutes("press-pairs", tide)})
	assert.Equal(t, planner.Minutes(60), b.s.Worked().Minutes)
}

func TestAnEntryWithItsOwnTimeIsNotTimedByTicks(t *testing.T) {
	b := newBench(t)
	b.screen("19:00", "sew-pairs", tide)
	b.tick("19:05", "sew-pairs", "tide=1")
	b.log("19:12", "sew-pairs", "tide=1", 6, func(r *LogRequest) { r.Ticked = true })
	b.tick("19:14", "sew-pairs", "tide=1")
	assert.Equal(t, 13.0, b.minutes("sew-pairs", tide)) // 5 + 6 + 2
	assert.Equal(t, 3, b.timed("sew-pairs", tide))
}

func TestWhatIsLoggedAfterTheClockIsWhatItRanFor(t *testing.T) {
	b := newBench(t)
	b.start("19:00", "sew-pairs", tide)
	b.stop("19:40")
	b.log("19:41", "sew-pairs", "tide=8", 0)
	b.log("19:42", "sew-pairs", "dune=2", 0)
	assert.Equal(t, 40.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 8, b.timed("sew-pairs", tide))
	assert.Zero(t, b.timed("sew-pairs", dune))
}

// Clocks go back at 03:00 on 25 October 2026 in middle Europe, and a maker on the
// way moves from one zone to another: what counts is the time that went by.
func TestTimeThatWentByCountsWhateverTheWallShows(t *testing.T) {
	summer, winter := time.FixedZone("", 7200), time.FixedZone("", 3600)
	for name, c := range map[string]struct{ from, to time.Time }{
		"winter time begins": {time.Date(2026, 10, 25, 2, 30, 0, 0, summer), time.Date(2026, 10, 25, 2, 30, 0, 0, winter)},
		"summer time begins": {time.Date(2026, 3, 29, 1, 30, 0, 0, winter), time.Date(2026, 3, 29, 3, 30, 0, 0, summer)},
		"to the west":        {time.Date(2026, 11, 9, 19, 0, 0, 0, winter), time.Date(2026, 11, 9, 13, 0, 0, 0, time.FixedZone("", -6*3600))},
	} {
		b := newBench(t)
		b.take(b.s.Start(StartRequest{Operation: "sew-pairs", Lot: &tide, ID: "a", At: c.from, By: "Runa"}))
		b.take(b.s.Stop("b", nil, c.to, "Runa"))
		assert.Equal(t, 60.0, b.minutes("sew-pairs", tide), name)
		assert.Empty(t, b.s.Doubts(c.to), name)
	}
}

func TestTheLimitsAreTheMakersToSet(t *testing.T) {
	b := newBench(t)
	gap, quiet := planner.Minutes(25), planner.Minutes(30)
	b.tick("19:00", "sew-pairs", "tide=1")
	b.tick("19:20", "sew-pairs", "tide=1")
	b.take(b.s.SetLimits(Limits{Gap: &gap, Quiet: &quiet}, b.id(), at(t, "19:21"), "Runa"))
	b.tick("19:40", "sew-pairs", "tide=1")
	assert.Equal(t, 20.0, b.minutes("sew-pairs", tide), "from then on, and not before")
	b.start("20:00", "sew-pairs", tide)
	assert.Len(t, b.s.Doubts(at(t, "20:31")), 1)
}

func TestWorkAtAColourwayThatIsRenamedStaysItsOwn(t *testing.T) {
	b := newBench(t)
	b.start("19:00", "sew-pairs", tide)
	b.stop("19:10")
	b.start("19:10", "sew-pairs", tide)
	b.s = revise(t, b.s, underANewName(estuary(), "tide", "spindrift"))
	b.stop("19:30")
	assert.Equal(t, 30.0, b.minutes("sew-pairs", colourwayLot("spindrift")))
}

func TestNoTimeIsSettledTwiceOver(t *testing.T) {
	b := newBench(t)
	id := b.log("19:00", "sew-pairs..press-pairs", "tide=4", 30)
	b.settle("19:05", id, 45)
	b.settle("19:06", id, 40)
	assert.Equal(t, []float64{20, 20}, []float64{b.minutes("sew-pairs", tide), b.minutes("press-pairs", tide)})
	assert.Equal(t, planner.Minutes(40), b.s.Worked().Minutes)
	b.take(b.s.Undo(id, b.id(), at(t, "19:07"), "Runa"))
	assert.Zero(t, b.s.Worked().Minutes, "what was taken back took no time")
}

// A clock from 17:00 to 08:40 was work until 18:10: the day it began has all of it.
// Of one that runs past midnight 50 of 60 minutes are meant: 30 and 20.
func TestWhatWasPutRightBelongsToTheDayOfItsWork(t *testing.T) {
	first, second := planner.DateOf(at(t, "12:00")), planner.DateOf(at(t, "+1 12:00"))
	b := newBench(t)
	id := b.start("17:00", "sew-pairs", tide)
	b.stop("+1 08:40")
	b.settleEnd("+1 08:41", id, "18:10")
	assert.Equal(t, []planner.Minutes{70, 0}, []planner.Minutes{b.s.WorkedOn(first), b.s.WorkedOn(second)})
	assert.True(t, at(t, "18:10").Equal(b.s.Sittings(at(t, "+1 09:00"))[0].To))

	b = newBench(t)
	id = b.start("23:30", "sew-pairs", tide)
	b.stop("+1 00:30")
	b.settle("+1 08:41", id, 50)
	assert.InDelta(t, 30, float64(b.s.WorkedOn(first)), 1e-9)
	assert.InDelta(t, 20, float64(b.s.WorkedOn(second)), 1e-9)
	b.settle("+1 08:42", id, 90)
	assert.InDelta(t, 60, float64(b.s.WorkedOn(first)), 1e-9, "what is beyond the clock is the first day's")
}
