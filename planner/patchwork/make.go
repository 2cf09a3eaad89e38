package patchwork

import (
	"fmt"
	"strings"

	"quiltrun/planner/measure"
)

// same is how close two edges come to count as equal: 1 µm, far below any
// ruler and above the half ticks that halving and trimming can leave.
const same = measure.Millimetre / 1000

// mostPatches bounds a unit, so that a slip in a recipe that multiplies itself
// is told at once.
const mostPatches = 5000

// Make makes one block by its recipe, with seams that take seam from each side.
// Faults are worded with measures in the unit show. The error is a *Fault.
func Make(r Recipe, seam measure.Length, show measure.Unit) (*Build, error) {
	return makeBlock(r, seam, show, false)
}

// Remake is Make with another seam than the block was designed for. What then
// comes out longer than what it is sewn to is cut back, as it is at the table:
// a strip that was cut to the planned length still goes on a block that came
// out smaller.
func Remake(r Recipe, seam measure.Length, show measure.Unit) (*Build, error) {
	return makeBlock(r, seam, show, true)
}

func makeBlock(r Recipe, seam measure.Length, show measure.Unit, cutBack bool) (*Build, error) {
	m := &maker{
		show:  show,
		seam:  seam,
		again: cutBack,
		build: &Build{Seam: seam, Steps: make([]Made, 0, len(r.Steps))},
		index: make(map[string]int, len(r.Steps)),
	}
	if fault := m.makeAll(r.Steps); fault != nil {
		return nil, fault
	}
	return m.build, nil
}

// maker holds what has been made so far.
type maker struct {
	show  measure.Unit
	seam  measure.Length
	again bool // edges that differ are cut back to the shorter
	build *Build
	index map[string]int // of a step in build.Steps, by name
}

func (m *maker) makeAll(steps []Step) *Fault {
	if m.seam <= 0 {
		return &Fault{What: "a seam has to take some cloth", Hint: "give the seam a width above nought"}
	}
	if m.seam > measure.Longest {
		return &Fault{What: fmt.Sprintf("a seam cannot take %s", m.seam.Show(m.show)), Hint: "give the seam the width of its allowance"}
	}
	if len(steps) == 0 {
		return &Fault{What: "the recipe has no steps", Hint: "begin by cutting pieces"}
	}
	for _, step := range steps {
		made, fault := m.makeStep(step)
		if fault != nil {
			fault.Step = step.Name
			return fault
		}
		made.Step = step
		made.Yield = max(made.Yield, 1)
		m.index[step.Name] = len(m.build.Steps)
		m.build.Steps = append(m.build.Steps, made)
	}
	return m.countCopies()
}

func (m *maker) makeStep(step Step) (Made, *Fault) {
	if fault := m.checkName(step.Name); fault != nil {
		return Made{}, fault
	}
	switch step.Do {
	case Cut:
		return m.cut(step)
	case Sew:
		return m.sew(step)
	case Recut:
		return m.recut(step)
	case Turn:
		return m.turn(step)
	case Trim:
		return m.trim(step)
	case HalfSquare:
		return m.halfSquare(step)
	case QuarterSquare:
		return m.quarterSquare(step)
	case Subcut:
		return m.subcut(step)
	default:
		return Made{}, &Fault{What: "the step does not say what to do", Hint: "cut, sew, recut, turn, trim, subcut or make triangles"}
	}
}

func (m *maker) checkName(name string) *Fault {
	if name == "" {
		return &Fault{What: fmt.Sprintf("step %d has no name", len(m.build.Steps)+1), Hint: "every step needs a name of its own"}
	}
	if i := strings.IndexFunc(name, notInName); i >= 0 {
		return &Fault{What: fmt.Sprintf("the name %q will not do", name), Hint: "use small letters a to z, digits and hyphens"}
	}
	if _, taken := m.index[name]; taken {
		return &Fault{What: "two steps have this name", Hint: "give every step a name of its own"}
	}
	return nil
}

func notInName(r rune) bool {
	return (r < 'a' || r > 'z') && (r < '0' || r > '9') && r != '-'
}

// earlier finds a step by name among those already made.
func (m *maker) earlier(name string) (*Made, *Fault) {
	if i, ok := m.index[name]; ok {
		return &m.build.Steps[i], nil
	}
	fault := &Fault{What: fmt.Sprintf("there is no earlier step %q", name)}
	if len(m.build.Steps) > 0 {
		names := make([]string, len(m.build.Steps))
		for i, made := range m.build.Steps {
			names[i] = made.Step.Name
		}
		fault.Hint = "steps so far: " + strings.Join(names, ", ")
	}
	return nil, fault
}

// unitOf finds a step that left one unit.
func (m *maker) unitOf(name string) (Unit, *Fault) {
	made, fault := m.earlier(name)
	if fault != nil {
		return Unit{}, fault
	}
	if made.Pieces != nil {
		return Unit{}, &Fault{
			What: fmt.Sprintf("step %q leaves %s, not one unit", name, gridText(made.Pieces)),
			Hint: "sew the pieces together first",
		}
	}
	return made.Unit, nil
}

// piecesOf finds a step that left pieces.
func (m *maker) piecesOf(name string) ([][]Unit, *Fault) {
	made, fault := m.earlier(name)
	if fault != nil {
		return nil, fault
	}
	if made.Pieces == nil {
		return nil, &Fault{
			What: fmt.Sprintf("step %q leaves one unit, not pieces", name),
			Hint: "recut it first",
		}
	}
	return made.Pieces, nil
}

// gridText says how many pieces lie in a grid.
func gridText(pieces [][]Unit) string {
	rows, columns := "1 row", "1 piece"
	if n := len(pieces); n != 1 {
		rows = fmt.Sprintf("%d rows", n)
	}
	if n := len(pieces[0]); n != 1 {
		columns = fmt.Sprintf("%d pieces", n)
	}
	return rows + " of " + columns
}

// cut cuts pieces of cloth.
func (m *maker) cut(step Step) (Made, *Fault) {
	if step.Role == "" {
		return Made{}, &Fault{Key: "cut", What: "the cut has no role", Hint: "say what the fabric does in the block, such as print or ground"}
	}
	if fault := m.checkSize(step.Size); fault != nil {
		return Made{}, fault
	}
	return Made{Unit: CutPiece(step.Role, step.Size)}, nil
}

// checkSize refuses a piece of cloth that cannot be cut.
func (m *maker) checkSize(size measure.Size) *Fault {
	fault := m.checkWide("a piece of", size)
	if fault != nil {
		fault.Key = "size"
	} else if max(size.Width, size.Height) > measure.Longest {
		fault = m.tooLong("size", size)
	}
	return fault
}

func (m *maker) tooLong(key string, size measure.Size) *Fault {
	return &Fault{
		Key:  key,
		What: fmt.Sprintf("a piece of %s is longer than %s", size.Show(m.show), measure.Longest.Show(m.show)),
		Hint: "look for a slip of the pen",
	}
}

// checkWide refuses a piece that would vanish in its own seams.
func (m *maker) checkWide(what string, size measure.Size) *Fault {
	if size.Width > 2*m.seam && size.Height > 2*m.seam {
		return nil
	}
	return &Fault{
		What: fmt.Sprintf("%s %s has nothing left to show: its two seams take %s",
			what, size.Show(m.show), (2 * m.seam).Show(m.show)),
		Hint: "make it wider than two seams",
	}
}
