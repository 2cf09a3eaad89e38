package tracker

import (
	"maps"

	"quiltrun/planner"
)

// Freeze is the ledger of a plan that is booked for the first time: revision 1.
// It shares nothing with the plan that either could change.
func Freeze(plan planner.Plan) Ledger {
	job := plan.Job
	l := Ledger{
		Job: job.ID, Title: job.Title, Client: job.Client,
		Received: job.Received, Due: job.Due,
		Revision: 1, Quantity: job.Quantity,
	}
	for _, f := range job.Fabrics {
		l.Fabrics = append(l.Fabrics, f.Name)
	}
	for _, c := range job.Colourways {
		l.Colourways = append(l.Colourways, c.Name)
	}
	for _, o := range plan.Operations {
		l.Operations = append(l.Operations, frozen(o))
	}
	for _, b := range dealt(plan) {
		l.Blocks = append(l.Blocks, Block{
			ID: b.ID, Quilt: b.Quilt, Colourway: b.Colourway,
			Fabrics: append([]planner.RoleFabric(nil), b.Fabrics...),
			Row:     b.Row, Column: b.Column, Turn: b.Turn,
		})
	}
	l.Cloth = plan.StockNeeds()
	return l
}

// frozen is a row without its instruction: that may be worded better later, and
// the counts may not.
func frozen(o planner.Operation) Operation {
	row := Operation{
		Number: o.Number, Key: o.Key, Name: o.Name, Lot: Lot(o.Lot),
		CountedIn: o.CountedIn, PerBlock: o.PerBlock, Count: o.Count,
		Place: o.Place, Setup: o.Setup, Unit: o.Unit, Wait: o.Wait,
	}
	for _, after := range o.After {
		ref := Ref{Key: after.Key, Lot: Lot(after.Lot), Makes: after.Makes}
		for _, t := range after.Takes {
			ref.Takes = append(ref.Takes, Take(t))
		}
		row.After = append(row.After, ref)
	}
	return row
}

// Refreeze is the ledger of a booked job that is planned anew. Operations and
// blocks that the new plan no longer has stay on record as retired, so that no
// number and no id is ever given twice.
func Refreeze(old Ledger, plan planner.Plan) Ledger {
	l := Freeze(plan)
	l.Revision = old.Revision + 1
	if l.Received.IsZero() {
		l.Received = old.Received
	}
	l.Renamed = renamed(old, plan.Job.Colourways)
	l.Retired = retiredKeys(old, l)
	l.Blocks = append(l.Blocks, retiredBlocks(old, l)...)
	return l
}

// renamed is the names under which the colourways were booked, where they have
// another now. A job file may go on saying `was` long after the renaming.
func renamed(old Ledger, colourways []planner.Colourway) map[string]string {
	names := map[string]string{}
	for _, c := range colourways {
		booked, already := old.Renamed[c.Name]
		switch {
		case already && (c.Was == "" || c.Was == booked || !old.hasColourway(c.Was)):
			names[c.Name] = booked
		case old.hasColourway(c.Was):
			names[c.Name] = old.bookedAs(c.Was)
		}
		if names[c.Name] == c.Name {
			delete(names, c.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return names
}

// hasColourway reports whether the ledger has a colourway of that name.
func (l Ledger) hasColourway(name string) bool {
	for _, c := range l.Colourways {
		if c == name {
			return true
		}
	}
	return false
}

// bookedAs is the name under which a colourway was booked.
func (l Ledger) bookedAs(colourway string) string {
	if booked, ok := l.Renamed[colourway]; ok {
		return booked
	}
	return colourway
}

// retiredKeys is every key ever used that the new ledger has no row for.
func retiredKeys(old, now Ledger) map[string]int {
	gone := old.numbers()
	for _, o := range now.Operations {
		delete(gone, o.Key)
	}
	if len(gone) == 0 {
		return nil
	}
	return gone
}

// retiredBlocks is the blocks that the new ledger no longer has, under the name
// that their colourway bears now.
func retiredBlocks(old, now Ledger) []Block {
	live := make(map[string]bool, len(now.Blocks))
	for _, b := range now.Blocks {
		live[b.ID] = true
	}
	names := carriedNames(old, now)
	var gone []Block
	for _, b := range old.Blocks {
		if live[b.ID] {
			continue
		}
		b.Retired = true
		if name, ok := names[b.Colourway]; ok {
			b.Colourway = name
		}
		gone = append(gone, b)
	}
	return gone
}

// carriedNames says under which name each colourway of the old ledger goes on
// in the new one. A colourway that is left out is missing. Renamed ones choose
// first: their old name may have gone to another colourway since.
func carriedNames(old, now Ledger) map[string]string {
	names := make(map[string]string, len(now.Colourways))
	for _, renamed := range []bool{true, false} {
		for _, c := range now.Colourways {
			if _, is := now.Renamed[c]; is != renamed {
				continue
			}
			from, found := carriedFrom(old, c, now.bookedAs(c))
			if _, taken := names[from]; found && !taken {
				names[from] = c
			}
		}
	}
	return names
}

// carriedFrom is the old ledger's name of a colourway: its own where it had
// that already, else the one that was booked under the same name.
func carriedFrom(old Ledger, name, booked string) (string, bool) {
	if old.hasColourway(name) && old.bookedAs(name) == booked {
		return name, true
	}
	for _, c := range old.Colourways {
		if old.Renamed[c] == booked {
			return c, true
		}
	}
	return booked, old.hasColourway(booked)
}

// numbers is every operation key that the job ever used, with its number.
func (l Ledger) numbers() map[string]int {
	all := make(map[string]int, len(l.Operations)+len(l.Retired))
	maps.Copy(all, l.Retired)
	for _, o := range l.Operations {
		all[o.Key] = o.Number
	}
	return all
}

// Prior is what the planner must keep when the job is planned anew.
func (l Ledger) Prior() planner.Prior {
	p := planner.Prior{Numbers: l.numbers()}
	for _, b := range l.Blocks {
		p.Blocks = append(p.Blocks, planner.PriorBlock{
			ID: b.ID, Quilt: b.Quilt, Colourway: b.Colourway, Retired: b.Retired,
		})
	}
	return p
}
