package tracker

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// seen is a tick of a screen that saw its maker before it.
func (b *bench) seen(since, clock, operation, count string) string {
	from := at(b.t, since)
	return b.log(clock, operation, count, 0, func(r *LogRequest) { r.Ticked, r.Since = true, &from })
}

// The first tick of a sitting has the time since its maker was last seen at the
// screen, up to the gap. Hand-worked: 3 minutes from sitting down, then 4.
func TestASittingBeginsWhenTheScreenSawItsMaker(t *testing.T) {
	b := newBench(t)
	b.seen("19:30", "19:33", "sew-pairs", "tide=1")
	assert.Equal(t, 3.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 1, b.timed("sew-pairs", tide))
	b.tick("19:37", "sew-pairs", "tide=2")
	assert.Equal(t, 7.0, b.minutes("sew-pairs", tide))
	assert.Equal(t, 3, b.timed("sew-pairs", tide))
	sittings := b.s.Sittings(at(t, "20:00"))
	assert.Len(t, sittings, 1)
	assert.Equal(t, at(t, "19:30"), sittings[0].From)
}

// Whoever was last seen longer ago than a count may take is not known to have
// worked; whoever comes back after such a gap and touches a key is.
func TestWhereTheScreenSawNobodyNothingIsKnown(t *testing.T) {
	b := newBench(t)
	b.seen("19:30", "19:41", "sew-pairs", "tide=1")
	assert.Zero(t, b.minutes("sew-pairs", tide))
	assert.Zero(t, b.timed("sew-pairs", tide))
	b.seen("19:42", "19:43", "sew-pairs", "tide=1")
	assert.Equal(t, 2.0, b.minutes("sew-pairs", tide), "between two ticks the ticks tell")
	b.seen("20:30", "20:35", "sew-pairs", "tide=1")
	assert.Equal(t, 7.0, b.minutes("sew-pairs", tide))
}

// A clock that was set back meanwhile puts the beginning after the tick: then
// nothing is known, and nothing is doubted.
func TestABeginningAfterItsTickIsNone(t *testing.T) {
	b := newBench(t)
	b.seen("19:40", "19:30", "sew-pairs", "tide=1")
	assert.Zero(t, b.minutes("sew-pairs", tide))
	assert.Empty(t, b.s.Doubts(at(t, "19:31")))
}

// What the log says otherwise of the same person is no part of the first tick: a
// clock that ran meanwhile, a time that was told, an entry without one. Of somebody
// else it takes nothing away.
func TestNoMinuteCountsTwiceBeforeAFirstTick(t *testing.T) {
	for _, c := range []struct {
		name      string
		meanwhile func(b *bench)
		want      float64 // of tide's pairs, beside what is done meanwhile
	}{
		{"nothing", func(*bench) {}, 8},
		{"a clock, stopped at 19:35", func(b *bench) { b.start("19:31", "sew-pairs", dune); b.stop("19:35") }, 3},
		{"a time told at 19:36", func(b *bench) { b.log("19:36", "sew-pairs", "dune=1", 5) }, 2},
		{"a count of 19:34 that nobody timed", func(b *bench) { b.log("19:34", "sew-pairs", "dune=1", 0) }, 4},
		{"somebody else's count", func(b *bench) {
			b.log("19:34", "sew-pairs", "dune=1", 0, func(r *LogRequest) { r.By = "Maren" })
		}, 8},
	} {
		t.Run(c.name, func(t *testing.T) {
			b := newBench(t)
			c.meanwhile(b)
			b.seen("19:30", "19:38", "sew-pairs", "tide=1")
			assert.Equal(t, c.want, b.minutes("sew-pairs", tide))
			assert.Empty(t, b.s.Doubts(at(t, "19:40")))
		})
	}
}

// A clock that is running tells the time itself.
func TestAClockThatRunsNeedsNoBeginning(t *testing.T) {
	b := newBench(t)
	b.start("19:30", "sew-pairs", tide)
	b.seen("19:33", "19:38", "sew-pairs", "tide=1")
	b.stop("19:40")
	assert.Equal(t, 10.0, b.minutes("sew-pairs", tide))
}

// Counts that lay there before the screen was opened are typed in at once: they
// cannot have been made since, and would spoil the pace. A pair takes 15 s by the
// table (see the test of the screen's pace), a quarter of that is under 4 s: of 20
// pairs in a minute, 3 s each, nobody knows the time; of 10 they were made in it.
func TestWhatLayThereBeforeTheScreenOpenedHasNoTime(t *testing.T) {
	pair := Operation{}
	pair.Unit.Mean = 0.257
	assert.True(t, pair.TooQuick(20, 1))
	assert.False(t, pair.TooQuick(10, 1))
	assert.False(t, Operation{}.TooQuick(20, 1), "of what the table has no time for nothing is too quick")

	b := newBench(t)
	since := at(t, "19:30")
	b.take(b.s.Log(LogRequest{Operation: "sew-pairs", Lot: &tide, Counts: []CountAsked{{Number: 6}}, Ticked: true, Since: &since,
		ID: b.id(), At: since.Add(4 * time.Second), By: "Runa"}))
	assert.Zero(t, b.timed("sew-pairs", tide))
	assert.Zero(t, b.minutes("sew-pairs", tide))
}

// What is checked off at one stroke was made in the whole sitting, as far as it can
// have been. A pair of tide takes the table's mean (below), a quarter of it at the least.
func TestCountsAtOneStrokeDoNotSpoilThePace(t *testing.T) {
	b := newBench(t)
	row, _ := b.s.Row("sew-pairs", tide)
	least := float64(row.Unit.Mean) / 4
	b.tick("19:30", "sew-pairs", "tide=1")
	burst := at(t, "19:30").Add(time.Second)
	b.take(b.s.Log(LogRequest{Operation: "sew-pairs", Lot: &tide, Counts: []CountAsked{{Number: 4}}, Ticked: true, ID: b.id(), At: burst, By: "Runa"}))
	assert.Equal(t, int(1.0/60/least), b.timed("sew-pairs", tide))
	b.tick("19:40", "sew-pairs", "tide=1")
	assert.Equal(t, 5, b.timed("sew-pairs", tide), "ten minutes are enough for all")
	assert.InDelta(t, 10, b.minutes("sew-pairs", tide), 1e-9)
}

// A clock that is set back while another is paused shows minutes again that were
// counted before the pause: whatever runs over them is in doubt. Found by the property
// test.
func TestAClockSetBackInAPauseCountsNoMinuteTwice(t *testing.T) {
	b := newBench(t)
	b.start("19:30", "sew-pairs", tide)
	b.pause("19:40")
	b.start("19:00", "sew-pairs", dune)
	b.log("19:50", "sew-pairs", "dune=1", 0)
	b.stop("19:55")
	assert.Equal(t, 10.0, b.minutes("sew-pairs", tide))
	assert.Zero(t, b.minutes("sew-pairs", dune))
	doubts := b.s.Doubts(at(t, "20:00"))
	assert.Len(t, doubts, 1)
	assert.Equal(t, ClockSetBack, doubts[0].Doubt)
}
