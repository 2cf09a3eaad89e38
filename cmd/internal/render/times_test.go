package render

import (
	"bytes"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// worked is the lap quilt with all kinds of time in its log: ticks, a clock that
// was stopped, work that was told, ripping, and a clock that nobody stopped.
type worked struct {
	t testing.TB
	s tracker.State
}

func (w *worked) take(ev tracker.Event, err error) tracker.Event {
	w.t.Helper()
	require.NoError(w.t, err)
	w.s = grown(w.t, w.s, ev)
	all := w.s.Events()
	return all[len(all)-1]
}

func workedState(t testing.TB) *worked {
	t.Helper()
	w := &worked{t: t, s: booked(t, example(t, "estuary-lap"), 0)}
	tide := tracker.Lot{Kind: planner.ColourwayLot, Name: "tide"}
	log := func(id string, at time.Duration, ticked bool, took planner.Minutes) {
		r := tracker.LogRequest{Operation: "sew-pairs", Lot: &tide, Counts: []tracker.CountAsked{{Number: 1}}, CatchUp: true,
			Ticked: ticked, ID: id, At: noon.Add(at * time.Minute), By: "Runa"}
		if took > 0 {
			r.Took = &took
		}
		w.take(w.s.Log(r))
	}
	log("tick-1", 0, true, 0)
	log("tick-2", 4, true, 0)
	log("told", 10, false, 12)
	w.take(w.s.Start(tracker.StartRequest{Operation: "press-pairs", Lot: &tide, ID: "start-1", At: noon.Add(20 * time.Minute), By: "Maren"}))
	w.take(w.s.Stop("stop-1", nil, noon.Add(40*time.Minute), "Maren"))
	took := planner.Minutes(9)
	w.take(w.s.Rip(tracker.RipRequest{Operation: "sew-pairs", Lot: &tide, Counts: []tracker.CountAsked{{Number: 1}}, Took: &took, ID: "rip-1", At: noon.Add(50 * time.Minute), By: "Runa"}))
	w.take(w.s.Start(tracker.StartRequest{Operation: "sew-pairs", Lot: &tide, ID: "start-2", At: noon.Add(time.Hour), By: "Runa"}))
	return w
}

// nextMorning is when the clock of workedState has run too long.
var nextMorning = noon.Add(20 * time.Hour)

// timesOfAll is every answer about working time as JSON, by its schema.
func timesOfAll(t testing.TB) map[string]func(io.Writer) error {
	w := workedState(t)
	sitting := w.s.Sittings(nextMorning)[2]
	before, err := w.s.Before("rip-1")
	require.NoError(t, err)
	rip, _ := w.s.Repeated("rip-1")
	start, _ := w.s.Repeated("start-2")
	return map[string]func(io.Writer) error{
		"time":    func(out io.Writer) error { return TimesJSON(out, w.s, nextMorning) },
		"clocked": func(out io.Writer) error { return ClockedJSON(out, w.s, start, &sitting, nextMorning, false) },
		"lowered": func(out io.Writer) error { return LoweredJSON(out, before, w.s, rip, false) },
		"left":    func(out io.Writer) error { return LeftJSON(out, w.s, nextMorning) },
	}
}

func TestTimesKeepTheirContract(t *testing.T) {
	for schema, show := range timesOfAll(t) {
		conforms(t, schema, show)
	}
	w := workedState(t)
	minutes := planner.Minutes(30)
	ev := w.take(w.s.Settle(tracker.SettleRequest{Entry: "told", Took: &minutes, ID: "right", At: nextMorning, By: "Runa"}))
	conforms(t, "clocked", func(out io.Writer) error { return ClockedJSON(out, w.s, ev, nil, nextMorning, false) })
	conforms(t, "time", func(out io.Writer) error { return TimesJSON(out, booked(t, example(t, "estuary-lap"), 0), noon) })
}

// 4 minutes by ticks, 12 told, 20 by the clock and 9 of ripping: 45 of two people,
// of whom nobody worked while the other did.
func TestTimesSayWhoWorkedWhatAndWhatIsInDoubt(t *testing.T) {
	w := workedState(t)
	shown := shownBy(t, func(out *bytes.Buffer) error { return Times(out, w.s, nextMorning, Look{Width: 80}) })
	assert.Contains(t, shown, "Worked     45 min of 2 people, in 45 min\n")
	assert.Contains(t, shown, "Ripping    9 min of it\n")
	assert.Contains(t, shown, "People     Maren 20 min, Runa 25 min\n")
	assert.Contains(t, shown, "19 h in doubt")
	assert.Contains(t, shown, "say when work ended, such as: quiltrun time estuary-lap 8 --end 17:00")
	for name, look := range looks {
		golden(t, "time-"+name, shownBy(t, func(out *bytes.Buffer) error { return Times(out, w.s, nextMorning, look) }))
	}
}
