package tick

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
)

// sinceOf is when the newest tick says that its maker was seen before, in seconds
// since the screen was opened; -1 where it does not say.
func sinceOf(d *desk) int {
	events := d.log.Events()
	since := events[len(events)-1].Since
	if since == nil {
		return -1
	}
	return int(since.Sub(evening).Seconds())
}

// TestAFirstTickSaysWhenItsMakerWasSeen: at the opening, or at the last key since
// that is none of the number. Later ticks go by the one before.
func TestAFirstTickSaysWhenItsMakerWasSeen(t *testing.T) {
	second := func(n int) time.Duration { return time.Duration(n) * time.Second }
	for _, c := range []struct { // -1: another entry says it, or nobody knows
		name   string
		before func(d *desk)
		want   int
	}{
		{"nothing but the opening", func(*desk) {}, 0},
		{"the instruction was read", func(d *desk) { d.pressAt(second(20), "i"); d.pressAt(second(35), "i") }, 35},
		{"a bobbin went in", func(d *desk) { d.pressAt(second(40), "b"); d.write() }, 40},
		{"a note was kept", func(d *desk) {
			d.pressAt(second(40), "w")
			d.pressAt(second(41), "o")
			d.pressAt(second(45), "enter")
			d.write()
		}, 45},
		{"a number was typed, and put right", func(d *desk) {
			d.pressAt(second(50), "2")
			d.pressAt(second(51), "esc")
			d.pressAt(second(52), "3")
		}, 0},
		{"the next row came up", func(d *desk) { d.pressAt(second(25), "n") }, 25},
		{"a pause that goes on", func(d *desk) {
			d.pressAt(second(25), "p")
			d.write()
			d.pressAt(second(55), "i")
		}, -1},
		{"a pause that ended", func(d *desk) {
			d.pressAt(second(25), "p")
			d.pressAt(second(30), "p")
			d.write()
		}, -1},
		{"another tick", func(d *desk) { ticks(d, 30); d.pressAt(second(40), "i") }, -1},
		{"another tick, taken back", func(d *desk) { ticks(d, 30); d.pressAt(second(40), "t"); d.write() }, 0},
		{"another tick, and somebody at the door", func(d *desk) { ticks(d, -900); d.pressAt(second(40), "i") }, 40},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := sit(t, "sew-pairs", "tide")
			c.before(d)
			ticks(d, 60)
			assert.Equal(t, c.want, sinceOf(d))
		})
	}
}

// TestOpeningWritesNothing: who only looks has begun nothing.
func TestOpeningWritesNothing(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.pressAt(time.Second, "i")
	d.pressAt(2*time.Second, "d")
	d.write()
	assert.Len(t, d.log.Events(), 1)
}

// TestAShortSittingIsTimedInTheLog: a minute for the one pair that was made in it.
func TestAShortSittingIsTimedInTheLog(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	ticks(d, 60)
	row, _ := d.log.Row("sew-pairs", d.screen.at.lot)
	assert.Equal(t, planner.Minutes(1), row.Minutes)
	assert.Equal(t, 1, row.Timed)
}
