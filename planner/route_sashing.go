package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// sashingRows makes what lies between the rows: rows of sashing pieces and
// cornerstones, or strips that are longer than the cloth is wide.
func (w *quiltWork) sashingRows() {
	l, f := w.frame.layout, w.frame
	switch levels := f.levels(); {
	case l.Sashing == nil || levels == 0:
	case !f.stones():
		w.pieceSashing(levels)
	case f.uprights() > 0:
		each := l.Across + f.uprights() - 1
		n, high := levels*each, w.plan.Sashing.Cut
		w.add(stage{
			key: keySewSashing, name: "sew sashing rows", in: inJoins, count: n, place: Machine, aside: true,
			after: []Ref{
				w.takesOf(l.Sashing.Fabric, keyCutSash, forSashing, w.plan.Sashing.Level),
				w.takesOf(l.Sashing.Cornerstones, keyCutStones, forCornerstones, w.plan.Sashing.Cornerstones),
			},
			seam: high.Times(n), stitch: thread.Piecing, setup: span(rateSewSetup, 1), unit: joining(rateRowJoin, high, 1, 0),
			doing: fmt.Sprintf("Sew %s, each of %d sashing pieces %s of %s with cornerstones %s of %s between them%s: %s a row.",
				counted(levels, "row"), l.Across, measure.Size{Width: w.plan.Colourways[0].Raw.Width, Height: high}.Show(w.job.Units), l.Sashing.Fabric,
				w.sized(measure.Size{Width: high, Height: high}), l.Sashing.Cornerstones, edgeWords(f.edged(), " and at both ends"), counted(each, "join")),
		})
		w.add(stage{
			key: keyPressSash, name: "press the sashing rows", in: inRows, count: levels, place: Iron, aside: true,
			after: []Ref{{Key: keySewSashing, Lot: w.lot}}, setup: span(rateIronSetup, 1),
			unit:  pressingRow(high, n, levels),
			doing: fmt.Sprintf("Press every seam %s: so it nests with those of the rows of blocks.", w.plan.Press.Top.Sashing),
		})
	}
}

// pieceSashing joins strips for the rows that are longer than a strip.
func (w *quiltWork) pieceSashing(levels int) {
	s := w.plan.Sashing
	cut, strip, length := s.Cut, w.stripLength(w.fabric(s.Fabric)), s.StripLength
	if strip >= length {
		return
	}
	strips, _ := stripsFor(slices.Repeat([]measure.Length{length}, levels), strip, w.job.Seam)
	joins := strips - 1
	w.add(stage{
		key: keyPieceSash, name: "piece the sashing strips", in: inStrips, count: levels, place: Machine, aside: true,
		after: []Ref{{Key: keyCutSash, Lot: Lot{FabricLot, s.Fabric}}},
		seam:  cut.Times(joins), stitch: thread.Piecing, unit: span(rateStrip, float64(joins)/float64(levels)),
		doing: fmt.Sprintf("Join strips end to end with straight seams, press them open, and cut off %s %s: %s in one chain.",
			counted(levels, "strip"), measure.Size{Width: cut, Height: length}.Show(w.job.Units), counted(joins, "join")),
	})
}

// takesOf is so many of the pieces that are cut for a purpose. Long strips of one
// fabric may be among them, of which nobody can say yet how many a quilt takes; then
// all are cut first. Squares that come ready are made ready alone.
func (w *quiltWork) takesOf(fabric, key, purpose string, count int) Ref {
	ref := w.cutRow(fabric, key, purpose)
	if w.frame.stones() && ref.Key != keyPrepare {
		ref.Takes = []Take{{Count: count}}
	}
	return ref
}

// sashPiece is the raw size of a sashing piece beside a block.
func (w *quiltWork) sashPiece() measure.Size {
	return measure.Size{Width: w.plan.Sashing.Cut, Height: w.plan.Colourways[0].Raw.Height}
}

// stripTakes is what is joined with the rows: long strips of sashing that need no
// piecing.
func (w *quiltWork) stripTakes() []Ref {
	l := w.frame.layout
	if l.Sashing == nil || w.frame.stones() && w.frame.uprights() > 0 {
		return nil
	}
	if w.frame.stones() {
		return []Ref{w.takesOf(l.Sashing.Fabric, keyCutSash, forSashing, w.plan.Sashing.Level)}
	}
	if w.stripLength(w.fabric(l.Sashing.Fabric)) < w.rowLength() {
		return nil
	}
	return []Ref{{Key: keyCutSash, Lot: Lot{FabricLot, l.Sashing.Fabric}}}
}
