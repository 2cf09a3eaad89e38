package draw

import (
	"strconv"
	"strings"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
)

// window is the part of a cloth between two places along it.
func (c *cutting) window(k cloth.Cloth, from, to measure.Length, s scale) picture {
	width, height := s.of(k.Size.Width), s.of(to-from)
	return picture{width: width + gutter, height: height, paint: func(b *canvas) {
		b.void("rect", at("width", width), at("height", height), is("fill", paper), is("stroke", "none"))
		b.void("rect", at("width", width), at("height", height), painted("fill", c.hatch), is("stroke", ink), is("stroke-width", "1"))
		for _, p := range k.Pieces {
			if p.Y >= from && p.Y < to {
				c.piece(b, p, from, s)
			}
		}
		for _, o := range k.Offcuts {
			if o.Y >= from && o.Y < to {
				c.offcut(b, o, from, s)
			}
		}
		c.cuts(b, k, from, to, s)
	}}
}

// piece draws a piece in its fabric's colour, with its size where there is room.
func (c *cutting) piece(b *canvas, p cloth.Piece, from measure.Length, s scale) {
	x, y := s.of(p.X), s.of(p.Y-from)
	w, h := s.of(p.X+p.Size.Width)-x, s.of(p.Y-from+p.Size.Height)-y
	fabric := c.need.Fabric.Name
	b.void("rect", at("x", x), at("y", y), at("width", w), at("height", h), is("fill", c.fill(fabric)), is("stroke", ink), is("stroke-width", ".8"))
	colour := ink
	if c.dark(fabric) {
		colour = paper
	}
	use := c.need.Pieces[p.Want].For
	if use == "blocks" {
		use = ""
	}
	c.label(b, x, y, w, h, label{c.measured(p.Size), use, colour, false})
}

// offcut names a leftover worth keeping.
func (c *cutting) offcut(b *canvas, o cloth.Offcut, from measure.Length, s scale) {
	x, y := s.of(o.X), s.of(o.Y-from)
	w, h := s.of(o.X+o.Size.Width)-x, s.of(o.Y-from+o.Size.Height)-y
	c.label(b, x, y, w, h, label{c.measured(o.Size), "left", ink, true})
}

// measured is a size without its unit: of a square its side.
func (c *cutting) measured(size measure.Size) string {
	u := c.plan.Job.Units
	if size.Width == size.Height {
		return number(size.Width, u)
	}
	return strings.TrimSuffix(size.Show(u), " "+u.String())
}

// label is what stands in a rectangle.
type label struct {
	size, use string
	colour    string
	bare      bool // on hatching, which would cross it: it gets paper behind it
}

// label writes a label into a rectangle: in one line or two, level or upright,
// with or without the use, whichever of these fits first; nothing into the smallest.
func (c *cutting) label(b *canvas, x, y, w, h span, l label) {
	one := l.size
	if l.use != "" {
		one += " " + l.use
	}
	for _, lines := range [][]string{{one}, {l.size, l.use}, {l.size}} {
		switch {
		case fits(lines, w, h):
			b.open("g", shifted(x+w/2, y+h/2))
		case fits(lines, h, w):
			b.open("g", is("transform", "translate("+pair(x+w/2, y+h/2)+")rotate(-90)"))
		default:
			continue
		}
		b.lettering(lines, l)
		b.shut("g")
		return
	}
}

// The lettering in pieces of cloth.
const (
	cutSize    = 11 * unit
	cutLeading = cutSize * 115 / 100
)

func fits(lines []string, wide, high span) bool {
	for _, l := range lines {
		if textWidth(l, cutSize) > wide-4*unit {
			return false
		}
	}
	return cutLeading*span(len(lines)) <= high-2*unit
}

// lettering writes lines round the middle.
func (c *canvas) lettering(lines []string, l label) {
	base := cutSize*88/100 - cutLeading*span(len(lines))/2
	for _, text := range lines {
		if wide := textWidth(text, cutSize); l.bare {
			c.void("rect", at("x", -wide/2), at("y", base-cutSize), at("width", wide), at("height", cutSize*125/100), is("fill", paper), is("opacity", ".85"))
		}
		c.words("text", text, at("y", base), at("font-size", cutSize), is("text-anchor", "middle"), is("fill", l.colour))
		base += cutLeading
	}
}

// begun is where cuts that lie side by side in one piece begin.
type begun struct {
	step    int
	upright bool
	at      measure.Length // of the piece that is cut: its lower or its left edge
}

// cuts draws the lines of a window: those right across the cloth numbered beside
// it, the others where they begin, once for cuts that lie side by side in one
// piece.
func (c *cutting) cuts(b *canvas, k cloth.Cloth, from, to measure.Length, s scale) {
	var lines path
	var badges []func()
	named := map[begun]bool{}
	for _, l := range k.Lines {
		if l.Y < from || l.Y >= to {
			continue
		}
		x, y := s.of(l.X), s.of(l.Y-from)
		where := begun{l.Step, l.Upright, l.X}
		if l.Upright {
			lines.stroke(x, y, x, s.of(l.Y+l.Length-from))
			where.at = l.Y
			y += badgeSize
		} else {
			lines.stroke(x, y, s.of(l.X+l.Length), y)
		}
		whole := !l.Upright && l.Length >= k.Size.Width*9/10
		if named[where] && !whole {
			continue
		}
		named[where] = true
		if whole {
			x = -badgeSize * 3 / 2
		}
		badges = append(badges, func() { b.badge(x, y, l.Step) })
	}
	if !lines.empty() {
		b.cutLines(&lines)
	}
	for _, badge := range badges {
		badge()
	}
}

// badgeSize is the radius of the circle round a number.
const badgeSize = 8 * unit

// badge is the number of a step.
func (c *canvas) badge(x, y span, step int) {
	c.void("circle", at("cx", x), at("cy", y), at("r", badgeSize), is("fill", paper), is("stroke", ink), is("stroke-width", "1"))
	c.words("text", strconv.Itoa(step), at("x", x), at("y", y+4*unit), at("font-size", 11*unit), is("text-anchor", "middle"), is("fill", ink))
}
