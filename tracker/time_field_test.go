package tracker

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"quiltrun/planner"
)

// repair is a job of which some thirty hours went: every row has one count but the
// binding, whose 300 inches go at 16 in 10 minutes by the table.
func repair() Ledger {
	l := Ledger{Job: "pier-repair", Revision: 1, Quantity: 1}
	for i, key := range []string{"take-apart", "make-top", "quilt", "make-binding", "hand-stitch"} {
		o := Operation{Number: 10 * (i + 1), Key: key, Name: key, Lot: quiltLot(1), CountedIn: "quilt", Count: 1}
		if key == "hand-stitch" {
			o.CountedIn, o.Count, o.Unit = "piece", 300, planner.Span{Mean: 10.0 / 16}
		}
		l.Operations = append(l.Operations, o)
	}
	return l
}

// Where thirty hours went: taking apart 5 h, top 14 h 30, quilting 5 h 22, binding
// 1 h 39, hand-stitching booked as 3 h and really 5 h. Published (a maker's log):
// 29 h 31 as booked, 31 h 31 with the real hours, 187.5 minutes estimated, factor
// 1.6.
func TestWhereThirtyHoursWent(t *testing.T) {
	b := &bench{t: t, s: book(t, repair())}
	b.log("10:00", "take-apart", "1", 5*60)
	b.log("10:01", "make-top", "1", 14*60+30)
	b.log("10:02", "quilt", "1", 5*60+22)
	b.log("10:03", "make-binding", "1", 60+39)
	stitching := b.log("10:04", "hand-stitch", "300", 3*60)
	assert.Equal(t, planner.Minutes(29*60+31), b.s.Worked().Minutes)
	assert.NotEqual(t, planner.Minutes(30*60), b.s.Worked().Minutes, "nothing is rounded to whole hours")
	b.settle("10:10", stitching, 5*60)
	assert.Equal(t, planner.Minutes(31*60+31), b.s.Worked().Minutes)

	row, ok := b.s.Row("hand-stitch", quiltLot(1))
	require.True(t, ok)
	estimate := row.Setup.Mean + planner.Minutes(row.Timed)*row.Unit.Mean
	assert.Equal(t, planner.Minutes(187.5), estimate)
	assert.Equal(t, 1.6, float64(row.Minutes/estimate))
}

// An hour of ticks makes 4 blocks, so that one takes 15 minutes and 62 take 930;
// of an operation with nothing logged no pace is known.
func TestThePaceOfAnHourOfTicks(t *testing.T) {
	b := newBench(t)
	quarter := planner.Minutes(15)
	b.take(b.s.SetLimits(Limits{Gap: &quarter}, b.id(), at(t, "18:00"), "Runa"))
	b.screen("19:00", "sew-pairs", tide)
	for _, clock := range []string{"19:15", "19:30", "19:45", "20:00"} {
		b.tick(clock, "sew-pairs", "tide=1")
	}
	row, _ := b.s.Row("sew-pairs", tide)
	assert.Equal(t, planner.Minutes(15), row.Minutes/planner.Minutes(row.Timed))
	assert.Equal(t, planner.Minutes(930), 62*row.Minutes/planner.Minutes(row.Timed))
	none, _ := b.s.Row("press-pairs", tide)
	assert.Zero(t, none.Timed)
}

// 0 of 8 logged, then 8 of 8, then one more: no time is made up for any of it.
func TestCountsWithoutATimeHaveNone(t *testing.T) {
	b := newBench(t)
	row, _ := b.s.Row("sew-units", tide)
	assert.Equal(t, []float64{0, 0}, []float64{float64(row.Minutes), float64(row.Timed)})
	b.s = accepted(t, b.s, caughtUp(request(t, b.s, "sew-units", "tide=8")))
	row, _ = b.s.Row("sew-units", tide)
	assert.Equal(t, []int{8, 0}, []int{row.Done, row.Left()})
	assert.Equal(t, []float64{0, 0}, []float64{float64(row.Minutes), float64(row.Timed)})
	assert.Equal(t, NothingLeft, refused(t, b.s, request(t, b.s, "sew-units", "tide=1")).Kind)
}

func TestTimesThatNoProgramWroteAreNamed(t *testing.T) {
	s := cutAndKitted(t)
	minus := planner.Minutes(-1)
	for want, ev := range map[string]Event{
		"it does not say what was begun":                          {Kind: Started},
		"it does not say which time it puts right":                {Kind: Settled},
		`it puts right the time of "x", which is not in this job`: {Kind: Settled, Target: "x"},
		"its minutes of kit are below 0":                          {Kind: Started, Parts: []Part{{Operation: "kit", Lot: tide, Minutes: &minus}}},
		"its limit is below 0":                                    {Kind: Settled, Limits: &Limits{Gap: &minus}},
		"its count of kit is 0":                                   {Kind: Ripped, Parts: []Part{{Operation: "kit", Lot: tide}}},
		"it says of no operation what was done":                   {Kind: Ripped},
	} {
		ev.Schema, ev.ID, ev.Seq = 1, "e", uint64(len(s.events))+1
		_, err := s.With(ev)
		assert.EqualError(t, err, "event 5 of the job is not one that quiltrun wrote: "+want)
		_, err = Fold(append(s.Events(), ev))
		assert.EqualError(t, err, "event 5 of the job is not one that quiltrun wrote: "+want)
	}
}
