package render

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"quiltrun/planner"
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

	fabric bool // it is about fabrics, of which only those are said that differ
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
	if len(c.Base.Plan.Colourways) > 1 && slices.ContainsFunc(made, func(o Compared) bool { return o.Spread }) {
		p.gap()
		p.para(0, "The colourways keep their proportions: each gets the whole number of its share, then the largest remainders one more each, the first in the file before others.")
	}
	return p.writeTo(w)
}

// shortFigure is how long a figure may be to have its change beside it.
const shortFigure = 3

// compareTable has a row for each figure that differs somewhere. One alternative
// has a column of changes; several have the changes beneath their values.
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
		now := row.show(base)
		values, changed := []string{row.name, together(now)}, []string{"", ""}
		for _, o := range others {
			is, change := row.show(o), ""
			if is != now {
				change = row.minus(base, o)
			}
			if len(is) <= shortFigure && change != "" && len(others) > 1 {
				is, change = is+" ("+change+")", ""
			}
			values, changed = append(values, together(is)), append(changed, together(change))
		}
		switch {
		case allSame(values[1:]) && row.fabric:
		case allSame(values[1:]):
			same = append(same, row.name)
		case len(others) == 1:
			g.add(append(values, changed[2])...)
		default:
			g.add(values...)
			if !allSame(changed) {
				g.add(changed...)
			}
		}
	}
	if len(g.rows) == 0 {
		p.para(0, "Nothing would be different.")
		return
	}
	p.records(0, g)
	if len(same) > 0 {
		p.gap()
		p.para(0, "The same: "+strings.Join(same, "; ")+".")
	}
}

// allSame reports whether cells do not differ.
func allSame(cells []string) bool {
	return !slices.ContainsFunc(cells, func(cell string) bool { return cell != cells[0] })
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
