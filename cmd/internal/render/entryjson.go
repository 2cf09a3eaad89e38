package render

import (
	"io"

	"quiltrun/tracker"
)

// LoggedJSON writes the same for scripts.
func LoggedJSON(w io.Writer, after tracker.State, ev tracker.Event, repeated bool) error {
	return writeJSON(w, struct {
		jsonReceipt
		Entries []jsonEntry  `json:"entries"`
		Drifts  []*jsonTrend `json:"drifts"` // seams that drift, of what was logged
		jsonDoubts
		Minutes *number `json:"minutes"`
	}{receiptOf(after.Ledger.Job, ev, repeated), list(entryRows(after, ev), entryOf),
		list(after.Drifts(operationsOf(ev)...), func(d tracker.Drift) *jsonTrend { return trendOf(d.Series) }),
		jsonDoubts{doubtsOf(after, ev.At)}, tookOf(ev)})
}

// tookOf is the minutes of a whole entry, null where nobody timed it.
func tookOf(ev tracker.Event) *number {
	var took *number
	for _, part := range ev.Parts {
		if part.Minutes != nil {
			took = some(minutes(tookMinutes(ev)))
		}
	}
	return took
}

// UndoneJSON writes what was taken back for scripts.
func UndoneJSON(w io.Writer, after tracker.State, ev tracker.Event, repeated bool) error {
	target, _ := after.Undoes(ev)
	return writeJSON(w, struct {
		jsonReceipt
		Target    string `json:"target"`
		TargetSeq uint64 `json:"target_seq"`
		jsonDoubts
	}{receiptOf(after.Ledger.Job, ev, repeated), ev.Target, target.Seq, jsonDoubts{doubtsOf(after, ev.At)}})
}

// BookedJSON writes that a job was taken on for scripts.
func BookedJSON(w io.Writer, ev tracker.Event, repeated bool, warnings []string) error {
	l := *ev.Ledger
	return writeJSON(w, struct {
		jsonReceipt
		Quilts   int      `json:"quilts"`
		Blocks   int      `json:"blocks"`
		Minutes  number   `json:"minutes"`
		Due      *string  `json:"due"`
		Warnings []string `json:"warnings"`
	}{receiptOf(l.Job, ev, repeated), l.Quantity, len(l.Blocks), minutes(tableMinutes(l)), date(l.Due),
		list(warnings, func(text string) string { return text })})
}

// RevisedJSON writes that a job was planned anew for scripts.
func RevisedJSON(w io.Writer, ev tracker.Event, repeated bool, changes []string) error {
	return writeJSON(w, struct {
		jsonReceipt
		Revision int      `json:"revision"`
		Changes  []string `json:"changes"`
	}{receiptOf(ev.Ledger.Job, ev, repeated), ev.Ledger.Revision, list(changes, func(c string) string { return c })})
}

// jsonReceipt is what every command that writes answers with: the entry, by the
// id its sender gave it and the number the store gave it.
type jsonReceipt struct {
	Schema   int    `json:"schema"`
	Job      string `json:"job"`
	ID       string `json:"id"`
	Seq      uint64 `json:"seq"`
	Repeated bool   `json:"repeated"`
}

func receiptOf(job string, ev tracker.Event, repeated bool) jsonReceipt {
	return jsonReceipt{Schema: schema, Job: job, ID: ev.ID, Seq: ev.Seq, Repeated: repeated}
}

// jsonEntry is one row of the route that an entry touched, as it is now.
type jsonEntry struct {
	Number  int    `json:"number"`
	Key     string `json:"key"`
	Lot     string `json:"lot"`
	LotKind string `json:"lot_kind"`
	Count   int    `json:"count"` // in this entry
	Done    int    `json:"done"`
	Left    int    `json:"left"`
}

func entryOf(r entryRow) jsonEntry {
	return jsonEntry{Number: r.row.Number, Key: r.row.Key, Lot: r.part.Lot.Name, LotKind: string(r.part.Lot.Kind),
		Count: r.part.Count, Done: r.row.Done, Left: r.row.Left()}
}
