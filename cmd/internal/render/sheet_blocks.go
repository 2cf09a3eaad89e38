package render

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// blocks shows how each colourway's block grows, step by step. Colourways whose
// blocks go through the same steps share a table; a step that differs by
// colourway has a row for each.
func (s *sheet) blocks() {
	all := s.plan.Colourways
	s.heading("Blocks, step by step")
	for n, group := range grouped(len(all), func(i int) string { return s.blockSummary(all[i]) + stepNames(all[i]) }) {
		if n > 0 {
			s.gap()
		}
		like := make([]planner.ColourwayPlan, len(group))
		names := make([]string, len(group))
		for i, at := range group {
			like[i] = all[at]
			names[i] = fmt.Sprintf("%s (%s)", like[i].Name, counted(like[i].Blocks*s.plan.Job.Quantity, "block"))
		}
		s.para(1, enumerate(names))
		s.para(1, s.blockSummary(like[0]))
		s.records(1, s.stepTable(like))
		s.drawing(like)
	}
}

// stepNames is equal for blocks that go through the same steps.
func stepNames(c planner.ColourwayPlan) string {
	var names strings.Builder
	for _, m := range c.Build.Steps {
		names.WriteString("\x00" + m.Step.Name)
	}
	return names.String()
}

// blockSummary is a block's sizes, and what its seams come to.
func (s *sheet) blockSummary(c planner.ColourwayPlan) string {
	u := s.plan.Job.Units
	text := fmt.Sprintf("Raw %s, finished %s", size(c.Raw, u), size(c.Finished, u))
	if c.SeamLength > 0 {
		text += fmt.Sprintf("; %s of seam a block; inside it %s", c.SeamLength.Show(u), pointWords(c.Matches))
	}
	return text
}

// stepTable is the steps of colourways that go through the same ones.
func (s *sheet) stepTable(like []planner.ColourwayPlan) *grid {
	g := &grid{columns: []column{
		{title: "Step", flexible: true}, {title: "A block", right: true}, {title: "What to do", flexible: true},
		{title: "Raw size", flexible: true}, {title: "Press", flexible: true}, {title: "Seams meet", flexible: true},
	}}
	for i, m := range like[0].Build.Steps {
		rows := make([][]string, len(like))
		for j, c := range like {
			rows[j] = s.stepCells(c, c.Build.Steps[i])
		}
		groups := grouped(len(like), func(j int) string { return strings.Join(rows[j], "\x00") })
		for _, group := range groups {
			name := m.Step.Name
			if len(groups) > 1 {
				name += ": " + enumerate(picked(group, func(j int) string { return like[j].Name }))
			}
			g.add(append([]string{name}, rows[group[0]]...)...)
		}
	}
	return g
}

// stepCells are the cells of a step's row but the first.
func (s *sheet) stepCells(c planner.ColourwayPlan, m patchwork.Made) []string {
	meet := ""
	if m.Step.Do == patchwork.Sew {
		meet = "nowhere"
		if t := c.Build.Tally(m.Joins, c.Press); t != (patchwork.Tally{}) {
			meet = matchWords(t)
		}
	}
	return []string{copies(m), s.doing(m), s.sizes(m), pressedBy(c, m.Step.Name), meet}
}

// doing says what one step does to one unit.
func (s *sheet) doing(m patchwork.Made) string {
	switch m.Step.Do {
	case patchwork.Cut:
		return cutting(m.Step)
	case patchwork.Sew:
		return "sew " + sewnFrom(m.Step)
	case patchwork.Recut:
		return s.recutting(m)
	case patchwork.Turn:
		return turning(m.Step)
	case patchwork.HalfSquare, patchwork.QuarterSquare:
		return s.triangles(m)
	case patchwork.Subcut:
		return fmt.Sprintf("cut %s into %d, every %s", m.Step.Of, m.Yield, m.Step.Every.Show(s.plan.Job.Units))
	}
	return "trim to size"
}

// sewnFrom names what a sewn grid is made of, and how it lies.
func sewnFrom(step patchwork.Step) string {
	if step.Whole {
		return "the pieces as they lie"
	}
	rows := make([]string, len(step.Rows))
	for i, row := range step.Rows {
		cells := make([]string, len(row))
		for j, cell := range row {
			cells[j] = placed(cell)
		}
		rows[i] = strings.Join(cells, ", ")
	}
	switch across, down := len(step.Rows[0]), len(step.Rows); {
	case down == 1:
		return "side by side: " + rows[0]
	case across == 1:
		return "one above the other: " + strings.Join(rows, ", ")
	default:
		return fmt.Sprintf("%d × %d: %s", across, down, strings.Join(rows, " / "))
	}
}

// placed is a place of a grid: what lies there, and how far it is turned.
func placed(cell patchwork.Cell) string {
	if cell.Quarters%4 == 0 {
		return cell.Of
	}
	return together(fmt.Sprintf("%s %d°", cell.Of, 90*(cell.Quarters%4)))
}

// recutting gives the places of the cuts, from the left and from the top.
func (s *sheet) recutting(m patchwork.Made) string {
	upright, level := s.measures(m.Cuts[0]), s.measures(m.Cuts[1])
	switch {
	case upright == level:
		return "cut both ways at " + upright
	case level == "":
		return "cut upright at " + upright
	case upright == "":
		return "cut level at " + level
	}
	return fmt.Sprintf("cut upright at %s, level at %s", upright, level)
}

// measures lists lengths from the left or the top, with their unit once.
func (s *sheet) measures(lengths []measure.Length) string {
	u := s.plan.Job.Units
	shown := make([]string, len(lengths))
	for i, l := range lengths {
		shown[i] = l.Show(u)
		if i < len(lengths)-1 {
			shown[i] = strings.TrimSuffix(shown[i], " "+u.String())
		}
	}
	return strings.Join(shown, ", ")
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

// sizes is the raw size after a step: of a recut, its pieces across and down.
func (s *sheet) sizes(m patchwork.Made) string {
	if m.Step.Do != patchwork.Recut {
		return size(m.Unit.Size, s.plan.Job.Units)
	}
	var widths, heights []measure.Length
	for _, piece := range m.Pieces[0] {
		widths = append(widths, piece.Size.Width)
	}
	for _, row := range m.Pieces {
		heights = append(heights, row[0].Size.Height)
	}
	across, down := s.measures(widths), s.measures(heights)
	if across == down {
		return across + " both ways"
	}
	return across + " across, " + down + " down"
}

// pressedBy are the directions of one step, card by card where its colourway has
// two that differ here.
func pressedBy(c planner.ColourwayPlan, step string) string {
	all := pressWords(c.Build, step, c.Press)
	if c.PressB == nil || pressWords(c.Build, step, c.PressB) == all {
		return all
	}
	return fmt.Sprintf("card a: %s; card b: %s", all, pressWords(c.Build, step, c.PressB))
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
		return "all " + english.Plural(what) + " " + ways[0]
	}
	return english.Plural(what) + " " + enumerate(ways)
}
