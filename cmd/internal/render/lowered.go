package render

import (
	"fmt"
	"io"
	"slices"

	"quiltrun/tracker"
)

// Recounted says what lies on the table now, and what is open again by it. Before
// is the job without the entry.
func Recounted(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "counted anew", after.Ledger.Job, repeated)
	p.lowered(before, after, ev)
	p.beyond(after, ev, "count that anew too, where it lacks pieces")
	return p.writeTo(w)
}

// Ripped says what was taken apart again, how long that took, and what is open
// again by it.
func Ripped(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "ripped", after.Ledger.Job, repeated)
	if took := tookMinutes(ev); took > 0 {
		p.para(2, fmt.Sprintf("%s of ripping, kept apart from the time of making", spell(took)))
	}
	p.lowered(before, after, ev)
	p.beyond(after, ev, "count that anew too, where it lacks pieces")
	return p.writeTo(w)
}

// Scrapped says what is spoilt beyond use, and what has to be made anew for it.
func Scrapped(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "scrapped", after.Ledger.Job, repeated)
	p.lowered(before, after, ev)
	p.beyond(after, ev, "it waits for what is made anew")
	return p.writeTo(w)
}

// lowered is each row that an entry touched, before and after.
func (p *page) lowered(before, after tracker.State, ev tracker.Event) {
	g := &grid{columns: []column{
		{title: "Operation", flexible: true}, {title: "Lot", flexible: true},
		{title: "Was", right: true}, {title: "Made", right: true}, {title: "Left", right: true},
	}}
	for _, r := range entryRows(after, ev) {
		was, _ := before.Row(r.part.Operation, r.part.Lot)
		if was.Done == r.row.Done && len(ev.Parts) > 1 { // only other blocks have them
			continue
		}
		g.add(fmt.Sprintf("%d%s%s", r.row.Number, tied, r.row.Name), r.part.Lot.Name, fmt.Sprint(was.Done),
			fmt.Sprintf("%d of %s", r.row.Done, counted(r.row.Count, string(r.row.CountedIn))), fmt.Sprint(r.row.Left()))
	}
	p.records(0, g)
}

// beyond says which rows took more than there is now, and what that means.
func (p *page) beyond(after tracker.State, ev tracker.Event, so string) {
	if short := takenBeyond(after, ev); len(short) > 0 {
		p.para(0, fmt.Sprintf("More is taken from it than there is now by %s: %s.", enumerate(short), so))
	}
}

// takenBeyond is the rows that took more pieces or units from a row of an entry
// than it has: only the maker can see which of them are short.
func takenBeyond(s tracker.State, ev tracker.Event) []string {
	var rows []string
	for _, p := range ev.Parts {
		for _, row := range s.TakenBeyond(p.Operation, p.Lot) {
			if words := atRow(s, row.Key, row.Lot); !slices.Contains(rows, words) {
				rows = append(rows, words)
			}
		}
	}
	return rows
}

// LoweredJSON writes what was counted anew or ripped for scripts: each row with
// what was done of it before the entry.
func LoweredJSON(w io.Writer, before, after tracker.State, ev tracker.Event, repeated bool) error {
	type jsonLowered struct {
		jsonEntry
		Was int `json:"was"`
	}
	rows := list(entryRows(after, ev), func(r entryRow) jsonLowered {
		was, _ := before.Row(r.part.Operation, r.part.Lot)
		return jsonLowered{entryOf(r), was.Done}
	})
	return writeJSON(w, struct {
		jsonReceipt
		Entries []jsonLowered `json:"entries"`
		Minutes *number       `json:"minutes"` // of ripping, null where nobody timed it
		jsonDoubts
	}{receiptOf(after.Ledger.Job, ev, repeated), rows, tookOf(ev), jsonDoubts{doubtsOf(after, ev.At)}})
}
