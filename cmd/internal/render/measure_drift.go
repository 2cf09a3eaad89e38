package render

import (
	"fmt"
	"io"
	"math"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// unitOf is the unit in which a series was measured.
func unitOf(x tracker.Series) measure.Unit {
	if x.Unit == measure.Centimetres.String() {
		return measure.Centimetres
	}
	return measure.Inches
}

// small is a tiny length that was computed, in the series' unit.
func small(inches float64, u measure.Unit) string {
	if u == measure.Centimetres {
		return string(decimal(math.Abs(inches)*25.4, 2)) + " mm"
	}
	return string(decimal(math.Abs(inches), 3)) + " in"
}

// driftWords says that a seam drifts, how fast, and when to stop.
func driftWords(d tracker.Drift, tolerance measure.Length) string {
	u := unitOf(d.Series)
	way := "smaller"
	if d.Each > 0 {
		way = "larger"
	}
	text := fmt.Sprintf("Drift: over %s of %s, the piece comes out %s by about %s each time (the seam changes by %s, give or take %s). Look at needle, guide and thread tension before sewing on",
		counted(len(d.Readings), "measure"), d.Step, way, small(d.Each, u), small(d.Slope, u), small(d.SlopeSE, u))
	switch n, on := d.Until(tolerance); {
	case on && n == 0:
		text += fmt.Sprintf("; it is off by more than %s already", tolerance.Show(u))
	case on:
		text += fmt.Sprintf("; at this pace it is off by %s after %s", tolerance.Show(u), counted(n, "more measure"))
	}
	return text + "."
}

// drifts says which drifts of a job still matter.
func (p *page) drifts(s tracker.State, operations ...string) {
	for _, d := range s.Drifts(operations...) {
		p.gap()
		p.para(0, driftWords(d, planner.DefaultTolerance(unitOf(d.Series))))
	}
}

// operationsOf are the operations that an entry speaks of.
func operationsOf(ev tracker.Event) []string {
	var keys []string
	for _, part := range ev.Parts {
		keys = append(keys, part.Operation)
	}
	return keys
}

// takenBack is what is said of a measure that was taken back, "" for work.
func takenBack(e tracker.Entry) string {
	switch {
	case e.Amendment != nil && e.Amendment.Seam > 0:
		return "the seam that was measured no longer counts: the job is planned as before"
	case e.Amendment != nil && e.Amendment.Swap != nil:
		return e.Amendment.Swap.A + " and " + e.Amendment.Swap.B + " lie where they lay before"
	case e.Measure != nil:
		return "a measure of " + e.Measure.Name
	}
	return ""
}

// Measurements lists what was measured of a job, for each person, machine and
// step.
func Measurements(w io.Writer, s tracker.State, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", s.Ledger.Title)
	p.rule()
	all := s.Measurements()
	if len(all) == 0 {
		p.para(0, "Nothing is measured yet. The first piece is three strips: quiltrun measure "+s.Ledger.Job+" three-strips SIZE")
		return p.writeTo(w)
	}
	g := &grid{columns: []column{{title: "Entry", right: true}, {title: "Day"}, {title: "By", flexible: true}, {title: "Machine", flexible: true},
		{title: "Piece", flexible: true}, {title: "Measured"}, {title: "Off", right: true}, {title: "Seam", right: true}}}
	for _, e := range all {
		m := e.Measure
		u := unitOf(tracker.Series{Unit: m.Unit})
		seam := ""
		if m.Seam > 0 {
			seam = planner.SeamMeasured(m.Seam, u)
		}
		mean := m.MeanSize()
		off := mean.Width - m.Should.Width
		shown := mean.Width.Show(u)
		if mean.Height > 0 && off == 0 {
			off, shown = mean.Height-m.Should.Height, mean.Show(u)
		}
		g.add(fmt.Sprint(e.Seq), planner.DateOf(e.At).String(), e.By, m.Machine, m.Step, shown, signed(off, u), seam)
	}
	p.records(0, g)
	p.trends(s)
	return p.writeTo(w)
}

// trends says of each series how steady it is.
func (p *page) trends(s tracker.State) {
	p.gap()
	for _, x := range s.Series() {
		if len(x.Readings) == 0 {
			continue
		}
		u, t := unitOf(x), x.Trend()
		who := byWords(x.By, x.Machine)
		if who == "" {
			who = "nobody named"
		}
		if d, drifts := x.Drift(); drifts {
			p.para(0, who+": "+driftWords(d, planner.DefaultTolerance(u)))
			continue
		}
		text := fmt.Sprintf("%s, %s: %s, mean seam %s", who, x.Step, counted(t.N, "measure"), small(t.Mean, u))
		if t.N > 1 {
			text += fmt.Sprintf(", spread %s", small(t.Spread, u))
		}
		if t.N < 4 {
			text += "; four tell whether it drifts"
		} else {
			text += "; no drift is told"
		}
		p.para(0, text+".")
	}
}
