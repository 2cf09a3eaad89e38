package planner

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// warnPressed says what is unwise in blocks as they are pressed: seams that lie the
// same way, and cloth upon cloth. Blocks that are pressed alike are warned of once.
func (m *maker) warnPressed() {
	cards := m.plan.Press.Cards
	for i, c := range m.plan.Colourways {
		ways := c.ways()
		own := cards[:len(ways)]
		cards = cards[len(ways):]
		if m.pressedBefore(i) {
			continue
		}
		var clash, bulk []string
		for v, way := range ways {
			clash = append(clash, clashWords(own[v].Matches))
			bulk = append(bulk, m.bulkWords(i, way, own[v].Bulk))
		}
		m.warnCards(warnClash, c, clash)
		m.warnCards(warnBulk, c, bulk)
	}
}

// pressedBefore reports whether an earlier colourway has the same block, pressed in
// the same ways.
func (m *maker) pressedBefore(i int) bool {
	c := m.plan.Colourways[i]
	return slices.ContainsFunc(m.plan.Colourways[:i], func(o ColourwayPlan) bool {
		return o.Build == c.Build && slices.Equal(o.Press, c.Press) && slices.Equal(o.PressB, c.PressB)
	})
}

// warnCards says what is unwise on each card of a colourway, "" for nothing; once
// where it is the same on both.
func (m *maker) warnCards(code string, c ColourwayPlan, texts []string) {
	names := []string{c.Name + ", card " + variantA, c.Name + ", card " + variantB}
	if texts = slices.Compact(texts); len(texts) < 2 {
		names[0] = c.Name
	}
	for i, text := range texts {
		if text != "" {
			m.warn(code, "colourways."+c.Name, "%s: %s", names[i], text)
		}
	}
}

func clashWords(t patchwork.Tally) string {
	if t.Clash == 0 {
		return ""
	}
	return fmt.Sprintf("seams lie the same way at %d of the block's %d match points as the plan presses it; pin those",
		t.Clash, t.Clash+t.Nest+t.Open)
}

// heap is junctions of a block that are equally thick and are helped alike.
type heap struct {
	patchwork.Junction // the first of them
	at                 []patchwork.Point
}

// heaps is the junctions where more cloth lies on itself than where a four-patch
// nests, the thickest first.
func heaps(junctions []patchwork.Junction) []heap {
	var all []heap
	for _, j := range junctions {
		if j.Layers <= patchwork.NestedLayers {
			continue
		}
		i := slices.IndexFunc(all, func(h heap) bool {
			return h.Layers == j.Layers && h.Open == j.Open && h.Spun == j.Spun && h.Choice == j.Choice
		})
		if i < 0 {
			i = len(all)
			all = append(all, heap{Junction: j})
		}
		all[i].at = append(all[i].at, j.At)
	}
	slices.SortStableFunc(all, func(a, b heap) int { return cmp.Compare(b.Layers, a.Layers) })
	return all
}

// The bounds of a warning of bulk: how many heaps it describes, and how many places
// of each.
const (
	mostHeaps  = 3
	mostPlaces = 4
)

// bulkWords counts the thick junctions inside a block of a colourway, and says
// where the thickest are and what helps.
func (m *maker) bulkWords(colourway int, way patchwork.Way, junctions []patchwork.Junction) string {
	all := heaps(junctions)
	if len(all) == 0 {
		return ""
	}
	c, spin := m.plan.Colourways[colourway], m.pressed.spinning(colourway, way, junctions)
	text, thick := "", 0
	for i, h := range all {
		thick += len(h.at)
		if i < mostHeaps {
			text += fmt.Sprintf(" %d layers %s: %s.", h.Layers, m.heapPlaces(c, h), helpWords(c.Build, h, spin))
		}
	}
	if len(all) > mostHeaps {
		text += " The others are no thicker."
	}
	return fmt.Sprintf("at %s of the raw block more cloth lies on itself than the %d layers of a nested four-patch.%s",
		counted(thick, "junction"), patchwork.NestedLayers, text)
}

// heapPlaces is where a heap's junctions lie in the raw block.
func (m *maker) heapPlaces(c ColourwayPlan, h heap) string {
	var places []string
	for _, at := range h.at[:min(len(h.at), mostPlaces)] {
		if isMiddle(at, c.Raw) {
			places = append(places, "in the middle")
			continue
		}
		places = append(places, fmt.Sprintf("%s across and %s down", m.show(at.X), m.show(at.Y)))
	}
	if more := len(h.at) - len(places); more > 0 {
		places = append(places, fmt.Sprintf("at %d more places", more))
	}
	return strings.Join(places, "; ")
}

// isMiddle reports whether a place is the middle of a block, to the width of a
// thread.
func isMiddle(at patchwork.Point, size measure.Size) bool {
	const thread = measure.Inch / 64
	off := func(a, b measure.Length) measure.Length { return max(a-b, b-a) }
	return off(at.X, size.Width/2) <= thread && off(at.Y, size.Height/2) <= thread
}

// helpWords says what makes a heap's junctions thinner, and how thin.
func helpWords(b *patchwork.Build, h heap, spin *spinning) string {
	var help []string
	if h.Open < h.Layers {
		help = append(help, fmt.Sprintf("press %s open (%d)", seamWords(b, h.Choice), h.Open))
	}
	if h.Spun > 0 && h.Spun < h.Layers {
		help = append(help, fmt.Sprintf("spin the centre there (%d)", h.Spun))
	} else if r, ok := spin.best(h); ok {
		help = append(help, fmt.Sprintf("press %s %s instead, costing no clash, and spin the centre there (%d)",
			seamWords(b, r.choice), b.Direction(b.Choices[r.choice], r.way), r.layers))
	}
	if help == nil {
		return "neither pressing open nor spinning the centre helps there"
	}
	return strings.Join(help, ", or ")
}

// seamWords names the seams of a choice.
func seamWords(b *patchwork.Build, choice int) string {
	c := b.Choices[choice]
	switch step := stepOf(b, choice); {
	case step.Step.Do == patchwork.QuarterSquare && c.Between:
		return "the long seam of the " + c.Step
	case step.Step.Do != patchwork.Sew || len(step.Joins) == 1:
		return "the seam of the " + c.Step
	case c.Between:
		return fmt.Sprintf("the join of rows %d and %d of the %s", c.Row+1, c.Row+2, c.Step)
	default:
		return fmt.Sprintf("row %d of the %s", c.Row+1, c.Step)
	}
}
