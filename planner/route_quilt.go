package planner

import (
	"fmt"

	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Keys of what a quilt goes through once its blocks are made.
const (
	keyLayOut     = "lay-out-top"
	keySewRows    = "sew-top-rows"
	keyPressRows  = "press-top-rows"
	keyJoinRows   = "join-top-rows"
	keyPressTop   = "press-top"
	keyMeasure    = "measure-top"
	keyBorders    = "add-borders"
	keyBacking    = "prepare-backing"
	keyLayer      = "layer"
	keyQuilt      = "quilt"
	keySquareBack = "square-backing"
	keyStay       = "stay-stitch"
	keySendOut    = "send-out"
	keyCollect    = "collect"
	keyTrim       = "trim"
	keyMakeBind   = "make-binding"
	keyAttach     = "attach-binding"
	keyFinish     = "finish-binding"
	keyHandOver   = "hand-over"
)

// quiltStages are the stages of one quilt, from its blocks to the client.
func (m *maker) quiltStages(quilt int) []stage {
	w := &quiltWork{maker: m, lot: Lot{QuiltLot, fmt.Sprintf("quilt-%d", quilt)}, stages: make([]stage, 0, usualStages)}
	w.top()
	w.borders()
	w.layers()
	w.binding()
	w.add(stage{
		key: keyHandOver, name: "hand over", in: inQuilts, count: 1, place: Hand, unit: span(rateHandOver, 1),
		doing: "Clip threads; count pins and needles against the tin; say whether it has been washed; sew on the label; add the care and fibre card; photograph; pack.",
	})
	return chained(w.stages)
}

// quiltWork gathers one quilt's stages.
type quiltWork struct {
	*maker
	lot    Lot
	stages []stage
}

func (w *quiltWork) add(s stage) {
	s.lot = w.lot
	w.stages = append(w.stages, s)
}

// top lays the blocks out, sews them into rows and the rows together.
func (w *quiltWork) top() {
	across, down := w.plan.Quilt.Across, w.plan.Quilt.Down
	block := w.plan.Colourways[0]
	row := block.Finished.Width.Times(across) + 2*w.job.Seam
	layOut := stage{
		key: keyLayOut, name: "lay out the top", in: inBlocks, count: across * down, place: DesignWall, unit: span(rateLayOut, 1),
		doing: fmt.Sprintf("Lay the blocks out as the map shows, %d across and %d down, and look from across the room.", across, down) + w.halfWords(),
	}
	for _, c := range w.plan.Colourways {
		layOut.after = append(layOut.after, Ref{Key: keySquareUp, Lot: Lot{ColourwayLot, c.Name}})
	}
	w.add(layOut)
	if across > 1 {
		n := down * (across - 1)
		w.add(stage{
			key: keySewRows, name: "sew blocks into rows", in: inJoins, count: n, place: Machine,
			seam: block.Raw.Height.Times(n), stitch: thread.Piecing, setup: span(rateSewSetup, 1),
			unit:  joining(rateRowJoin, block.Raw.Height, 1, points(w.plan.Joins[0], n)),
			doing: fmt.Sprintf("Sew the %d blocks of each row together: %d joins a row. %s", across, across-1, w.joinWords(0)),
		})
		w.add(stage{
			key: keyPressRows, name: "press the rows", in: inRows, count: down, place: Iron,
			setup: span(rateIronSetup, 1), unit: pressing(block.Raw.Height.Times(across - 1)).plus(span(ratePress, float64(across-1))),
			doing: pressRowsWords(across, down),
		})
	}
	if down > 1 {
		n := down - 1
		w.add(stage{
			key: keyJoinRows, name: "join rows", in: inJoins, count: n, place: Machine,
			seam: row.Times(n), stitch: thread.Piecing, setup: span(rateSewSetup, 1),
			unit:  joining(rateCorner, row, float64(across-1), points(w.plan.Joins[1], n)),
			doing: fmt.Sprintf("Join the rows from the top down, %s a seam. %s Block corners: %s", w.show(row), w.joinWords(1), w.joinWords(2)),
		})
		w.add(stage{
			key: keyPressTop, name: "press the top", in: inJoins, count: n, place: Iron,
			setup: span(rateIronSetup, 1), unit: pressing(row), doing: "Press every row join down, the whole top flat.",
		})
	}
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

func (w *quiltWork) joinWords(kind int) string { return matchWords(w.plan.Joins[kind].Matches) }

// borders measures the top through the middle and sews borders on.
func (w *quiltWork) borders() {
	raw := w.topOfBlocks()
	w.add(stage{
		key: keyMeasure, name: "measure through the middle", in: inQuilts, count: 1, place: CuttingTable, unit: span(rateMeasure, 1),
		doing: fmt.Sprintf("Measure the top through the middle both ways: it should be %s raw. Borders and backing go by what you measure.", w.sized(raw)),
	})
	if len(w.job.Borders) == 0 {
		return
	}
	s := stage{
		key: keyBorders, name: "add borders", in: inBorders, count: 4 * len(w.job.Borders), place: Machine,
		unit: span(rateBorder, 1), setup: span(rateSewSetup, 1), stitch: thread.Piecing,
	}
	s.doing = "Sides first, then top and bottom. Cut to the measure through the middle, pin at the quarters, sew, press outward."
	seen := map[string]bool{}
	for i, b := range w.plan.Materials.Borders {
		s.doing += fmt.Sprintf(" Border %d, %s, as planned: two of %s, two of %s, %s.", i+1, b.Fabric,
			measure.Size{Width: b.Cut, Height: b.Sides}.Show(w.job.Units), measure.Size{Width: b.Cut, Height: b.Ends}.Show(w.job.Units), b.CutWords())
		s.seam += 2*b.Sides + 2*b.Ends
		if !seen[b.Fabric] {
			s.after = append(s.after, Ref{Key: keyCutBord, Lot: Lot{FabricLot, b.Fabric}})
			seen[b.Fabric] = true
		}
	}
	w.add(s)
}

func (w *quiltWork) topOfBlocks() measure.Size {
	f := w.plan.Colourways[0].Finished
	return measure.Size{
		Width:  f.Width.Times(w.plan.Quilt.Across) + 2*w.job.Seam,
		Height: f.Height.Times(w.plan.Quilt.Down) + 2*w.job.Seam,
	}
}

// layers prepares the backing and quilts, at home or sent out.
func (w *quiltWork) layers() {
	if b := w.plan.Materials.Backing; b != nil {
		w.add(stage{
			key: keyBacking, name: "prepare the backing", aside: true, in: inPanels, count: b.Panels, place: Machine,
			after: []Ref{{Key: keyPrepare, Lot: Lot{FabricLot, b.Fabric}}},
			seam:  b.Panel.Height.Times(b.Panels - 1), stitch: thread.Piecing, unit: backingTime(b.Panels),
			doing: w.backingWords(b),
		})
	}
	q := w.job.Quilting
	if q != nil && q.SentOut {
		w.sentOut(q.LeadDays)
		return
	}
	area := w.plan.Quilt.Finished.Width.In(measure.Inches) * w.plan.Quilt.Finished.Height.In(measure.Inches)
	if w.job.Batting != nil || w.job.Backing != nil {
		w.add(stage{
			key: keyLayer, name: "layer and baste", in: inQuilts, count: 1, place: Frame,
			setup: span(rateBasteSet, 1), unit: span(rateBaste, area),
			doing: "Tape the backing down face down, smooth the batting and the top over it from the middle out, and pin-baste a hand's width apart (curved safety pins; thread serves as well, and basting spray with the window open and no flame near).",
		})
	}
	if q != nil {
		w.quilting(q.Density)
	}
}

// backingTime is the time of one panel.
func backingTime(panels int) Span {
	if panels == 1 {
		return span(rateOnePiece, 1)
	}
	return span(rateBacking, 1/float64(panels))
}

func (w *quiltWork) backingWords(b *BackingPlan) string {
	if b.Panels == 1 {
		return fmt.Sprintf("One piece of %s, at least %s.", b.Fabric, w.sized(b.Size))
	}
	return fmt.Sprintf("%s of %s, selvages off, joined %s with %s seams pressed open, %s; together at least %s.",
		capital(b.PanelWords(w.job.Units)), b.Fabric, b.SeamsRun, w.show(b.SeamTaken), b.SeamWords(w.job.Units), w.sized(b.Size))
}

func (w *quiltWork) quilting(d Density) {
	apart := w.spacing(d)
	lines := thread.LinesOver(w.plan.Quilt.Finished, apart)
	w.add(stage{
		key: keyQuilt, name: "quilt", in: inQuilts, count: 1, place: Machine, seam: lines, stitch: thread.Quilting,
		setup: span(rateQuiltSet, 1), unit: span(rateQuiltInch, lines.In(measure.Inches)),
		doing: fmt.Sprintf("Quilt from the middle out, %s: lines about %s apart. Check the batting's own greatest distance.", d, w.show(apart)),
	})
}

// spacing is how far apart the quilting lines run, to the whole centimetre in
// a metric job.
func (m *maker) spacing(d Density) measure.Length {
	apart := thread.Spacing[string(d)]
	if m.job.Units == measure.Centimetres {
		apart = apart.Scale(1, int64(measure.Centimetre), measure.Nearest) * measure.Centimetre
	}
	return apart
}

func (w *quiltWork) sentOut(days int) {
	edge := w.edge()
	if w.plan.Materials.Backing != nil {
		w.add(stage{
			key: keySquareBack, name: "square the backing", in: inQuilts, count: 1, place: CuttingTable, unit: span(rateSquareBck, 1),
			doing: "Square the backing, straight on all four sides, and mark its top.",
		})
	}
	w.add(stage{
		key: keyStay, name: "stay-stitch the edge", in: inQuilts, count: 1, place: Machine, seam: edge, stitch: thread.Piecing,
		unit: span(rateStay, edge.In(measure.Inches)), doing: "Sew round the top an eighth of an inch (3 mm) from the raw edge, so that seams do not open.",
	})
	w.add(stage{
		key: keySendOut, name: "send out for quilting", in: inQuilts, count: 1, place: Hand, unit: span(rateSendOut, 1), wait: days,
		doing: fmt.Sprintf("Hand over top, backing and batting, not layered, with a note of the wishes. Allow %d days.", days),
	})
	w.add(stage{
		key: keyCollect, name: "collect", in: inQuilts, count: 1, place: Hand, unit: span(rateSendOut, 1),
		doing: "Collect the quilt and look both sides over before paying.",
	})
}

// binding trims the quilt and binds it.
func (w *quiltWork) binding() {
	edge := w.edge()
	inches := edge.In(measure.Inches)
	if w.job.Quilting != nil {
		w.add(stage{
			key: keyTrim, name: "trim", in: inQuilts, count: 1, place: CuttingTable, unit: span(rateTrim, inches),
			doing: fmt.Sprintf("Trim batting and backing to the edge of the top, corners square: about %s, a little less after quilting.", w.sized(w.plan.Quilt.Top)),
		})
	}
	b := w.plan.Materials.Binding
	if b == nil {
		return
	}
	w.add(w.makeBinding(b))
	w.add(stage{
		key: keyAttach, name: "attach the binding", in: inQuilts, count: 1, place: Machine, seam: edge, stitch: thread.Binding,
		setup: span(rateSewSetup, 1), unit: span(rateBindInch, inches),
		doing: fmt.Sprintf("Raw edges together on the %s of the quilt, %s seam. Begin mid-side with a tail of a hand's length, fold a mitre at each corner, close the ends on the diagonal.",
			w.firstSide(), w.job.SeamShown()),
	})
	w.add(w.finish(edge))
}

// makeBinding makes the binding's length of its strips, or of a square.
func (w *quiltWork) makeBinding(b *BindingPlan) stage {
	s := stage{
		key: keyMakeBind, name: "make the binding", aside: true, in: inStrips, count: b.Strips, place: Machine,
		after: []Ref{{Key: keyCutBind, Lot: Lot{FabricLot, b.Fabric}}}, stitch: thread.Piecing, unit: span(rateStrip, 1),
	}
	makes := fmt.Sprintf("they make %s, %s over the edge; at least %s is needed", w.show(w.edge()+b.Spare), w.show(b.Spare), w.show(b.Length))
	switch {
	case b.Square > 0:
		s.in, s.seam = inPieces, b.Square.Times(2*b.Strips)
		s.doing = fmt.Sprintf("Cut each square, %s, in two on the diagonal and sew two straight edges together; mark lines %s apart along the bias, join the other straight edges one line aside to a tube, and cut round and round along the lines; fold lengthwise: %s.",
			w.show(b.Square), w.show(b.Strip), makes)
	case b.Joints == StraightJoint:
		s.seam = b.Strip.Times(b.Strips - 1)
		s.doing = fmt.Sprintf("Join %d strips %s wide end to end with straight seams, press the joins open, fold lengthwise: %s.", b.Strips, w.show(b.Strip), makes)
	default:
		s.seam = b.Strip.TimesRoot2(measure.Up).Times(b.Strips - 1)
		s.doing = fmt.Sprintf("Join %d strips %s wide on the diagonal, trim and press the joins open, fold lengthwise: %s.", b.Strips, w.show(b.Strip), makes)
	}
	return s
}

// firstSide is the side that the binding is sewn to first: by machine it is
// turned over to the front and seen being sewn down, by hand over to the back.
func (w *quiltWork) firstSide() string {
	if w.job.Binding.Finish == ByHand {
		return "front"
	}
	return "back"
}

func (w *quiltWork) finish(edge measure.Length) stage {
	inches := edge.In(measure.Inches)
	if w.job.Binding.Finish == ByHand {
		return stage{
			key: keyFinish, name: "finish the binding", in: inQuilts, count: 1, place: Hand, seam: edge,
			unit: span(rateHandInch, inches), doing: "Fold to the back and sew down by hand.",
		}
	}
	return stage{
		key: keyFinish, name: "finish the binding", in: inQuilts, count: 1, place: Machine, seam: edge, stitch: thread.Binding,
		unit: span(rateMachInch, inches), doing: "Fold over to the front and sew down by machine, catching the fold all along.",
	}
}
