package render

import (
	"io"

	"quiltrun/tracker"
)

// Remarked says that a note was kept, or where a job's things lie now.
func Remarked(w io.Writer, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	what := "noted"
	if ev.Kind == tracker.Parked {
		what = "parked"
		if ev.Reason == "" {
			what = "taken up again"
		}
	}
	p.receipt(ev, what, after.Ledger.Job, repeated)
	p.para(2, ev.Reason)
	return p.writeTo(w)
}

// RemarkedJSON writes the same for scripts.
func RemarkedJSON(w io.Writer, after tracker.State, ev tracker.Event, repeated bool) error {
	return writeJSON(w, struct {
		jsonReceipt
		Text *string `json:"text"`
	}{receiptOf(after.Ledger.Job, ev, repeated), known(ev.Reason)})
}

// InUse says which job is in use, "" for none.
func InUse(w io.Writer, job string, look Look) error {
	p := &page{look: look}
	if job == "" {
		p.para(0, "No job is in use: JOB has to be written.")
	} else {
		p.para(0, job+" is in use: JOB may be left out.")
	}
	return p.writeTo(w)
}

// InUseJSON writes the same for scripts.
func InUseJSON(w io.Writer, job string) error {
	return writeJSON(w, struct {
		Schema int     `json:"schema"`
		InUse  *string `json:"in_use"`
	}{schema, known(job)})
}

// Used says which job was put in use.
func Used(w io.Writer, ev tracker.Event, look Look) error { return InUse(w, ev.Target, look) }

// UsedJSON writes the same for scripts, as of an entry. Job is null where none is
// in use any more.
func UsedJSON(w io.Writer, ev tracker.Event, repeated bool) error {
	return writeJSON(w, struct {
		Schema   int     `json:"schema"`
		Job      *string `json:"job"`
		ID       string  `json:"id"`
		Seq      uint64  `json:"seq"`
		Repeated bool    `json:"repeated"`
		InUse    *string `json:"in_use"`
	}{schema, known(ev.Target), ev.ID, ev.Seq, repeated, known(ev.Target)})
}
