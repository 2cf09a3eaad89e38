package draw

import (
	"fmt"

	"github.com/clipperhouse/displaywidth"

	"quiltrun/planner"
)

// labelling is how block ids are written on a top: as tags in the blocks' top left
// corners, where no mark of a turned block can be.
type labelling struct {
	size  span
	inset span // of the tag from the block's corner
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
func newLabelling(columns, width, height span) labelling {
	l := labelling{inset: min(width, height) / 28}
	l.size = min(largestLabel, (width-2*l.inset)*100/tagPercent(columns), height/2)
	return l
}

// tagPercent is how wide a tag is in hundredths of its letters' size.
func tagPercent(columns span) span { return columns*columnPercent + 50 }

func (l labelling) width(columns span) span { return l.size * tagPercent(columns) / 100 }

// write writes an id on its block's tag, the block beginning at x.
func (l labelling) write(c *canvas, id string, x, columns span) {
	c.words("text", id, at("x", x+l.inset+l.width(columns)/2))
}

// ground is the tag that an id stands on.
func (l labelling) ground(c *canvas, columns span) {
	c.void("rect", at("x", l.inset), at("y", l.inset), at("width", l.width(columns)), at("height", l.size*13/10),
		at("rx", l.size/4), is("fill", paper), is("opacity", ".9"))
}

// key names the fabrics of a top by role, then its borders, and explains the mark
// of a turned block.
func (t *top) key(y span) span {
	y = t.section("Fabrics", y)
	var names []string
	for _, c := range t.plan.Colourways {
		names = append(names, c.Name)
	}
	for _, role := range rolesOf(t.plan, names) {
		y = t.keyed(t.roleItems(role.name, role.fabrics), y)
	}
	if borders := t.plan.Job.Borders; len(borders) > 0 {
		items := []item{{text: "border"}}
		for i, b := range borders {
			text := b.Fabric
			if len(borders) > 1 {
				text = fmt.Sprintf("%d %s", i+1, b.Fabric)
			}
			items = append(items, item{t.swatchOf(b.Fabric, ""), text})
		}
		if len(borders) > 1 {
			items[0].text = "borders, from the inside out"
		}
		y = t.keyed(items, y)
	}
	for _, b := range t.blocks {
		if b.Turn != 0 {
			mark := item{func(c *canvas) {
				c.void("rect", at("width", swatch), at("height", swatch), is("fill", "none"), is("stroke", ink))
				topMark(c, swatch/2, 9*8*unit)
			}, "the top of a block that lies turned"}
			return t.keyed([]item{mark}, y)
		}
	}
	return y
}
