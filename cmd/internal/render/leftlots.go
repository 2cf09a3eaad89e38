package render

import (
	"slices"

	"quiltrun/planner"
	"quiltrun/tracker"
)

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

// lotsWithWork are the lots and rows with work left, or with more made than is
// needed.
func lotsWithWork(s tracker.State) []lotRows {
	lots := lotsOf(s)
	for i := range lots {
		lots[i].rows = slices.DeleteFunc(lots[i].rows, func(r tracker.Row) bool { return r.Left() == 0 && r.Spare == 0 })
	}
	return slices.DeleteFunc(lots, func(l lotRows) bool { return len(l.rows) == 0 })
}

// ofKind are the lots of one kind.
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
