package tick

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"quiltrun/planner"
)

// fact is what the screen says under a name.
func fact(d *desk, name string) string {
	for _, l := range d.shown(132, 43) {
		if rest, ok := strings.CutPrefix(l, name); ok {
			return strings.TrimSpace(rest)
		}
	}
	return ""
}

// ticks presses space at these seconds.
func ticks(d *desk, seconds ...int) {
	for _, s := range seconds {
		d.pressAt(time.Duration(s)*time.Second, "space")
		d.write()
	}
}

// TestThereIsNoPaceBeforeThereIsOne: nothing is divided by nothing, and the plan's
// figure is marked as such. Hand-worked from the ledger: 10 pairs of tide, each
// the mean of 7 in at 1/40 min (spread 0.3) and a clip of 0.04 min, × 1.14 and
// exp(0.045): 0.257 min, 234 an hour; 5 min × 1.14 × exp(0.08) set-up.
func TestThereIsNoPaceBeforeThereIsOne(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	assert.Equal(t, "no pace yet; 234 pairs an hour, 15 s each by the plan", fact(d, "Pace"))
	assert.Equal(t, "about 9 min by the plan", fact(d, "To go"))
	d.pressAt(4*time.Second, "8")
	ticks(d, 5)
	assert.Equal(t, "no pace yet; 234 pairs an hour, 15 s each by the plan", fact(d, "Pace"), "8 pairs in 5 s were made before")
	assert.Equal(t, "about 1 min by the plan", fact(d, "To go"))
}

// TestThePaceIsThatOfTheTicks: hand-worked. 150 s for 4 pairs are 37.5 s each, 96 an
// hour; 6 left take 3 3/4 min, said as 4. The first was begun when the screen was opened.
func TestThePaceIsThatOfTheTicks(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	ticks(d, 60, 90, 120, 150)
	assert.Equal(t, "96 pairs an hour, 38 s each (4 timed in this sitting)", fact(d, "Pace"))
	assert.Equal(t, "about 4 min at this pace", fact(d, "To go"))

	d.now = 150 * time.Second
	d.pressAt(d.now, "2")
	ticks(d, 180) // two pairs in 30 s: 180 s for 6, 30 s each
	assert.Equal(t, "120 pairs an hour, 30 s each (6 timed in this sitting)", fact(d, "Pace"))
}

// TestPausesGapsAndOtherRowsAreNoWork: two ticks, 30 s each from the opening on,
// something else, and two ticks 30 s apart again. Hand-worked, by the rule of the log: time up to a tick is
// work on what it checks off.
func TestPausesGapsAndOtherRowsAreNoWork(t *testing.T) {
	for _, c := range []struct {
		name      string
		meanwhile func(d *desk)
		want      string
	}{
		{"a pause: 60 + 10 up to it, 20 after it and 30, for four", func(d *desk) {
			d.pressAt(70*time.Second, "p")
			d.pressAt(780*time.Second, "p")
		}, "120 pairs an hour, 30 s each (4 timed in this sitting)"},
		{"work that ends a pause: 60 + 10 up to it, and 30, for three", func(d *desk) {
			d.pressAt(70*time.Second, "p")
		}, "108 pairs an hour, 33 s each (3 timed in this sitting)"},
		{"somebody at the door: 60 and 30 for three", func(*desk) {}, "120 pairs an hour, 30 s each (3 timed in this sitting)"},
		{"another lot: 60, 20 after it and 30, for four", func(d *desk) {
			d.pressAt(70*time.Second, "n")
			ticks(d, 80, 90)
			d.pressAt(780*time.Second, "left")
		}, "131 pairs an hour, 28 s each (4 timed in this sitting)"},
	} {
		t.Run(c.name, func(t *testing.T) {
			d := sit(t, "sew-pairs", "tide")
			ticks(d, 30, 60)
			c.meanwhile(d)
			ticks(d, 800, 830)
			assert.Equal(t, c.want, fact(d, "Pace"))
		})
	}
}

// TestTheScreensPaceIsTheLogs: what the screen makes of the ticks is what the log
// will make of them.
func TestTheScreensPaceIsTheLogs(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	ticks(d, 30, 60, 100)
	d.pressAt(110*time.Second, "p")
	d.write()
	d.pressAt(500*time.Second, "p")
	d.write()
	ticks(d, 520, 560, 1400, 1430)
	each, counts := d.screen.pace()
	var minutes planner.Minutes
	timed := 0
	for _, s := range d.log.Sittings(evening.Add(time.Hour)) {
		for _, share := range s.Shares {
			minutes += share.Minutes
			timed += share.Count
		}
	}
	assert.InDelta(t, float64(minutes), float64(each)*float64(counts), 1e-9)
	assert.Equal(t, timed, counts)
}

// TestATickTakenBackLeavesItsTimeSpent: 90 s for the two pairs that were made.
func TestATickTakenBackLeavesItsTimeSpent(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	ticks(d, 30, 60)
	d.pressAt(62*time.Second, "t")
	d.write()
	ticks(d, 90)
	assert.Equal(t, "80 pairs an hour, 45 s each (2 timed in this sitting)", fact(d, "Pace"))
}

// TestTheBobbin: hand-worked. A pair of 7 in takes 7 × 2.48 × 1.15 = 19.964 in of
// thread, half of it from below: 60 yd are 2160 in, which sew 216 pairs.
func TestTheBobbin(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	assert.Equal(t, "press b when a full one goes in; it sews about 216 pairs, by the plan", fact(d, "Bobbin"))
	d.press("b")
	assert.Equal(t, "lasts for about 216 pairs, 55 min, by the plan", fact(d, "Bobbin"))
	d.press("6", "space")
	assert.Equal(t, "lasts for about 210 pairs, 54 min, by the plan", fact(d, "Bobbin"))
	d.press("t")
	assert.Equal(t, "lasts for about 216 pairs, 55 min, by the plan", fact(d, "Bobbin"))

	ironing := sit(t, "press-pairs", "tide")
	assert.Empty(t, fact(ironing, "Bobbin"), "no thread at the iron")
}

func TestADoneChainTakesNoTime(t *testing.T) {
	d := sit(t, "sew-pairs", "tide")
	d.press("1", "0", "space")
	assert.Empty(t, fact(d, "To go"))
}
