package draw

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/patchwork"
)

// Block draws how a colourway's block is made, step by step: cut, sewn, cut
// again, pulled apart, turned and sewn again, with the way that every seam is
// pressed, and the finished block in each set of its fabrics. The error is for a
// colourway that the plan does not have, or w's own.
func Block(w io.Writer, p planner.Plan, colourway string) error {
	i := slices.IndexFunc(p.Colourways, func(c planner.ColourwayPlan) bool { return c.Name == colourway })
	if i < 0 {
		return fmt.Errorf("there is no colourway %q to draw", colourway)
	}
	c := p.Colourways[i]
	d := newDrawing(p, "block "+c.Name, pageWidth, 100)
	sets := setsOf(p, c.Name)
	m := newMaking(d, c, sets[0].wear)

	y := d.head(c.Name+", step by step", d.blockFacts(c))
	panels := slices.Concat(m.panels(), m.otherWay(), m.finished(sets))
	y = d.body.flow(panels, y)
	y = d.blockKey(c, y)
	return d.writeTo(w, fmt.Sprintf("%s: the block %s, step by step", p.Job.Title, c.Name), told(panels), y+margin)
}

// head writes the drawing's name and facts, and returns their bottom.
func (d *drawing) head(title string, facts string) span {
	y := d.body.para(wrapped(title, titleSize, d.width-2*margin), margin, margin, titleSize, is("font-weight", "600"))
	y = d.body.para(wrapped(facts, textSize, d.width-2*margin), margin, y+2*unit, textSize, is("fill", faint))
	return y + panelGap
}

// section writes a heading with a rule above it.
func (d *drawing) section(title string, y span) span {
	d.body.void("path", is("d", "M"+pair(margin, y)+"H"+(d.width-margin).String()), is("stroke", ink), is("opacity", ".3"))
	return d.body.para([]string{title}, margin, y+8*unit, headingSize, is("font-weight", "600")) + 10*unit
}

// blockFacts is what there is to know of a block before its steps.
func (d *drawing) blockFacts(c planner.ColourwayPlan) string {
	u := d.plan.Job.Units
	facts := []string{
		d.plan.Job.Title,
		english.Count(c.Blocks, "block") + " a quilt",
		together(c.Raw.Words(u)) + " raw, " + together(c.Finished.Words(u)) + " finished",
	}
	return strings.Join(facts, " · ")
}

// set is the blocks of a colourway that have the same fabrics in all roles.
type set struct {
	wear
	fabrics []planner.RoleFabric
	blocks  []string
}

// setsOf lists a colourway's sets of fabrics in the order of its blocks.
func setsOf(p planner.Plan, colourway string) []set {
	var sets []set
	for _, b := range p.Blocks {
		if b.Colourway != colourway {
			continue
		}
		i := slices.IndexFunc(sets, func(s set) bool { return slices.Equal(s.fabrics, b.Fabrics) })
		if i < 0 {
			i = len(sets)
			sets = append(sets, set{wear: wearOf(b), fabrics: b.Fabrics})
		}
		sets[i].blocks = append(sets[i].blocks, b.ID)
	}
	for i := range sets {
		slices.SortFunc(sets[i].blocks, compareIDs)
	}
	if sets == nil {
		sets = []set{{}}
	}
	return sets
}

// compareIDs puts the ids of one colourway in the order of their numbers, which
// may have more than two digits.
func compareIDs(a, b string) int { return cmp.Or(cmp.Compare(len(a), len(b)), cmp.Compare(a, b)) }

// wearOf is which fabric a block has in each role.
func wearOf(b planner.Block) wear {
	w := make(wear, len(b.Fabrics))
	for _, f := range b.Fabrics {
		w[f.Role] = f.Fabric
	}
	return w
}

// mostSets is how many sets of fabrics a drawing shows.
const mostSets = 6

// finished is the block without its seam allowance, in each set of fabrics.
func (m *making) finished(sets []set) []panel {
	block := patchwork.TrimUnit(m.c.Build.Block(), m.c.Finished)
	s := m.fit(block.Size)
	var panels []panel
	for i, set := range sets {
		if i == mostSets {
			last := &panels[i-1]
			last.lines = append(last.lines, fmt.Sprintf("And %s of fabrics more, on the job sheet.", english.Count(len(sets)-mostSets, "set")))
			break
		}
		panels = append(panels, panel{
			heading: "finished: " + idList(set.blocks),
			art: picture{s.of(block.Size.Width), s.of(block.Size.Height), func(c *canvas) {
				m.unit(c, block, s, set.wear)
			}},
			lines: fabricWords(set.fabrics),
		})
	}
	return panels
}

// fabricWords says which fabric fills which role, a line each.
func fabricWords(fabrics []planner.RoleFabric) []string {
	var lines []string
	for _, f := range fabrics {
		lines = append(lines, f.Role+": "+f.Fabric)
	}
	return lines
}

// idList shortens a list of block ids: "tide-01, 03, 05–09 and 7 others".
func idList(ids []string) string {
	const most = 6
	var said []string
	for i := 0; i < len(ids) && len(said) < most; i++ {
		end := i
		for end+1 < len(ids) && follows(ids[end], ids[end+1]) {
			end++
		}
		text := ids[i]
		if i > 0 {
			_, text = idParts(text)
		}
		if end > i+1 {
			_, last := idParts(ids[end])
			text += "–" + last
			i = end
		}
		said = append(said, text)
		if len(said) == most && i+1 < len(ids) {
			return strings.Join(said, ", ") + " and " + english.Count(len(ids)-i-1, "other")
		}
	}
	return strings.Join(said, ", ")
}

// follows reports that an id's number comes right after another's.
func follows(before, after string) bool {
	_, a := idParts(before)
	_, b := idParts(after)
	m, errM := strconv.Atoi(a)
	n, errN := strconv.Atoi(b)
	return errM == nil && errN == nil && n == m+1
}

// idParts are an id's name with its hyphen, and its number.
func idParts(id string) (name, number string) {
	cut := strings.LastIndexByte(id, '-') + 1
	return id[:cut], id[cut:]
}

// pressedB is the blocks of a colourway that are pressed the second way.
func (d *drawing) pressedB(colourway string) []string {
	for _, card := range d.plan.Press.Cards {
		if card.Colourway == colourway && card.Variant == "b" {
			return card.Blocks
		}
	}
	return nil
}

// otherWay is the sewn steps that some of the blocks are pressed otherwise in.
func (m *making) otherWay() []panel {
	if m.c.PressB == nil {
		return nil
	}
	other := *m
	other.way, other.variant = m.c.PressB, "b"
	var panels []panel
	for _, made := range m.c.Build.Steps {
		words := other.pressWords(made.Step.Name)
		if made.Pieces != nil || words == "" || words == m.pressWords(made.Step.Name) {
			continue
		}
		panels = append(panels, panel{
			made.Step.Name + ", card b", other.pressed(made.Unit, m.fit(made.Unit.Size), made.Step.Name),
			[]string{"For " + idList(m.pressedB(m.c.Name)) + ".", words},
		})
	}
	return panels
}

// told is the making in words, for those who do not see the drawing.
func told(panels []panel) string {
	var parts []string
	for _, p := range panels {
		said := p.heading + "."
		for _, line := range p.lines {
			said += " " + strings.TrimSuffix(line, ".") + "."
		}
		parts = append(parts, said)
	}
	return strings.ReplaceAll(strings.Join(parts, " "), tied, " ")
}
