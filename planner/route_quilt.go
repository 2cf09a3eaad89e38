package planner

import (
	"fmt"

	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// Keys of what a quilt goes through once its blocks are made.
const (
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
		english.Capital(b.PanelWords(w.job.Units)), b.Fabric, b.SeamsRun, w.show(b.SeamTaken), b.SeamWords(w.job.Units), w.sized(b.Size))
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
		after: []Ref{w.cutRow(b.Fabric, keyCutBind, forBinding)}, stitch: thread.Piecing, unit: span(rateStrip, 1),
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
