package patchwork

import (
	"fmt"

	"quiltrun/planner/measure"
)

// trim cuts a unit, or each piece of a step that left pieces, back to a size.
func (m *maker) trim(step Step) (Made, *Fault) {
	made, fault := m.earlier(step.Of)
	if fault != nil {
		fault.Key = "trim"
		return Made{}, fault
	}
	if fault := m.checkWide("a piece trimmed to", step.Size); fault != nil {
		fault.Key = "size"
		return Made{}, fault
	}
	if made.Pieces == nil {
		unit, loss, fault := m.trimOne("the unit", made.Unit, step.Size)
		return Made{Unit: unit, Loss: loss}, fault
	}
	var trimmed Made
	for r, row := range made.Pieces {
		units := make([]Unit, len(row))
		for c, piece := range row {
			unit, loss, fault := m.trimOne(fmt.Sprintf("piece %d of row %d", c+1, r+1), piece, step.Size)
			if fault != nil {
				return Made{}, fault
			}
			units[c] = unit
			trimmed.Loss.Width = max(trimmed.Loss.Width, loss.Width)
			trimmed.Loss.Height = max(trimmed.Loss.Height, loss.Height)
		}
		trimmed.Pieces = append(trimmed.Pieces, units)
	}
	trimmed.Unit = laid(trimmed.Pieces)
	return trimmed, nil
}

// trimOne trims a unit and says what comes off. A hair too small is as good as
// right: no ruler shows it.
func (m *maker) trimOne(what string, unit Unit, size measure.Size) (Unit, measure.Size, *Fault) {
	loss := measure.Size{Width: unit.Size.Width - size.Width, Height: unit.Size.Height - size.Height}
	if loss.Width < -same || loss.Height < -same {
		return Unit{}, loss, &Fault{
			Key:  "size",
			What: fmt.Sprintf("%s is %s, too small to trim to %s", what, unit.Size.Show(m.show), size.Show(m.show)),
			Hint: "trim to a smaller size or start with larger pieces",
		}
	}
	return TrimUnit(unit, size), measure.Size{Width: max(loss.Width, 0), Height: max(loss.Height, 0)}, nil
}
