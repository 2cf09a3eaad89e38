package render

import (
	"quiltrun/planner"
	"quiltrun/tracker"
)

// tellMeasured is a measure: what was measured, and what its seam takes.
func tellMeasured(_ tracker.State, t tracker.Told) string {
	m := t.Measure
	u := unitOf(tracker.Series{Unit: m.Unit})
	words := "measured " + m.Step + ": " + sizesWords(m.Sizes, u)
	if m.Seam > 0 {
		words += ", a seam of " + planner.SeamMeasured(m.Seam, u)
	}
	if m.Machine != "" {
		words += " on the machine " + m.Machine
	}
	return words
}

// tellAmended is what the making has changed about the job.
func tellAmended(s tracker.State, t tracker.Told) string {
	a := t.Amendment
	switch {
	case a == nil:
		return tellOther(s, t)
	case a.Swap != nil:
		return a.Swap.A + " and " + a.Swap.B + " changed places"
	case a.Seam > 0 && t.Measure != nil:
		return tellMeasured(s, t) + "; planned anew with it"
	}
	return "planned with " + a.Words()
}
