package patchwork

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
)

// recut cuts a sewn unit again.
func (m *maker) recut(step Step) (Made, *Fault) {
	unit, fault := m.unitOf(step.Of)
	if fault != nil {
		return Made{}, fault
	}
	if len(step.Upright)+len(step.Level) == 0 {
		return Made{}, &Fault{What: "the recut has no cuts", Hint: "say where to cut"}
	}
	upright, fault := m.places(unit, across, step.Upright)
	if fault != nil {
		return Made{}, fault
	}
	level, fault := m.places(unit, down, step.Level)
	if fault != nil {
		return Made{}, fault
	}
	return Made{
		Unit:   unit,
		Pieces: RecutUnit(unit, upright, level),
		Cuts:   [2][]measure.Length{upright, level},
	}, nil
}

// places finds where cuts across an axis fall, rising from the left or top.
func (m *maker) places(unit Unit, along axis, cuts []From) ([]measure.Length, *Fault) {
	span := along.span(unit.Size)
	places := make([]measure.Length, len(cuts))
	for i, cut := range cuts {
		places[i] = cut.place(span)
		if places[i] <= 0 || places[i] >= span {
			return nil, &Fault{
				What: fmt.Sprintf("the %s cut %s falls outside the unit, which is %s %s",
					cutWay(along), m.fromText(along, cut), span.Show(m.show), spanWay(along)),
				Hint: "cut inside the unit",
			}
		}
		if unit.seamAlong(along, places[i]) {
			return nil, &Fault{
				What: fmt.Sprintf("the %s cut %s runs along a seam", cutWay(along), m.fromText(along, cut)),
				Hint: "move it to one side of the seam",
			}
		}
	}
	slices.Sort(places)
	from := measure.Length(0)
	for _, to := range append(places[:len(places):len(places)], span) {
		if to-from <= 2*m.seam {
			return nil, &Fault{
				What: fmt.Sprintf("the cuts leave a piece %s %s, and its two seams take %s",
					(to - from).Show(m.show), spanWay(along), (2 * m.seam).Show(m.show)),
				Hint: "leave more than two seams between cuts, and to the edges",
			}
		}
		from = to
	}
	return places, nil
}

// place is where the cut falls on a span, from its left or top.
func (f From) place(span measure.Length) measure.Length {
	switch f.Edge {
	case Near:
		return f.Distance
	case Far:
		return span - f.Distance
	default:
		return (span + 2*f.Distance).Half()
	}
}

// cutWay is the word for cuts across an axis.
func cutWay(along axis) string { return [2]string{"upright", "level"}[along] }

// spanWay is the word for a measure along an axis.
func spanWay(along axis) string { return [2]string{"wide", "high"}[along] }

// fromText words where a cut is measured from.
func (m *maker) fromText(along axis, cut From) string {
	edges := [2][2]string{{"left", "right"}, {"top", "bottom"}}[along]
	switch {
	case cut.Edge == Near:
		return fmt.Sprintf("%s from the %s edge", cut.Distance.Show(m.show), edges[0])
	case cut.Edge == Far:
		return fmt.Sprintf("%s from the %s edge", cut.Distance.Show(m.show), edges[1])
	case cut.Distance == 0:
		return "through the centre"
	case cut.Distance < 0:
		return fmt.Sprintf("%s from the centre to the %s", (-cut.Distance).Show(m.show), edges[0])
	default:
		return fmt.Sprintf("%s from the centre to the %s", cut.Distance.Show(m.show), edges[1])
	}
}

// seamAlong reports whether a seam runs along the line across an axis.
func (u Unit) seamAlong(along axis, at measure.Length) bool {
	for _, s := range u.Seams {
		a, b := along.of(s.A), along.of(s.B)
		if a == b && a >= at-same && a <= at+same {
			return true
		}
	}
	return false
}

// turn turns the pieces of a step in their places.
func (m *maker) turn(step Step) (Made, *Fault) {
	pieces, fault := m.piecesOf(step.Of)
	if fault != nil {
		return Made{}, fault
	}
	if fault := checkTurns(step.Turns, pieces); fault != nil {
		return Made{}, fault
	}
	turned := make([][]Unit, len(pieces))
	for r, row := range pieces {
		turned[r] = make([]Unit, len(row))
		for c, piece := range row {
			quarters := step.Turns[r][c] / 90
			width, height := piece.Size.Width, piece.Size.Height
			if quarters%2 != 0 && m.uneven(width, height) != "" {
				return Made{}, &Fault{
					What: fmt.Sprintf("a quarter turn of piece %d in row %d does not fit its place: %s against %s",
						c+1, r+1, max(width, height).Show(m.show), min(width, height).Show(m.show)),
					Hint: "give it no turn or half a turn (0 or 180), or cut square pieces",
				}
			}
			turned[r][c] = piece.Turned(quarters)
		}
	}
	return Made{Unit: laid(turned), Pieces: turned}, nil
}

// checkTurns refuses a map of turns that is not one for the pieces.
func checkTurns(turns [][]int, pieces [][]Unit) *Fault {
	fits := len(turns) == len(pieces)
	for r := 0; fits && r < len(turns); r++ {
		fits = len(turns[r]) == len(pieces[r])
	}
	if !fits {
		return &Fault{
			What: "the turns do not fit the " + gridText(pieces),
			Hint: "give one turn for each piece, row by row",
		}
	}
	for r, row := range turns {
		for c, degrees := range row {
			if degrees%90 != 0 {
				return &Fault{
					What: fmt.Sprintf("piece %d in row %d cannot be turned by %d degrees", c+1, r+1, degrees),
					Hint: "turns are 0, 90, 180 or 270 degrees clockwise",
				}
			}
		}
	}
	return nil
}

// laid is pieces laid edge to edge, not sewn.
func laid(pieces [][]Unit) Unit {
	var sheet Unit
	var at Point
	for _, row := range pieces {
		at.X = 0
		for _, piece := range row {
			sheet.add(piece, piece.whole(), at)
			at.X += piece.Size.Width
		}
		at.Y += row[0].Size.Height
		sheet.Size.Width = max(sheet.Size.Width, at.X)
	}
	sheet.Size.Height = at.Y
	return sheet
}

// trim cuts a unit, or each piece of a step that left pieces, back to a size.
func (m *maker) trim(step Step) (Made, *Fault) {
	made, fault := m.earlier(step.Of)
	if fault != nil {
		return Made{}, fault
	}
	if fault := m.checkWide("a piece trimmed to", step.Size); fault != nil {
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

func (m *maker) trimOne(what string, unit Unit, size measure.Size) (Unit, measure.Size, *Fault) {
	loss := measure.Size{Width: unit.Size.Width - size.Width, Height: unit.Size.Height - size.Height}
	if loss.Width < -same || loss.Height < -same {
		return Unit{}, loss, &Fault{
			What: fmt.Sprintf("%s is %s, too small to trim to %s", what, unit.Size.Show(m.show), size.Show(m.show)),
			Hint: "trim to a smaller size or start with larger pieces",
		}
	}
	return TrimUnit(unit, size), measure.Size{Width: max(loss.Width, 0), Height: max(loss.Height, 0)}, nil
}
