package draw

import (
	"cmp"
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/patchwork"
)

// The key of a drawing is set in lines of items, each a little picture and its
// words.
const (
	swatch  = 26 * unit
	keyLine = 30 * unit
	keyGap  = 22 * unit
)

// item is one entry of a key; it is heading, without a picture, where paint is nil.
type item struct {
	paint func(c *canvas) // in a square of swatch
	text  string
}

// keyed sets items one after the other from y on and returns the bottom. A heading
// stands first with the items beside it; where they take several lines, they stand
// in columns.
func (d *drawing) keyed(items []item, y span) span {
	left, right := margin, d.width-margin
	if len(items) > 1 && items[0].paint == nil {
		items[0].draw(&d.body, []string{items[0].text}, left, y)
		left += items[0].width() + keyGap
		items = items[1:]
	}
	var all, widest span
	for _, it := range items {
		all += it.width() + keyGap
		widest = max(widest, it.width())
	}
	x := left
	for _, it := range items {
		width := it.width()
		if left+all-keyGap > right {
			width = min(widest, right-left)
		}
		if x > left && x+width > right {
			x, y = left, y+keyLine
		}
		lines := []string{it.text}
		if it.width() > width {
			lines = wrapped(it.text, textSize, width-it.indent())
		}
		it.draw(&d.body, lines, x, y)
		y += leading(textSize) * span(len(lines)-1)
		x += width + keyGap
	}
	return y + keyLine
}

// width is about how wide an item is shown.
func (it item) width() span { return it.indent() + textWidth(it.text, textSize) }

// indent is the room of an item's picture.
func (it item) indent() span {
	if it.paint == nil {
		return 0
	}
	return swatch + 7*unit
}

// draw draws an item whose words take the lines.
func (it item) draw(c *canvas, lines []string, x, y span) {
	var style []attr
	if it.paint == nil {
		style = []attr{is("font-weight", "600")}
	} else {
		c.open("g", shifted(x, y))
		it.paint(c)
		c.shut("g")
	}
	c.para(lines, x+it.indent(), y+swatch/2+5*unit-textSize, textSize, style...)
}

// swatchOf is a small piece of a fabric with the mark of a role.
func (k *cloths) swatchOf(fabric, role string) func(*canvas) {
	return func(c *canvas) {
		box := []attr{at("width", swatch), at("height", swatch)}
		c.void("rect", append(box, is("fill", k.fill(fabric)), is("stroke", ink), is("stroke-opacity", ".6"))...)
		if id := k.over(fabric, role, 0); id != "" {
			c.void("rect", append(box, painted("fill", id))...)
		}
	}
}

// roleItems are the fabrics of a role under its name.
func (k *cloths) roleItems(role string, fabrics []string) []item {
	items := []item{{text: role}}
	for _, f := range fabrics {
		items = append(items, item{k.swatchOf(f, role), f})
	}
	return items
}

// lettered puts the fabrics' letters before their names.
func lettered(items []item, letters map[string]string) []item {
	for i := range items {
		if l := letters[items[i].text]; l != "" && items[i].paint != nil {
			items[i].text = l + " " + items[i].text
		}
	}
	return items
}

// blockKey explains the signs of a block's drawing and names its fabrics.
func (d *drawing) blockKey(c planner.ColourwayPlan, y span) span {
	y = d.section("Key", y)
	for _, role := range rolesOf(d.plan, []string{c.Name}) {
		y = d.keyed(d.roleItems(role.name, role.fabrics), y)
	}
	var items []item
	if choices := c.Build.Choices; len(choices) > 0 {
		items = append(items, item{d.signItem(arrowNew), "the allowance is pressed this way, in this step"})
		if choices[0].Step != choices[len(choices)-1].Step {
			items = append(items, item{d.signItem(arrowOld), "in an earlier one"})
		}
	}
	if slices.ContainsFunc(c.Build.Steps, func(made patchwork.Made) bool {
		return made.Pieces != nil || made.RunCuts > 0 || made.Step.Do == patchwork.Trim
	}) {
		items = append(items, item{lineItem((*canvas).cutLines), "cut here"})
	}
	if slices.ContainsFunc(c.Build.Steps, func(made patchwork.Made) bool { return made.Square > 0 }) {
		items = append(items, item{lineItem((*canvas).sewLines), "sew here"})
	}
	return d.keyed(items, y+4*unit)
}

// signItem is a sign over a bit of a seam.
func (d *drawing) signItem(id string) func(*canvas) {
	return func(c *canvas) {
		c.void("path", is("d", "M13 2V24"), is("stroke", ink), is("stroke-width", ".9"))
		d.sign(c, id, spot{swatch / 2, swatch / 2}, patchwork.Lean{X: 1}, 2*swatch)
	}
}

// lineItem is a bit of a line in a style.
func lineItem(style func(*canvas, *path)) func(*canvas) {
	return func(c *canvas) {
		var p path
		p.stroke(0, swatch/2, swatch, swatch/2)
		style(c, &p)
	}
}

// roleUse is a role and the fabrics that blocks have in it.
type roleUse struct {
	name    string
	fabrics []string
}

// rolesOf lists the roles of some colourways' blocks with their fabrics: roles in
// the order in which blocks come to have them, fabrics in that of the job file.
func rolesOf(p planner.Plan, colourways []string) []roleUse {
	var uses []roleUse
	for _, b := range p.Blocks {
		if !slices.Contains(colourways, b.Colourway) {
			continue
		}
		for _, f := range b.Fabrics {
			i := slices.IndexFunc(uses, func(u roleUse) bool { return u.name == f.Role })
			if i < 0 {
				i = len(uses)
				uses = append(uses, roleUse{name: f.Role})
			}
			if !slices.Contains(uses[i].fabrics, f.Fabric) {
				uses[i].fabrics = append(uses[i].fabrics, f.Fabric)
			}
		}
	}
	for _, u := range uses {
		slices.SortFunc(u.fabrics, func(a, b string) int { return cmp.Compare(fileOrder(p, a), fileOrder(p, b)) })
	}
	return uses
}

// fileOrder is a fabric's place in the job file.
func fileOrder(p planner.Plan, fabric string) int {
	return slices.IndexFunc(p.Job.Fabrics, func(f planner.Fabric) bool { return f.Name == fabric })
}
