package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// reach is how far a block has come when a piece of it is measured: a step of
// its recipe, and of a sewn grid the columns and rows that are together.
type reach struct {
	at        int    // of the step in the recipe
	name      string // the step's
	operation string
	columns   int // joined so far; 0: all
	rows      int // joined so far; 0: all
}

// partly reports whether some of the grid is still to be sewn on.
func (r reach) partly() bool { return r.columns != 0 || r.rows != 0 }

// reach finds a step by its name, or by the key of one of its operations. The
// names of what is done to a whole block mean the recipe's last step.
func (t twice) reach(c ColourwayPlan, step string) (reach, bool) {
	lot := Lot{ColourwayLot, c.Name}
	steps := c.Build.Steps
	if at := slices.IndexFunc(steps, func(s patchwork.Made) bool { return s.Step.Name == step }); at >= 0 {
		return reach{at: at, name: step, operation: t.lastOf(lot, step)}, true
	}
	last := len(steps) - 1
	if slices.Contains([]string{keySquareUp, keyTest, "block"}, step) {
		return reach{at: last, name: steps[last].Step.Name, operation: keySquareUp}, true
	}
	for _, o := range t.plan.Operations {
		if o.Key != step || o.Lot != lot || o.Step == "" {
			continue
		}
		at := slices.IndexFunc(steps, func(s patchwork.Made) bool { return s.Step.Name == o.Step })
		r := reach{at: at, name: o.Step, operation: o.Key}
		r.joined(steps[at], o)
		return r, true
	}
	return reach{}, false
}

// lastOf is the last operation of a step at the machine, "" where it has none.
func (t twice) lastOf(lot Lot, step string) string {
	found := ""
	for _, o := range t.plan.Operations {
		if o.Lot == lot && o.Step == step && (o.Place == Machine || found == "") {
			found = o.Key
		}
	}
	return found
}

// joined finds how much of a grid is together after a pass over it.
func (r *reach) joined(made patchwork.Made, o Operation) {
	for _, j := range made.Joins {
		column := fmt.Sprintf("sew-%s-column-%d", made.Step.Name, j.Index+1)
		row := fmt.Sprintf("join-%s-row-%d", made.Step.Name, j.Index+1)
		switch {
		case !j.Between && o.Key == column:
			r.columns, r.rows = j.Index+1, 1
		case j.Between && o.Key == row:
			r.rows = j.Index + 1
		}
	}
	if o.Key == "press-"+made.Step.Name+"-rows" {
		r.rows = 1
	}
	r.complete(made)
}

// complete forgets a count that is the whole grid's.
func (r *reach) complete(made patchwork.Made) {
	columns, rows := 1, 1
	for _, j := range made.Joins {
		if j.Between {
			rows = max(rows, j.Index+1)
		} else {
			columns = max(columns, j.Index+1)
		}
	}
	if r.columns >= columns {
		r.columns = 0
	}
	if r.rows >= rows {
		r.rows = 0
	}
}

// size is the raw size of the piece in a build; false where the step leaves
// pieces of several sizes. Triangles are measured as they come off the machine,
// before they are trimmed.
func (r reach) size(b *patchwork.Build) (measure.Size, bool) {
	made := b.Steps[r.at]
	switch {
	case made.Before != 0:
		return squareSize(made.Before), true
	case made.Pieces != nil:
		return oneSize(made.Pieces)
	case !r.partly():
		return made.Unit.Size, true
	}
	return r.part(b, made.Step), true
}

// oneSize is the size that all pieces share.
func oneSize(pieces [][]patchwork.Unit) (measure.Size, bool) {
	first := pieces[0][0].Size
	for _, row := range pieces {
		for _, piece := range row {
			if piece.Size != first {
				return measure.Size{}, false
			}
		}
	}
	return first, true
}

// part is the first rows and columns of a grid, sewn together.
func (r reach) part(b *patchwork.Build, step patchwork.Step) measure.Size {
	grid := gridOf(b, step)
	if r.rows > 0 {
		grid = grid[:min(r.rows, len(grid))]
	}
	var size measure.Size
	for _, row := range grid {
		if r.columns > 0 {
			row = row[:min(r.columns, len(row))]
		}
		size.Height += row[0].Height
		size.Width = 0
		for _, piece := range row {
			size.Width += piece.Width
		}
		size.Width -= b.Seam.Times(2 * (len(row) - 1))
	}
	size.Height -= b.Seam.Times(2 * (len(grid) - 1))
	return size
}

// gridOf is the sizes of what a step sews, as they lie.
func gridOf(b *patchwork.Build, step patchwork.Step) [][]measure.Size {
	named := make(map[string]patchwork.Made, len(b.Steps))
	for _, s := range b.Steps {
		named[s.Step.Name] = s
	}
	var grid [][]measure.Size
	if step.Whole {
		for _, row := range named[step.Of].Pieces {
			var sizes []measure.Size
			for _, piece := range row {
				sizes = append(sizes, piece.Size)
			}
			grid = append(grid, sizes)
		}
		return grid
	}
	for _, row := range step.Rows {
		var sizes []measure.Size
		for _, cell := range row {
			size := named[cell.Of].Unit.Size
			if cell.Quarters%2 != 0 {
				size = size.Turned()
			}
			sizes = append(sizes, size)
		}
		grid = append(grid, sizes)
	}
	return grid
}

// words names the piece.
func (r reach) words() string {
	switch {
	case r.columns > 0:
		return fmt.Sprintf("the first %d columns of %s, first row", r.columns, said(r.name))
	case r.rows == 1:
		return "the first row of " + said(r.name)
	case r.rows > 1:
		return fmt.Sprintf("the first %d rows of %s", r.rows, said(r.name))
	}
	return "a piece after the step " + said(r.name)
}
