package planner

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// borders measures the top through the middle and sews borders on.
func (w *quiltWork) borders() {
	w.add(stage{
		key: keyMeasure, name: "measure through the middle", in: inQuilts, count: 1, place: CuttingTable, unit: span(rateMeasure, 1),
		doing: fmt.Sprintf("Measure the top through the middle both ways: it should be %s raw. Borders and backing go by what you measure.", w.sized(w.topOfBlocks())),
	})
	if len(w.job.Borders) == 0 {
		return
	}
	w.borderBlocks()
	s := stage{
		key: keyBorders, name: "add borders", in: inBorders, count: 4 * len(w.job.Borders), place: Machine,
		unit: span(rateBorder, 1), setup: span(rateSewSetup, 1), stitch: thread.Piecing,
	}
	s.doing = "Sides first: measure the height through the middle and cut two so long. Then measure the width through the middle, sides included, for top and bottom. Pin at the quarters, sew, press outward."
	seen := map[string]bool{}
	for _, r := range w.frame.rounds() {
		b := w.plan.Borders[r.nth]
		s.doing += w.borderWords(r, b)
		s.seam += 2*b.Sides + 2*b.Ends
		if !r.ofBlocks() && !seen[r.Fabric] {
			s.after = append(s.after, w.cutRow(r.Fabric, keyCutBord, forBorder))
			seen[r.Fabric] = true
		}
	}
	w.add(s)
}

func (w *quiltWork) borderWords(r round, b BorderPlan) string {
	if r.ofBlocks() {
		return fmt.Sprintf(" Border %d: the strips of blocks, %s at the sides, %s at top and bottom; ease the top to them. %s",
			r.nth+1, w.show(b.Sides), w.show(b.Ends), w.ringSeamWords(r))
	}
	text := fmt.Sprintf(" Border %d, %s, as planned: two of %s, two of %s", r.nth+1, r.Fabric,
		measure.Size{Width: b.Cut, Height: b.Sides}.Show(w.job.Units), measure.Size{Width: b.Cut, Height: b.Ends}.Show(w.job.Units))
	for _, c := range w.plan.Materials.Borders {
		if c.Nth == r.nth+1 {
			text += ", " + c.CutWords()
		}
	}
	return text + "."
}

// topOfBlocks is the raw size of what is inside all borders.
func (w *quiltWork) topOfBlocks() measure.Size { return less(w.frame.inner(), -2*w.job.Seam) }

// ringJoins is how many seams the four strips of a border of blocks have.
func (f frame) ringJoins(r round) int {
	across, down := f.along(r)
	return 2*max(0, down-1) + 2*(across+1)
}

// borderBlocks sews and presses the strips of borders of blocks.
func (w *quiltWork) borderBlocks() {
	n, strips, text := 0, 0, ""
	for _, r := range w.frame.rounds() {
		if !r.ofBlocks() {
			continue
		}
		across, down := w.frame.along(r)
		n += w.frame.ringJoins(r)
		strips += 4
		text += fmt.Sprintf(" Border %d: two strips of %s for the sides, two of %s for top and bottom.", r.nth+1, counted(down, "block"), counted(across+2, "block"))
	}
	if n == 0 {
		return
	}
	height := w.plan.Colourways[0].Raw.Height
	w.add(stage{
		key: keySewBorder, name: "sew border blocks into strips", in: inJoins, count: n, place: Machine,
		seam: height.Times(n), stitch: thread.Piecing, setup: span(rateSewSetup, 1),
		unit:  joining(rateRowJoin, height, 1, points(w.join(joinBorder), n)),
		doing: "Sew the blocks of the border into strips as they lie." + text + " " + w.joinWords(joinBorder),
	})
	w.add(stage{
		key: keyPressBorder, name: "press the border's strips", in: inBorders, count: strips, place: Iron, setup: span(rateIronSetup, 1),
		unit: pressingRow(height, n, strips), doing: w.ringPressWords(),
	})
}

// ringPressWords is how the strips of borders of blocks are pressed.
func (w *quiltWork) ringPressWords() string {
	text := ""
	for i, p := range w.plan.Press.Top.Borders {
		if i > 0 {
			text += " "
		}
		text += fmt.Sprintf("Border %d: press the upper strip to the %s, the lower one to the %s, the left one %s, the right one %s.",
			p.Border, p.Upper, p.Lower, p.Left, p.Right)
	}
	return text
}

// ringSeamWords is how a border of blocks is pressed once it is sewn on, and what
// meets there.
func (w *quiltWork) ringSeamWords(r round) string {
	for _, p := range w.plan.Press.Top.Borders {
		if p.Border == r.nth+1 {
			return fmt.Sprintf("Press the left seam to the %s, the right one to the %s, those of top and bottom outward. %s",
				p.LeftSeam, p.RightSeam, w.joinWords(joinOnBorder))
		}
	}
	return ""
}
