package draw

import (
	"fmt"
	"slices"

	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// inUnits says what the numbers beside a picture are.
func inUnits(u measure.Unit) string {
	if u == measure.Centimetres {
		return "Measures in centimetres."
	}
	return "Measures in inches."
}

// listed is names in a sentence: "Kelp, Dune and Foam".
func listed(names []string) string { return english.List(names, "and") }

// cutWords says what a block takes of a cut piece. Pieces from which things are
// made for many blocks at once are not counted by the block.
func (m *making) cutWords(made patchwork.Made) string {
	if made.Copies == 0 {
		return fmt.Sprintf("%s, for the lot, %s.", made.Step.Role, together(made.Step.Size.Words(m.units())))
	}
	return fmt.Sprintf("%d %s, %s.", made.Copies, made.Step.Role, together(made.Step.Size.Words(m.units())))
}

// raw is the size of a unit after a step.
func (m *making) raw(size measure.Size) string {
	return together(size.Words(m.units())) + " raw."
}

// sewnFrom says what a sewn unit is made of, and how it lies.
func sewnFrom(step patchwork.Step) string {
	if step.Whole {
		return "Sew the pieces together as they lie."
	}
	var from []string
	for _, row := range step.Rows {
		for _, cell := range row {
			if !slices.Contains(from, cell.Of) {
				from = append(from, cell.Of)
			}
		}
	}
	switch across, down := len(step.Rows[0]), len(step.Rows); {
	case down == 1:
		return "Sew side by side: " + listed(from) + "."
	case across == 1:
		return "Sew one above the other: " + listed(from) + "."
	default:
		return fmt.Sprintf("Sew %s: %s.", together(fmt.Sprintf("%d × %d", across, down)), listed(from))
	}
}

// pressWords are the directions at the iron for a step, as its card gives them;
// "" where it has no seam.
func (m *making) pressWords(step string) string {
	for _, card := range m.plan.Press.Cards {
		if card.Colourway != m.c.Name || card.Variant != m.variant {
			continue
		}
		for _, s := range card.Steps {
			if s.Step == step {
				return "Press: " + s.Words() + "."
			}
		}
	}
	return ""
}

// recutWords says where a unit is cut again.
func (m *making) recutWords(made patchwork.Made) string {
	upright, level := m.placesOf(made.Step.Upright, "left", "right"), m.placesOf(made.Step.Level, "top", "bottom")
	switch {
	case upright == level:
		return "Cut upright and level, " + upright + "."
	case level == "":
		return "Cut upright " + upright + "."
	case upright == "":
		return "Cut level " + level + "."
	}
	return "Cut upright " + upright + "; level " + level + "."
}

// placesOf words cuts across one direction: pairs either side of a line first.
func (m *making) placesOf(cuts []patchwork.From, near, far string) string {
	if len(cuts) == 2 && cuts[0].Edge == cuts[1].Edge && cuts[0].Distance == -cuts[1].Distance {
		return m.show(max(cuts[0].Distance, cuts[1].Distance)) + " either side of " + lineOf(cuts[0].Edge, near, far)
	}
	var said []string
	for _, cut := range cuts {
		said = append(said, m.placeOf(cut, near, far))
	}
	if len(said) == 2 && said[0] == "at one third" && said[1] == "at two thirds" {
		return "in equal thirds"
	}
	return listed(said)
}

// placeOf words one cut.
func (m *making) placeOf(cut patchwork.From, near, far string) string {
	line := lineOf(cut.Edge, near, far)
	edge := cut.Edge == patchwork.Near || cut.Edge == patchwork.Far
	switch {
	case edge:
		return m.show(cut.Distance) + " from " + line
	case cut.Distance == 0 && cut.Edge == patchwork.Centre:
		return "through " + line
	case cut.Distance == 0:
		return "at " + line
	case cut.Distance < 0:
		return m.show(-cut.Distance) + " from " + line + " to the " + near
	default:
		return m.show(cut.Distance) + " from " + line + " to the " + far
	}
}

// lineOf names what a cut is measured from.
func lineOf(edge patchwork.Edge, near, far string) string {
	switch edge {
	case patchwork.Near:
		return "the " + near + " edge"
	case patchwork.Far:
		return "the " + far + " edge"
	case patchwork.FirstThird:
		return "one third"
	case patchwork.SecondThird:
		return "two thirds"
	default:
		return "the centre"
	}
}

// show is a length as it is read, held together on its line.
func (m *making) show(l measure.Length) string { return together(l.Show(m.units())) }

// turnWords says what becomes of the pieces of a turn.
func (m *making) turnWords(made patchwork.Made) []string {
	var lines []string
	if slices.ContainsFunc(made.Step.Turns, func(row []int) bool { return slices.ContainsFunc(row, func(d int) bool { return d%360 != 0 }) }) {
		lines = append(lines, "Turn the marked pieces in their places, clockwise as far as the arc goes.")
	}
	if len(made.Step.Exchange) > 0 {
		lines = append(lines, "A number is the place that a piece comes from, counted row by row.")
	}
	if lines == nil {
		lines = []string{"Leave every piece as it lies."}
	}
	return lines
}
