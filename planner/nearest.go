package planner

import (
	"cmp"
	"fmt"
	"slices"
)

// nearestWords names the layouts of a like shape that hold so many blocks, or the
// nearest fewer and the nearest more that one can hold: ": 3 × 4 on point holds 18".
func nearestWords(l Layout, blocks int) string {
	found := nearestLayouts(l, blocks)
	if len(found) == 0 {
		return ""
	}
	rule := ""
	if l.Setting == OnPoint {
		rule = "; on point, a layout holds across × down and (across − 1) × (down − 1) between them"
	}
	parts := make([]string, len(found))
	for i, n := range found {
		parts[i] = fmt.Sprintf("%d × %d%s holds %d", n.Across, n.Down, pointWord(n), placesOf(n))
	}
	return rule + "; nearest: " + listed(parts, "and")
}

func pointWord(l Layout) string {
	if l.Setting == OnPoint {
		return " on point"
	}
	return ""
}

// nearestLayouts is the layout of exactly so many blocks whose shape is most like
// the one given, else the nearest below and above. Layouts half as wide again, or
// as high, are no likeness, and ones that hold half the blocks too few no help.
func nearestLayouts(l Layout, blocks int) []Layout {
	var fewer, more []Layout
	for across := max(1, l.Across-likeness(l.Across)); across <= l.Across+likeness(l.Across); across++ {
		for down := max(1, l.Down-likeness(l.Down)); down <= l.Down+likeness(l.Down); down++ {
			n := Layout{Across: across, Down: down, Setting: l.Setting}
			switch places := placesOf(n); {
			case places == blocks:
				fewer, more = append(fewer, n), append(more, n)
			case places < blocks:
				fewer = append(fewer, n)
			default:
				more = append(more, n)
			}
		}
	}
	byNearness := func(a, b Layout) int {
		off := func(n Layout) int { return abs(placesOf(n) - blocks) }
		shape := func(n Layout) int { return abs(n.Across-l.Across) + abs(n.Down-l.Down) }
		return cmp.Or(cmp.Compare(off(a), off(b)), cmp.Compare(shape(a), shape(b)), cmp.Compare(a.Across, b.Across))
	}
	var found []Layout
	for _, side := range [][]Layout{fewer, more} {
		if len(side) > 0 {
			n := slices.MinFunc(side, byNearness)
			if abs(placesOf(n)-blocks) > blocks/2 {
				continue
			}
			if len(found) == 0 || found[0].Across != n.Across || found[0].Down != n.Down {
				found = append(found, n)
			}
		}
	}
	return found
}

func likeness(n int) int { return max(2, n/2) }

func abs(n int) int { return max(n, -n) }
