package planner

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Keys of what makes a top of blocks.
const (
	keyLayOut      = "lay-out-top"
	keySewRows     = "sew-top-rows"
	keyPressRows   = "press-top-rows"
	keySewSashing  = "sew-sashing-rows"
	keyPressSash   = "press-sashing-rows"
	keyPieceSash   = "piece-sashing"
	keyJoinRows    = "join-top-rows"
	keyPressTop    = "press-top"
	keyAddCorners  = "add-corner-triangles"
	keyTrimTop     = "trim-top-edge"
	keyMeasure     = "measure-top"
	keySewBorder   = "sew-border-blocks"
	keyPressBorder = "press-border-blocks"
	keyBorders     = "add-borders"
)

// top lays the blocks out, sews them into rows and the rows together. On point the
// corners and a true edge come last.
func (w *quiltWork) top() {
	w.layOut()
	w.sewRows()
	w.sashingRows()
	w.joinRows()
	if w.frame.onPoint() {
		w.pointEdge()
	}
}

func (w *quiltWork) layOut() {
	s := stage{
		key: keyLayOut, name: "lay out the top", in: inBlocks, count: w.plan.Quilt.Blocks, place: DesignWall, unit: span(rateLayOut, 1),
		doing: w.layOutWords(),
	}
	for _, c := range w.plan.Colourways {
		s.after = append(s.after, Ref{Key: keySquareUp, Lot: Lot{ColourwayLot, c.Name}})
	}
	w.add(s)
}

func (w *quiltWork) layOutWords() string {
	l := w.frame.layout
	how := fmt.Sprintf("%d across and %d down", l.Across, l.Down)
	switch {
	case w.frame.onPoint():
		how += fmt.Sprintf(" on point with %d between, a block's top to the upper left unless it is turned, the setting triangles round the edge", (l.Across-1)*(l.Down-1))
	case l.Sashing != nil:
		how += ", room for the sashing between"
	}
	if w.job.hasBlockBorder() {
		how += ", the blocks of the border round them"
	}
	return fmt.Sprintf("Lay the blocks out as the map shows, %s, and look from across the room.", how) + w.halfWords()
}

// rowJoins is how many seams the rows of blocks have in all, inside all borders:
// between blocks, and between blocks and what stands beside them in the row.
func (f frame) rowJoins() int {
	l := f.layout
	if f.onPoint() {
		return placesOf(*l) - l.pointRows() + l.sideTriangles()
	}
	return l.Down * (l.Across + f.uprights() - 1)
}

// rowsOfBlocks is how many rows of blocks are sewn inside all borders.
func (f frame) rowsOfBlocks() int {
	if f.onPoint() {
		return f.layout.pointRows()
	}
	return f.layout.Down
}

// sewRows sews and presses the rows of blocks.
func (w *quiltWork) sewRows() {
	n, rows, height := w.frame.rowJoins(), w.frame.rowsOfBlocks(), w.plan.Colourways[0].Raw.Height
	if n == 0 {
		return
	}
	w.add(stage{
		key: keySewRows, name: "sew blocks into rows", in: inJoins, count: n, place: Machine, after: w.rowTakes(),
		seam: height.Times(n), stitch: thread.Piecing, setup: span(rateSewSetup, 1),
		unit: joining(rateRowJoin, height, 1, points(w.join(joinColumns), n)), doing: w.rowWords(n),
	})
	w.add(stage{
		key: keyPressRows, name: "press the rows", in: inRows, count: rows, place: Iron,
		setup: span(rateIronSetup, 1), unit: pressingRow(height, n, rows), doing: w.pressRowsWords(),
	})
}

// pressingRow is the time at the iron of one of so many rows, which have n seams in
// all, each so long.
func pressingRow(seam measure.Length, n, rows int) Span {
	each := seam.Times(n).Scale(1, int64(rows), measure.Nearest)
	return pressing(each).plus(span(ratePress, float64(n)/float64(rows)))
}

// rowTakes is what the rows take beside blocks: sashing pieces, or side triangles.
func (w *quiltWork) rowTakes() []Ref {
	l := w.frame.layout
	switch {
	case w.frame.onPoint():
		return []Ref{{Key: keyCutSet, Lot: Lot{FabricLot, l.Triangles}}}
	case l.Sashing != nil && w.frame.uprights() > 0:
		return []Ref{w.takesOf(l.Sashing.Fabric, keyCutSash, forSashing, w.plan.Sashing.Upright)}
	}
	return nil
}

func (w *quiltWork) rowWords(joins int) string {
	l := w.frame.layout
	switch {
	case w.frame.onPoint():
		return fmt.Sprintf("Rows run up to the right, the first at the upper left corner; lay each out from its lower left end, %s. %s%s",
			w.rowCounts(), w.triangleEndWords(), w.joinWords(joinColumns))
	case l.Sashing != nil:
		s := l.Sashing
		return fmt.Sprintf("Sew a sashing piece %s of %s between the %d blocks of each row%s: %s a row. %s",
			w.sized(w.sashPiece()), s.Fabric, l.Across, edgeWords(s.Edge, " and at both its ends"), counted(joins/l.Down, "join"), w.joinWords(joinSashing))
	}
	return fmt.Sprintf("Sew the %d blocks of each row together: %d joins a row. %s", l.Across, l.Across-1, w.joinWords(joinColumns))
}

func edgeWords(edge bool, words string) string {
	if edge {
		return words
	}
	return ""
}

// pressRowsWords is how the rows of a top are pressed, and how one that was
// pressed the wrong way is put right.
func (w *quiltWork) pressRowsWords() string {
	l := w.frame.layout
	switch {
	case l.Sashing != nil:
		return fmt.Sprintf("Press every seam of a row %s.", w.plan.Press.Top.Rows[0])
	case w.frame.onPoint() && l.pointRows() > 1:
		return "Press odd rows to the right, even rows to the left, the seams of the side triangles with them, so that the rows nest. Do not pull: the triangles' short sides are on the bias."
	case w.frame.onPoint():
		return "Press toward the triangles."
	}
	return pressRowsWords(l.Across, l.Down)
}

// joinRows joins the rows and presses the top.
func (w *quiltWork) joinRows() {
	n, seam := w.joinsOfRows()
	if n == 0 {
		return
	}
	each := seam.Scale(1, int64(n), measure.Nearest)
	meet := points(w.join(joinRows), n)
	w.add(stage{
		key: keyJoinRows, name: "join rows", in: inJoins, count: n, place: Machine, after: w.stripTakes(),
		seam: seam, stitch: thread.Piecing, setup: span(rateSewSetup, 1),
		unit: joining(rateCorner, each, w.cornersOf(n), meet), doing: w.joinRowsWords(each),
	})
	w.add(stage{
		key: keyPressTop, name: "press the top", in: inJoins, count: n, place: Iron,
		setup: span(rateIronSetup, 1), unit: pressing(each), doing: w.pressTopWords(),
	})
}

// joinsOfRows is how many joins of rows there are, rows of sashing counted, and how
// long they are together. On point the ends run out at a slant, each an allowance
// times √2 beyond the finished edge.
func (w *quiltWork) joinsOfRows() (n int, seam measure.Length) {
	if !w.frame.onPoint() {
		n = w.frame.layout.Down + w.frame.levels() - 1
		return n, w.rowLength().Times(n)
	}
	l := w.frame.layout
	for row := range l.pointRows() - 1 {
		seam += w.frame.block.Width.Times(l.pointJoin(row)) + 2*w.job.Seam.TimesRoot2(measure.Up)
	}
	return l.pointRows() - 1, seam
}

// cornersOf is how many crossing seams have to be met in one of n joins.
func (w *quiltWork) cornersOf(n int) float64 {
	at := w.join(joinCorners)
	if w.frame.layout.Sashing != nil {
		at = w.join(joinCornerstones)
	}
	return points(at, n)
}

func (w *quiltWork) joinRowsWords(each measure.Length) string {
	l := w.frame.layout
	switch {
	case w.frame.onPoint():
		return fmt.Sprintf("Join the rows from the upper left corner on, nesting the seams; the long sides of the side triangles stand over a little. %s Block corners: %s",
			w.joinWords(joinRows), w.joinWords(joinCorners))
	case w.frame.stones():
		return fmt.Sprintf("Join rows of blocks and rows of sashing by turns from the top down, %s a seam. At the cornerstones: %s", w.show(each), w.joinWords(joinCornerstones))
	case l.Sashing != nil:
		strip := measure.Size{Width: w.plan.Sashing.Cut, Height: w.rowLength()}
		return fmt.Sprintf("Join the rows with a strip of %s %s between each two%s, %s a seam; mark the strip where the blocks end, so that they stand one below the other. %s",
			l.Sashing.Fabric, strip.Show(w.job.Units), edgeWords(l.Sashing.Edge, " and at the top and bottom"), w.show(each), w.joinWords(joinSashing))
	}
	return fmt.Sprintf("Join the rows from the top down, %s a seam. %s Block corners: %s", w.show(each), w.joinWords(joinRows), w.joinWords(joinCorners))
}

func (w *quiltWork) pressTopWords() string {
	switch {
	case w.frame.layout.Sashing != nil:
		return "Press every row join toward the sashing, the whole top flat."
	case w.frame.onPoint():
		return "Press every row join toward the lower right corner, the whole top flat."
	}
	return "Press every row join down, the whole top flat."
}

// points is the match points of one of n joins of a kind, on average.
func points(j Join, n int) float64 {
	return float64(j.Matches.Nest+j.Matches.Clash+j.Matches.Open) / float64(n)
}

// joining is the time of a long seam: the handling of so many of what rate
// names, the length, and a pin or a pinch at every match point.
func joining(rate string, seam measure.Length, handled, points float64) Span {
	return span(rate, handled).plus(span(rateMatchInch, seam.In(measure.Inches))).plus(span(ratePoint, points))
}

func (w *quiltWork) joinWords(between string) string { return matchWords(w.join(between).Matches) }
