package draw

import (
	"fmt"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// cloth draws what goes round the blocks: pieces of one fabric as one path, and
// their seams.
func (t *top) cloth(c *canvas) {
	var cloth layered
	var lines path
	for _, part := range t.parts {
		if part.Kind != planner.BlockPart {
			outline(cloth.under(t.fill(part.Fabric)), part.Corners, t.scale)
			outline(&lines, part.Corners, t.scale)
		}
	}
	for _, fill := range cloth.order {
		c.void("path", cloth.paths[fill].d(), is("fill", fill))
	}
	if !lines.empty() {
		c.void("path", lines.d(), is("fill", "none"), is("stroke", ink), is("opacity", ".6"))
	}
}

// blockParts are the blocks of the top, in their order.
func (t *top) blockParts() []planner.TopPart { return t.parts[:len(t.blocks)] }

// middle is where a part has its middle on the page: that of two opposite corners.
func (t *top) middle(part planner.TopPart) spot {
	a, b := part.Corners[0], part.Corners[2]
	return spot{t.scale.of(a.X+b.X) / 2, t.scale.of(a.Y+b.Y) / 2}
}

// corner is a part's upper left end on the page: the least of its corners both ways.
func (t *top) corner(part planner.TopPart) spot {
	least := part.Corners[0]
	for _, p := range part.Corners[1:] {
		least = patchwork.Point{X: min(least.X, p.X), Y: min(least.Y, p.Y)}
	}
	return spot{t.scale.of(least.X), t.scale.of(least.Y)}
}

// anchor is where a block's picture and its id are placed from: its upper left
// corner, and on point its middle.
func (t *top) anchor(part planner.TopPart) spot {
	if t.onPoint() {
		return t.middle(part)
	}
	return t.corner(part)
}

// pictures draws the blocks.
func (t *top) pictures(c *canvas) {
	c.open("g")
	for _, part := range t.blockParts() {
		at0 := t.anchor(part)
		c.void("use", ref("href", t.art(part.Block)), at("x", at0.x), at("y", at0.y))
	}
	c.shut("g")
}

// names writes the blocks' ids over them, row by row.
func (t *top) names(c *canvas) {
	c.open("g", at("font-size", t.labels.size), is("text-anchor", "middle"))
	for _, part := range t.blockParts() {
		t.labels.write(c, part.Block.ID, t.anchor(part), t.columns[part.Block.Colourway])
	}
	c.shut("g")
	if len(t.letters) == 0 || t.labels.size < leastLetters {
		return
	}
	c.open("g", at("font-size", t.labels.size*9/10), is("text-anchor", "end"), is("stroke", paper), is("stroke-width", ".26em"), is("paint-order", "stroke"))
	for _, part := range t.blockParts() {
		if word := lettersOf(part.Block, t.letters); word != "" {
			place := t.labels.letters(t.anchor(part), spot{t.scale.of(t.size.Width), t.scale.of(t.size.Height)})
			c.words("text", word, at("x", place.x), at("y", place.y))
		}
	}
	c.shut("g")
}

// art is the id of a block's picture as it lies, defined when it first comes up:
// blocks of the same cloths are drawn once.
func (t *top) art(b planner.Block) string {
	key := fmt.Sprint(b.Colourway, "\x00", b.Fabrics)
	base, ok := t.arts[key]
	if !ok {
		base = fmt.Sprintf("%sb%d", t.prefix, len(t.arts))
		t.arts[key] = base
		t.define(base, b)
	}
	id := fmt.Sprintf("%sr%d", base, b.Turn)
	if !t.known[id] {
		t.known[id] = true
		t.defineTurned(id, base, b.Turn, t.columns[b.Colourway])
	}
	return id
}

// define draws a block without its seam allowance, not turned.
func (t *top) define(id string, b planner.Block) {
	for _, c := range t.plan.Colourways {
		if c.Name != b.Colourway {
			continue
		}
		block := patchwork.TrimUnit(c.Build.Block(), c.Finished)
		var art canvas
		t.patches(&art, block, t.scale, wearOf(b))
		seams(&art, block, t.scale)
		t.defs.open("g", is("id", id))
		t.defs.WriteString(art.String())
		t.defs.shut("g")
	}
}

// defineTurned turns a block's picture in its place, marks where its top has gone,
// and lays the ground for its id. On point a block that is not turned stands on the
// corner at its lower left.
func (t *top) defineTurned(id, base string, degrees int, columns span) {
	width, height := t.scale.of(t.size.Width), t.scale.of(t.size.Height)
	angle, to := degrees, ""
	if t.onPoint() {
		angle, to = degrees-45, "translate("+pair(-width/2, -height/2)+")"
	}
	t.defs.open("g", is("id", id))
	switch {
	case angle == 0:
		t.defs.void("use", ref("href", base))
	default:
		t.defs.open("g", is("transform", to+fmt.Sprintf("rotate(%d %s)", angle, pair(width/2, height/2))))
		t.defs.void("use", ref("href", base))
		if degrees != 0 {
			topMark(&t.defs, width/2, height)
		}
		if t.onPoint() {
			t.edge(width, height)
		}
		t.defs.shut("g")
	}
	if !t.onPoint() {
		t.edge(width, height)
	}
	t.labels.ground(&t.defs, columns)
	t.defs.shut("g")
}

// edge is the outline of a block.
func (t *top) edge(width, height span) {
	t.defs.void("rect", at("width", width), at("height", height), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.2"))
}

// topMark is a small flag at the middle of a block's top edge.
func topMark(c *canvas, x, height span) {
	side := min(height/9, 8*unit)
	var p path
	p.move(x-side, side/8)
	p.line(x+side, side/8)
	p.line(x, side*5/4)
	p.close()
	c.void("path", p.d(), is("fill", paper), is("stroke", ink), is("stroke-linejoin", "round"))
}

// axes number the rows and columns as the job sheet does. On point a row is numbered
// at its first block, which lies lowest.
func (t *top) axes(c *canvas) {
	size := min(measureSize, max(t.scale.of(t.size.Width)*6/10, 6*unit))
	if t.onPoint() {
		t.diagonals(c, size)
		return
	}
	c.open("g", at("font-size", size), is("fill", faint), is("text-anchor", "middle"))
	for _, part := range t.blockParts() {
		if b := part.Block; b.Row == 1 {
			c.words("text", fmt.Sprint(b.Column), at("x", t.middle(part).x), at("y", -8*unit))
		}
	}
	for _, part := range t.blockParts() {
		if b := part.Block; b.Column == 1 {
			c.words("text", fmt.Sprint(b.Row), at("x", -13*unit), at("y", t.middle(part).y+size*35/100))
		}
	}
	c.shut("g")
}

// diagonals numbers rows on point, on a disc before each row's first block.
func (t *top) diagonals(c *canvas, size span) {
	quarter := t.scale.of(t.size.Width.Scale(10_000, 14_142, measure.Nearest)) / 2
	off := quarter + size*6/10
	c.open("g", at("font-size", size), is("text-anchor", "middle"))
	for _, part := range t.blockParts() {
		if part.Block.Column != 1 {
			continue
		}
		m := t.middle(part)
		c.void("circle", at("cx", m.x-off), at("cy", m.y+off), at("r", size*8/10), is("fill", paper), is("stroke", ink))
		c.words("text", fmt.Sprint(part.Block.Row), at("x", m.x-off), at("y", m.y+off+size*35/100))
	}
	c.shut("g")
}
