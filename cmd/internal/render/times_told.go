package render

import (
	"fmt"

	"quiltrun/tracker"
)

// tellStarted is the beginning of work in a history.
func tellStarted(s tracker.State, t tracker.Told) string {
	if t.Ticked {
		return "sat down to " + atRow(s, t.Parts[0].Operation, t.Parts[0].Lot)
	}
	return "began " + atRow(s, t.Parts[0].Operation, t.Parts[0].Lot)
}

// endWords is an end that was said.
func endWords(t tracker.Told) string {
	if t.End == nil {
		return ""
	}
	return ": work ended " + moment(*t.End)
}

// tellSettled is a time that was put right, or limits that were set.
func tellSettled(s tracker.State, t tracker.Told) string {
	if t.Target == "" {
		words := "from here on"
		if l := t.Limits; l != nil && l.Gap != nil {
			words += fmt.Sprintf(", more than %s between two ticks is no work", spell(*l.Gap))
		}
		if l := t.Limits; l != nil && l.Quiet != nil {
			words += fmt.Sprintf(", a clock that runs %s with nothing logged is asked about", spell(*l.Quiet))
		}
		return words
	}
	what := t.Target
	if sitting, found, err := s.Sitting(t.Target); err == nil && found {
		what = fmt.Sprintf("entry %d", sitting.Seq)
	} else {
		for _, e := range s.Entries {
			if e.ID == t.Target {
				what = fmt.Sprintf("entry %d", e.Seq)
			}
		}
	}
	return "the time of " + what + " put right" + endWords(t)
}
