package cli

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/tracker"
)

// changes says in sentences what a revision made different. First what the two
// plans say of size, time and cloth, where both are to be had; then, from one
// ledger to the next, the job, its blocks and operations; and last what its rows
// have beyond the need. Nothing different is no sentence.
func changes(old, now tracker.Ledger, after tracker.State, p *plans) []string {
	said := []string{}
	if p != nil {
		said = append(said, p.lead()...)
	}
	said = append(said, jobChanges(old, now)...)
	said = append(said, blockChanges(old, now)...)
	if p != nil {
		said = append(said, p.rest()...)
	}
	said = append(said, routeChanges(old, now)...)
	for _, row := range after.Rows() {
		switch {
		case row.Spare == 1:
			said = append(said, rowName(row.Operation)+": 1 more is made than is needed now")
		case row.Spare > 1:
			said = append(said, fmt.Sprintf("%s: %d more are made than are needed now", rowName(row.Operation), row.Spare))
		}
	}
	if len(said) == 0 && p != nil {
		said = append(said, p.otherwise()...)
	}
	return said
}

// jobChanges compares what the ledgers say of the whole job.
func jobChanges(old, now tracker.Ledger) []string {
	var said []string
	differs := func(what, was, is string) { said = append(said, difference(what, was, is)...) }
	differs("title", old.Title, now.Title)
	differs("client", old.Client, now.Client)
	differs("received", old.Received.String(), now.Received.String())
	differs("due", old.Due.String(), now.Due.String())
	differs("quantity", fmt.Sprint(old.Quantity), fmt.Sprint(now.Quantity))
	differs("fabrics", strings.Join(old.Fabrics, ", "), strings.Join(now.Fabrics, ", "))
	differs("colourways", strings.Join(old.Colourways, ", "), strings.Join(now.Colourways, ", "))
	return said
}

// blockChanges says which blocks are new or retired, and how many of the others
// lie elsewhere or take other fabrics.
func blockChanges(old, now tracker.Ledger) []string {
	was := make(map[string]tracker.Block, len(old.Blocks))
	for _, b := range old.Blocks {
		was[b.ID] = b
	}
	var added, retired []string
	moved, recoloured := 0, 0
	for _, b := range now.Blocks {
		before, known := was[b.ID]
		switch {
		case !known:
			added = append(added, b.ID)
		case b.Retired && !before.Retired:
			retired = append(retired, b.ID)
		case b.Retired:
		default:
			moved += count(b.Quilt != before.Quilt || b.Row != before.Row || b.Column != before.Column || b.Turn != before.Turn)
			recoloured += count(!slices.Equal(b.Fabrics, before.Fabrics))
		}
	}
	var said []string
	if len(added) > 0 {
		said = append(said, "new: "+english.Count(len(added), "block")+", "+shortList(added))
	}
	if len(retired) > 0 {
		said = append(said, "retired: "+english.Count(len(retired), "block")+", "+shortList(retired))
	}
	if moved > 0 {
		said = append(said, english.Count(moved, "block")+" in another place of the layout")
	}
	if recoloured > 0 {
		said = append(said, english.Count(recoloured, "block")+" of other fabrics")
	}
	return said
}

// count is 1 for what is so.
func count(is bool) int {
	if is {
		return 1
	}
	return 0
}

// routeChanges says which rows of the route are new, retired or of another
// count. A row goes on under its colourway's new name.
func routeChanges(old, now tracker.Ledger) []string {
	before := map[rowOf]tracker.Operation{}
	for _, o := range old.Operations {
		before[bookedRow(old, o)] = o
	}
	var added, retired, said []string
	for _, o := range now.Operations {
		row := bookedRow(now, o)
		was, known := before[row]
		delete(before, row)
		switch {
		case !known:
			added = append(added, rowName(o))
		case was.Count != o.Count:
			said = append(said, fmt.Sprintf("%s: %s, was %d", rowName(o), english.Count(o.Count, string(o.CountedIn)), was.Count))
		}
	}
	for _, o := range old.Operations {
		if _, gone := before[bookedRow(old, o)]; gone {
			retired = append(retired, rowName(o))
		}
	}
	if len(added) > 0 {
		said = append(said, "new: "+shortListOf(added, "; "))
	}
	if len(retired) > 0 {
		said = append(said, "retired: "+shortListOf(retired, "; "))
	}
	return said
}

// bookedRow names a row of the route by the name that its colourway was booked
// under.
func bookedRow(ledger tracker.Ledger, o tracker.Operation) rowOf {
	row := rowOf{o.Key, o.Lot}
	if booked, renamed := ledger.Renamed[o.Lot.Name]; renamed && o.Lot.Kind == planner.ColourwayLot {
		row.lot.Name = booked
	}
	return row
}

// rowOf names a row of a route.
type rowOf struct {
	key string
	lot tracker.Lot
}

// rowName is a row of the route as it stands on the wall.
func rowName(o tracker.Operation) string {
	return o.Title() + ", " + o.Lot.Name
}
