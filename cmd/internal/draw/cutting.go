package draw

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/cloth"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
)

// Cutting draws how a fabric is cut: every piece in its place with its size, the
// cuts with the number of their step, and leftovers hatched; the steps stand below
// in words. The error is for a fabric that the plan does not cut, or w's own.
func Cutting(w io.Writer, p planner.Plan, fabric string) error {
	for _, n := range p.Fabrics {
		if n.Fabric.Name == fabric && len(n.Cutting.Steps) > 0 {
			return newCutting(p, n).page(w)
		}
	}
	return fmt.Errorf("there is no cutting of %s to draw", fabric)
}

// CuttingList is a plan's cutting drawings: one for all fabrics that are cut alike,
// named after the first of them.
func CuttingList(p planner.Plan) []Drawing {
	var list []Drawing
	names := newNames(p.Job.ID)
	seen := map[string]int{}
	for _, n := range p.Fabrics {
		if len(n.Cutting.Steps) == 0 {
			continue
		}
		key := cutAlike(n)
		if at, again := seen[key]; again {
			list[at].Fabrics = append(list[at].Fabrics, n.Fabric.Name)
			continue
		}
		seen[key] = len(list)
		list = append(list, Drawing{File: names.file("cutting-" + fileWord(n.Fabric.Name)), Fabrics: []string{n.Fabric.Name}})
	}
	for i, d := range list {
		list[i].What = "the cutting of " + listed(d.Fabrics)
	}
	return list
}

// cutAlike is the same for fabrics whose cutting looks the same.
func cutAlike(n planner.FabricNeed) string {
	return fmt.Sprint(n.Fabric.Form, n.Fabric.Width, n.Fabric.Size, n.Fabric.Directional, n.Pieces, n.Cutting.Cloths, n.Cutting.Steps)
}

// cutting is the drawing of one fabric's cutting.
type cutting struct {
	*drawing
	need  planner.FabricNeed
	hatch string // id of the pattern of leftovers
	names []string
}

func newCutting(p planner.Plan, n planner.FabricNeed) *cutting {
	c := &cutting{drawing: newDrawing(p, "cutting "+n.Fabric.Name, pageWidth, 100), need: n}
	for _, d := range CuttingList(p) {
		if d.Fabrics[0] == n.Fabric.Name {
			c.names = d.Fabrics
		}
	}
	if c.names == nil {
		c.names = []string{n.Fabric.Name}
	}
	c.hatch = c.prefix + "h"
	c.defs.open("pattern", is("id", c.hatch), is("patternUnits", "userSpaceOnUse"), at("width", 7*unit), at("height", 7*unit), is("patternTransform", "rotate(45)"))
	c.defs.void("path", is("d", "M0 0V7"), is("stroke", faint), is("stroke-width", "1.6"), is("opacity", ".6"))
	c.defs.shut("pattern")
	return c
}

// page puts the pictures in rows, and the steps below them.
func (c *cutting) page(w io.Writer) error {
	title := "Cutting " + listed(c.names)
	y := c.head(title, c.facts())
	y = c.rows(c.pictures(), y)
	y = c.section("The cuts, in the order to make them", y+4*unit)
	lines := planner.FabricCut{Need: c.need, Plan: c.need.Cutting}.CutWords(c.plan.Job.Units)
	for i, line := range lines {
		c.body.badge(margin+9*unit, y+10*unit, i+1)
		y = c.body.para(wrapped(measuresTied(line), textSize, c.width-2*margin-26*unit), margin+26*unit, y, textSize) + 3*unit
	}
	return c.writeTo(w, c.plan.Job.Title+": "+title, "How the cloth is cut: "+strings.Join(lines, ". ")+".", y+margin)
}

// measuresTied keeps the words of each measure in a text on one line.
func measuresTied(text string) string {
	words := strings.Split(text, " ")
	var out strings.Builder
	for i, w := range words {
		if i > 0 {
			before := words[i-1]
			part := strings.HasPrefix(w, "in") || strings.HasPrefix(w, "cm") || w == "×" || strings.Contains(w, "/")
			if before == "×" || before == "≈" || part && endsInDigit(before) || w == "×" {
				out.WriteString(tied)
			} else {
				out.WriteByte(' ')
			}
		}
		out.WriteString(w)
	}
	return out.String()
}

func endsInDigit(word string) bool {
	return word != "" && word[len(word)-1] >= '0' && word[len(word)-1] <= '9'
}

// facts is what the plan takes and what that costs.
func (c *cutting) facts() string {
	n, u := c.need, c.plan.Job.Units
	f := []string{c.plan.Job.Title}
	if n.Fabric.Form.Sheets() {
		f = append(f, english.Count(n.Cutting.Sheets, n.Fabric.Form.One())+" "+together(n.Fabric.Sheet().Show(u)))
	} else {
		f = append(f, together(n.Cutting.Length.Show(u))+" of cloth "+together(n.Fabric.Across().Show(u))+" wide")
		if n.Cutting.Gap() == 0 {
			f = append(f, "no plan can take less")
		} else {
			f = append(f, "no plan can take less than "+together(n.Cutting.Bound.Show(u)))
		}
	}
	f = append(f, english.Count(n.Cutting.Cuts, "ruler cut"), "leftovers are hatched")
	if n.Fabric.Directional {
		f = append(f, "one way: nothing is turned, one layer at a time")
	}
	return strings.Join(f, " · ")
}

// picture is one piece of cloth, or a part of a long one, and its caption.
type clothPicture struct {
	caption string
	art     picture
}

// pictures are all cloths: long ones in parts between their strips, alike ones
// once.
func (c *cutting) pictures() []clothPicture {
	var out []clothPicture
	at := map[string]int{}
	count := map[string]int{}
	var keys []string
	for _, k := range c.need.Cutting.Cloths {
		if !c.need.Fabric.Form.Sheets() && !k.Hand {
			out = append(out, c.bolt(k)...)
			continue
		}
		key := cutAlikeCloth(k)
		if count[key]++; count[key] > 1 {
			continue
		}
		at[key] = len(out)
		keys = append(keys, key)
		out = append(out, clothPicture{c.captionOf(k), c.sheet(k, sheetRoom)})
	}
	for _, key := range keys {
		if n := count[key]; n > 1 {
			out[at[key]].caption = fmt.Sprintf("%d like this: %s", n, out[at[key]].caption)
		}
	}
	return out
}

// cutAlikeCloth is the same for cloths that look the same.
func cutAlikeCloth(k cloth.Cloth) string { return fmt.Sprint(k.Size, k.Pieces, k.Hand) }

func (c *cutting) captionOf(k cloth.Cloth) string {
	text := k.Size.Show(c.plan.Job.Units)
	if k.Hand {
		text += ", on hand"
	}
	return text
}

// The room of pictures: two parts of a bolt side by side, or three sheets.
const (
	boltRoom  = (pageWidth - 2*margin - 30*unit) / 2
	sheetRoom = (pageWidth - 2*margin - 2*30*unit) / 3
	gutter    = 24 * unit // left of a cloth, for the numbers of its cuts
)

// bolt is a length of cloth in parts, none much higher than it is wide, parted
// where cuts run across all of it.
func (c *cutting) bolt(k cloth.Cloth) []clothPicture {
	var out []clothPicture
	base := k.Size.Height - sumOf(c.need.Cutting.Levels)
	from := measure.Length(0)
	end := base
	most := k.Size.Width * 5 / 4
	for _, level := range c.need.Cutting.Levels {
		if end > base && end+level-from > most {
			out = append(out, c.stretch(k, from, end))
			from = end
		}
		end += level
	}
	return append(out, c.stretch(k, from, end))
}

func (c *cutting) stretch(k cloth.Cloth, from, to measure.Length) clothPicture {
	u := c.plan.Job.Units
	caption := fmt.Sprintf("%s to %s along the cloth", number(from, u), to.Show(u))
	return clothPicture{caption, c.window(k, from, to, scale{boltRoom - gutter, k.Size.Width})}
}

func sumOf(lengths []measure.Length) measure.Length {
	var all measure.Length
	for _, l := range lengths {
		all += l
	}
	return all
}

// sheet is a whole piece of cloth.
func (c *cutting) sheet(k cloth.Cloth, room span) picture {
	return c.window(k, 0, k.Size.Height, scale{room - gutter, k.Size.Width}.fitted(k.Size, room-gutter, room*3/2))
}

// rows lays pictures out from y on and returns the bottom of the last.
func (c *cutting) rows(pictures []clothPicture, y span) span {
	for len(pictures) > 0 {
		var x, tall span
		n := 0
		for ; n < len(pictures) && (n == 0 || x+pictures[n].art.width <= c.width-2*margin+unit); n++ {
			x += pictures[n].art.width + 30*unit
			tall = max(tall, pictures[n].art.height)
		}
		x = margin
		for _, p := range pictures[:n] {
			c.body.para([]string{p.caption}, x+gutter, y, measureSize, is("fill", faint))
			c.body.open("g", shifted(x+gutter, y+leading(measureSize)+4*unit))
			p.art.paint(&c.body)
			c.body.shut("g")
			x += p.art.width + 30*unit
		}
		pictures = pictures[n:]
		y += tall + leading(measureSize) + 4*unit + panelGap
	}
	return y
}
