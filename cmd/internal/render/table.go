package render

import (
	"slices"
	"strings"
)

// column is one column of a table. Flexible columns hold words and may be
// wrapped to make a table fit; all others keep their cells whole.
type column struct {
	title    string
	right    bool
	flexible bool
}

// A flexible column is not made narrower than leastFlexible, and words longer
// than longestWord may be parted.
const (
	leastFlexible = 10
	longestWord   = 20
)

// grid is a table before it is fitted to a page. Every row has a cell for each
// column.
type grid struct {
	columns []column
	rows    [][]string
}

// add is one more row.
func (g *grid) add(cells ...string) { g.rows = append(g.rows, cells) }

// header is the titles of the columns.
func (g *grid) header() []string {
	titles := make([]string, len(g.columns))
	for i, c := range g.columns {
		titles[i] = c.title
	}
	return titles
}

// readied makes every cell fit to print in a look.
func (g *grid) readied(look Look) *grid {
	out := &grid{columns: g.columns, rows: make([][]string, len(g.rows))}
	for i, row := range g.rows {
		out.rows[i] = make([]string, len(row))
		for j, cell := range row {
			out.rows[i][j] = look.text(cell)
		}
	}
	return out
}

// widths gives each column its width within the room, and false where even the
// narrowest table does not fit. A room of 0 is unbounded.
func (g *grid) widths(room int) ([]int, bool) {
	columns := make([]int, len(g.columns))
	total := gapWidth * (len(columns) - 1)
	for i, c := range g.columns {
		columns[i] = width(c.title)
		for _, row := range g.rows {
			columns[i] = max(columns[i], width(row[i]))
		}
		total += columns[i]
	}
	if room == 0 {
		return columns, true
	}
	if total <= room {
		return columns, true
	}
	least := g.least(columns)
	for ; total > room; total-- {
		i := widest(columns, least)
		if i < 0 {
			return nil, false
		}
		columns[i]--
	}
	return columns, true
}

// least is how narrow each column may become: a flexible one as narrow as its
// longest word, within reason.
func (g *grid) least(columns []int) []int {
	least := slices.Clone(columns)
	for i, c := range g.columns {
		if !c.flexible {
			continue
		}
		least[i] = min(columns[i], max(leastFlexible, width(c.title)))
		for _, row := range g.rows {
			for _, w := range words(row[i]) {
				least[i] = max(least[i], unbroken(w))
			}
		}
	}
	return least
}

// unbroken is how wide a column must be so as not to part a word, or of a very
// long one its parts.
func unbroken(word string) int {
	if w := width(word); w <= longestWord {
		return w
	}
	most := 0
	for _, part := range joints(word, longestWord) {
		most = max(most, min(width(part), longestWord))
	}
	return most
}

// widest is the widest column that can still give, or -1.
func widest(columns, least []int) int {
	found := -1
	for i := range columns {
		if columns[i] > least[i] && (found < 0 || columns[i] > columns[found]) {
			found = i
		}
	}
	return found
}

// wrapped parts every cell into the lines that its column has room for.
func (g *grid) wrapped(columns []int) [][][]string {
	cells := make([][][]string, len(g.rows))
	for i, row := range g.rows {
		cells[i] = make([][]string, len(row))
		for j, cell := range row {
			cells[i][j] = wrap(cell, columns[j])
		}
	}
	return cells
}

// tallest is how many lines a row takes.
func tallest(row [][]string) int {
	n := 1
	for _, lines := range row {
		n = max(n, len(lines))
	}
	return n
}

// columns adds rows in columns with something between them: whatever before and
// after add to each row. It returns false, and adds nothing, where the page is
// too narrow.
func (p *page) columns(indent int, g *grid, before, after func(row int)) bool {
	g = g.readied(p.look)
	columns, fits := g.widths(p.look.room(indent))
	if !fits {
		return false
	}
	margin := strings.Repeat(" ", indent)
	titles := make([][]string, len(g.columns))
	across := gapWidth * (len(columns) - 1)
	for i, c := range g.columns {
		titles[i] = []string{c.title}
		across += columns[i]
	}
	p.line(strong, margin+g.beside(columns, titles, 0))
	p.line(faint, margin+strings.Repeat(p.look.text("─"), across))
	for i, row := range g.wrapped(columns) {
		before(i)
		for n := range tallest(row) {
			p.line(ordinary, margin+g.beside(columns, row, n))
		}
		after(i)
	}
	return true
}

// beside is the n-th line of a row's cells, side by side.
func (g *grid) beside(columns []int, row [][]string, n int) string {
	var out strings.Builder
	for i, c := range g.columns {
		cell := ""
		if n < len(row[i]) {
			cell = row[i][n]
		}
		blank := strings.Repeat(" ", columns[i]-width(cell))
		if c.right {
			out.WriteString(blank + cell)
		} else {
			out.WriteString(cell + blank)
		}
		out.WriteString("  ")
	}
	return out.String()
}

// records adds rows in columns, or where the page is too narrow for them a
// list.
func (p *page) records(indent int, g *grid) {
	nothing := func(int) {}
	if !p.columns(indent, g, nothing, nothing) {
		p.list(indent, g)
	}
}

// list adds rows one below the other: the first cell on a line of its own, the
// others named under it.
func (p *page) list(indent int, g *grid) {
	for _, row := range g.rows {
		p.para(indent, row[0])
		var items []string
		for i, cell := range row[1:] {
			if cell != "" {
				items = append(items, together(strings.TrimLeft(g.columns[i+1].title+": ", ": ")+cell))
			}
		}
		p.para(indent+2, strings.Join(items, "; "))
	}
}
