package patchwork

import (
	"fmt"

	"quiltrun/planner/measure"
)

// sew sews a grid: each row, then the rows together.
func (m *maker) sew(step Step) (Made, *Fault) {
	grid, fault := m.grid(step)
	if fault == nil {
		fault = m.checkGrid(step, grid)
	}
	if fault != nil {
		fault.Key = "sew"
		return Made{}, fault
	}
	made := Made{Joins: m.columnPasses(grid)}
	rows := m.sewEachRow(step.Name, grid)
	if fault := m.checkRows(rows); fault != nil {
		fault.Key = "sew"
		return Made{}, fault
	}
	for r := 1; r < len(rows); r++ {
		made.Joins = append(made.Joins, SewnJoin{
			Between: true,
			Index:   r,
			Lengths: []measure.Length{rows[r].Size.Width},
			Matches: meet(crossings(rows[r-1], BottomSide, m.seam), crossings(rows[r], TopSide, m.seam), m.seam),
		})
	}
	made.Unit = m.sewRows(step.Name, rows)
	return made, nil
}

// grid is what a sew step lays out: its own rows, or the pieces of a step.
func (m *maker) grid(step Step) ([][]Unit, *Fault) {
	switch {
	case step.Whole && len(step.Rows) > 0:
		return nil, &Fault{What: "the step has rows of its own and sews a step's pieces too", Hint: "give one or the other"}
	case step.Whole:
		return m.piecesOf(step.Of)
	case step.Of != "":
		return nil, &Fault{What: "the step names pieces but does not sew them whole", Hint: "give rows, or sew the pieces as they lie"}
	case len(step.Rows) == 0:
		return nil, &Fault{What: "there is nothing to sew", Hint: "give at least one row"}
	}
	grid := make([][]Unit, len(step.Rows))
	for r, row := range step.Rows {
		if len(row) == 0 {
			return nil, &Fault{Row: r + 1, What: fmt.Sprintf("row %d is empty", r+1), Hint: "leave it out or fill it"}
		}
		grid[r] = make([]Unit, len(row))
		for c, cell := range row {
			unit, fault := m.unitOf(cell.Of)
			if fault != nil {
				fault.Row, fault.Column = r+1, c+1
				return nil, fault
			}
			grid[r][c] = unit.Turned(cell.Quarters)
		}
	}
	return grid, nil
}

// checkGrid refuses what cannot be sewn into rows.
func (m *maker) checkGrid(step Step, grid [][]Unit) *Fault {
	patches := 0
	for r, row := range grid {
		for c, unit := range row {
			patches += len(unit.Patches)
			first := row[0].Size.Height
			if off := m.uneven(first, unit.Size.Height); off != "" {
				return &Fault{
					Row: r + 1, Column: c + 1,
					What: fmt.Sprintf("row %d is %s high so far, %s %s: %s",
						r+1, first.Show(m.show), pieceText(step, r, c), unit.Size.Height.Show(m.show), off),
					Hint: "pieces of one row need equal heights",
				}
			}
		}
	}
	if patches > mostPatches {
		return &Fault{
			What: fmt.Sprintf("the unit would have %d patches, and %d is the most for one", patches, mostPatches),
			Hint: "make it of fewer pieces",
		}
	}
	return nil
}

// checkRows refuses rows that do not fit together.
func (m *maker) checkRows(rows []Unit) *Fault {
	for r, row := range rows[1:] {
		have, next := rows[r].Size.Width, row.Size.Width
		if off := m.uneven(have, next); off != "" {
			return &Fault{
				Row:  r + 2,
				What: fmt.Sprintf("row %d is %s long, the next one %s: %s", r+1, have.Show(m.show), next.Show(m.show), off),
				Hint: "rows that are sewn together need equal lengths",
			}
		}
	}
	return nil
}

// pieceText names the piece at a place of the grid.
func pieceText(step Step, row, column int) string {
	if step.Whole {
		return fmt.Sprintf("piece %d of row %d", column+1, row+1)
	}
	return fmt.Sprintf("piece %d of row %d (%s)", column+1, row+1, step.Rows[row][column].Of)
}

// uneven says how far an edge is off the one it is sewn to, empty where the
// two are equal, or the longer is cut back.
func (m *maker) uneven(have, next measure.Length) string {
	switch {
	case m.again:
		return ""
	case next < have-same:
		return m.gap(have-next) + " too short"
	case next > have+same:
		return m.gap(next-have) + " too long"
	default:
		return ""
	}
}

// gap words a difference, which may be finer than measures are shown.
func (m *maker) gap(l measure.Length) string {
	finest := measure.Inch / 16
	if m.show == measure.Centimetres {
		finest = measure.Millimetre
	}
	if l < finest {
		return "less than " + finest.Show(m.show)
	}
	return l.Show(m.show)
}

// columnPasses are the joins of a grid's columns: each pass sews the next
// column on in every row that has one.
func (m *maker) columnPasses(grid [][]Unit) []SewnJoin {
	var passes []SewnJoin
	for c := 1; ; c++ {
		pass := SewnJoin{Index: c}
		for _, row := range grid {
			if c >= len(row) {
				continue
			}
			pass.Lengths = append(pass.Lengths, row[c].Size.Height)
			left, right := crossings(row[c-1], RightSide, m.seam), crossings(row[c], LeftSide, m.seam)
			pass.Matches = append(pass.Matches, meet(left, right, m.seam)...)
		}
		if pass.Lengths == nil {
			return passes
		}
		passes = append(passes, pass)
	}
}

// sewEachRow sews the rows of a grid; each row with a seam is a choice.
func (m *maker) sewEachRow(step string, grid [][]Unit) []Unit {
	rows := make([]Unit, len(grid))
	for r, units := range grid {
		if len(units) == 1 {
			rows[r] = units[0]
			continue
		}
		rows[r] = SewRow(units, m.seam, m.choice(Choice{Step: step, Row: r}))
	}
	return rows
}

// sewRows sews rows together; each join is a choice.
func (m *maker) sewRows(step string, rows []Unit) Unit {
	if len(rows) == 1 {
		return rows[0]
	}
	choices := make([]int, len(rows)-1)
	for r := range choices {
		choices[r] = m.choice(Choice{Step: step, Between: true, Row: r})
	}
	return SewRows(rows, m.seam, choices)
}

func (m *maker) choice(c Choice) int {
	m.build.Choices = append(m.build.Choices, c)
	return len(m.build.Choices) - 1
}
