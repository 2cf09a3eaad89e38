package render

import (
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// ShopCSV writes the list as RFC 4180 has it: a header, lines that end in CR LF.
// Numbers are numbers: yards or metres to six decimals, or counts. Text that a
// spreadsheet would run as a formula gets an apostrophe before it; so does text
// that begins with one, so that the first apostrophe is always to be taken off.
func ShopCSV(w io.Writer, s Shopped) error {
	var out strings.Builder
	csvLine(&out, "kind", "item", "form", "size", "unit", "need", "own", "shelf", "buy", "jobs")
	for _, f := range s.Fabrics {
		unit := ""
		if !f.Fabric.Form.Sheets() {
			unit = shopUnit(s.Units)
		}
		n := func(a planner.Amount) string { return csvNumber(f.Fabric.Form, a, s.Units) }
		csvLine(&out, "fabric", csvText(f.Fabric.Name), string(f.Fabric.Form), csvSize(f.Fabric, s.Units), unit,
			n(f.Need), n(f.Own), n(f.Shelf), n(f.Buy), csvText(strings.Join(f.Jobs, " ")))
	}
	count := func(n int) string { return csvNumber(planner.Package, planner.Amount(n), s.Units) }
	for _, b := range s.Battings {
		name, size := "batting off the roll", b.Size
		if b.Package.Size.Width > 0 {
			name, size = strings.TrimSpace(b.Package.Name+" package"), b.Package.Size
		}
		if b.Length > 0 {
			n := func(l measure.Length) string { return csvNumber(planner.Roll, planner.Amount(l), s.Units) }
			csvLine(&out, "batting", "batting off the roll", "roll", b.Roll.Show(s.Units), shopUnit(s.Units), n(b.Length), "0", "0", n(b.Length), csvText(strings.Join(b.Jobs, " ")))
			continue
		}
		csvLine(&out, "batting", name, "package", size.Show(s.Units), "", count(b.Need), "0", count(b.Shelf), count(b.Buy), csvText(strings.Join(b.Jobs, " ")))
	}
	t := s.Thread
	n := func(l measure.Length) string { return csvNumber(planner.Spool, planner.Amount(l), s.Units) }
	csvLine(&out, "notion", "thread", "length", "", shopUnit(s.Units), n(t.Need.Total), "0", n(t.Shelf), n(t.Buy), csvText(strings.Join(t.PerJobs, " ")))
	for _, notion := range s.notions() {
		name := notion.item
		if name == "thread" {
			name = "spools of " + spoolWords(s.Spool, s.Units)
		}
		csvLine(&out, "notion", name, "count", "", "", count(notion.count), "0", "0", count(notion.count), "")
	}
	_, err := io.WriteString(w, out.String())
	return err
}

// csvLine is one record.
func csvLine(out *strings.Builder, cells ...string) {
	for i, cell := range cells {
		if i > 0 {
			out.WriteByte(',')
		}
		if strings.ContainsAny(cell, ",\"\r\n") || strings.TrimSpace(cell) != cell {
			cell = `"` + strings.ReplaceAll(cell, `"`, `""`) + `"`
		}
		out.WriteString(cell)
	}
	out.WriteString("\r\n")
}

// formulaStarts is what makes a spreadsheet run a cell, and the apostrophe that
// marks one that would.
const formulaStarts = "=+-@\t\r'"

// csvText makes a text harmless in a spreadsheet.
func csvText(text string) string {
	if text != "" && strings.IndexByte(formulaStarts, text[0]) >= 0 {
		return "'" + text
	}
	return text
}

// CSVText is the text that a cell of our own was written for.
func CSVText(cell string) string { return strings.TrimPrefix(cell, "'") }

// csvNumber is an amount as a plain number: yards or metres, or a count.
func csvNumber(form planner.Form, a planner.Amount, u measure.Unit) string {
	switch {
	case form.Counted():
		return string(tally(int(a)))
	case u == measure.Centimetres:
		return string(length(measure.Length(a).Scale(1, 100, measure.Nearest), u))
	}
	return string(length(measure.Length(a).Scale(1, 36, measure.Nearest), u))
}

// shopUnit is what shops measure in.
func shopUnit(u measure.Unit) string {
	if u == measure.Centimetres {
		return "m"
	}
	return "yd"
}

func csvSize(f planner.Fabric, u measure.Unit) string {
	if f.Form.Sheets() {
		return f.Size.Show(u)
	}
	return f.Width.Show(u)
}
