package draw

import (
	"fmt"
	"slices"

	"github.com/clipperhouse/displaywidth"

	"quiltrun/planner"
)

// labelling is how block ids are written on a top: as tags in the blocks' top left
// corners, where no mark of a turned block can be, and on point in their upper ones.
type labelling struct {
	size    span
	inset   span // of the tag from the block's corner
	onPoint bool
	below   span // on point: the tag's top from the block's middle, upwards
}

// The largest lettering of ids, and the one that a page is made wide for.
const (
	largestLabel = 15 * unit
	wantedLabel  = 10 * unit
)

// idColumns is how many columns the longest id of each colourway takes.
func idColumns(blocks []planner.Block) map[string]span {
	columns := map[string]span{}
	for _, b := range blocks {
		columns[b.Colourway] = max(columns[b.Colourway], 1, span(displaywidth.String(b.ID)))
	}
	return columns
}

// newLabelling finds the largest lettering at which ids of so many columns fit
// their blocks.
func newLabelling(columns, width, height span, onPoint bool) labelling {
	l := labelling{inset: min(width, height) / 28, onPoint: onPoint}
	if onPoint {
		// A tag as wide as half the diagonal stands where the block is so wide, with
		// room for its own height above the middle.
		l.size = min(largestLabel, width*64/tagPercent(columns), height/3)
		l.below = width*70/100 - l.width(columns)/2 - l.size*3/10
		return l
	}
	l.size = min(largestLabel, (width-2*l.inset)*100/tagPercent(columns), height/2)
	return l
}

// tagPercent is how wide a tag is in hundredths of its letters' size.
func tagPercent(columns span) span { return columns*columnPercent + 50 }

func (l labelling) width(columns span) span { return l.size * tagPercent(columns) / 100 }

// write writes an id on its block's tag, the block standing at a place.
func (l labelling) write(c *canvas, id string, block spot, columns span) {
	if l.onPoint {
		c.words("text", id, at("x", block.x), at("y", block.y-l.below+l.size))
		return
	}
	c.words("text", id, at("x", block.x+l.inset+l.width(columns)/2), at("y", block.y+l.inset+l.size))
}

// ground is the tag that an id stands on.
func (l labelling) ground(c *canvas, columns span) {
	x, y := l.inset, l.inset
	if l.onPoint {
		x, y = -l.width(columns)/2, -l.below
	}
	c.void("rect", at("x", x), at("y", y), at("width", l.width(columns)), at("height", l.size*13/10),
		at("rx", l.size/4), is("fill", paper), is("opacity", ".9"))
}

// letters is where the letters of a block's fabrics end: at its lower right, and on
// point in its lower corner.
func (l labelling) letters(block, size spot) spot {
	if l.onPoint {
		return spot{block.x + l.size*4/10, block.y + size.x*55/100}
	}
	return spot{block.x + size.x - l.inset*2, block.y + size.y - l.inset*2}
}

// key names the fabrics of a top by role, then what goes round the blocks, and
// explains the mark of a turned block.
func (t *top) key(y span) span {
	y = t.section("Fabrics", y)
	var names []string
	for _, c := range t.plan.Colourways {
		names = append(names, c.Name)
	}
	for _, role := range rolesOf(t.plan, names) {
		y = t.keyed(lettered(t.roleItems(role.name, role.fabrics), t.letters), y)
	}
	for _, r := range t.roundabout() {
		items := []item{{text: r.name}}
		for i, fabric := range r.fabrics {
			text := fabric
			if r.numbered {
				text = fmt.Sprintf("%d %s", i+1, fabric)
			}
			paint := t.swatchOf(fabric, "")
			if fabric == ofBlocks {
				paint = blocksItem
			}
			items = append(items, item{paint, text})
		}
		y = t.keyed(items, y)
	}
	return t.keyedSigns(y)
}

// keyedSigns explains what stands on the blocks.
func (t *top) keyedSigns(y span) span {
	var items []item
	if slices.ContainsFunc(t.blocks, func(b planner.Block) bool { return b.Turn != 0 }) {
		items = append(items, item{func(c *canvas) {
			c.void("rect", at("width", swatch), at("height", swatch), is("fill", "none"), is("stroke", ink))
			topMark(c, swatch/2, 9*8*unit)
		}, "the top of a block that lies turned"})
	}
	if t.onPoint() {
		items = append(items, item{func(c *canvas) {
			c.void("circle", at("cx", swatch/2), at("cy", swatch/2), is("r", "10"), is("fill", "none"), is("stroke", ink))
			c.words("text", "1", at("x", swatch/2), at("y", swatch/2+5*unit), at("font-size", measureSize), is("text-anchor", "middle"))
		}, "a row, up to the right from its first block"})
	}
	if len(items) == 0 {
		return y
	}
	return t.keyed(items, y)
}

// ofBlocks stands for the fabric of a border that is made of blocks.
const ofBlocks = "blocks"

// blocksItem is a picture of blocks side by side.
func blocksItem(c *canvas) {
	c.void("rect", at("width", swatch), at("height", swatch), is("fill", "none"), is("stroke", ink), is("stroke-opacity", ".6"))
	c.void("path", is("d", "M0 13H26M13 0V26"), is("stroke", ink), is("stroke-opacity", ".6"))
}

// ring is cloth of one sort that goes round or between blocks.
type ring struct {
	name     string
	fabrics  []string
	numbered bool // from the inside out
}

func (r ring) said() string {
	if !r.numbered {
		return listed(r.fabrics)
	}
	return "from the inside out, " + listed(r.fabrics)
}

// roundabout is the cloth round and between the blocks, from the inside out.
func (t *top) roundabout() []ring {
	var all []ring
	l := t.plan.Job.Layout
	if s := l.Sashing; s != nil {
		all = append(all, ring{name: "sashing", fabrics: []string{s.Fabric}})
		if s.Cornerstones != "" {
			all = append(all, ring{name: "cornerstones", fabrics: []string{s.Cornerstones}})
		}
	}
	if t.onPoint() {
		all = append(all, ring{name: "setting triangles", fabrics: []string{l.Triangles}})
	}
	var borders []string
	for _, b := range t.plan.Job.Borders {
		name := b.Fabric
		if name == "" {
			name = ofBlocks
		}
		borders = append(borders, name)
	}
	switch len(borders) {
	case 0:
	case 1:
		all = append(all, ring{name: "border", fabrics: borders})
	default:
		all = append(all, ring{name: "borders, from the inside out", fabrics: borders, numbered: true})
	}
	return all
}
