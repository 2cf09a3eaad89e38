package render

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker/shelf"
)

// Shopped is a shopping list and what it is for. Spool is the thread on one.
type Shopped struct {
	planner.Shopping
	Wanted []planner.Wanted
	Spool  measure.Length
}

// jobs is the ids of the jobs.
func (s Shopped) jobs() []string {
	ids := make([]string, len(s.Wanted))
	for i, w := range s.Wanted {
		ids[i] = w.Job.ID
	}
	return ids
}

// Shop shows what is to be bought beside what is needed and what is there.
func Shop(w io.Writer, s Shopped, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", "Shopping for "+enumerate(s.jobs()))
	p.rule()
	p.shopFabrics(s)
	p.heading("Batting")
	if len(s.Battings) == 0 {
		p.para(1, "none is wanted")
	}
	for _, b := range s.Battings {
		p.hang(1, p.look.box()+" ", s.battingWords(b))
	}
	p.heading("Notions")
	for _, n := range s.notions() {
		p.hang(1, p.look.box()+" ", n.words+"; "+n.why)
	}
	return p.writeTo(w)
}

// shopFabrics has a row for each cloth; those alike in all share one.
func (p *page) shopFabrics(s Shopped) {
	p.heading("Fabrics")
	if len(s.Fabrics) == 0 {
		p.para(1, "none is wanted: all is cut")
		return
	}
	g := &grid{columns: []column{
		{title: "Fabric", flexible: true}, {title: "Form", flexible: true}, {title: "Need", right: true},
		{title: "Own", right: true}, {title: "Shelf", right: true}, {title: "Buy", right: true},
	}}
	rows := make([][]string, len(s.Fabrics))
	var crowds []string
	for i, f := range s.Fabrics {
		rows[i] = []string{formWords(f.Fabric, s.Units), s.amount(f, f.Need), s.amount(f, f.Own), s.amount(f, f.Shelf), s.amount(f, f.Buy)}
	}
	for _, group := range grouped(len(rows), func(i int) string { return strings.Join(rows[i], "\x00") }) {
		names := picked(group, func(i int) string { return s.Fabrics[i].Fabric.Name })
		row, name := rows[group[0]], enumerate(names)
		if len(names) > mostRows {
			name = counted(len(names), "fabric")
			crowds = append(crowds, fmt.Sprintf("The %s (%s; buy %s each): %s.", name, row[0], row[4], enumerate(names)))
		}
		if len(names) > 1 {
			row[0] += ", each"
		}
		g.add(append([]string{name}, row...)...)
	}
	p.records(1, g)
	for _, c := range crowds {
		p.para(1, c)
	}
	p.shopNotes(s)
}

// shopNotes says what planning together saves, and what stock could not serve.
func (p *page) shopNotes(s Shopped) {
	for _, f := range s.Fabrics {
		if f.Saves() > 0 {
			p.para(1, fmt.Sprintf("%s is cut together for %s: %s less than bought for each by itself.",
				f.Fabric.Name, enumerate(f.Jobs), s.amount(f, f.Saves())))
		}
		if words := s.pieceWords(f); words != "" {
			p.para(1, words)
		}
		short := measure.Length(f.Need - f.Pieces - f.Own - f.Shelf)
		if f.Buy > 0 && f.Own+f.Shelf > 0 && !f.Fabric.Form.Sheets() && max(0, short).RoundUp(s.Units.ShopStep()) < measure.Length(f.Buy) {
			p.para(1, fmt.Sprintf("%s: no strip is cut of two lengths, so what is there is cut first and %s is bought in one.",
				f.Fabric.Name, s.amount(f, f.Buy)))
		}
	}
	p.para(1, s.tightWords())
}

// tightWords names what would come out too short once its ends are straight.
func (s Shopped) tightWords() string {
	var names []string
	for _, f := range s.Fabrics {
		if f.Tight() {
			names = append(names, f.Fabric.Name)
		}
	}
	if len(names) == 0 {
		return ""
	}
	each := ""
	if len(names) > 1 {
		each = " of each"
	}
	return fmt.Sprintf("%s: little or nothing is left to straighten the ends; have %s more cut%s.", enumerate(names), s.step(), each)
}

// step is the least that a shop cuts more.
func (s Shopped) step() string { return s.Units.ShopStep().ShowYardage(s.Units) }

// pieceWords is the pieces that are there of which a cloth is cut first: "Foam is
// cut from pieces that are there first, 1 of 20 × 5 in, which saves 5 in".
func (s Shopped) pieceWords(f planner.ShopFabric) string {
	var sizes []measure.Size
	count := map[measure.Size]int{}
	for _, c := range f.Cuts {
		if c.Bought || c.Length > 0 || f.Fabric.Form.Sheets() && c.Sheets.Size == f.Fabric.Sheet() || len(c.Pieces) == 0 {
			continue
		}
		if count[c.Sheets.Size]++; count[c.Sheets.Size] == 1 {
			sizes = append(sizes, c.Sheets.Size)
		}
	}
	if len(sizes) == 0 {
		return ""
	}
	words := make([]string, len(sizes))
	for i, size := range sizes {
		words[i] = fmt.Sprintf("%d of %s", count[size], size.Show(s.Units))
	}
	text := fmt.Sprintf("%s is cut first from pieces that are there: %s", f.Fabric.Name, enumerate(words))
	if f.Pieces > 0 {
		text += "; that saves " + s.amount(f, f.Pieces) + " off the bolt"
	}
	return text + "."
}

// formWords is a fabric's form and size, as the sheet has it.
func formWords(f planner.Fabric, u measure.Unit) string {
	text := string(f.Form) + " "
	if f.Form.Sheets() {
		text += size(f.Size, u)
	} else {
		text += f.Width.Show(u) + " usable"
	}
	if f.Assumed {
		text += ", assumed"
	}
	return text
}

// amount is so much of a fabric, as shops sell it where that is exact.
func (s Shopped) amount(f planner.ShopFabric, a planner.Amount) string {
	switch {
	case a == 0:
		return "–"
	case f.Fabric.Form.Counted():
		return fmt.Sprint(a)
	}
	return shelf.AmountWords(a, f.Fabric.Form, s.Units)
}

// battingWords is one kind of batting to buy.
func (s Shopped) battingWords(b planner.ShopBatting) string {
	whom := fmt.Sprintf("for %s or more (%s)", b.Size.Show(s.Units), enumerate(b.Jobs))
	if b.Buy == 0 {
		return fmt.Sprintf("nothing: the shelf has batting for %s (%s)", b.Size.Show(s.Units), enumerate(b.Jobs))
	}
	amount, what := s.battingParts(b)
	text := fmt.Sprintf("%s × %s, %s", amount, what, whom)
	if b.Length > 0 {
		text = fmt.Sprintf("%s of %s, %s", amount, what, whom)
	}
	if n := b.Need - b.Shelf; b.Together() || b.Length > 0 && n > 1 {
		text += fmt.Sprintf("; %d quilts cut from it together", n)
	}
	if b.Shelf > 0 {
		text += fmt.Sprintf("; %d more %s on the shelf", b.Shelf, allOf(b.Shelf, "are", "is"))
	}
	return text
}

// battingParts is how much is to be bought, and of what.
func (s Shopped) battingParts(b planner.ShopBatting) (amount, what string) {
	switch {
	case b.Length > 0:
		return shelf.AmountWords(planner.Amount(b.Length), planner.Roll, s.Units), "batting off a roll " + b.Roll.Show(s.Units) + " wide"
	case b.Roll > 0:
		return fmt.Sprint(b.Buy), "batting, wider than the roll of " + b.Roll.Show(s.Units) + " either way: joined of two"
	case b.Package.Name != "":
		return fmt.Sprint(b.Buy), fmt.Sprintf("%s package, %s", b.Package.Name, b.Package.Size.Show(s.Units))
	case b.Package.Size.Width > 0:
		return fmt.Sprint(b.Buy), "package, " + b.Package.Size.Show(s.Units)
	}
	return fmt.Sprint(b.Buy), "batting, wider than any package: off the roll, or joined of two"
}

// notion is a line of the notions: how many of what, and why so many.
type notion struct {
	item   string
	count  int
	words  string
	why    string
	source string // of the rule, "" where it is worked out
}

// notions are thread, and reminders of what wears out.
func (s Shopped) notions() []notion {
	t := s.Thread
	spools := t.Spools(s.Spool)
	thread := notion{item: "thread", count: spools, words: fmt.Sprintf("thread: %s of %s", counted(spools, "spool"), spoolWords(s.Spool, s.Units))}
	thread.why = fmt.Sprintf("%s in all, piecing %s, quilting %s, binding %s; one colour is taken to do for all", threadLength(t.Need.Total, s.Units),
		threadLength(t.Need.Piecing, s.Units), threadLength(t.Need.Quilting, s.Units), threadLength(t.Need.Binding, s.Units))
	if t.Shelf > 0 {
		thread.why += "; " + threadLength(t.Shelf, s.Units) + " of it on the shelf, of whatever colour"
	}
	bobbins := notion{item: "bobbins", count: t.Need.Bobbins, words: fmt.Sprintf("bobbins: %d to wind", t.Need.Bobbins), why: "half of the thread comes from below; they are wound of the thread above"}
	needles := notion{item: "machine needles", count: s.Needles, words: fmt.Sprintf("machine needles: %d", s.Needles),
		why: fmt.Sprintf("a reminder: one for 8 h of sewing, and this is %s", about(s.Machine)), source: "Fabric Town, Something I didn't know: 8 h of sewing, or each project"}
	blades := notion{item: "rotary blades", count: s.Blades, words: fmt.Sprintf("rotary blades: %d", s.Blades),
		why: "a reminder: one for 3 quilts", source: "Kitchen Table Quilting, Good habits for quilters: about 3 quilts"}
	return []notion{thread, bobbins, needles, blades}
}

// spoolWords is the thread on one spool, in the unit in which it is round.
func spoolWords(l measure.Length, u measure.Unit) string {
	if l%measure.Metre == 0 {
		u = measure.Centimetres
	}
	return threadLength(l, u)
}

// threadLength is a length of thread to the next whole yard or metre.
func threadLength(l measure.Length, u measure.Unit) string {
	if l <= 0 {
		return "none"
	}
	if u == measure.Centimetres {
		return fmt.Sprintf("%d m", measure.CeilDiv(l, measure.Metre))
	}
	return fmt.Sprintf("%d yd", measure.CeilDiv(l, measure.Yard))
}

// ShopPrint is the list to take along: a box, how much, of what, and little else.
// What there is enough of is not on it.
func ShopPrint(w io.Writer, s Shopped, look Look) error {
	if look.Width <= 0 || look.Width > usualWidth {
		look.Width = usualWidth
	}
	p := &page{look: look}
	p.prose(strong, 0, "", "TO BUY")
	p.para(0, "for "+enumerate(s.jobs()))
	p.printed("FABRIC", s.printedFabrics())
	p.printed("BATTING", s.printedBatting())
	p.printed("NOTIONS", s.printedNotions())
	return p.writeTo(w)
}

// printed is a part of the list; an empty one is left out.
func (p *page) printed(heading string, lines [][2]string) {
	if len(lines) == 0 {
		return
	}
	p.heading(heading)
	at := 0
	for _, l := range lines {
		at = max(at, width(l[0]))
	}
	for _, l := range lines {
		p.gap()
		p.hang(1, p.look.box()+"  "+padded(l[0], at+2), l[1])
	}
}

func (s Shopped) printedFabrics() [][2]string {
	var lines [][2]string
	for _, f := range s.Fabrics {
		if f.Buy > 0 {
			what := f.Fabric.Name + ", " + formWords(f.Fabric, s.Units)
			if f.Tight() {
				what += "; " + s.step() + " more to straighten the ends"
			}
			lines = append(lines, [2]string{s.amount(f, f.Buy), what})
		}
	}
	return lines
}

func (s Shopped) printedBatting() [][2]string {
	var lines [][2]string
	for _, b := range s.Battings {
		if b.Buy > 0 {
			amount, what := s.battingParts(b)
			if b.Package.Size.Width == 0 && b.Length == 0 {
				what = b.Size.Show(s.Units) + " or more, " + strings.TrimPrefix(what, "batting, ")
			}
			lines = append(lines, [2]string{amount, what})
		}
	}
	return lines
}

func (s Shopped) printedNotions() [][2]string {
	var lines [][2]string
	for _, n := range s.notions() {
		switch {
		case n.count == 0 || n.item == "bobbins":
		case n.item == "thread":
			lines = append(lines, [2]string{fmt.Sprint(n.count), strings.TrimPrefix(counted(n.count, "spool"), fmt.Sprint(n.count)+" ") + " of thread, " + spoolWords(s.Spool, s.Units) + " each"})
		default:
			item := n.item
			if n.count == 1 {
				item = strings.TrimSuffix(item, "s")
			}
			lines = append(lines, [2]string{fmt.Sprint(n.count), item})
		}
	}
	return lines
}
