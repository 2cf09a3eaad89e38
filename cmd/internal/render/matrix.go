package render

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/tracker"
)

// matrix is the work of colourways against operations. Every row has a cell for
// each colourway.
type matrix struct {
	names   []string // of the colourways
	rows    []matrixRow
	through []string // operations that all colourways are through
}

// matrixRow is one operation. Lead is its number, "" where it has none.
type matrixRow struct {
	lead, name string
	cells      []matrixCell
}

// matrixCell is how far one colourway is with an operation; a cell without a count
// shows its words alone.
type matrixCell struct {
	words             string
	done, left, spare int
}

// matrixOf is a job's operations by colourway with work left, under how many of
// their blocks are made and in hand.
func matrixOf(s tracker.State) matrix {
	m := matrix{names: s.Ledger.Colourways}
	place := map[string]int{} // row of an operation
	for _, r := range s.Rows() {
		if r.Lot.Kind != planner.ColourwayLot {
			continue
		}
		at, ok := place[r.Key]
		if !ok {
			at = len(m.rows)
			place[r.Key] = at
			m.rows = append(m.rows, matrixRow{lead: fmt.Sprint(r.Number), name: r.Name, cells: emptyCells(len(m.names))})
		}
		if column := slices.Index(m.names, r.Lot.Name); column >= 0 {
			m.rows[at].cells[column] = cellOf(r.Done, r.Left(), r.Spare)
		}
	}
	m.rows = slices.DeleteFunc(m.rows, func(r matrixRow) bool {
		if r.goesOn() {
			return false
		}
		m.through = append(m.through, r.lead+tied+together(r.name))
		return true
	})
	if len(m.rows) > 0 {
		m.rows = append(blockRows(s), m.rows...)
	}
	return m
}

// blockRows are the blocks of each colourway that are made, and those in hand.
func blockRows(s tracker.State) []matrixRow {
	made, hand := matrixRow{name: "blocks made"}, matrixRow{name: "blocks in hand"}
	for _, name := range s.Ledger.Colourways {
		lot := tracker.Lot{Kind: planner.ColourwayLot, Name: name}
		finished := s.FinishedBlocks(lot)
		made.cells = append(made.cells, cellOf(finished, s.Blocks(lot)-finished, 0))
		hand.cells = append(hand.cells, matrixCell{words: fmt.Sprint(s.InHand(lot))})
	}
	return []matrixRow{made, hand}
}

// absent shows that a colourway does not go through an operation.
const absent = "–"

// emptyCells are those of an operation that no colourway has.
func emptyCells(n int) []matrixCell {
	return slices.Repeat([]matrixCell{{words: absent}}, n)
}

// cellOf is a cell with its figures in words.
func cellOf(done, left, spare int) matrixCell {
	c := matrixCell{words: fmt.Sprintf("%d/%d", done, left), done: done, left: left, spare: spare}
	if spare > 0 {
		c.words += fmt.Sprintf(" +%d", spare)
	}
	return c
}

// goesOn reports that a row has work left, or more than is needed.
func (r matrixRow) goesOn() bool {
	return slices.ContainsFunc(r.cells, func(c matrixCell) bool { return c.left > 0 || c.spare > 0 })
}

// label is the row's operation.
func (r matrixRow) label() string { return strings.TrimSpace(r.lead + " " + r.name) }

// bar draws how far a cell is in so many columns. What is begun shows, and what
// is not done is not full.
func (c matrixCell) bar(columns int, look Look) string {
	all := c.done + c.left
	if all == 0 {
		return strings.Repeat(" ", columns)
	}
	full := c.done * columns / all
	if full == 0 && c.done > 0 {
		full = 1
	}
	on, off := "█", "░"
	if !look.Unicode {
		on, off = "#", "."
	}
	return strings.Repeat(on, full) + strings.Repeat(off, columns-full)
}

// The columns that a bar takes where there is little room, and where there is
// enough.
const (
	shortBar = 4
	longBar  = 8
)

// shortLabel is how wide an operation's name may be where there is little room: it
// goes on on the next line.
const shortLabel = 24

// mostPanels is how often the operations are written anew for the colourways that
// do not fit side by side; beyond, each operation stands by itself.
const mostPanels = 3

// matrixFit is how a matrix is set out: the columns of its labels, its names, its
// figures and its bars, and how many colourways stand side by side.
type matrixFit struct {
	label, name, figures, bar, across int
}

// column is how wide one colourway is.
func (f matrixFit) column() int { return max(f.name, f.figures+1+f.bar) }

// fit finds how to set the matrix out. Across is 0 where the colourways take too
// many panels.
func (m matrix) fit(look Look) matrixFit {
	f := matrixFit{bar: longBar, across: len(m.names)}
	for _, r := range m.rows {
		f.label = max(f.label, width(look.text(r.label())))
		for _, c := range r.cells {
			f.figures = max(f.figures, width(look.text(c.words)))
		}
	}
	for _, name := range m.names {
		for _, word := range words(look.text(name)) {
			f.name = max(f.name, unbroken(word))
		}
	}
	room := look.room(0)
	if room == 0 {
		return f
	}
	fits := func() int { return (room - f.label) / (f.column() + gapWidth) }
	if f.bar = shortBar; fits() < len(m.names) {
		f.label = min(f.label, shortLabel)
	}
	for f.bar = longBar; f.bar > shortBar && fits() < len(m.names); {
		f.bar--
	}
	if most := fits(); most < len(m.names) {
		f.across = 0
		if panels := (len(m.names) + most - 1) / max(1, most); most > 1 && panels <= mostPanels {
			f.across = (len(m.names) + panels - 1) / panels
		}
	}
	f.bar = min(longBar, f.column()-f.figures-1)
	return f
}

// matrix adds a matrix: side by side as far as the page goes, the rest of the
// colourways below, or on a narrow page operation by operation.
func (p *page) matrix(m matrix) {
	f := m.fit(p.look)
	if f.across == 0 {
		p.stacked(m, f)
	}
	for from := 0; f.across > 0 && from < len(m.names); from += f.across {
		if from > 0 {
			p.gap()
		}
		p.panel(m, f, from, min(from+f.across, len(m.names)))
	}
	if len(m.through) > 0 {
		p.para(0, "All colourways are through "+strings.Join(m.through, ", ")+".")
	}
	if slices.ContainsFunc(m.rows, matrixRow.hasSpare) {
		p.para(0, "+ is what was made beyond the need.")
	}
}

// hasSpare reports that more was made somewhere than is needed.
func (r matrixRow) hasSpare() bool {
	return slices.ContainsFunc(r.cells, func(c matrixCell) bool { return c.spare > 0 })
}

// panel is some of the colourways side by side.
func (p *page) panel(m matrix, f matrixFit, from, to int) {
	names := make([][]string, to-from)
	for i, name := range m.names[from:to] {
		names[i] = wrap(p.look.text(name), f.column())
	}
	gap := strings.Repeat(" ", gapWidth)
	for n := range tallest(names) {
		line := strings.Repeat(" ", f.label)
		for _, lines := range names {
			part := ""
			if n < len(lines) {
				part = lines[n]
			}
			line += gap + padded(part, f.column())
		}
		p.line(strong, line)
	}
	p.line(faint, strings.Repeat(p.look.text("─"), f.label+(to-from)*(gapWidth+f.column())))
	for _, r := range m.rows {
		label := r.labelLines(f.label, p.look)
		line := padded(label[0], f.label)
		for _, c := range r.cells[from:to] {
			line += gap + padded(p.look.figures(c, f), f.column())
		}
		p.line(ordinary, line)
		for _, more := range label[1:] {
			p.line(ordinary, more)
		}
	}
}

// labelLines is the row's operation in so many columns: what does not fit stands
// under its name.
func (r matrixRow) labelLines(columns int, look Look) []string {
	lead := look.text(r.lead)
	if lead != "" {
		lead += " "
	}
	lines := wrap(look.text(r.name), columns-width(lead))
	for i := range lines {
		if i == 0 {
			lines[i] = lead + lines[i]
		} else {
			lines[i] = strings.Repeat(" ", width(lead)) + lines[i]
		}
	}
	return lines
}

// figures are a cell's words, right, and its bar.
func (l Look) figures(c matrixCell, f matrixFit) string {
	words := l.text(c.words)
	return strings.Repeat(" ", f.figures-width(words)) + words + " " + c.bar(f.bar, l)
}

// stacked has each operation by itself, colourways that are equally far on one
// line.
func (p *page) stacked(m matrix, f matrixFit) {
	for _, r := range m.rows {
		p.para(0, r.label())
		for _, group := range grouped(len(r.cells), func(i int) string { return r.cells[i].words }) {
			names := enumerate(picked(group, func(i int) string { return m.names[i] }))
			if len(group) == len(r.cells) && len(group) > 1 {
				names = "each"
			}
			if r.cells[group[0]].words == absent {
				continue
			}
			p.hang(2, p.look.figures(r.cells[group[0]], f)+"  ", names)
		}
	}
}
