package draw

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// triangles are the pictures of making half-square or quarter-square triangles:
// squares laid together with what is sewn and cut, and the units they give.
func (m *making) triangles(made patchwork.Made) []panel {
	step := made.Step
	seam := m.c.Build.Seam
	atATime := max(step.AtATime, 2)
	square := patchwork.CutPiece(step.Roles[0], measure.Size{Width: made.Square, Height: made.Square})
	lines := []string{fmt.Sprintf("Lay a %s and a %s square together, %s.", step.Roles[0], step.Roles[1],
		together(square.Size.Words(m.units()))), m.sewTriangles(atATime)}
	panels := []panel{{step.Name + ", sewn", m.marked(square, seam, atATime), lines}}
	if step.Do == patchwork.QuarterSquare {
		side := patchwork.HalfSquareSide(made.Square, seam, 2)
		half := patchwork.HalfSquareUnit(step.Roles[0], step.Roles[1], side, made.Unit.Seams[0].Choice)
		panels = append(panels, panel{step.Name + ", again", m.marked(half, seam, 0), []string{
			"Lay two together, unlike roles facing. Sew " + together(seam.Show(m.units())) + " either side of the diagonal across the seams, and cut along it.",
		}})
	}
	return append(panels, m.triangleUnit(made))
}

// triangleUnit is the unit that triangles come out as.
func (m *making) triangleUnit(made patchwork.Made) panel {
	gives := fmt.Sprintf("Gives %d, each %s raw", made.Yield, together(made.Unit.Size.Words(m.units())))
	if made.Loss.Width > 0 {
		gives += " when trimmed"
	}
	return panel{named(made), m.pressed(made.Unit, m.fit(made.Unit.Size), made.Step.Name),
		[]string{gives + ".", m.pressWords(made.Step.Name)}}
}

// sewTriangles says where to sew and cut two squares that lie on each other.
func (m *making) sewTriangles(atATime int) string {
	seam := together(m.c.Build.Seam.Show(m.units()))
	switch atATime {
	case 4:
		return "Sew " + seam + " from all four edges. Cut along both diagonals."
	case 8:
		return "Sew " + seam + " either side of both diagonals. Cut along them and through the middle both ways."
	}
	return "Sew " + seam + " either side of the diagonal, and cut along it."
}

// marked draws a square unit with lines to sew along and lines to cut along: of
// triangles made 2, 4 or 8 at a time, or 0 for the second sewing of quarters,
// along the other diagonal.
func (m *making) marked(u patchwork.Unit, seam measure.Length, atATime int) picture {
	s := m.fit(u.Size)
	side := s.of(u.Size.Width)
	inset, off := s.of(seam), s.of(seam.TimesRoot2(measure.Nearest))
	return picture{side, side, func(c *canvas) {
		m.unit(c, u, s, m.wear)
		if len(u.Seams) > 0 {
			m.arrows(c, u, s, m.way, m.freshIn(""))
		}
		var sew, cut path
		if atATime == 2 || atATime == 8 {
			rising(&sew, side, off)
			cut.stroke(0, side, side, 0)
		}
		if atATime == 0 || atATime == 8 {
			falling(&sew, side, off)
			cut.stroke(0, 0, side, side)
		}
		if atATime == 4 {
			frame(&sew, inset, side-inset)
			cut.stroke(0, side, side, 0)
			cut.stroke(0, 0, side, side)
		}
		if atATime == 8 {
			cut.stroke(side/2, 0, side/2, side)
			cut.stroke(0, side/2, side, side/2)
		}
		c.cutLines(&cut)
		c.sewLines(&sew)
	}}
}

// rising adds the lines either side of the diagonal that rises to the right, off
// from it along the edges; falling those of the other diagonal.
func rising(p *path, side, off span) {
	p.stroke(0, side-off, side-off, 0)
	p.stroke(off, side, side, off)
}

func falling(p *path, side, off span) {
	p.stroke(off, 0, side, side-off)
	p.stroke(0, off, side-off, side)
}

// frame adds a square from one place to another, both ways.
func frame(p *path, from, to span) {
	p.move(from, from)
	p.line(to, from)
	p.line(to, to)
	p.line(from, to)
	p.close()
}

// subcutting is a strip set with its cuts, and a segment of it.
func (m *making) subcutting(made patchwork.Made) []panel {
	set := m.madeOf(made.Step.Of).Unit
	s := m.scale.fitted(set.Size, panelText-dimsLeft, unitRoom)
	width, height := s.of(set.Size.Width), s.of(set.Size.Height)
	const aside = 20 * unit // for the first measure, which may be wider than its segment
	art := picture{aside + width, dimsAbove + height + 6*unit, func(c *canvas) {
		c.open("g", shifted(aside, dimsAbove))
		m.unit(c, set, s, m.wear)
		m.arrows(c, set, s, m.way, m.freshIn(""))
		c.cutLines(cutPath(made.Cuts[0], nil, s, width, height))
		c.chainAbove(m.chain(made.Cuts[0], set.Size.Width, s))
		c.shut("g")
	}}
	line := fmt.Sprintf("Cut the set into segments of %s: %d of them.", together(made.Step.Every.Show(m.units())), made.Yield)
	return []panel{
		{made.Step.Name + ", cut", art, []string{line, inUnits(m.units())}},
		{named(made), m.pressed(made.Unit, m.fit(made.Unit.Size), ""), []string{m.raw(made.Unit.Size)}},
	}
}
