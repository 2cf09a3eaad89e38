package render

import (
	"fmt"
	"strconv"

	"quiltrun/planner/patchwork"
)

// copies is how many of a step's units one block takes; what only goes into
// strip sets is made for the lot.
func copies(m patchwork.Made) string {
	if m.Copies == 0 {
		return "for the lot"
	}
	return strconv.Itoa(m.Copies)
}

// cutting says what is cut, where the step's own name does not.
func cutting(step patchwork.Step) string {
	if step.Role == step.Name {
		return "cut"
	}
	return "cut " + step.Role
}

// turning writes how pieces are turned, and which then change places.
func turning(step patchwork.Step) string {
	text := turns(step.Turns)
	if len(step.Exchange) == 0 {
		return text
	}
	pairs := make([]string, len(step.Exchange))
	for i, pair := range step.Exchange {
		pairs[i] = together(fmt.Sprintf("%d and %d", pair[0], pair[1]))
	}
	if text != "" {
		text += "; "
	}
	return text + "exchange pieces " + enumerate(pairs)
}

// triangles says from what squares triangles are made, and how many come of two.
func (s *sheet) triangles(m patchwork.Made) string {
	side := m.Square.Show(s.plan.Job.Units)
	return fmt.Sprintf("%d at a time from %s and %s, squares of %s", m.Yield, m.Step.Roles[0], m.Step.Roles[1], side)
}
