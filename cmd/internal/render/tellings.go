package render

import (
	"fmt"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// tellings are the words for each kind of event. A kind that is not here is told
// by its own name, with whatever it has of counts, a target and a text.
var tellings = map[tracker.Kind]func(s tracker.State, t tracker.Told) string{
	tracker.Booked:  func(_ tracker.State, t tracker.Told) string { return "booked: " + promised(*t.Ledger) },
	tracker.Revised: func(_ tracker.State, t tracker.Told) string { return "revised: now " + promised(*t.Ledger) },
	tracker.Logged:  tellLogged,
	tracker.Recount: func(s tracker.State, t tracker.Told) string {
		return "recounted: " + partsWords(s, t.Parts) + " on the table"
	},
	tracker.Undone: func(_ tracker.State, t tracker.Told) string {
		if t.Of == nil {
			return "took back " + t.Target
		}
		return fmt.Sprintf("took back entry %d", t.Of.Seq)
	},
	tracker.Noted: func(_ tracker.State, t tracker.Told) string { return "note: " + t.Reason },
	tracker.Parked: func(_ tracker.State, t tracker.Told) string {
		if t.Reason == "" {
			return "taken up again"
		}
		return "parked: " + t.Reason
	},
	tracker.Started:  tellStarted,
	tracker.Stopped:  func(_ tracker.State, t tracker.Told) string { return "stopped" + endWords(t) },
	tracker.Paused:   func(tracker.State, tracker.Told) string { return "a pause" },
	tracker.Resumed:  func(tracker.State, tracker.Told) string { return "went on" },
	tracker.Ripped:   func(s tracker.State, t tracker.Told) string { return "ripped: " + partsWords(s, t.Parts) },
	tracker.Settled:  tellSettled,
	tracker.Bobbin:   func(tracker.State, tracker.Told) string { return "a full bobbin went in" },
	tracker.Measured: tellMeasured,
	tracker.Amended:  tellAmended,
}

// tellMeasured is what a piece measured.
func tellMeasured(_ tracker.State, t tracker.Told) string {
	m := t.Measure
	if m == nil {
		return "measured"
	}
	sizes := make([]string, len(m.Sizes))
	for i, s := range m.Sizes {
		sizes[i] = measuredSize(s, unitOf(tracker.Series{Unit: m.Unit}))
	}
	return fmt.Sprintf("measured %s: %s", m.Name, strings.Join(sizes, ", "))
}

// measuredSize is one size with how many pieces had it.
func measuredSize(s tracker.MeasuredSize, u measure.Unit) string {
	text := s.Size.Width.Show(u)
	if s.Size.Height > 0 {
		text = size(s.Size, u)
	}
	if s.Count > 1 {
		text = fmt.Sprintf("%d of %s", s.Count, text)
	}
	return text
}

// tellAmended is what the making changed about the job.
func tellAmended(_ tracker.State, t tracker.Told) string {
	switch a := t.Amendment; {
	case a == nil:
		return "changed"
	case a.FileSeam:
		return "planned with the job file's seam again"
	case a.Swap != nil:
		return a.Swap.A + " and " + a.Swap.B + " changed places"
	default:
		return "planned with a seam of " + a.Seam.Show(amendedIn(t))
	}
}

// amendedIn is the unit of the measure that led to an amendment.
func amendedIn(t tracker.Told) measure.Unit {
	if t.Measure != nil {
		return unitOf(tracker.Series{Unit: t.Measure.Unit})
	}
	return measure.Inches
}
