package render

import (
	"fmt"
	"io"
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

// Left writes what remains of each job as seen on a day: where it is parked, the
// next thing to do, and the work left by fabric, by colourway and by quilt.
func Left(w io.Writer, states []tracker.State, today planner.Date, look Look) error {
	p := &page{look: look}
	if len(states) == 0 {
		p.para(0, "No job is booked.")
	}
	for i, s := range states {
		if i > 0 {
			p.gap()
		}
		p.left(s, today)
	}
	return p.writeTo(w)
}

// left is one job: what is made of it in all, then row by row.
func (p *page) left(s tracker.State, today planner.Date) {
	p.jobHead(s)
	p.fact("Made", factAt, fmt.Sprintf("%d of %s%s, %d of %s", s.FinishedBlocks(tracker.Lot{}),
		counted(s.Blocks(tracker.Lot{}), "block"), inHand(s), s.FinishedQuilts(), counted(s.Ledger.Quantity, "quilt")))
	if at, done := s.FinishedAt(); done {
		p.fact("Left", factAt, "handed over on "+day(planner.DateOf(at))+"; nothing is left to do")
		return
	}
	if len(s.Remaining()) == 0 {
		p.fact("Left", factAt, "nothing")
		return
	}
	p.fact("Left", factAt, about(remainingMinutes(s))+" of work, by the table of starting times")
	p.fact("Next", factAt, nextWords(s, today))
	p.drifts(s)
	p.leftTable(s)
}

// jobHead is the title of a job, where its things were parked, and its id.
func (p *page) jobHead(s tracker.State) {
	p.prose(strong, 0, "", s.Ledger.Title)
	p.rule()
	if ev, parked := s.Parked(); parked {
		p.fact("Parked", factAt, parkedWords(ev))
	}
	job := s.Ledger.Job
	if !s.Ledger.Due.IsZero() {
		job += ", due " + day(s.Ledger.Due)
	}
	p.fact("Job", factAt, job)
}

// parkedWords is where a job's things lie, and since when.
func parkedWords(ev tracker.Event) string {
	return fmt.Sprintf("%s (%s, %s)", ev.Reason, ev.By, planner.DateOf(ev.At))
}

// inHand says how many blocks are begun and not made, "" where none are.
func inHand(s tracker.State) string {
	if n := s.InHand(tracker.Lot{}); n > 0 {
		return fmt.Sprintf(", %d in hand", n)
	}
	return ""
}

// remainingMinutes is the expected time of all that is left of a job. A job
// whose quilts are all handed over takes no more, even where some earlier row
// was never logged to its end.
func remainingMinutes(s tracker.State) planner.Minutes {
	var sum planner.Minutes
	if _, done := s.FinishedAt(); done {
		return sum
	}
	for _, r := range s.Remaining() {
		sum += r.Minutes
	}
	return sum
}

// leftPart is lots that have the same work left, and what is said above and
// below their rows.
type leftPart struct {
	title string
	rows  []tracker.Row
	below []string
}

// leftTable is the work left: what comes before all blocks, the colourways side
// by side, then the quilts. Fabrics and quilts with the same work left share their
// rows, and very many fabrics share one row an operation and are listed under it.
func (p *page) leftTable(s tracker.State) {
	parts, lots := beforeBlocks(lotsWithWork(s), firstOfBlocks(s))
	fabrics := ofKind(lots, planner.FabricLot)
	if len(fabrics) > mostRows {
		parts = append(parts, crowded(fabrics)...)
	} else {
		parts = append(parts, alikeParts(s, fabrics)...)
	}
	p.leftParts(parts)
	if m := matrixOf(s); len(m.rows) > 0 {
		p.heading("Blocks, made/left of each colourway")
		p.matrix(m)
	}
	if quilts := ofKind(lots, planner.QuiltLot); len(quilts) > 0 {
		p.leftParts(alikeParts(s, quilts))
	}
}

// alikeParts are lots of one kind, those with the same work left together.
func alikeParts(s tracker.State, lots []lotRows) []leftPart {
	var parts []leftPart
	for _, group := range grouped(len(lots), func(i int) string { return sameWork(s, lots[i]) }) {
		names := picked(group, func(i int) string { return lots[i].Name })
		parts = append(parts, leftPart{title: lotHeading(s, names, lots[group[0]].Lot), rows: lots[group[0]].rows})
	}
	return parts
}

// firstOfBlocks is the lowest number of an operation on blocks; 0 where there is
// none.
func firstOfBlocks(s tracker.State) int {
	first := 0
	for _, o := range s.Ledger.Operations {
		if o.Lot.Kind == planner.ColourwayLot && (first == 0 || o.Number < first) {
			first = o.Number
		}
	}
	return first
}

// beforeBlocks takes the rows of quilts that come before the first operation on
// blocks, such as the seam test, out of their lots.
func beforeBlocks(lots []lotRows, first int) (early []leftPart, rest []lotRows) {
	for _, l := range lots {
		if l.Kind == planner.QuiltLot {
			before := slices.IndexFunc(l.rows, func(r tracker.Row) bool { return r.Number >= first })
			if before < 0 {
				before = len(l.rows)
			}
			if before > 0 {
				early = append(early, leftPart{title: l.Name + ", before the blocks", rows: l.rows[:before]})
				l.rows = l.rows[before:]
			}
		}
		if len(l.rows) > 0 {
			rest = append(rest, l)
		}
	}
	return early, rest
}

// leftParts lays the parts out under one head, in columns where they fit.
func (p *page) leftParts(parts []leftPart) {
	if len(parts) == 0 {
		return
	}
	p.gap()
	g := &grid{columns: []column{
		{title: "No", right: true}, {title: "Operation", flexible: true}, {title: "Made", right: true}, {title: "Left"},
	}}
	above, below := map[int]string{}, map[int][]string{}
	for _, part := range parts {
		above[len(g.rows)] = part.title
		for _, r := range part.rows {
			g.add(fmt.Sprint(r.Number), r.Name, fmt.Sprintf("%d of %d", r.Done, r.Count), leftWords(r))
		}
		below[len(g.rows)-1] = part.below
	}
	before := func(row int) {
		if above[row] != "" {
			p.para(0, above[row])
		}
	}
	after := func(row int) {
		for _, note := range below[row] {
			p.para(leftNotes, note)
		}
	}
	if p.columns(2, g, before, after) {
		return
	}
	for i, row := range g.rows {
		before(i)
		p.hang(2, fmt.Sprintf("%4s  ", row[0]), fmt.Sprintf("%s: %s, %s left", row[1], row[2], row[3]))
		after(i)
	}
}

// leftWords is what is left of a row, and what it has beyond the need.
func leftWords(r tracker.Row) string {
	switch {
	case r.Spare == 0:
		return counted(r.Left(), string(r.CountedIn))
	case r.Left() == 0:
		return fmt.Sprintf("none: %d more than needed", r.Spare)
	}
	return fmt.Sprintf("%s, and %d more than needed", counted(r.Left(), string(r.CountedIn)), r.Spare)
}

// leftNotes is where names stand under the rows.
const leftNotes = 8

// sameWork is equal for lots of one kind with the same rows and blocks left.
func sameWork(s tracker.State, l lotRows) string {
	text := fmt.Sprint(l.Kind, s.FinishedBlocks(l.Lot), s.Blocks(l.Lot))
	for _, r := range l.rows {
		text += fmt.Sprint(" ", r.Key, r.Done, r.Count, r.Spare)
	}
	return text
}

// lotHeading names lots; of colourways and quilts it says how many blocks are
// made.
func lotHeading(s tracker.State, names []string, first tracker.Lot) string {
	title, each := enumerate(names), ""
	if len(names) > 1 {
		each = " each"
	}
	if first.Kind == planner.FabricLot {
		if each != "" {
			title += ": each"
		}
		return title
	}
	return fmt.Sprintf("%s: %d of %s made%s", title, s.FinishedBlocks(first), counted(s.Blocks(first), "block"), each)
}

// crowded sums very many lots of one kind up by operation, under one heading,
// and names those with equally much left together.
func crowded(lots []lotRows) []leftPart {
	var parts []leftPart
	for _, rows := range byNumber(lots) {
		sum := rows[0]
		sum.Done, sum.Count, sum.Spare = 0, 0, 0
		for _, r := range rows {
			sum.Done, sum.Count, sum.Spare = sum.Done+r.Done, sum.Count+r.Count, sum.Spare+r.Spare
		}
		part := leftPart{rows: []tracker.Row{sum}}
		if len(parts) == 0 {
			part.title = english.Plural(string(sum.Lot.Kind))
		}
		for _, group := range grouped(len(rows), func(i int) string { return fmt.Sprint(rows[i].Left()) }) {
			names := picked(group, func(i int) string { return rows[i].Lot.Name })
			part.below = append(part.below, fmt.Sprintf("%d left of %s", rows[group[0]].Left(), enumerate(names)))
		}
		parts = append(parts, part)
	}
	return parts
}
