package render

import (
	"fmt"
	"strings"

	"github.com/olekukonko/tablewriter"
	"github.com/olekukonko/tablewriter/pkg/twwidth"
	"github.com/olekukonko/tablewriter/renderer"
	"github.com/olekukonko/tablewriter/tw"
)

// This file alone knows tablewriter, which sets out tables that stand by
// themselves. Fitting to the page is done before, since numbers must not be
// cut, and cells come here ready wrapped. The job sheet sets its own columns:
// its rows have text between them, and a tablewriter costs more time than the
// rest of the sheet.

// The gap between two columns.
const gapWidth = 2

// table adds a table, or where the page is too narrow for it a list.
func (p *page) table(g *grid) error {
	g = g.readied(p.look)
	columns, fits := g.widths(p.look.room(0))
	if !fits {
		p.list(0, g)
		return nil
	}
	lines, err := g.set(p.look, g.wrapped(columns))
	if err != nil {
		return err
	}
	for i, l := range lines {
		p.line([...]style{strong, faint, ordinary}[min(i, 2)], l)
	}
	return nil
}

// set draws rows of cells that fit under their columns, and returns the lines.
func (g *grid) set(look Look, cells [][][]string) ([]string, error) {
	mask := newMask()
	var out strings.Builder
	table := tablewriter.NewTable(&out, g.options(look)...)
	table.Header(mask.cells(g.header()))
	for _, row := range cells {
		joined := make([]string, len(row))
		for i, lines := range row {
			joined[i] = strings.Join(lines, "\n")
		}
		if err := table.Append(mask.cells(joined)); err != nil {
			return nil, fmt.Errorf("setting a table: %w", err)
		}
	}
	if err := table.Render(); err != nil {
		return nil, fmt.Errorf("setting a table: %w", err)
	}
	return strings.Split(strings.TrimSuffix(mask.restored(out.String()), "\n"), "\n"), nil
}

// options are the house style: no borders, a light rule under the header, two
// blanks between columns.
func (g *grid) options(look Look) []tablewriter.Option {
	symbols := tw.NewSymbols(tw.StyleLight)
	if !look.Unicode {
		symbols = tw.NewSymbols(tw.StyleASCII)
	}
	return []tablewriter.Option{
		tablewriter.WithEastAsian(tw.Off),
		tablewriter.WithRenderer(renderer.NewBlueprint(tw.Rendition{
			Borders: tw.BorderNone,
			Symbols: symbols,
			Settings: tw.Settings{
				Separators: tw.SeparatorsNone,
				Lines:      tw.Lines{ShowTop: tw.Off, ShowBottom: tw.Off, ShowHeaderLine: tw.On, ShowFooterLine: tw.Off},
			},
		})),
		tablewriter.WithConfig(tablewriter.Config{
			Header:   g.cellConfig(),
			Row:      g.cellConfig(),
			Behavior: tw.Behavior{TrimSpace: tw.Off},
		}),
	}
}

// cellConfig aligns cells and leaves their text as it is; the last column needs
// no gap behind it.
func (g *grid) cellConfig() tw.CellConfig {
	align, gaps := make([]tw.Align, len(g.columns)), make([]tw.Padding, len(g.columns))
	for i, c := range g.columns {
		align[i], gaps[i].Overwrite = tw.AlignLeft, true
		if c.right {
			align[i] = tw.AlignRight
		}
		if i < len(g.columns)-1 {
			gaps[i].Right = strings.Repeat(" ", gapWidth)
		}
	}
	return tw.CellConfig{
		Formatting: tw.CellFormatting{AutoWrap: tw.WrapNone, AutoFormat: tw.Off},
		Alignment:  tw.CellAlignment{PerColumn: align},
		Padding:    tw.CellPadding{PerColumn: gaps},
	}
}

// mask stands in for clusters that tablewriter measures otherwise than a
// terminal shows them: it adds up characters one by one, so that a flag, which
// is two, would count four columns. Private characters of the right number take
// their place while the table is set.
type mask struct {
	next  rune
	pairs []string // stand-in, cluster, stand-in, cluster …
	known map[string]string
}

// Stand-ins are taken from here on; nobody's names are written in them.
const firstStandIn = '\U0010F000'

func newMask() *mask { return &mask{next: firstStandIn, known: map[string]string{}} }

// cells are the cells of a row with stand-ins.
func (m *mask) cells(cells []string) []string {
	out := make([]string, len(cells))
	for i, c := range cells {
		out[i] = m.cell(c)
	}
	return out
}

// cell is a text that tablewriter measures as a terminal shows it.
func (m *mask) cell(s string) string {
	if ascii(strings.ReplaceAll(s, "\n", "")) {
		return s
	}
	var out strings.Builder
	for g := narrow.StringGraphemes(s); g.Next(); {
		cluster := g.Value()
		if cluster == "\n" || twwidth.WidthNoCache(cluster) == g.Width() && []rune(cluster)[0] < firstStandIn {
			out.WriteString(cluster)
			continue
		}
		out.WriteString(m.standIn(cluster, g.Width()))
	}
	return out.String()
}

// standIn is as many private characters as the cluster has columns.
func (m *mask) standIn(cluster string, columns int) string {
	if s, ok := m.known[cluster]; ok {
		return s
	}
	s := string(m.next) + strings.Repeat(string(firstStandIn-1), max(0, columns-1))
	m.next++
	m.known[cluster] = s
	m.pairs = append(m.pairs, s, cluster)
	return s
}

// restored puts the clusters back.
func (m *mask) restored(s string) string {
	if len(m.pairs) == 0 {
		return s
	}
	return strings.NewReplacer(m.pairs...).Replace(s)
}
