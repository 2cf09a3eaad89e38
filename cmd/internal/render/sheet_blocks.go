package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// blocks shows how each colourway's block grows, step by step. Colourways whose
// blocks are made alike share a table.
func (s *sheet) blocks() error {
	all := s.plan.Colourways
	tables := make([]*grid, len(all))
	for i, c := range all {
		tables[i] = s.stepTable(c)
	}
	s.heading("Blocks, step by step")
	for n, group := range grouped(len(all), func(i int) string { return fmt.Sprint(tables[i].rows) }) {
		if n > 0 {
			s.gap()
		}
		c := all[group[0]]
		names := picked(group, func(i int) string {
			return fmt.Sprintf("%s (%s)", all[i].Name, counted(all[i].Blocks*s.plan.Job.Quantity, "block"))
		})
		s.para(1, enumerate(names))
		s.para(1, s.blockSummary(c))
		if err := s.records(1, tables[group[0]]); err != nil {
			return err
		}
	}
	return nil
}

func (s *sheet) blockSummary(c planner.ColourwayPlan) string {
	u := s.plan.Job.Units
	text := fmt.Sprintf("Raw %s, finished %s", size(c.Raw, u), size(c.Finished, u))
	if c.SeamLength > 0 {
		text += fmt.Sprintf("; %s of seam; inside the block: %s", c.SeamLength.Show(u), matchWords(c.Matches))
	}
	return text
}

func (s *sheet) stepTable(c planner.ColourwayPlan) *grid {
	g := &grid{columns: []column{
		{title: "Step"}, {title: "What to do", flexible: true}, {title: "Raw size", flexible: true},
		{title: "Press", flexible: true}, {title: "Seams meet", flexible: true},
	}}
	for _, m := range c.Build.Steps {
		meet := ""
		if m.Step.Do == patchwork.Sew {
			meet = matchWords(c.Build.Tally(m.Joins, c.Press))
		}
		g.add(m.Step.Name, s.doing(m), s.sizes(m), pressWords(c.Build, m.Step.Name, c.Press), meet)
	}
	return g
}

// doing says what one step does, for one block.
func (s *sheet) doing(m patchwork.Made) string {
	switch m.Step.Do {
	case patchwork.Cut:
		return fmt.Sprintf("cut %d for %s", m.Copies, m.Step.Role)
	case patchwork.Sew:
		what := sewnFrom(m.Step)
		if m.Copies > 1 {
			return fmt.Sprintf("sew %s, %d times", what, m.Copies)
		}
		return "sew " + what
	case patchwork.Recut:
		return s.recutting(m)
	case patchwork.Turn:
		return "turn " + turns(m.Step.Turns)
	}
	return "trim to size"
}

// sewnFrom names what a sewn grid is made of: "2 across, 1 down: print, ground".
func sewnFrom(step patchwork.Step) string {
	if step.Whole {
		return "the pieces together"
	}
	var from []string
	for _, row := range step.Rows {
		for _, cell := range row {
			if !slices.Contains(from, cell.Of) {
				from = append(from, cell.Of)
			}
		}
	}
	return fmt.Sprintf("%d × %d of %s", len(step.Rows[0]), len(step.Rows), enumerate(from))
}

func (s *sheet) recutting(m patchwork.Made) string {
	var parts []string
	for i, word := range []string{"upright at %s from the left", "level at %s from the top"} {
		if cuts := m.Cuts[i]; len(cuts) > 0 {
			parts = append(parts, fmt.Sprintf(word, s.measures(cuts)))
		}
	}
	return "cut " + strings.Join(parts, ", ")
}

// measures lists lengths with their unit once.
func (s *sheet) measures(lengths []measure.Length) string {
	u := s.plan.Job.Units
	shown := make([]string, len(lengths))
	for i, l := range lengths {
		shown[i] = l.Show(u)
		if i < len(lengths)-1 {
			shown[i] = strings.TrimSuffix(shown[i], " "+u.String())
		}
	}
	return strings.Join(shown, " and ")
}

// turns writes how each piece of a grid is turned, row by row.
func turns(grid [][]int) string {
	rows := make([]string, len(grid))
	for i, row := range grid {
		cells := make([]string, len(row))
		for j, degrees := range row {
			cells[j] = strconv.Itoa(degrees) + "°"
		}
		rows[i] = strings.Join(cells, " ")
	}
	return strings.Join(rows, " / ")
}

// sizes is the raw size after a step: of a recut, its pieces by size.
func (s *sheet) sizes(m patchwork.Made) string {
	u := s.plan.Job.Units
	if m.Step.Do != patchwork.Recut {
		return size(m.Unit.Size, u)
	}
	pieces := slices.Concat(m.Pieces...)
	lying := func(i int) string {
		p := pieces[i].Size
		return size(measure.Size{Width: max(p.Width, p.Height), Height: min(p.Width, p.Height)}, u)
	}
	groups := grouped(len(pieces), lying)
	parts := make([]string, len(groups))
	for i, group := range groups {
		parts[i] = fmt.Sprintf("%d of %s", len(group), lying(group[0]))
	}
	return strings.Join(parts, ", ")
}

// pressWords are the directions at the iron for one step.
func pressWords(b *patchwork.Build, step string, way patchwork.Way) string {
	rows, joins := ways(b, step, way)
	var parts []string
	if len(rows) > 0 {
		parts = append(parts, directions("row", rows))
	}
	if len(joins) > 0 {
		parts = append(parts, directions("join", joins))
	}
	return strings.Join(parts, "; ")
}

// ways are the directions of a step's rows and of the joins between them.
func ways(b *patchwork.Build, step string, way patchwork.Way) (rows, joins []string) {
	rows, joins = []string{}, []string{}
	for _, c := range b.Choices {
		switch {
		case c.Step != step:
		case c.Between:
			joins = append(joins, b.Direction(c, way))
		default:
			rows = append(rows, b.Direction(c, way))
		}
	}
	return rows, joins
}

// directions says all of them, or the one where all are alike.
func directions(what string, ways []string) string {
	switch {
	case len(ways) == 1:
		return ways[0]
	case len(slices.Compact(slices.Clone(ways))) == 1:
		return "all " + plural(what) + " " + ways[0]
	}
	return plural(what) + " " + enumerate(ways)
}
