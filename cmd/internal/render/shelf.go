package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
)

// materialHeadings are the parts of the shelf, in order.
var materialHeadings = []struct {
	material planner.Material
	heading  string
}{{planner.ClothMaterial, "Cloth"}, {planner.BattingMaterial, "Batting"}, {planner.ThreadMaterial, "Thread"}}

// Shelf shows what lies there, whom it is kept for, and what is kept nowhere.
// Items that are all used up are left out.
func Shelf(w io.Writer, s shelf.Shelf, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "The shelf")
	p.rule()
	lies := 0
	for _, m := range materialHeadings {
		items := slices.DeleteFunc(slices.Clone(s.Items), func(i shelf.Item) bool { return i.Material != m.material || i.Lies() == 0 })
		if len(items) > 0 {
			p.heading(m.heading)
			p.shelfItems(items)
		}
		lies += len(items)
	}
	if lies == 0 {
		p.para(0, "Nothing lies on the shelf. Put something there with: quiltrun shelf put WHAT AMOUNT")
	}
	p.keptForJobs(s)
	p.halfCut(s)
	p.notOnShelf(s)
	return p.writeTo(w)
}

func (p *page) shelfItems(items []shelf.Item) {
	g := &grid{columns: []column{
		{title: "Item", flexible: true}, {title: "What", flexible: true}, {title: "There", right: true}, {title: "Free", right: true},
		{title: "Dye lot", flexible: true}, {title: "Where", flexible: true},
	}}
	for _, i := range items {
		what := i.Called()
		switch {
		case i.Job != "":
			what += "; left of " + together(i.Job)
		case i.Assumed:
			what += ", assumed"
		}
		g.add(i.ID, what, stockWords(i, i.Lies()), stockWords(i, i.Free), i.DyeLot, i.Place)
	}
	g.columns = slices.Clone(g.columns)
	dropEmpty(g)
	p.records(1, g)
}

// stockWords is an amount in a table: a bare count of what is counted.
func stockWords(i shelf.Item, a planner.Amount) string {
	if i.Form.Counted() {
		return fmt.Sprint(a)
	}
	return i.Words(a)
}

// dropEmpty takes columns out that have nothing in any row.
func dropEmpty(g *grid) {
	for c := len(g.columns) - 1; c > 0; c-- {
		if slices.ContainsFunc(g.rows, func(row []string) bool { return row[c] != "" }) {
			continue
		}
		g.columns = slices.Delete(g.columns, c, c+1)
		for r := range g.rows {
			g.rows[r] = slices.Delete(g.rows[r], c, c+1)
		}
	}
}

// keptForJobs is what booked jobs still need, in the order of booking.
func (p *page) keptForJobs(s shelf.Shelf) {
	byJob := grouped(len(s.Needs), func(i int) string { return s.Needs[i].Job })
	opened := false
	for _, group := range byJob {
		job := s.Needs[group[0]].Job
		var notes []string
		needs := make([]shelf.Need, len(group))
		for i, at := range group {
			needs[i] = s.Needs[at]
		}
		kept := needsWords(needs, func(n shelf.Need) planner.Amount { return n.Kept })
		short := needsWords(needs, func(n shelf.Need) planner.Amount { return n.Short })
		for _, n := range needs {
			if why := s.WhyNot(n); len(why) > 0 {
				notes = append(notes, fmt.Sprintf("%s: %s", n.Name, strings.Join(why, "; ")))
			}
			notes = append(notes, LotWarnings([]shelf.Need{n})...)
		}
		if len(kept)+len(short)+len(notes) == 0 {
			continue
		}
		if !opened {
			p.heading("Kept for booked jobs")
			opened = true
		}
		p.para(1, job)
		p.shelfList("kept", kept)
		p.shelfList("not on the shelf", short)
		for _, l := range notes {
			p.para(3, english.Capital(l)+".")
		}
	}
}

// LotWarnings says which fabrics of a job come from more than one dye lot.
func LotWarnings(needs []shelf.Need) []string {
	var all []string
	for _, n := range needs {
		if n.Lots < 2 || n.Material != planner.ClothMaterial {
			continue
		}
		name := n.Name
		if n.StockNeed.For != "" {
			name += " for the " + n.StockNeed.For
		}
		all = append(all, fmt.Sprintf("%s comes from %d dye lots, or from lengths and pieces of which none is said: their colours may differ", name, n.Lots))
	}
	return all
}

func (p *page) shelfList(lead string, parts []string) {
	if len(parts) > 0 {
		p.hang(3, lead+": ", strings.Join(parts, "; "))
	}
}

// needsWords is amounts of what a job needs, sheets of as many fabrics together:
// "1 fat quarter each of Marram, Mudlark".
func needsWords(needs []shelf.Need, amount func(shelf.Need) planner.Amount) []string {
	var parts []string
	alike := func(i int) string {
		n := needs[i]
		if n.Material != planner.ClothMaterial || !n.Form.Counted() {
			return fmt.Sprint(i)
		}
		return fmt.Sprint(n.Form, amount(n))
	}
	for _, group := range grouped(len(needs), alike) {
		n := needs[group[0]]
		switch a := amount(n); {
		case a == 0:
		case len(group) == 1:
			parts = append(parts, needWords(n, a))
		default:
			parts = append(parts, shelf.AmountWords(a, n.Form, needUnit(n))+" each of "+enumerate(picked(group, func(i int) string { return needs[i].Name })))
		}
	}
	return parts
}

// needUnit is the unit of the job that needs something.
func needUnit(n shelf.Need) measure.Unit {
	if n.Metric {
		return measure.Centimetres
	}
	return measure.Inches
}

// needWords is an amount of what a job needs: "10 in of Foam for the backing".
func needWords(n shelf.Need, a planner.Amount) string {
	u := needUnit(n)
	switch n.Material {
	case planner.BattingMaterial:
		return fmt.Sprintf("batting for %s, %s", counted(int(a), "quilt"), size(measure.Size{Width: n.Width, Height: n.Height}, u))
	case planner.ThreadMaterial:
		return fmt.Sprintf("%s of thread for %s", threadLength(measure.Length(a), u), n.Name)
	}
	text := shelf.AmountWords(a, n.Form, u) + " of " + together(n.Name)
	if n.StockNeed.For != "" {
		text += " for the " + n.StockNeed.For
	}
	return text
}

// halfCut says how cloth is reckoned of which a job has cut some.
func (p *page) halfCut(s shelf.Shelf) {
	var half []string
	for _, n := range s.Needs {
		if n.Material == planner.ClothMaterial && n.Left > 0 && len(n.Uses) > 0 && n.StockNeed.For == "" {
			half = append(half, together(n.Name)+" ("+n.Job+")")
		}
	}
	if len(half) > 0 {
		p.para(1, "Half cut: "+strings.Join(half, ", ")+". Used counts by the pieces that are logged, and a sheet once all of it is cut; what is begun is kept for its job, and no list counts on it for another.")
	}
}

// notOnShelf is what is nobody's business here, and said so.
func (p *page) notOnShelf(s shelf.Shelf) {
	var own []string
	for _, i := range s.Own {
		if i.Lies() > 0 {
			own = append(own, i.Words(i.Lies())+" of "+together(i.Name)+" ("+i.Job+")")
		}
	}
	if len(own)+len(s.Silent) > 0 {
		p.heading("Not on this shelf")
	}
	if len(own) > 0 {
		p.para(1, "By their job files jobs have cloth of their own on hand, which is cut first and not counted here: "+strings.Join(own, "; ")+".")
	}
	if len(s.Silent) > 0 {
		p.para(1, "Nothing is kept for "+enumerate(s.Silent)+": an older quiltrun booked it. To have its cloth kept: quiltrun revise FILE.")
	}
}

// Shelved says what an entry did to the shelf, and how its item is now.
func Shelved(w io.Writer, s shelf.Shelf, ev tracker.Event, repeated bool, look Look) error {
	p := &page{look: look}
	said := fmt.Sprintf("entry %d (%s)", ev.Seq, ev.ID)
	if repeated {
		said = fmt.Sprintf("before, as entry %d (%s), and counts once", ev.Seq, ev.ID)
	}
	entry, item := enteredItem(s, ev)
	p.para(0, fmt.Sprintf("The shelf: %s, as %s", deedWords(entry, item, ev), said))
	if item != nil {
		p.para(2, itemNow(*item))
	}
	for _, n := range s.Needs {
		if item != nil && n.Short > 0 && n.Material == item.Material && (n.Material != planner.ClothMaterial || strings.EqualFold(n.Name, item.Name)) {
			p.para(2, strings.Join(append([]string{n.Job + " still lacks " + needWords(n, n.Short)}, s.WhyNot(n)...), "; ")+".")
		}
	}
	return p.writeTo(w)
}

// enteredItem is the shelf's entry that an event is, or takes back, and its item
// where it still has one.
func enteredItem(s shelf.Shelf, ev tracker.Event) (tracker.Shelf, *shelf.Item) {
	puts := 0
	for _, e := range s.Entries {
		if e.Shelf.Do == tracker.PutOn {
			puts++
		}
		if e.ID != ev.ID && e.ID != ev.Target {
			continue
		}
		id := e.Shelf.Item
		if e.Shelf.Do == tracker.PutOn {
			id = fmt.Sprint(puts)
		}
		if i, err := s.Item(id); err == nil {
			return *e.Shelf, &i
		}
		return *e.Shelf, nil
	}
	return tracker.Shelf{}, nil
}

// deedWords is what was done, in the words of somebody who did it.
func deedWords(e tracker.Shelf, item *shelf.Item, ev tracker.Event) string {
	if ev.Kind == tracker.Undone {
		return "an entry is taken back"
	}
	if item == nil {
		return "changed"
	}
	amount := item.Words(e.Amount)
	switch e.Do {
	case tracker.PutOn:
		return amount + " of " + item.Name + " put there as item " + item.ID
	case tracker.CountedAnew:
		return "item " + item.ID + " counted anew: " + amount
	case tracker.Scrapped:
		return amount + " of item " + item.ID + " scrapped"
	case tracker.TakenOff:
		return amount + " of item " + item.ID + " taken off"
	}
	return "changed"
}

// itemNow is how an item stands.
func itemNow(i shelf.Item) string {
	text := fmt.Sprintf("Item %s, %s: %s there", i.ID, i.Called(), i.Words(i.Lies()))
	if i.Assumed {
		text = fmt.Sprintf("Item %s, %s (assumed): %s there", i.ID, i.Called(), i.Words(i.Lies()))
	}
	if i.Kept > 0 {
		text += "; " + i.KeptFor()
	}
	if i.Free > 0 && i.Kept > 0 {
		text += "; free " + i.Words(i.Free)
	}
	if i.Found != 0 {
		word := "found"
		if i.Found < 0 {
			word = "missing"
		}
		text += "; " + word + " by counting " + i.Words(max(i.Found, -i.Found))
	}
	return text + "."
}
