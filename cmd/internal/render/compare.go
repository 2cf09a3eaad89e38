package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// Comparison is a job as it is, and as it would be with other values.
type Comparison struct {
	Base   Compared
	Others []Compared
}

// Compared is one of them.
type Compared struct {
	Changes []planner.Change
	Plan    planner.Plan
	Spread  bool           // the colourways' blocks were counted anew
	Left    *tracker.State // with the log of a booked job; nil for a job file
	Problem error          // it cannot be made; Plan is empty
}

// title is the changes as they were typed.
func (c Compared) title() string {
	var parts []string
	for _, change := range c.Changes {
		parts = append(parts, together(change.String()))
	}
	return strings.Join(parts, " ")
}

// compareRow is one figure of every plan, as it reads, and its change.
type compareRow struct {
	name  string
	show  func(Compared) string
	minus func(base, other Compared) string // "" where a change has no amount
}

// ShowComparison shows a comparison.
func ShowComparison(w io.Writer, c Comparison, look Look) error {
	p := &page{look: look}
	p.prose(strong, 0, "", c.Base.Plan.Job.Title)
	p.rule()
	made := slices.DeleteFunc(slices.Clone(c.Others), func(o Compared) bool { return o.Problem != nil })
	if len(made) > 0 {
		p.compareTable(c.Base, made)
	}
	for _, o := range c.Others {
		switch {
		case o.Problem != nil:
			p.gap()
			p.para(0, "! "+o.Problem.Error())
		default:
			p.newWarnings(c.Base, o)
		}
	}
	if slices.ContainsFunc(made, func(o Compared) bool { return o.Spread }) {
		p.gap()
		p.para(0, "The colourways keep their proportions: each gets the whole number of its share, then the largest remainders one more each, the first in the file before others.")
	}
	return p.writeTo(w)
}

// compareTable has a row for each figure that differs somewhere. One alternative
// has a column of changes; several have each change beneath its value.
func (p *page) compareTable(base Compared, others []Compared) {
	g := &grid{columns: []column{{title: "", flexible: true}, {title: "Now", flexible: true}}}
	for _, o := range others {
		g.columns = append(g.columns, column{title: o.title(), flexible: true})
	}
	if len(others) == 1 {
		g.columns[2].title = "Then"
		g.columns = append(g.columns, column{title: "Change", flexible: true})
		p.para(0, "With "+others[0].title()+":")
		p.gap()
	}
	var same []string
	for _, row := range compareRows(base, others) {
		cells := []string{row.name, row.show(base)}
		differs := false
		for _, o := range others {
			is := row.show(o)
			differs = differs || is != cells[1]
			change := ""
			if is != cells[1] {
				change = row.minus(base, o)
			}
			switch {
			case len(others) == 1:
				cells = append(cells, is, change)
			case change == "":
				cells = append(cells, is)
			default:
				cells = append(cells, is+" ("+together(change)+")")
			}
		}
		if !differs {
			same = append(same, row.name)
			continue
		}
		g.add(cells...)
	}
	p.records(0, g)
	if len(same) > 0 {
		p.gap()
		p.para(0, "The same: "+enumerate(same)+".")
	}
}

// newWarnings are those that a plan has and the job as it is has not.
func (p *page) newWarnings(base, o Compared) {
	for _, w := range o.Plan.Warnings {
		if !slices.ContainsFunc(base.Plan.Warnings, func(b planner.Warning) bool { return b.Message == w.Message }) {
			p.gap()
			p.para(0, fmt.Sprintf("! %s: %s", o.title(), w.Message))
		}
	}
}

// counts is the change of a whole number, lengths that of a length.
func counts(of func(Compared) int) func(base, other Compared) string {
	return func(base, other Compared) string { return fmt.Sprintf("%+d", of(other)-of(base)) }
}

func lengths(of func(Compared) measure.Length) func(base, other Compared) string {
	return func(base, other Compared) string { return signed(of(other)-of(base), base.Plan.Job.Units) }
}

// compareRows are the figures in the order in which a maker asks for them.
func compareRows(base Compared, others []Compared) []compareRow {
	u := base.Plan.Job.Units
	blocks := func(c Compared) int { return len(c.Plan.Blocks) }
	rows := []compareRow{
		{"quilt, flat", func(c Compared) string { return c.Plan.Quilt.Finished.Show(u) }, func(b, o Compared) string {
			w, h := o.Plan.Quilt.Finished.Width-b.Plan.Quilt.Finished.Width, o.Plan.Quilt.Finished.Height-b.Plan.Quilt.Finished.Height
			if w == h {
				return signed(w, u) + " each way"
			}
			return signed(w, u) + " × " + signed(h, u)
		}},
		{"layout", func(c Compared) string { return fmt.Sprintf("%d × %d", c.Plan.Quilt.Across, c.Plan.Quilt.Down) }, noChange},
		{"blocks", func(c Compared) string { return fmt.Sprint(blocks(c)) }, counts(blocks)},
		{"block, finished", func(c Compared) string { return c.Plan.Colourways[0].Finished.Show(u) }, func(b, o Compared) string {
			return signed(o.Plan.Colourways[0].Finished.Width-b.Plan.Colourways[0].Finished.Width, u)
		}},
	}
	for _, c := range base.Plan.Colourways {
		of := func(o Compared) int { return blocksIn(o.Plan, c.Name) }
		rows = append(rows, compareRow{"blocks of " + c.Name, func(o Compared) string { return fmt.Sprint(of(o)) }, counts(of)})
	}
	rows = append(rows, compareRow{"work", func(c Compared) string { return spell(c.Plan.Minutes) }, func(b, o Compared) string {
		return moreTime(o.Plan.Minutes - b.Plan.Minutes)
	}})
	rows = append(rows, leftRows(base)...)
	rows = append(rows, clothRows(base, others)...)
	return append(rows, layerRows(base)...)
}

func noChange(_, _ Compared) string { return "" }

// moreTime is a difference of times.
func moreTime(m planner.Minutes) string {
	if m < 0 {
		return "−" + spell(-m)
	}
	return "+" + spell(m)
}

// blocksIn is how many blocks of a colourway the run has.
func blocksIn(plan planner.Plan, colourway string) int {
	n := 0
	for _, b := range plan.Blocks {
		if b.Colourway == colourway {
			n++
		}
	}
	return n
}

// leftRows are what would be left of a booked job on which work is logged.
func leftRows(base Compared) []compareRow {
	if base.Left == nil || !slices.ContainsFunc(base.Left.Rows(), func(r tracker.Row) bool { return r.Done > 0 }) {
		return nil
	}
	blocks := func(c Compared) int { return c.Left.Blocks(tracker.Lot{}) - c.Left.FinishedBlocks(tracker.Lot{}) }
	spare := func(c Compared) int { return spareBlocks(*c.Left) }
	return []compareRow{
		{"blocks left", func(c Compared) string { return fmt.Sprint(blocks(c)) }, counts(blocks)},
		{"blocks over", func(c Compared) string { return fmt.Sprint(spare(c)) }, counts(spare)},
		{"work left", func(c Compared) string { return spell(remainingMinutes(*c.Left)) }, func(b, o Compared) string {
			return moreTime(remainingMinutes(*o.Left) - remainingMinutes(*b.Left))
		}},
	}
}

// spareBlocks is how many blocks are squared up beyond those that the job has.
func spareBlocks(s tracker.State) int {
	n := 0
	for _, row := range s.Rows() {
		if row.Key == "square-up" {
			n += row.Spare
		}
	}
	return n
}

// clothRows are what each fabric needs, and what is to be bought of it. Fabrics
// with the same figures in every plan share a row.
func clothRows(base Compared, others []Compared) []compareRow {
	u := base.Plan.Job.Units
	fabrics := base.Plan.Fabrics
	var rows []compareRow
	for _, f := range []struct {
		what string
		of   func(planner.FabricNeed) (measure.Length, int)
	}{
		{"cloth", func(n planner.FabricNeed) (measure.Length, int) { return n.Length, n.Sheets }},
		{"buy", func(n planner.FabricNeed) (measure.Length, int) { return n.LengthBuy, n.SheetBuy }},
	} {
		cell := func(c Compared, name string) string { return amountWords(needIn(c.Plan, name), f.of, u) }
		alike := grouped(len(fabrics), func(i int) string {
			key := cell(base, fabrics[i].Fabric.Name)
			for _, o := range others {
				key += "|" + cell(o, fabrics[i].Fabric.Name)
			}
			return key
		})
		for _, group := range alike {
			name := fabrics[group[0]].Fabric.Name
			label := f.what + ", " + enumerate(picked(group, func(i int) string { return fabrics[i].Fabric.Name }))
			if len(group) > 1 {
				label += ", each"
			}
			rows = append(rows, compareRow{label, func(c Compared) string { return cell(c, name) }, func(b, o Compared) string {
				wasLength, wasSheets := f.of(needIn(b.Plan, name))
				length, sheets := f.of(needIn(o.Plan, name))
				if length == wasLength {
					return fmt.Sprintf("%+d", sheets-wasSheets)
				}
				return signedYardage(length-wasLength, u)
			}})
		}
	}
	return rows
}

func needIn(plan planner.Plan, fabric string) planner.FabricNeed {
	for _, n := range plan.Fabrics {
		if n.Fabric.Name == fabric {
			return n
		}
	}
	return planner.FabricNeed{}
}

// amountWords is a length of yardage, or a number of sheets.
func amountWords(n planner.FabricNeed, of func(planner.FabricNeed) (measure.Length, int), u measure.Unit) string {
	length, sheets := of(n)
	if n.Fabric.Form.Sheets() {
		return fmt.Sprint(sheets)
	}
	if length == 0 {
		return "none"
	}
	return length.ShowYardage(u)
}

func signedYardage(l measure.Length, u measure.Unit) string {
	if l < 0 {
		return strings.Replace("−"+(-l).ShowYardage(u), "−≈ ", "≈ −", 1)
	}
	return strings.Replace("+"+l.ShowYardage(u), "+≈ ", "≈ +", 1)
}

// layerRows are what goes behind and round a quilt, and thread.
func layerRows(base Compared) []compareRow {
	u := base.Plan.Job.Units
	var rows []compareRow
	if base.Plan.Materials.Backing != nil {
		length := func(c Compared) measure.Length { return c.Plan.Materials.Backing.Length }
		rows = append(rows,
			compareRow{"backing", func(c Compared) string { return c.Plan.Materials.Backing.Size.Show(u) }, noChange},
			compareRow{"backing off the bolt", func(c Compared) string { return length(c).ShowYardage(u) },
				func(b, o Compared) string { return signedYardage(length(o)-length(b), u) }})
	}
	if base.Plan.Materials.Batting != nil {
		rows = append(rows, compareRow{"batting", func(c Compared) string { return c.Plan.Materials.Batting.Choice }, noChange})
	}
	if base.Plan.Materials.Binding != nil {
		edge := func(c Compared) measure.Length { return edgeOf(c.Plan) }
		strips := func(c Compared) int { return c.Plan.Materials.Binding.Strips }
		rows = append(rows,
			compareRow{"edge to bind", func(c Compared) string { return edge(c).Show(u) }, lengths(edge)},
			compareRow{"binding strips", func(c Compared) string { return fmt.Sprint(strips(c)) }, counts(strips)})
	}
	thread := func(c Compared) measure.Length { return c.Plan.Materials.Thread.Total }
	bobbins := func(c Compared) int { return c.Plan.Materials.Thread.Bobbins }
	return append(rows,
		compareRow{"thread", func(c Compared) string { return spool(thread(c), u) }, func(b, o Compared) string {
			if d := thread(o) - thread(b); d < 0 {
				return "−" + spool(-d, u)
			}
			return "+" + spool(thread(o)-thread(b), u)
		}},
		compareRow{"bobbins", func(c Compared) string { return fmt.Sprint(bobbins(c)) }, counts(bobbins)})
}

// edgeOf is the length round one quilt.
func edgeOf(plan planner.Plan) measure.Length {
	s := plan.Quilt.Finished
	return 2 * (s.Width + s.Height)
}
