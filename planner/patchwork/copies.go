package patchwork

import "fmt"

// mostCopies bounds what one block may take of a step: a recipe that trims away
// what it has multiplied could otherwise grow beyond counting.
const mostCopies = 100_000

// countCopies counts, from the block back to the cloth, how often each step's
// unit is needed, and finds the steps that are made for the lot.
func (m *maker) countCopies() *Fault {
	steps := m.build.Steps
	last := &steps[len(steps)-1]
	if last.Pieces != nil {
		return &Fault{
			Step: last.Step.Name,
			What: "the recipe ends with " + gridText(last.Pieces) + ", not with a block",
			Hint: "sew them together in a last step",
		}
	}
	last.Copies = 1
	for i := len(steps) - 1; i >= 0; i-- {
		made := &steps[i]
		if made.Copies == 0 && made.Feeds == nil {
			return &Fault{Step: made.Step.Name, What: "nothing is made from this step", Hint: "use it in a later step or leave it out"}
		}
		made.Pooled = made.Feeds != nil || made.Copies%made.Yield != 0
		for _, name := range made.Step.uses() {
			if fault := steps[m.index[name]].serve(made); fault != nil {
				return fault
			}
		}
	}
	return nil
}

// serve counts one use of a step's unit in each run of a later step.
func (m *Made) serve(later *Made) *Fault {
	count := &m.Copies
	if later.Pooled {
		count = m.feed(later.Step.Name)
		*count++
	} else {
		*count += later.Copies / later.Yield
	}
	if *count > mostCopies {
		return &Fault{
			Step: m.Step.Name,
			What: fmt.Sprintf("one block would take more than %d of this step", mostCopies),
			Hint: "make it of fewer pieces",
		}
	}
	return nil
}

// feed is the count of what a pooled step takes from this one in a run.
func (m *Made) feed(step string) *int {
	for i := range m.Feeds {
		if m.Feeds[i].Step == step {
			return &m.Feeds[i].PerRun
		}
	}
	m.Feeds = append(m.Feeds, Feed{Step: step})
	return &m.Feeds[len(m.Feeds)-1].PerRun
}

// uses lists the steps that one run of a step takes its units or pieces from,
// each as often as it is taken.
func (s Step) uses() []string {
	switch s.Do {
	case Cut, HalfSquare, QuarterSquare:
		return nil
	case Sew:
		if !s.Whole {
			break
		}
		fallthrough
	default:
		return []string{s.Of}
	}
	var names []string
	for _, row := range s.Rows {
		for _, cell := range row {
			names = append(names, cell.Of)
		}
	}
	return names
}
