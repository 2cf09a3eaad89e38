package draw

import (
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// scale turns lengths into spans: as many spans as width go to as many ticks as
// length. What falls between is rounded to the nearest span.
type scale struct {
	width  span
	length measure.Length
}

// of is a length on the page.
func (s scale) of(l measure.Length) span {
	return span(l.Scale(int64(s.width), int64(s.length), measure.Nearest))
}

// fitted is the scale, or a smaller one with which the size is no larger than
// the room.
func (s scale) fitted(size measure.Size, width, height span) scale {
	if s.of(size.Width) > width {
		s = scale{width, size.Width}
	}
	if s.of(size.Height) > height {
		s = scale{height, size.Height}
	}
	return s
}

// wear is which fabric a block has in each role.
type wear map[string]string

// layered gathers paths under keys, in the order in which keys come up.
type layered struct {
	order []string
	paths map[string]*path
}

// under is the path of a key.
func (l *layered) under(key string) *path {
	if p, ok := l.paths[key]; ok {
		return p
	}
	if l.paths == nil {
		l.paths = map[string]*path{}
	}
	p := &path{}
	l.paths[key] = p
	l.order = append(l.order, key)
	return p
}

// patches paints the patches of a unit: cloth in its colour, and over it the
// marks of the roles. All patches that look alike are one path.
func (k *cloths) patches(c *canvas, u patchwork.Unit, s scale, w wear) {
	var cloth, over layered
	for _, p := range u.Patches {
		fabric := w[p.Role]
		outline(cloth.under(k.fill(fabric)), p.Corners, s)
		if id := k.over(fabric, p.Role, int(p.Quarters)); id != "" {
			outline(over.under(id), p.Corners, s)
		}
	}
	for _, fill := range cloth.order {
		c.void("path", cloth.paths[fill].d(), is("fill", fill))
	}
	for _, id := range over.order {
		c.void("path", over.paths[id].d(), painted("fill", id))
	}
}

// outline adds a polygon.
func outline(p *path, corners []patchwork.Point, s scale) {
	for i, corner := range corners {
		if i == 0 {
			p.move(s.of(corner.X), s.of(corner.Y))
			continue
		}
		p.line(s.of(corner.X), s.of(corner.Y))
	}
	p.close()
}

// seams draws the seams of a unit as thin lines.
func seams(c *canvas, u patchwork.Unit, s scale) {
	var p path
	for _, seam := range u.Seams {
		p.stroke(s.of(seam.A.X), s.of(seam.A.Y), s.of(seam.B.X), s.of(seam.B.Y))
	}
	if !p.empty() {
		c.void("path", p.d(), is("fill", "none"), is("stroke", ink), is("stroke-width", ".9"), is("opacity", ".7"))
	}
}

// unit draws a unit from its top left corner: patches, seams and raw edge.
func (k *cloths) unit(c *canvas, u patchwork.Unit, s scale, w wear) {
	k.patches(c, u, s, w)
	seams(c, u, s)
	c.void("rect", at("width", s.of(u.Size.Width)), at("height", s.of(u.Size.Height)),
		is("fill", "none"), is("stroke", ink))
}
