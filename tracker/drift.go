package tracker

import (
	"math"
	"slices"
	"time"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// leastForDrift is how many measures a drift takes to be told: a line through
// three always fits well.
const leastForDrift = 4

// line is how finely a ruler is read: a change smaller than one line of it may be
// the reading's.
func (x Series) line() measure.Length {
	if x.Unit == measure.Centimetres.String() {
		return measure.Millimetre
	}
	return measure.Inch / 16
}

// Series is what one person measured after one step on one machine, in order of
// time, since needle or guide were moved last or the seam was amended.
type Series struct {
	By, Machine, Step string
	Name              string // of the piece
	Unit              string // "in" or "cm"
	Operation         string
	Readings          []Reading
}

// Reading is one measure of a series.
type Reading struct {
	Seq     uint64
	At      time.Time
	Size    measure.Size // the mean of the pieces measured
	Should  measure.Size
	Seams   float64
	Seam    measure.Length
	Planned measure.Length
}

// Series is all series of a job in which a seam was measured, in order of their
// first measures.
func (s State) Series() []Series {
	var all []Series
	for _, e := range s.Entries {
		if !e.Standing() {
			continue
		}
		if e.Measure != nil && e.Measure.Seam > 0 {
			all = added(all, e)
		}
		if e.Amendment != nil && e.Amendment.Swap == nil {
			for i := range all {
				all[i].Readings = nil // measured against another seam from now on
			}
		}
	}
	return all
}

// added puts a measure into its series.
func added(all []Series, e Entry) []Series {
	m := e.Measure
	at := -1
	for i, x := range all {
		if x.By == e.By && x.Machine == m.Machine && x.Step == m.Step {
			at = i
		}
	}
	if at < 0 {
		at = len(all)
		all = append(all, Series{By: e.By, Machine: m.Machine, Step: m.Step, Name: m.Name, Unit: m.Unit, Operation: m.Operation})
	}
	if m.Moved {
		all[at].Readings = nil
	}
	all[at].Readings = append(all[at].Readings, Reading{
		Seq: e.Seq, At: e.At, Size: m.MeanSize(), Should: m.Should, Seams: m.Seams, Seam: m.Seam, Planned: m.Planned,
	})
	return all
}

// MeanSize is the mean of the pieces that were measured, each way to the nearest
// tick.
func (m Measurement) MeanSize() measure.Size {
	var sum measure.Size
	n := int64(m.Pieces())
	for _, s := range m.Sizes {
		sum.Width += s.Size.Width.Times(s.Count)
		sum.Height += s.Size.Height.Times(s.Count)
	}
	return measure.Size{Width: sum.Width.Scale(1, n, measure.Nearest), Height: sum.Height.Scale(1, n, measure.Nearest)}
}

// Trend is the line through the seams of a series, in inches from one measure to
// the next.
func (x Series) Trend() Trend {
	seams := make([]float64, len(x.Readings))
	for i, r := range x.Readings {
		seams[i] = r.Seam.In(measure.Inches)
	}
	return Steady(seams)
}

// Drift is a seam that grows or shrinks from one measure to the next.
type Drift struct {
	Series
	Trend
	Each float64 // what the piece grows from one measure to the next, in inches; below 0: shrinks
}

// Drift tells a drift from scatter. It takes four measures; the slope has to be
// further from none than Student's t allows at 95 %, so that one series in
// twenty of a steady machine may be called drifting; and what the piece changed
// over the series has to be a line of the ruler, 1/16 in or 1 mm, since a
// smaller change may be the reading's.
func (x Series) Drift() (Drift, bool) {
	d := Drift{Series: x, Trend: x.Trend()}
	if d.N < leastForDrift {
		return d, false
	}
	d.Each = -2 * x.Readings[d.N-1].Seams * d.Slope
	const hair = 1e-9 // the line's own rounding
	changed := math.Abs(d.Each) * float64(d.N-1)
	told := math.Abs(d.Slope) > student(d.N)*d.SlopeSE
	return d, told && changed >= x.line().In(measure.Inches)-hair
}

// Until is after how many more measures at this pace the piece is off by a
// tolerance; 0 where it is already, false where it goes the right way.
func (d Drift) Until(tolerance measure.Length) (int, bool) {
	last := d.Readings[d.N-1]
	seam := d.Start + d.Slope*float64(d.N-1)
	off := 2 * last.Seams * (last.Planned.In(measure.Inches) - seam)
	limit := tolerance.In(measure.Inches)
	switch {
	case d.Each == 0 || off*d.Each < 0 && math.Abs(off) > limit:
		return 0, false
	case math.Abs(off) >= limit:
		return 0, true
	}
	room := limit - off
	if d.Each < 0 {
		room = limit + off
	}
	return int(math.Ceil(room / math.Abs(d.Each))), true
}

// seamTest is the operation whose pieces stand for all that is sewn.
const seamTest = "seam-test"

// Drifts is the drifts of a job that still matter: work of what was measured is
// left, or after a seam test anything at the machine. Where operations are named,
// only what concerns them.
func (s State) Drifts(operations ...string) []Drift {
	var all []Drift
	for _, x := range s.Series() {
		if d, drifts := x.Drift(); drifts && s.concerns(x.Operation, operations) {
			all = append(all, d)
		}
	}
	return all
}

// concerns reports whether work is left of what a measured operation stands for,
// and some of it is among those named.
func (s State) concerns(measured string, operations []string) bool {
	left, named := false, len(operations) == 0
	for i, o := range s.Ledger.Operations {
		if o.Key != measured && (measured != seamTest || o.Place != planner.Machine) {
			continue
		}
		left = left || s.board.left(i) > 0
		named = named || slices.Contains(operations, o.Key)
	}
	return left && named
}
