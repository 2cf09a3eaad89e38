package planner

import (
	"fmt"

	"quiltrun/planner/patchwork"
)

// refuseFault reports what in a colourway's block cannot be made, where the job
// file causes it.
func (m *maker) refuseFault(c Colourway, fault *patchwork.Fault) {
	what := c.Name + ": " + fault.What
	if c.Block.Make == "" && fault.Step != "" {
		what = fmt.Sprintf("%s: at the step %s, %s", c.Name, said(fault.Step), fault.What)
	}
	m.refuse(m.cause(c, fault), what, fault.Hint)
}

// cause is the path of the value that a fault of geometry most likely comes from:
// the colourway's own where it gives one, else the shared block's.
func (m *maker) cause(c Colourway, fault *patchwork.Fault) string {
	own := "colourways." + c.Name
	for _, key := range m.causes(c.Block, fault) {
		for _, path := range []string{own + "." + key, "block." + key} {
			if _, ok := m.job.At[path]; ok {
				return path
			}
		}
	}
	return own
}

// causes are the keys that may be at the bottom of a fault, the likeliest first:
// of steps the value that the fault names, of a built-in the measure that the
// step takes.
func (m *maker) causes(b BlockSpec, fault *patchwork.Fault) []string {
	if b.Make == "" {
		return stepPaths(fault)
	}
	switch fault.Step {
	case "recut":
		return []string{"offset", "unit", "square"}
	case "turn":
		return []string{"turn"}
	}
	return []string{"square", "unit", "strip", "length"}
}

// stepPaths are the paths of a step's value, of its key and of the step.
func stepPaths(fault *patchwork.Fault) []string {
	if fault.Step == "" {
		return []string{"steps"}
	}
	step := "steps." + fault.Step
	key := step + "." + fault.Key
	row := fmt.Sprintf("%s[%d]", key, fault.Row-1)
	cell := fmt.Sprintf("%s[%d]", row, fault.Column-1)
	return []string{cell, row, key, step, "steps"}
}
