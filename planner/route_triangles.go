package planner

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
	"quiltrun/planner/thread"
)

// halfSquares are half-square triangles, two, four or eight from two squares:
// sewn beside the drawn diagonals (four: along the edges), cut apart, pressed and
// trimmed.
func (w *blockWork) halfSquares(s patchwork.Made) {
	drawn := map[int]int{2: 1, 8: 2}[s.Step.AtATime]
	w.sewSquares(s, "", s.Joins[0], drawn, w.squareWords(s))
	w.cutApart(s, "", s.RunCuts, apartWords(s.Step.AtATime))
	_, units := w.amounts(s)
	w.pressTriangles(s, "", units, s.Joins[0], fmt.Sprintf("Press every one %s.", w.leaning(s, false))+w.beforeWords(s))
	w.trimTriangles(s)
}

// quarterSquares are two quarter-square-triangle units from two squares: two
// half-square triangles, laid together with the fabrics facing each other's, sewn
// across their seams and cut apart again.
func (w *blockWork) quarterSquares(s patchwork.Made) {
	runs, units := w.amounts(s)
	w.sewSquares(s, "", s.Joins[0], 1, w.squareWords(s))
	w.cutApart(s, "", 1, apartWords(2))
	w.pressTriangles(s, "", 2*runs, s.Joins[0], fmt.Sprintf("Press every one %s. They are not trimmed yet.", w.leaning(s, false)))
	w.sewSquares(s, "-again", s.Joins[1], 1, fmt.Sprintf(
		"Lay the two from one pair of squares right sides together, %s on %s so that the seams nest, and draw the diagonal across the seam. Sew %s either side of it.",
		s.Step.Roles[0], s.Step.Roles[1], w.job.SeamShown()))
	w.cutApart(s, "-again", 1, "Cut each pair apart on the line: 2 units.")
	w.pressTriangles(s, "-again", units, s.Joins[1], fmt.Sprintf("Press the long seam of every one %s.", w.leaning(s, true))+w.beforeWords(s))
	w.trimTriangles(s)
}

// sewSquares sews pairs; drawn is how many diagonals are drawn on one of them.
func (w *blockWork) sewSquares(s patchwork.Made, again string, j patchwork.SewnJoin, drawn int, doing string) {
	runs, _ := w.amounts(s)
	unit := span(rateMark, float64(drawn))
	for _, seam := range j.Lengths {
		unit = unit.plus(sewing(rateChainInch, seam))
	}
	w.add(stage{
		key: "sew-" + s.Step.Name + again, name: "sew " + s.Step.Name + plainly(again), in: inPairs, per: runs, place: Machine,
		seam: sum(j.Lengths).Times(runs * w.blocks), stitch: thread.Piecing,
		setup: span(rateSewSetup, 1), unit: unit, doing: doing,
	})
}

// cutApart cuts sewn pairs along the lines between their seams.
func (w *blockWork) cutApart(s patchwork.Made, again string, cuts int, doing string) {
	runs, _ := w.amounts(s)
	w.add(stage{
		key: "cut-apart-" + s.Step.Name + again, name: "cut " + s.Step.Name + " apart" + plainly(again), in: inPairs, per: runs,
		place: CuttingTable, unit: span(rateCutApart, float64(cuts)), doing: doing,
	})
}

// pressTriangles presses units that were cut apart.
func (w *blockWork) pressTriangles(s patchwork.Made, again string, units int, j patchwork.SewnJoin, doing string) {
	each := s.Yield
	seam := sum(j.Lengths) / measure.Length(each)
	w.add(stage{
		key: "press-" + s.Step.Name + again, name: "press " + s.Step.Name + plainly(again), in: inUnits, per: units, makes: each,
		place: Iron, setup: span(rateIronSetup, 1), unit: pressing(seam), doing: doing,
	})
}

// trimTriangles trims units to size, where anything is to come off.
func (w *blockWork) trimTriangles(s patchwork.Made) {
	if s.Loss.Width <= 0 || s.Step.TrimTo == 0 {
		return
	}
	_, units := w.amounts(s)
	on := "the seam"
	if s.Step.Do == patchwork.QuarterSquare {
		on = "both seams"
	}
	w.add(stage{
		key: "trim-" + s.Step.Name, name: "trim " + s.Step.Name, in: inUnits, per: units, place: CuttingTable,
		unit: span(rateTrimUnit, 1),
		doing: fmt.Sprintf("Trim each to %s, %s on the ruler's 45° line into the corners: %s %s comes off in all, across and down.",
			w.sized(s.Unit.Size), on, s.Loss.Width.Decimal(w.job.Units, 3), w.job.Units),
	})
}

// squareWords says how two squares are laid together and sewn.
func (w *blockWork) squareWords(s patchwork.Made) string {
	text := fmt.Sprintf("Lay a %s square and a %s square, %s each, right sides together", s.Step.Roles[0], s.Step.Roles[1], w.show(s.Square))
	switch s.Step.AtATime {
	case 4:
		text += fmt.Sprintf(", and sew all round, %s from the edge.", w.job.SeamShown())
	case 8:
		text += fmt.Sprintf(", both diagonals drawn on the back of the lighter one. Sew %s either side of both lines, one pair after another.", w.job.SeamShown())
	default:
		text += fmt.Sprintf(", a diagonal drawn on the back of the lighter one. Sew %s either side of the line, one pair after another.", w.job.SeamShown())
	}
	return text + w.forTheLot(s, "pair", "unit")
}

// apartWords says where a sewn pair is cut.
func apartWords(atATime int) string {
	switch atATime {
	case 4:
		return "Cut each pair apart on both diagonals: 4 half-square triangles, their outer edges on the bias: do not stretch them."
	case 8:
		return "Cut each pair apart through the middle, upright and level, without lifting it, then on the drawn lines: 8 half-square triangles."
	default:
		return "Cut each pair apart on the drawn line: 2 half-square triangles."
	}
}

// leaning is the way in which a triangle's seam is pressed.
func (w *blockWork) leaning(s patchwork.Made, long bool) string {
	choice := patchwork.Choice{Step: s.Step.Name, Between: long}
	return w.byCard(w.c, func(way patchwork.Way) string {
		word := w.c.Build.Direction(choice, way)
		if long {
			return fmt.Sprintf("to the %s, %s at the top", word, s.Step.Roles[0])
		}
		return word
	})
}

// beforeWords gives the exact size before trimming, to three decimals.
func (w *blockWork) beforeWords(s patchwork.Made) string {
	exact := s.Before.Decimal(w.job.Units, 3)
	held := ""
	if s.Step.Do == patchwork.HalfSquare {
		held = fmt.Sprintf(" Held upright, it has %s at the top left.", s.Step.Roles[0])
	}
	if s.Loss.Width <= 0 || s.Step.TrimTo == 0 {
		return fmt.Sprintf(" It measures %s %s raw.", exact, w.job.Units) + held
	}
	return fmt.Sprintf(" It measures %s %s before it is trimmed to %s.", exact, w.job.Units, w.show(s.Step.TrimTo)) + held
}

// plainly is the end of a key as it is read.
func plainly(again string) string {
	if again == "" {
		return ""
	}
	return " again"
}

// subcut cuts strip sets into segments.
func (w *blockWork) subcut(s patchwork.Made) {
	runs, units := w.amounts(s)
	waste := ""
	if s.Loss.Width > 0 {
		waste = fmt.Sprintf(", %s left over", w.show(s.Loss.Width))
	}
	set := span(rateSetLaid, float64(runs)/float64(max(1, units)))
	w.add(stage{
		key: "subcut-" + s.Step.Name, name: "subcut " + s.Step.Name, in: inPieces, per: units, makes: s.Yield, place: CuttingTable,
		unit: span(rateSubcut, 1).plus(set),
		doing: fmt.Sprintf("Square the left end of each of the %s, then cut segments %s wide, each %s raw: %d of one%s.",
			s.Step.Of, w.show(s.Step.Every), s.Unit.Size.Show(w.job.Units), s.Yield, waste) + w.forTheLot(s, "set", "segment"),
	})
}
