package draw

// The page of a block: so many panels side by side.
const (
	pageWidth  = 840 * unit
	margin     = 21 * unit
	panelWidth = 266 * unit
	panelsRow  = 3
	panelText  = panelWidth - 16*unit // how wide its lettering gets
	panelGap   = 18 * unit            // between rows of panels
)

// picture is a part of a drawing whose size is known: paint draws it from the
// top left corner of its room.
type picture struct {
	width, height span
	paint         func(c *canvas)
}

// panel is one picture of a block's making with its name and what is to do.
type panel struct {
	heading string
	art     picture
	lines   []string
}

// tall is the height of a panel's parts above and below its picture's.
func (p panel) tall() (above, below span) {
	above = leading(headingSize)*span(len(wrapped(p.heading, headingSize, panelText))) + 8*unit
	below = 6 * unit
	for _, l := range p.lines {
		below += leading(textSize) * span(len(wrapped(l, textSize, panelText)))
	}
	return above, below
}

// flow lays panels out in rows from y on and returns the bottom of the last.
// Pictures of one row stand on one line, so that sizes can be compared.
func (c *canvas) flow(panels []panel, y span) span {
	for len(panels) > 0 {
		row := panels[:min(panelsRow, len(panels))]
		panels = panels[len(row):]
		var above, art, below span
		for _, p := range row {
			a, b := p.tall()
			above, art, below = max(above, a), max(art, p.art.height), max(below, b)
		}
		for i, p := range row {
			c.panel(p, margin+panelWidth*span(i), y, above, art)
		}
		y += above + art + below + panelGap
	}
	return y
}

// panel draws one panel whose picture begins so far below its top.
func (c *canvas) panel(p panel, x, y, above, art span) {
	c.open("g", shifted(x, y))
	c.para(wrapped(p.heading, headingSize, panelText), 0, 0, headingSize, is("font-weight", "600"))
	c.open("g", shifted(0, above))
	p.art.paint(c)
	c.shut("g")
	bottom := above + art + 6*unit
	for _, l := range p.lines {
		bottom = c.para(wrapped(l, textSize, panelText), 0, bottom, textSize)
	}
	c.shut("g")
}

// beside puts pictures side by side, their tops on one line.
func beside(gap span, pictures ...picture) picture {
	var all picture
	for i, p := range pictures {
		if i > 0 {
			all.width += gap
		}
		all.width += p.width
		all.height = max(all.height, p.height)
	}
	all.paint = func(c *canvas) {
		var x span
		for _, p := range pictures {
			c.open("g", shifted(x, 0))
			p.paint(c)
			c.shut("g")
			x += p.width + gap
		}
	}
	return all
}
