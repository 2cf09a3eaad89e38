package draw

import (
	"fmt"
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// making is the drawing of how one colourway's block is made.
type making struct {
	*drawing
	c       planner.ColourwayPlan
	way     patchwork.Way
	variant string
	wear    wear
	scale   scale // of all units but those that are too large for their panel
}

// The largest a unit gets in its panel.
const unitRoom = 190 * unit

// newMaking chooses a scale at which the block and all that it is made of fit.
// Strip sets and other things far larger than the block are fitted by themselves.
func newMaking(d *drawing, c planner.ColourwayPlan, w wear) *making {
	block := c.Build.Block().Size
	most := max(block.Width, block.Height)
	limit := 3 * most
	for _, made := range c.Build.Steps {
		side := max(made.Unit.Size.Width, made.Unit.Size.Height, made.Square)
		if side <= limit {
			most = max(most, side)
		}
	}
	return &making{drawing: d, c: c, way: c.Press, variant: "a", wear: w, scale: scale{unitRoom, most}}
}

func (m *making) units() measure.Unit { return m.plan.Job.Units }

// panels are the pictures of a block's making, in the order of work.
func (m *making) panels() []panel {
	var panels []panel
	if cuts := m.cutting(); cuts != nil {
		panels = append(panels, *cuts)
	}
	for _, made := range m.c.Build.Steps {
		switch made.Step.Do {
		case patchwork.Cut:
		case patchwork.Sew:
			panels = append(panels, m.sewing(made))
		case patchwork.Recut:
			panels = append(panels, m.recutting(made), m.apart(made))
		case patchwork.Turn:
			panels = append(panels, m.turning(made))
		case patchwork.Trim:
			panels = append(panels, m.trimming(made))
		case patchwork.HalfSquare, patchwork.QuarterSquare:
			panels = append(panels, m.triangles(made)...)
		case patchwork.Subcut:
			panels = append(panels, m.subcutting(made)...)
		}
	}
	for i := range panels {
		panels[i].heading = fmt.Sprintf("%d %s", i+1, panels[i].heading)
	}
	return panels
}

// madeOf finds an earlier step.
func (m *making) madeOf(name string) patchwork.Made {
	i := slices.IndexFunc(m.c.Build.Steps, func(made patchwork.Made) bool { return made.Step.Name == name })
	return m.c.Build.Steps[i]
}

// named is the heading of a step: its name, and how many a block takes.
func named(made patchwork.Made) string {
	if made.Copies > 1 {
		return fmt.Sprintf("%s, %d a block", made.Step.Name, made.Copies)
	}
	return made.Step.Name
}

// pressed draws a unit with the signs of its seams; those of the step are
// strong.
func (m *making) pressed(u patchwork.Unit, s scale, step string) picture {
	return picture{s.of(u.Size.Width), s.of(u.Size.Height), func(c *canvas) {
		m.unit(c, u, s, m.wear)
		m.arrows(c, u, s, m.way, m.freshIn(step))
	}}
}

// freshIn reports which choices are a step's own.
func (m *making) freshIn(step string) func(int) bool {
	return func(choice int) bool { return m.c.Build.Choices[choice].Step == step }
}

// fit is the making's scale, or less for a unit that has not the room.
func (m *making) fit(size measure.Size) scale {
	return m.scale.fitted(size, panelText, unitRoom*6/5)
}

// cutting is the pieces of cloth that are cut before anything is sewn; nil where
// there are none.
func (m *making) cutting() *panel {
	var pieces []picture
	var lines []string
	for _, made := range m.c.Build.Steps {
		if made.Step.Do != patchwork.Cut {
			continue
		}
		u := made.Unit
		s := m.fit(u.Size)
		pieces = append(pieces, picture{s.of(u.Size.Width), s.of(u.Size.Height), func(c *canvas) { m.unit(c, u, s, m.wear) }})
		lines = append(lines, m.cutWords(made))
	}
	if pieces == nil {
		return nil
	}
	art := beside(10*unit, pieces...)
	if art.width > panelText {
		art = shrunk(art, panelText)
	}
	return &panel{"cut", art, lines}
}

// shrunk is a picture made small enough for a width.
func shrunk(p picture, width span) picture {
	percent := width * 100 / p.width
	return picture{p.width * percent / 100, p.height * percent / 100, func(c *canvas) {
		c.open("g", is("transform", "scale("+percent.String()+")"))
		p.paint(c)
		c.shut("g")
	}}
}

// sewing is a unit as it comes from the machine and the iron.
func (m *making) sewing(made patchwork.Made) panel {
	return panel{named(made), m.pressed(made.Unit, m.fit(made.Unit.Size), made.Step.Name), []string{
		sewnFrom(made.Step), m.raw(made.Unit.Size), m.pressWords(made.Step.Name),
	}}
}

// trimming is the unit before, with the lines that it is cut back to.
func (m *making) trimming(made patchwork.Made) panel {
	before := m.madeOf(made.Step.Of)
	lines := []string{"Trim to " + together(made.Step.Size.Words(m.units())) + ", the same off opposite sides."}
	if before.Pieces != nil {
		lines[0] = "Trim every piece to " + together(made.Step.Size.Words(m.units())) + "."
		return panel{named(made), m.grid(made.Pieces, nil), lines}
	}
	s := m.fit(before.Unit.Size)
	size := before.Unit.Size
	art := m.pressed(before.Unit, s, "")
	return panel{named(made), picture{art.width, art.height, func(c *canvas) {
		art.paint(c)
		left, top := s.of(size.Width-made.Unit.Size.Width)/2, s.of(size.Height-made.Unit.Size.Height)/2
		var p path
		for _, x := range []span{left, art.width - left} {
			p.stroke(x, -4*unit, x, art.height+4*unit)
		}
		for _, y := range []span{top, art.height - top} {
			p.stroke(-4*unit, y, art.width+4*unit, y)
		}
		c.cutLines(&p)
	}}, lines}
}
