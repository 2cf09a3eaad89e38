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
		fault.Key = "recut"
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
		if fault := m.checkPlace(unit, along, cut, places[i]); fault != nil {
			fault.Key, fault.Row = cutWay(along), i+1
			return nil, fault
		}
	}
	slices.Sort(places)
	from := measure.Length(0)
	for _, to := range append(places[:len(places):len(places)], span) {
		if to-from <= 2*m.seam {
			return nil, &Fault{
				Key: cutWay(along),
				What: fmt.Sprintf("the cuts leave a piece %s %s, and its two seams take %s",
					(to - from).Show(m.show), spanWay(along), (2 * m.seam).Show(m.show)),
				Hint: "leave more than two seams between cuts, and to the edges",
			}
		}
		from = to
	}
	return places, nil
}

// checkPlace refuses a cut outside the unit or along a seam of it.
func (m *maker) checkPlace(unit Unit, along axis, cut From, place measure.Length) *Fault {
	span := along.span(unit.Size)
	if place <= 0 || place >= span {
		return &Fault{
			What: fmt.Sprintf("the %s cut %s falls outside the unit, which is %s %s",
				cutWay(along), m.fromText(along, cut), span.Show(m.show), spanWay(along)),
			Hint: "cut inside the unit",
		}
	}
	if unit.seamAlong(along, place) {
		return &Fault{
			What: fmt.Sprintf("the %s cut %s runs along a seam", cutWay(along), m.fromText(along, cut)),
			Hint: "move it to one side of the seam",
		}
	}
	return nil
}

// place is where the cut falls on a span, from its left or top; -1 where its
// distance is beyond all measure.
func (f From) place(span measure.Length) measure.Length {
	if f.Distance > measure.Longest || f.Distance < -measure.Longest {
		return -1
	}
	switch f.Edge {
	case Near:
		return f.Distance
	case Far:
		return span - f.Distance
	case FirstThird:
		return span.Scale(1, 3, measure.Nearest) + f.Distance
	case SecondThird:
		return span - span.Scale(1, 3, measure.Nearest) + f.Distance
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
	switch cut.Edge {
	case Near:
		return fmt.Sprintf("%s from the %s edge", cut.Distance.Show(m.show), edges[0])
	case Far:
		return fmt.Sprintf("%s from the %s edge", cut.Distance.Show(m.show), edges[1])
	}
	line := "the centre"
	switch cut.Edge {
	case FirstThird:
		line = "one third"
	case SecondThird:
		line = "two thirds"
	}
	switch {
	case cut.Distance == 0 && cut.Edge == Centre:
		return "through " + line
	case cut.Distance == 0:
		return "at " + line
	case cut.Distance < 0:
		return fmt.Sprintf("%s from %s to the %s", (-cut.Distance).Show(m.show), line, edges[0])
	default:
		return fmt.Sprintf("%s from %s to the %s", cut.Distance.Show(m.show), line, edges[1])
	}
}

// seamAlong reports whether a seam runs along the line across an axis.
func (u Unit) seamAlong(along axis, at measure.Length) bool { return u.nearestAlong(along, at) <= same }
