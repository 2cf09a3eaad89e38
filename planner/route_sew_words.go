package planner

import (
	"fmt"
	"strings"

	"quiltrun/planner/patchwork"
)

func columnName(index int) string {
	if index == 1 {
		return "sew columns 1 and 2"
	}
	return fmt.Sprintf("sew column %d on", index+1)
}

// columnWords says in how many rows a column is sewn on.
func columnWords(s patchwork.Made, j patchwork.SewnJoin) string {
	rows := len(j.Lengths)
	if rows > 1 {
		return fmt.Sprintf(" in %s of a block, right sides together; do not cut the threads that hold the rows one below the other.", allRows(rows)) + gridWords(s, j)
	}
	if s.Step.Whole || len(s.Step.Rows) > 1 {
		return ", right sides together."
	}
	return fmt.Sprintf(": %s to the right of %s, right sides together, one after another without cutting the thread.",
		s.Step.Rows[0][j.Index].Of, s.Step.Rows[0][j.Index-1].Of)
}

func allRows(n int) string {
	if n == 2 {
		return "both rows"
	}
	return fmt.Sprintf("all %d rows", n)
}

// gridWords says with the first column what lies where: the units of each row,
// and how each is turned.
func gridWords(s patchwork.Made, j patchwork.SewnJoin) string {
	if s.Step.Whole || j.Index > 1 {
		return ""
	}
	rows := make([]string, len(s.Step.Rows))
	for i, row := range s.Step.Rows {
		cells := make([]string, len(row))
		for c, cell := range row {
			cells[c] = cell.Of
			if degrees := 90 * (cell.Quarters % 4); degrees != 0 {
				cells[c] += fmt.Sprintf(" turned %d°", degrees)
			}
		}
		rows[i] = fmt.Sprintf("row %d %s", i+1, strings.Join(cells, ", "))
	}
	return " In " + strings.Join(rows, "; in ") + "."
}

// rowWords names the rows that are joined where each is one unit, as in a strip
// set.
func rowWords(s patchwork.Made, j patchwork.SewnJoin) string {
	if s.Step.Whole || len(s.Step.Rows[j.Index-1]) > 1 || len(s.Step.Rows[j.Index]) > 1 {
		return ""
	}
	above, below := s.Step.Rows[j.Index-1][0], s.Step.Rows[j.Index][0]
	return fmt.Sprintf(": %s above %s, right sides together", above.Of+turnedWords(above), below.Of+turnedWords(below))
}

// setWords says with the first seam of a step made for the lot how many are sewn.
func (w *blockWork) setWords(s patchwork.Made, j patchwork.SewnJoin) string {
	if j.Index > 1 || j.Between && rowsSewn(s) {
		return ""
	}
	return w.forTheLot(s, "set", "unit")
}

// ofStep tells apart the passes of several grids that are sewn in one block; ""
// where there is one.
func (w *blockWork) ofStep(s patchwork.Made) string {
	for _, other := range w.c.Build.Steps {
		if other.Step.Name != s.Step.Name && len(other.Joins) > 1 && other.Step.Do == patchwork.Sew {
			return " of the " + s.Step.Name
		}
	}
	return ""
}

// chainWords names what is sewn to what in a step with one seam.
func (w *blockWork) chainWords(s patchwork.Made) string {
	comesOut := fmt.Sprintf("right sides together: each comes out %s raw.", s.Unit.Size.Show(w.job.Units))
	meets := " " + w.meetWords(s.Joins[0])
	if s.Step.Whole {
		return fmt.Sprintf("Sew the two pieces of each %s together again as they lie, %s%s", s.Step.Of, comesOut, meets)
	}
	one, other := s.Step.Rows[0][0], s.Step.Rows[len(s.Step.Rows)-1][len(s.Step.Rows[0])-1]
	switch {
	case !s.Joins[0].Between:
		return fmt.Sprintf("Sew %s on the left to %s on the right, right sides together, one after another without cutting the thread: each comes out %s raw.",
			one.Of+turnedWords(one), other.Of+turnedWords(other), s.Unit.Size.Show(w.job.Units)) + w.setWords(s, s.Joins[0])
	case one.Of == other.Of:
		return fmt.Sprintf("Sew one of the %s%s above another%s, %s%s", one.Of, turnedWords(one), turnedWords(other), comesOut, meets) + w.setWords(s, s.Joins[0])
	default:
		return fmt.Sprintf("Sew %s%s above %s%s, %s%s", w.oneOf(one), turnedWords(one), w.oneOf(other), turnedWords(other), comesOut, meets) + w.setWords(s, s.Joins[0])
	}
}

// oneOf names one piece of cloth or one unit.
func (w *blockWork) oneOf(c patchwork.Cell) string {
	if w.isCloth(c.Of) {
		return c.Of
	}
	return "one of the " + c.Of
}

func turnedWords(c patchwork.Cell) string {
	if name := turnName(90 * c.Quarters); name != "" {
		return " given " + name
	}
	return ""
}
