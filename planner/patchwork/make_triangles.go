package patchwork

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
)

// triangle is a way of making triangles: what squares of a side give, and what
// they must be cut to give a unit.
type triangle struct {
	key, name string
	side      func(square measure.Length) measure.Length
	cut       func(unit measure.Length) measure.Length
}

// halfSquare makes half-square triangles.
func (m *maker) halfSquare(step Step) (Made, *Fault) {
	if n := step.AtATime; !slices.Contains([]int{2, 4, 8}, n) {
		return Made{}, &Fault{
			Key:  "at-a-time",
			What: fmt.Sprintf("half-square triangles cannot be made %d at a time", n),
			Hint: "make 2, 4 or 8 at a time",
		}
	}
	made, fault := m.triangles(step, triangle{
		key:  "half-square",
		name: fmt.Sprintf("half-square triangles made %d at a time", step.AtATime),
		side: func(square measure.Length) measure.Length { return HalfSquareSide(square, m.seam, step.AtATime) },
		cut:  func(unit measure.Length) measure.Length { return HalfSquareCut(unit, m.seam, step.AtATime) },
	})
	if fault != nil {
		return Made{}, fault
	}
	made.Yield, made.RunCuts = step.AtATime, halfSquareCuts(step.AtATime)
	made.Joins = []SewnJoin{{Index: 1, Lengths: halfSquareSeams(made.Square, m.seam, step.AtATime)}}
	choice := m.choice(Choice{Step: step.Name})
	made.Unit = HalfSquareUnit(step.Roles[0], step.Roles[1], made.Unit.Size.Width, choice)
	return made, nil
}

// quarterSquare makes quarter-square triangles: two half-square triangles, laid
// together with unlike roles facing, sewn either side of the diagonal across
// their seams and cut along it.
func (m *maker) quarterSquare(step Step) (Made, *Fault) {
	made, fault := m.triangles(step, triangle{
		key:  "quarter-square",
		name: "quarter-square triangles",
		side: func(square measure.Length) measure.Length { return QuarterSquareSide(square, m.seam) },
		cut:  func(unit measure.Length) measure.Length { return QuarterSquareCut(unit, m.seam) },
	})
	if fault != nil {
		return Made{}, fault
	}
	made.Yield, made.RunCuts = 2, 2
	short, long := m.choice(Choice{Step: step.Name}), m.choice(Choice{Step: step.Name, Between: true})
	across := besideDiagonal(HalfSquareSide(made.Square, m.seam, 2), m.seam)
	side := made.Unit.Size.Width
	made.Joins = []SewnJoin{
		{Index: 1, Lengths: halfSquareSeams(made.Square, m.seam, 2)},
		{Between: true, Index: 1, Lengths: []measure.Length{across, across}, Matches: []Match{{
			At:    (side - 2*m.seam).OverRoot2(measure.Nearest),
			Leans: []Signed{{short, -1}, {short, +1}},
		}}},
	}
	made.Unit = QuarterSquareUnit(step.Roles[0], step.Roles[1], side, short, long)
	return made, nil
}

// triangles finds the sizes of a step that makes triangles: the squares to cut,
// the units they give and what is trimmed off.
func (m *maker) triangles(step Step, way triangle) (Made, *Fault) {
	if fault := checkRoles(step.Roles, way); fault != nil {
		return Made{}, fault
	}
	if step.TrimTo > measure.Longest {
		return Made{}, m.tooLong("trim", square(step.TrimTo))
	}
	cut, fault := m.squareOf(step, way)
	if fault != nil {
		return Made{}, fault
	}
	made := Made{Square: cut, Before: way.side(cut)}
	side := made.Before
	if step.TrimTo != 0 {
		side = step.TrimTo
	}
	if made.Before < side {
		return Made{}, &Fault{
			Key: "size",
			What: fmt.Sprintf("squares of %s give %s of %s, %s too small to trim to %s",
				cut.Show(m.show), way.name, max(made.Before, 0).Show(m.show),
				m.gap(side-max(made.Before, 0)), side.Show(m.show)),
			Hint: fmt.Sprintf("cut squares of %s", way.cut(side).RoundUp(rulerStep(m.show)).Show(m.show)),
		}
	}
	if fault := m.checkWide("a triangle unit of", square(side)); fault != nil {
		fault.Key = "trim"
		return Made{}, fault
	}
	made.Unit.Size = square(side)
	made.Loss = square(made.Before - side)
	return made, nil
}

func checkRoles(roles [2]string, way triangle) *Fault {
	switch {
	case roles[0] == "" || roles[1] == "":
		return &Fault{
			Key:  way.key,
			What: "the triangles need two roles",
			Hint: "say what both fabrics do in the block, such as print and ground",
		}
	case roles[0] == roles[1]:
		return &Fault{
			Key:  way.key,
			What: fmt.Sprintf("both triangles are %s", roles[0]),
			Hint: "give two roles; they may hold the same fabric",
		}
	}
	return nil
}

// squareOf is the side of the squares to cut: the step's own, or the smallest on
// the ruler that will do.
func (m *maker) squareOf(step Step, way triangle) (measure.Length, *Fault) {
	size := step.Size
	switch {
	case size.Width != size.Height:
		return 0, &Fault{
			Key:  "size",
			What: fmt.Sprintf("%s cannot be made from pieces of %s", way.name, size.Show(m.show)),
			Hint: "cut squares",
		}
	case size.Width != 0:
		return size.Width, m.checkSize(size)
	case step.TrimTo == 0:
		return 0, &Fault{
			What: "neither the squares nor the units have a size",
			Hint: "say to what size the units are trimmed, or what squares to cut",
		}
	}
	if fault := m.checkWide("a triangle unit of", square(step.TrimTo)); fault != nil {
		fault.Key = "trim"
		return 0, fault
	}
	cut := way.cut(step.TrimTo).RoundUp(rulerStep(m.show))
	return cut, m.checkSize(square(cut))
}

// rulerStep is the step of a ruler to which squares are cut that are to be
// trimmed later: 1/8 in or 0.5 cm (common practice, no source).
func rulerStep(u measure.Unit) measure.Length {
	if u == measure.Centimetres {
		return measure.Centimetre / 2
	}
	return measure.Inch / 8
}
