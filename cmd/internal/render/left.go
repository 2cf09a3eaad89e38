package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// Left writes what remains of each job: per lot the operations with work left.
func Left(w io.Writer, states []tracker.State, look Look) error {
	p := &page{look: look}
	if len(states) == 0 {
		p.para(0, "No job is booked.")
	}
	for i, s := range states {
		if i > 0 {
			p.gap()
		}
		if err := p.left(s); err != nil {
			return err
		}
	}
	return p.writeTo(w)
}

func (p *page) left(s tracker.State) error {
	l := s.Ledger
	p.prose(strong, 0, "", l.Title)
	p.rule()
	job := l.Job
	if !l.Due.IsZero() {
		job += ", due " + day(l.Due)
	}
	p.fact("Job", factAt, job)
	p.fact("Made", factAt, fmt.Sprintf("%d of %s, %d of %s", s.FinishedBlocks(tracker.Lot{}),
		counted(s.Blocks(tracker.Lot{}), "block"), s.FinishedQuilts(), counted(l.Quantity, "quilt")))
	left := remainingMinutes(s)
	if left == 0 {
		p.fact("Left", factAt, "nothing")
		return nil
	}
	p.fact("Left", factAt, about(left)+" of work, by the table of starting times")
	p.gap()
	return p.leftTable(s)
}

// remainingMinutes is the expected time of all that is left of a job.
func remainingMinutes(s tracker.State) planner.Minutes {
	var sum planner.Minutes
	for _, r := range s.Remaining() {
		sum += r.Minutes
	}
	return sum
}

// leftTable has a row for each operation with work left, lot by lot. Where very
// many fabrics wait, they share a row and are listed under it.
func (p *page) leftTable(s tracker.State) error {
	g := &grid{columns: []column{
		{title: "Lot", flexible: true}, {title: "No", right: true}, {title: "Operation", flexible: true},
		{title: "Made", right: true}, {title: "Left", right: true},
	}}
	notes := map[int][]string{}
	lots := lotsWithWork(s)
	if fabrics := ofKind(lots, planner.FabricLot); len(fabrics) > mostRows {
		for _, group := range byNumber(fabrics) {
			g.add(crowdCells(group)...)
			notes[len(g.rows)-1] = leftEach(group)
		}
		lots = lots[len(fabrics):]
	}
	for _, lot := range lots {
		for i, r := range lot.rows {
			name := ""
			if i == 0 {
				name = lotHeading(s, lot.Lot)
			}
			g.add(name, fmt.Sprint(r.Number), r.Name, fmt.Sprintf("%d of %d", r.Done, r.Count), counted(r.Left(), string(r.CountedIn)))
		}
	}
	fits, err := p.table(0, g, func(row int) { p.flow(2, notes[row]) })
	if err != nil || fits {
		return err
	}
	p.leftList(g, notes)
	return nil
}

// leftList is the same on a page too narrow for the table.
func (p *page) leftList(g *grid, notes map[int][]string) {
	for i, row := range g.rows {
		if row[0] != "" {
			p.para(0, row[0])
		}
		p.hang(0, fmt.Sprintf("%5s  ", row[1]), fmt.Sprintf("%s: %s, %s left", row[2], row[3], row[4]))
		p.flow(7, notes[i])
	}
}

// lotHeading names a lot; of a colourway and a quilt it says how many blocks
// are made.
func lotHeading(s tracker.State, lot tracker.Lot) string {
	if lot.Kind == planner.FabricLot {
		return lot.Name
	}
	return fmt.Sprintf("%s (%d of %s made)", lot.Name, s.FinishedBlocks(lot), counted(s.Blocks(lot), "block"))
}

// lotRows is a lot with its rows of the route.
type lotRows struct {
	tracker.Lot
	rows []tracker.Row
}

// lotsOf parts the rows by lot: fabrics, colourways, quilts, each in the job
// file's order.
func lotsOf(s tracker.State) []lotRows {
	lots := make([]lotRows, 0, len(s.Ledger.Fabrics)+len(s.Ledger.Colourways)+s.Ledger.Quantity)
	place := map[tracker.Lot]int{}
	add := func(kind planner.LotKind, name string) {
		lot := tracker.Lot{Kind: kind, Name: name}
		place[lot] = len(lots)
		lots = append(lots, lotRows{Lot: lot})
	}
	for _, f := range s.Ledger.Fabrics {
		add(planner.FabricLot, f)
	}
	for _, c := range s.Ledger.Colourways {
		add(planner.ColourwayLot, c)
	}
	for _, r := range s.Rows() {
		if _, ok := place[r.Lot]; !ok {
			add(r.Lot.Kind, r.Lot.Name)
		}
		at := place[r.Lot]
		lots[at].rows = append(lots[at].rows, r)
	}
	return slices.DeleteFunc(lots, func(l lotRows) bool { return len(l.rows) == 0 })
}

// lotsWithWork are the lots and rows with work left.
func lotsWithWork(s tracker.State) []lotRows {
	lots := lotsOf(s)
	for i := range lots {
		lots[i].rows = slices.DeleteFunc(lots[i].rows, func(r tracker.Row) bool { return r.Left() == 0 })
	}
	return slices.DeleteFunc(lots, func(l lotRows) bool { return len(l.rows) == 0 })
}

func ofKind(lots []lotRows, kind planner.LotKind) []lotRows {
	var out []lotRows
	for _, l := range lots {
		if l.Kind == kind {
			out = append(out, l)
		}
	}
	return out
}

// byNumber gathers the rows of one operation from many lots.
func byNumber(lots []lotRows) [][]tracker.Row {
	var rows []tracker.Row
	for _, l := range lots {
		rows = append(rows, l.rows...)
	}
	slices.SortStableFunc(rows, func(a, b tracker.Row) int { return a.Number - b.Number })
	var out [][]tracker.Row
	for _, group := range grouped(len(rows), func(i int) string { return rows[i].Key }) {
		one := make([]tracker.Row, len(group))
		for i, at := range group {
			one[i] = rows[at]
		}
		out = append(out, one)
	}
	return out
}

// crowdCells sums up one operation of many lots.
func crowdCells(rows []tracker.Row) []string {
	done, count := 0, 0
	for _, r := range rows {
		done, count = done+r.Done, count+r.Count
	}
	first := rows[0]
	return []string{counted(len(rows), string(first.Lot.Kind)), fmt.Sprint(first.Number), first.Name,
		fmt.Sprintf("%d of %d", done, count), counted(count-done, string(first.CountedIn))}
}

func leftEach(rows []tracker.Row) []string {
	out := make([]string, len(rows))
	for i, r := range rows {
		out[i] = strings.TrimSpace(fmt.Sprintf("%s %d", r.Lot.Name, r.Left()))
	}
	return out
}
