package render

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker/shelf"
)

// Enough shows how far the cloth on hand goes, and what would make it go far
// enough.
func Enough(w io.Writer, e planner.Enough, booked bool, look Look) error {
	p := &page{look: look}
	u := e.Plan.Job.Units
	p.prose(strong, 0, "", "Enough cloth? "+e.Plan.Job.Title)
	p.rule()
	p.para(0, enoughAnswer(e))
	p.heading("Blocks")
	g := &grid{columns: []column{{title: "Colourway", flexible: true}, {title: "Blocks", right: true}, {title: "Makes", right: true}, {title: "Short", right: true}, {title: "Print by print", flexible: true}}}
	for _, c := range e.Colourways {
		short := "–"
		if c.Makes < c.Blocks {
			short = fmt.Sprint(c.Blocks - c.Makes)
		}
		g.add(c.Name, fmt.Sprint(c.Blocks), fmt.Sprint(c.Makes), short, printsWords(e, c))
	}
	dropEmpty(g)
	p.records(1, g)
	p.heading("Cloth")
	p.enoughFabrics(e, u)
	if len(e.Ways) > 0 {
		p.heading("What would make it enough")
		for _, way := range e.Ways {
			p.way(way, u)
		}
		if booked {
			p.para(1, "To change a booked job: change its file so, then quiltrun revise FILE. It is dated, and revising with the former file goes back.")
		}
	}
	return p.writeTo(w)
}

// enoughAnswer is the answer in a sentence.
func enoughAnswer(e planner.Enough) string {
	blocks, makes := 0, 0
	for _, c := range e.Colourways {
		blocks += c.Blocks
		makes += c.Makes
	}
	said := 0
	for _, f := range e.Fabrics {
		if f.Said {
			said++
		}
	}
	switch {
	case said == 0:
		return "Nothing is said to be on hand: all is taken as bought. Say what there is in the job file, on the shelf, or with --have."
	case e.Fits:
		return fmt.Sprintf("Yes: what is on hand does for all %s and the rest, where it is said.", counted(blocks, "block"))
	case makes == blocks:
		return fmt.Sprintf("For all %s, and not for all that comes after them.", counted(blocks, "block"))
	}
	return fmt.Sprintf("No: it makes %d of %s.", makes, counted(blocks, "block"))
}

// printsWords is how far each print of a colourway goes that is short.
func printsWords(e planner.Enough, c planner.EnoughColourway) string {
	var parts []string
	for _, f := range e.Fabrics {
		for _, use := range f.Uses {
			if use.Colourway == c.Name && use.Makes < use.Blocks {
				parts = append(parts, fmt.Sprintf("%s %d of %d", together(f.Fabric.Name), use.Makes, use.Blocks))
			}
		}
	}
	return strings.Join(parts, "; ")
}

// enoughFabrics is what is there of each fabric, and what is short of it. Those
// that are taken as bought are named together.
func (p *page) enoughFabrics(e planner.Enough, u measure.Unit) {
	g := &grid{columns: []column{{title: "Fabric", flexible: true}, {title: "On hand", right: true}, {title: "Needs", right: true}, {title: "Buy", right: true}, {title: "Pieces", flexible: true}}}
	var bought []string
	rows := make([][]string, 0, len(e.Fabrics))
	names := make([]string, 0, len(e.Fabrics))
	for _, f := range e.Fabrics {
		if !f.Said {
			bought = append(bought, f.Fabric.Name)
			continue
		}
		have := planner.Amount(f.Have.Length())
		if f.Fabric.Form.Sheets() {
			have = planner.Amount(f.Have.Count())
		}
		a := func(a planner.Amount) string {
			if a == 0 {
				return "–"
			}
			return cellAmount(f.Fabric, a, u)
		}
		there := a(have)
		if pieces := f.Have.Count(); !f.Fabric.Form.Sheets() && pieces > 0 {
			there = strings.TrimPrefix(there+" + "+counted(pieces, "piece"), "– + ")
		}
		names = append(names, f.Fabric.Name)
		rows = append(rows, []string{there, a(f.Need), a(f.Buy), giveWords(f, u)})
	}
	for _, group := range grouped(len(rows), func(i int) string { return strings.Join(rows[i], "\x00") }) {
		g.add(append([]string{enumerate(picked(group, func(i int) string { return names[i] }))}, rows[group[0]]...)...)
	}
	if len(rows) > 0 {
		dropEmpty(g)
		p.records(1, g)
	}
	if len(bought) > 0 {
		p.para(1, "Nothing is said of "+enumerate(bought)+": taken as bought as needed.")
	}
}

func cellAmount(f planner.Fabric, a planner.Amount, u measure.Unit) string {
	if f.Form.Sheets() {
		return fmt.Sprint(a)
	}
	return shelf.AmountWords(a, f.Form, u)
}

// giveWords is what the cloth gives where all pieces are of one size: "gives 42 of
// 5 in square; 48 wanted, 6 short; 10 blocks leave 2".
func giveWords(f planner.EnoughFabric, u measure.Unit) string {
	text := ""
	if f.Size != (measure.Size{}) {
		text = fmt.Sprintf("gives %d of %s; %d wanted", f.Gives, size(f.Size, u), f.Wanted)
		if f.Gives < f.Wanted {
			text += fmt.Sprintf(", %d short", f.Wanted-f.Gives)
			if f.Over > 0 {
				text += fmt.Sprintf("; %d left over", f.Over)
			}
		}
	}
	for _, s := range f.Spare {
		text += fmt.Sprintf("; %d of %s are cut and spare", s.Count, size(s.Size, u))
	}
	return strings.TrimPrefix(text, "; ")
}

// way is one way to make it enough, with the lines of the job file that do it.
func (p *page) way(w planner.EnoughWay, u measure.Unit) {
	p.hang(1, "- ", wayWords(w, u))
	for _, l := range w.Lines {
		text := strings.TrimLeft(l, " ")
		p.hang(7+len(l)-len(text), "", text)
	}
}

func wayWords(w planner.EnoughWay, u measure.Unit) string {
	text := ""
	switch w.Kind {
	case planner.WayBuy:
		return "Buy " + buyWords(w.Buy, u) + "."
	case planner.WaySmaller:
		return fmt.Sprintf("Cut squares of %s: a block finishes %s, the quilt %s. In the job file:", w.Square.Show(u), size(w.Block, u), size(w.Quilt, u))
	case planner.WaySplit:
		text = fmt.Sprintf("Share the blocks of %s otherwise among its prints", w.Colourway)
	case planner.WayColourway:
		text = fmt.Sprintf("Make %s of %s and %d of %s", counted(w.Makes, "block"), w.Colourway, w.Instead, w.By)
	}
	if len(w.Buy) > 0 {
		text += ", and buy " + buyWords(w.Buy, u)
		for _, b := range w.Buy {
			if b.Fabric.Form.Sheets() {
				text += fmt.Sprintf(" (%s takes %d)", b.Fabric.Name, b.Need)
			}
		}
	}
	for _, s := range w.Spare {
		for _, p := range s.Pieces {
			text += fmt.Sprintf("; %d of %s of %s are cut and become spare", p.Count, size(p.Size, u), s.Fabric)
		}
	}
	return text + ". In the job file:"
}

func buyWords(buys []planner.EnoughBuy, u measure.Unit) string {
	parts := make([]string, len(buys))
	for i, b := range buys {
		parts[i] = shelf.AmountWords(b.Amount, b.Fabric.Form, u) + " of " + together(b.Fabric.Name)
	}
	return strings.Join(parts, ", ")
}
