package draw

import (
	"strings"

	"quiltrun/planner/measure"
)

// The room that measures take beside a unit.
const (
	dimsLeft  = 58 * unit
	dimsAbove = 36 * unit
	dimsRight = 58 * unit
	dimsBelow = 34 * unit
)

// dim is a measure between two places of an edge. Beyond says that its lettering
// may go beyond its ends: away from its first place, which is what it is measured
// from.
type dim struct {
	from, to span
	text     string
}

// number is a measure without its unit, which the words below the picture give.
func number(l measure.Length, u measure.Unit) string {
	return strings.TrimSuffix(l.Show(u), " "+u.String())
}

// dimLine draws a level measuring line at y with its end strokes.
func dimLine(p *path, from, to, y span) {
	const end = 4 * unit
	p.stroke(from, y-end, from, y+end)
	p.stroke(from, y, to, y)
	p.stroke(to, y-end, to, y+end)
}

// dimPath draws measuring lines: thin, so that cuts and seams stay in front.
func (c *canvas) dimPath(p *path) {
	c.void("path", p.d(), is("fill", "none"), is("stroke", faint), is("stroke-width", ".9"))
}

// measureAt writes a measure.
func (c *canvas) measureAt(text string, x, y span, anchor string) {
	c.words("text", text, at("x", x), at("y", y), at("font-size", measureSize), is("text-anchor", anchor), is("fill", ink))
}

// chainAbove writes measures that follow one another along the top edge. One
// with too little room stands a line higher.
func (c *canvas) chainAbove(chain []dim) {
	var p path
	for _, d := range chain {
		dimLine(&p, d.from, d.to, -8*unit)
	}
	c.dimPath(&p)
	for _, d := range chain {
		y := -14 * unit
		if textWidth(d.text, measureSize) > d.to-d.from+4*unit {
			y -= leading(measureSize) - 3*unit
		}
		c.measureAt(d.text, (d.from+d.to)/2, y, "middle")
	}
}

// chainLeft writes measures along the left edge.
func (c *canvas) chainLeft(chain []dim) {
	var p path
	for _, d := range chain {
		dimLine(&p, d.from, d.to, 0)
	}
	// The matrix exchanges x and y: a level measuring line becomes an upright one.
	c.open("g", is("transform", "translate(-8 0)matrix(0 1 1 0 0 0)"))
	c.dimPath(&p)
	c.shut("g")
	for _, d := range chain {
		c.measureAt(d.text, -14*unit, (d.from+d.to)/2+5*unit, "end")
	}
}

// fromBelow writes, below a unit of the given height, how far cuts lie from what
// they are measured from. Lettering stands within its measure where it fits, and
// begins at its first place where not, so that those of a pair stay apart.
func (c *canvas) fromBelow(dims []dim, height span) {
	var p path
	line := height + 12*unit
	for _, d := range dims {
		dimLine(&p, min(d.from, d.to), max(d.from, d.to), line)
	}
	c.dimPath(&p)
	for _, d := range dims {
		y := line + measureSize + 3*unit
		room := max(d.to-d.from, d.from-d.to)
		switch {
		case textWidth(d.text, measureSize) <= room:
			c.measureAt(d.text, (d.from+d.to)/2, y, "middle")
		case d.to < d.from:
			c.measureAt(d.text, d.from-2*unit, y, "end")
		default:
			c.measureAt(d.text, d.from+2*unit, y, "start")
		}
	}
}

// fromRight is the same beside a unit of the given width.
func (c *canvas) fromRight(dims []dim, width span) {
	var p path
	for _, d := range dims {
		dimLine(&p, min(d.from, d.to), max(d.from, d.to), 0)
	}
	c.open("g", is("transform", "translate("+(width+12*unit).String()+" 0)matrix(0 1 1 0 0 0)"))
	c.dimPath(&p)
	c.shut("g")
	for _, d := range dims {
		y := (d.from+d.to)/2 + 5*unit
		if room := max(d.to-d.from, d.from-d.to); room < measureSize {
			y = d.from + measureSize
			if d.to < d.from {
				y = d.from - 4*unit
			}
		}
		c.measureAt(d.text, width+20*unit, y, "start")
	}
}

// cutLines is the style of a cut, drawn light below and dashed above so that it
// shows on any cloth.
func (c *canvas) cutLines(p *path) {
	c.void("path", p.d(), is("fill", "none"), is("stroke", paper), is("stroke-width", "3.4"), is("opacity", ".8"))
	c.void("path", p.d(), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.8"), is("stroke-dasharray", "8 4"))
}

// sewLines is the style of lines to sew along, in dots.
func (c *canvas) sewLines(p *path) {
	c.void("path", p.d(), is("fill", "none"), is("stroke", paper), is("stroke-width", "3.4"), is("opacity", ".8"))
	c.void("path", p.d(), is("fill", "none"), is("stroke", ink), is("stroke-width", "2"),
		is("stroke-dasharray", ".1 4"), is("stroke-linecap", "round"))
}
