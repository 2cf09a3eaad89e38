package draw

import (
	"fmt"
	"io"
	"maps"
	"slices"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// The room for a top on its page: as wide as the ids of its blocks want, between
// two bounds, and at most so many hundredths of that high.
const (
	narrowTop = pageWidth - 2*margin - axisRoom
	wideTop   = 1600 * unit
	topHeight = 140
	axisRoom  = 26 * unit // for the numbers of rows and columns
)

// Top draws one quilt's top, counted from 1, in the colours of its fabrics: its
// blocks turned as they lie, each with its id, and its borders. The error is for
// a quilt that the run does not have, a setting that cannot be drawn, or w's own.
func Top(w io.Writer, p planner.Plan, quilt int) error {
	blocks := blocksIn(p, quilt)
	if len(blocks) == 0 {
		return fmt.Errorf("there is no quilt %d to draw", quilt)
	}
	if l := p.Job.Layout; l.Setting == planner.OnPoint || l.Sashing != nil || p.Quilt.Blocks > p.Quilt.Across*p.Quilt.Down {
		return fmt.Errorf("only tops set straight, block against block, can be drawn yet")
	}
	t := newTop(p, quilt, blocks)
	y := t.head(p.Job.Title, t.facts())
	y = t.paint(y)
	y = t.key(y)
	return t.writeTo(w, p.Job.Title+": "+topName(p, quilt), t.told(), y+margin)
}

// blocksIn is the blocks of one quilt of the run.
func blocksIn(p planner.Plan, quilt int) []planner.Block {
	var blocks []planner.Block
	for _, b := range p.Blocks {
		if b.Quilt == quilt {
			blocks = append(blocks, b)
		}
	}
	return blocks
}

// top is the drawing of one quilt's top.
type top struct {
	*drawing
	quilt   int
	blocks  []planner.Block
	scale   scale
	size    measure.Size // finished, of one block
	border  measure.Length
	labels  labelling
	columns map[string]span   // of the longest id of a colourway, as a terminal counts them
	arts    map[string]string // ids of the blocks' pictures, by what they show
}

// A mark drawn at its full size suits a block about so large.
const fullMarks = 150 * unit

// newTop chooses the page's width and the top's scale.
func newTop(p planner.Plan, quilt int, blocks []planner.Block) *top {
	t := &top{quilt: quilt, blocks: blocks, size: p.Colourways[0].Finished, arts: map[string]string{}, columns: idColumns(blocks)}
	for _, b := range p.Job.Borders {
		t.border += b.Width
	}
	ids, finished := slices.Max(slices.Collect(maps.Values(t.columns))), p.Quilt.Finished
	wanted := scale{wantedLabel * tagPercent(ids) * 108 / 100 / 100, t.size.Width}
	room := min(max(wanted.of(finished.Width), narrowTop), wideTop)
	t.scale = scale{room, finished.Width}.fitted(finished, room, room*topHeight/100)
	width, height := t.scale.of(t.size.Width), t.scale.of(t.size.Height)
	t.drawing = newDrawing(p, fmt.Sprintf("top %d", quilt), room+2*margin+axisRoom, int(min(max(min(width, height)*100/fullMarks, 40), 100)))
	t.labels = newLabelling(ids, width, height)
	return t
}

// topName is what the drawing of a quilt's top shows.
func topName(p planner.Plan, quilt int) string {
	if p.Job.Quantity > 1 {
		return fmt.Sprintf("the top of quilt %d", quilt)
	}
	return "the top"
}

// facts is what there is to know of the top in one line.
func (t *top) facts() string {
	q := t.plan.Quilt
	return fmt.Sprintf("%s · %s, %d across and %d down · %s finished, flat", capital(topName(t.plan, t.quilt)),
		plural(q.Blocks, "block"), q.Across, q.Down, together(sized(q.Finished, t.plan.Job.Units)))
}

// paint draws the top and returns its bottom.
func (t *top) paint(y span) span {
	width, height := t.scale.of(t.plan.Quilt.Finished.Width), t.scale.of(t.plan.Quilt.Finished.Height)
	c := &t.body
	c.open("g", shifted(margin+axisRoom, y+axisRoom))
	t.borders(c)
	for row := 1; row <= t.plan.Quilt.Down; row++ {
		t.row(c, row)
	}
	c.void("rect", at("width", width), at("height", height), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.4"))
	t.axes(c)
	c.shut("g")
	return y + axisRoom + height + panelGap
}

// x and y are where a column or a row begins, counted from 1. Each is scaled from
// the edge, so that roundings do not add up over a row.
func (t *top) x(column int) span { return t.scale.of(t.border + t.size.Width.Times(column-1)) }
func (t *top) y(row int) span    { return t.scale.of(t.border + t.size.Height.Times(row-1)) }

// borders draws the borders from the outside in, with the seams of sides that
// are sewn on before top and bottom.
func (t *top) borders(c *canvas) {
	var off measure.Length
	var lines path
	all := t.plan.Quilt.Finished
	for i := len(t.plan.Job.Borders) - 1; i >= 0; i-- {
		b := t.plan.Job.Borders[i]
		c.void("rect", at("x", t.scale.of(off)), at("y", t.scale.of(off)),
			at("width", t.scale.of(all.Width-2*off)), at("height", t.scale.of(all.Height-2*off)), is("fill", t.fill(b.Fabric)))
		in := off + b.Width
		left, right := t.scale.of(off), t.scale.of(all.Width-off)
		upper, lower := t.scale.of(in), t.scale.of(all.Height-in)
		lines.stroke(left, upper, right, upper)
		lines.stroke(left, lower, right, lower)
		lines.stroke(t.scale.of(in), upper, t.scale.of(in), lower)
		lines.stroke(t.scale.of(all.Width-in), upper, t.scale.of(all.Width-in), lower)
		off = in
	}
	if !lines.empty() {
		c.void("path", lines.d(), is("fill", "none"), is("stroke", ink), is("opacity", ".6"))
	}
}

// row draws one row's blocks, and over them their ids.
func (t *top) row(c *canvas, row int) {
	y := t.y(row)
	c.open("g", shifted(0, y))
	for _, b := range t.blocks {
		if b.Row == row {
			c.void("use", ref("href", t.art(b)), at("x", t.x(b.Column)))
		}
	}
	c.shut("g")
	c.open("g", shifted(0, y+t.labels.inset+t.labels.size), at("font-size", t.labels.size), is("text-anchor", "middle"))
	for _, b := range t.blocks {
		if b.Row == row {
			t.labels.write(c, b.ID, t.x(b.Column), t.columns[b.Colourway])
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

// defineTurned turns a block's picture in its place, marks where its top has
// gone, and lays the ground for its id.
func (t *top) defineTurned(id, base string, degrees int, columns span) {
	width, height := t.scale.of(t.size.Width), t.scale.of(t.size.Height)
	t.defs.open("g", is("id", id))
	if degrees == 0 {
		t.defs.void("use", ref("href", base))
	} else {
		t.defs.open("g", is("transform", fmt.Sprintf("rotate(%d %s)", degrees, pair(width/2, height/2))))
		t.defs.void("use", ref("href", base))
		topMark(&t.defs, width/2, height)
		t.defs.shut("g")
	}
	t.defs.void("rect", at("width", width), at("height", height), is("fill", "none"), is("stroke", ink), is("stroke-width", "1.2"))
	t.labels.ground(&t.defs, columns)
	t.defs.shut("g")
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

// axes number the rows and columns as the job sheet does.
func (t *top) axes(c *canvas) {
	size := min(measureSize, max(t.scale.of(t.size.Width)*6/10, 6*unit))
	c.open("g", at("font-size", size), is("fill", faint), is("text-anchor", "middle"))
	for column := 1; column <= t.plan.Quilt.Across; column++ {
		c.words("text", fmt.Sprint(column), at("x", t.x(column)+t.scale.of(t.size.Width)/2), at("y", -8*unit))
	}
	for row := 1; row <= t.plan.Quilt.Down; row++ {
		c.words("text", fmt.Sprint(row), at("x", -13*unit), at("y", t.y(row)+t.scale.of(t.size.Height)/2+size*35/100))
	}
	c.shut("g")
}

// told is the top in words: its size, then its blocks row by row.
func (t *top) told() string {
	var out strings.Builder
	out.WriteString(strings.ReplaceAll(t.facts(), tied, " ") + ".")
	for row := 1; row <= t.plan.Quilt.Down; row++ {
		var said []string
		for _, b := range t.blocks {
			if b.Row != row {
				continue
			}
			text := b.ID
			if b.Turn != 0 {
				text += fmt.Sprintf(" turned %d°", b.Turn)
			}
			said = append(said, text)
		}
		fmt.Fprintf(&out, " Row %d: %s.", row, strings.Join(said, ", "))
	}
	for i, b := range t.plan.Job.Borders {
		fmt.Fprintf(&out, " Border %d: %s.", i+1, b.Fabric)
	}
	return out.String()
}
