package render

import (
	"fmt"
	"io"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Logged says what an entry has added, and what is left of each operation that
// it touched. After is the state with the entry in it; repeated says that the
// same entry had been sent before and counts once.
func Logged(w io.Writer, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "logged", after.Ledger.Job, repeated)
	p.para(2, tookWords(ev))
	g := &grid{columns: []column{
		{title: "Operation", flexible: true}, {title: "Lot", flexible: true},
		{title: "Logged", right: true}, {title: "Made", right: true}, {title: "Left", right: true},
	}}
	for _, r := range entryRows(after, ev) {
		g.add(fmt.Sprintf("%d%s%s", r.row.Number, tied, r.row.Name), r.part.Lot.Name, counted(r.part.Count, string(r.row.CountedIn)),
			fmt.Sprintf("%d of %d", r.row.Done, r.row.Count), fmt.Sprint(r.row.Left()))
	}
	p.records(0, g)
	p.drifts(after, operationsOf(ev)...)
	return p.writeTo(w)
}

// longEntry is the time from which on an entry may be a slip, such as hours
// given for minutes: nobody works so long in one sitting.
const longEntry planner.Minutes = 12 * 60

// tookWords is the time that was given for an entry, "" where none was.
func tookWords(ev tracker.Event) string {
	took := tookMinutes(ev)
	switch {
	case took == 0:
		return ""
	case took >= longEntry:
		return fmt.Sprintf("took %s; %s or more in one entry: undo it if that is a slip", spell(took), spell(longEntry))
	}
	return "took " + spell(took)
}

// tookMinutes is the time of all parts of an entry.
func tookMinutes(ev tracker.Event) planner.Minutes {
	var took planner.Minutes
	for _, part := range ev.Parts {
		if part.Minutes != nil {
			took += *part.Minutes
		}
	}
	return took
}

// Undone says which entry was taken back, what it said, and how far the
// operations are now.
func Undone(w io.Writer, after tracker.State, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	target := targetOf(after, ev)
	if target.ID == "" { // a note or a bobbin: what else it said is in the history
		target.Event, _ = after.Undoes(ev)
	}
	what := fmt.Sprintf("%s: entry %d (%s) is taken back as entry %d (%s)", after.Ledger.Job, target.Seq, target.ID, ev.Seq, ev.ID)
	if repeated {
		what = fmt.Sprintf("%s: entry %d (%s) was taken back before as entry %d (%s), which counts once", after.Ledger.Job, target.Seq, target.ID, ev.Seq, ev.ID)
	}
	p.para(0, what)
	p.para(2, takenBack(target))
	p.para(2, remarkWords(target.Event))
	for _, part := range target.Parts {
		row, goesOn := after.Row(part.Operation, part.Lot)
		if !goesOn {
			p.para(2, fmt.Sprintf("%s, %s: %d taken back; it is no longer in the route", part.Operation, part.Lot.Name, part.Count))
			continue
		}
		p.para(2, fmt.Sprintf("%d %s, %s: %s taken back; now %d of %d, %d left", row.Number, row.Name, part.Lot.Name,
			counted(part.Count, string(row.CountedIn)), row.Done, row.Count, row.Left()))
	}
	return p.writeTo(w)
}

// remarkWords is what a note or a bobbin said, "" for work.
func remarkWords(ev tracker.Event) string {
	switch ev.Kind {
	case tracker.Noted:
		return "note: " + ev.Reason
	case tracker.Bobbin:
		return "a full bobbin"
	}
	return ""
}

// targetOf is the entry that an undo takes back.
func targetOf(after tracker.State, undo tracker.Event) tracker.Entry {
	for _, e := range after.Entries {
		if e.ID == undo.Target {
			return e
		}
	}
	return tracker.Entry{}
}

// Booked says that a job was taken on.
func Booked(w io.Writer, ev tracker.Event, repeated bool, warnings []string, look Look) error {
	p := &page{look: look}
	l := ev.Ledger
	p.receipt(ev, "booked", l.Job, repeated)
	p.para(2, promised(*l))
	for _, warning := range warnings {
		p.hang(2, "note: ", warning)
	}
	return p.writeTo(w)
}

// promised is how large a booked job is, and when it is due.
func promised(l tracker.Ledger) string {
	blocks := 0
	for _, b := range l.Blocks {
		if !b.Retired {
			blocks++
		}
	}
	text := fmt.Sprintf("%s, %s, %s of work", counted(l.Quantity, "quilt"), counted(blocks, "block"), about(tableMinutes(l)))
	if !l.Due.IsZero() {
		text += "; due " + day(l.Due)
	}
	return text
}

// tableMinutes is the expected time of a whole ledger.
func tableMinutes(l tracker.Ledger) planner.Minutes {
	var sum planner.Minutes
	for _, o := range l.Operations {
		sum += o.Setup.Mean + planner.Minutes(o.Count)*o.Unit.Mean
	}
	return sum
}

// Revised says that a booked job was planned anew, how large it is now, and what
// is different. The changes come in words, one each, the weightiest first.
func Revised(w io.Writer, ev tracker.Event, repeated bool, changes []string, look Look) error {
	p := &page{look: look}
	p.receipt(ev, "revised", ev.Ledger.Job, repeated)
	if len(changes) == 0 {
		p.para(2, "nothing is different")
		return p.writeTo(w)
	}
	p.para(2, "now "+promised(*ev.Ledger))
	for _, c := range changes {
		p.hang(2, "- ", c)
	}
	return p.writeTo(w)
}

// receipt is the line that an entry is known by afterwards.
func (p *page) receipt(ev tracker.Event, what, job string, repeated bool) {
	if repeated {
		p.para(0, fmt.Sprintf("%s: this was %s before as entry %d (%s) and counts once", job, what, ev.Seq, ev.ID))
		return
	}
	p.para(0, fmt.Sprintf("%s: %s as entry %d (%s)", job, what, ev.Seq, ev.ID))
}

// entryRow is a part of an entry and the row of the route that it touched.
type entryRow struct {
	part tracker.Part
	row  tracker.Row
}

// entryRows are the parts whose rows are still in the route.
func entryRows(s tracker.State, ev tracker.Event) []entryRow {
	var out []entryRow
	for _, part := range ev.Parts {
		if row, ok := s.Row(part.Operation, part.Lot); ok {
			out = append(out, entryRow{part, row})
		}
	}
	return out
}
