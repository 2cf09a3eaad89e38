package planner

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// pointEdge sews the corner triangles on, and makes the edge of a top on point true:
// the setting triangles are cut a little too large.
func (w *quiltWork) pointEdge() {
	side := w.plan.Colourways[0].Raw.Width
	w.add(stage{
		key: keyAddCorners, name: "add the corner triangles", in: inJoins, count: cornerTriangles, place: Machine,
		after: []Ref{{Key: keyCutSet, Lot: Lot{FabricLot, w.frame.layout.Triangles}}},
		seam:  side.Times(cornerTriangles), stitch: thread.Piecing, setup: span(rateSewSetup, 1),
		unit:  joining(rateRowJoin, side, 1, 0).plus(pressing(side)).plus(span(ratePress, 1)),
		doing: "Fold each corner triangle's long side and the edge of the block at the corner in half, match the middles, sew, and press outward.",
	})
	around := 2 * (w.frame.inner().Width + w.frame.inner().Height)
	w.add(stage{
		key: keyTrimTop, name: "trim the top's edge", in: inQuilts, count: 1, place: CuttingTable, unit: span(rateTrim, around.In(measure.Inches)),
		doing: fmt.Sprintf("Lay the ruler's %s line on the outermost corners of the blocks and cut along its edge, so that one seam is left beyond them: %s raw when all four sides are true and the corners square.",
			w.job.SeamShown(), w.sized(w.topOfBlocks())),
	})
}

// triangleEndWords says how the side triangles go on. Two rows end at a corner of the
// quilt.
func (w *quiltWork) triangleEndWords() string {
	l := w.frame.layout
	if l.sideTriangles() == 0 {
		return ""
	}
	return fmt.Sprintf("Sew a side triangle to either end by a short side, its long side to the quilt's edge and its square corner on the side where the neighbouring row reaches further out. The left end of row %d and the right end of row %d stay bare: corners come there last. ", l.Down, l.Across)
}

// rowCounts says how many blocks each diagonal row has.
func (w *quiltWork) rowCounts() string {
	l := w.frame.layout
	counts := make([]string, l.pointRows())
	for row := range counts {
		first, last := l.span(row)
		counts[row] = fmt.Sprint(last - first + 1)
	}
	if len(counts) == 1 {
		return counts[0] + " block"
	}
	return listed(counts, "and") + " blocks"
}
