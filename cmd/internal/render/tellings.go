package render

import (
	"fmt"

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
	tracker.Spoilt:   func(s tracker.State, t tracker.Told) string { return "scrapped: " + partsWords(s, t.Parts) },
	tracker.Settled:  tellSettled,
	tracker.Bobbin:   func(tracker.State, tracker.Told) string { return "a full bobbin went in" },
	tracker.Measured: tellMeasured,
	tracker.Amended:  tellAmended,
}
