package planner

import (
	"fmt"
	"slices"
	"strings"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
	"quiltrun/planner/thread"
)

// blockStages are the stages that a colourway's blocks go through: what is made
// for the lot as a whole, then from the stack of pieces to the squared-up block.
// They follow from the recipe's steps.
func (m *maker) blockStages(colourway int) []stage {
	c := &m.plan.Colourways[colourway]
	w := &blockWork{
		maker: m, c: c, lot: Lot{ColourwayLot, c.Name}, own: m.own[colourway], blocks: len(m.own[colourway]),
		pools: m.poolsOf(colourway), stages: make([]stage, 0, usualStages),
	}
	pooled := w.poolStages()
	w.kit(pooled)
	for _, s := range c.Build.Steps {
		if !s.Pooled {
			w.step(s)
		}
	}
	w.add(stage{
		key: keySquareUp, name: "square up", in: inBlocks, per: 1, place: CuttingTable,
		unit: span(rateSquareUp, 1),
		doing: fmt.Sprintf("Trim each block to %s raw; it will finish %s. Pin its id at its top. The block is then made.",
			w.sized(c.Raw), w.sized(c.Finished)),
	})
	if plain(c.Build) {
		last := &w.stages[len(w.stages)-1]
		last.unit = span(ratePlainUp, 1)
		last.doing = fmt.Sprintf("Check that each is %s raw: it is the whole block, and will finish %s.", w.sized(c.Raw), w.sized(c.Finished))
	}
	stages := chained(w.stages)
	for i := range stages {
		if stages[i].stitch != (thread.Stitch{}) {
			stages[i].after = append(stages[i].after, Ref{Key: keySeamTest, Lot: firstQuilt})
			break
		}
	}
	return append(flat(pooled), stages...)
}

// plain reports whether a block is one piece of cloth: nothing to sew, nothing
// to test.
func plain(b *patchwork.Build) bool {
	return len(b.Steps) == 1 && b.Steps[0].Step.Do == patchwork.Cut
}

// usualStages is room for what most blocks go through, and most quilts.
const usualStages = 24

// blockWork gathers one colourway's stages.
type blockWork struct {
	*maker
	c      *ColourwayPlan
	lot    Lot
	own    []*Block // of the run
	blocks int      // how many, or 1 where something is made for the lot as a whole
	pools  pools
	batch  []batch // of the pooled step that is being made for the lot; nil by block
	stages []stage
}

// add completes a stage of so many counts a block; for the lot, of so many in all.
func (w *blockWork) add(s stage) {
	s.lot = w.lot
	s.count = s.per * w.blocks
	if w.batch != nil {
		s.per = 0
	}
	w.stages = append(w.stages, s)
}

func (w *blockWork) kit(pooled []poolStep) {
	s := stage{
		key: keyKit, name: "kit", in: inBlocks, per: 1, place: CuttingTable, unit: span(rateKit, 1),
		doing: "One stack a block, in sewing order, its id on top; in each: " + w.pieceWords() + ".",
	}
	if plain(w.c.Build) {
		s.unit = span(ratePlainKit, 1)
	}
	s.after = append(w.cutRefs(), w.unitRefs(pooled)...)
	w.add(s)
}

// pieceWords lists what goes into one block's stack.
func (w *blockWork) pieceWords() string {
	var parts []string
	for _, s := range w.c.Build.Steps {
		switch {
		case s.Copies == 0:
		case s.Pooled && s.Step.Do != patchwork.Cut:
			parts = append(parts, fmt.Sprintf("%d %s", s.Copies, s.Step.Name))
		default:
			for _, cloth := range s.Cloth() {
				parts = append(parts, fmt.Sprintf("%d %s %s", s.Copies/s.Yield, cloth.Role, w.sized(cloth.Size)))
			}
		}
	}
	return strings.Join(parts, ", ")
}

// cutRefs says what each block takes from each fabric's cut pieces.
func (w *blockWork) cutRefs() []Ref {
	perBlock := blockPieces(w.c.Build)
	var refs []Ref
	for _, n := range w.plan.Fabrics {
		var takes []Take
		for _, b := range w.own {
			if count := takenBy(b, n.Fabric, perBlock); count > 0 {
				if takes == nil {
					takes = make([]Take, 0, len(w.own))
				}
				takes = append(takes, Take{Block: b.ID, Count: count})
			}
		}
		if takes != nil {
			refs = append(refs, Ref{Key: keyCut, Lot: fabricLot(n), Takes: takes})
		} else if cutPieces(n, forBlocks) == 0 && w.takesReady(n) {
			refs = append(refs, Ref{Key: keyPrepare, Lot: fabricLot(n)})
		}
	}
	return refs
}

// takesReady reports whether the colourway uses a fabric's pieces as they come.
func (w *blockWork) takesReady(n FabricNeed) bool {
	return slices.ContainsFunc(w.own, func(b *Block) bool {
		return slices.ContainsFunc(b.Fabrics, func(f RoleFabric) bool { return f.Fabric == n.Fabric.Name })
	})
}

// takenBy is how many cut pieces of a fabric a block takes.
func takenBy(b *Block, f Fabric, perBlock map[string][]PieceCount) int {
	count := 0
	for _, rf := range b.Fabrics {
		if rf.Fabric != f.Name {
			continue
		}
		for _, p := range perBlock[rf.Role] {
			if !readyCut(f, p) {
				count += p.Count
			}
		}
	}
	return count
}

// step adds the operations of one step of the recipe.
func (w *blockWork) step(s patchwork.Made) {
	from := len(w.stages)
	switch s.Step.Do {
	case patchwork.Sew:
		w.sew(s)
	case patchwork.Recut:
		w.recut(s)
	case patchwork.Turn:
		w.turn(s)
	case patchwork.Trim:
		w.add(stage{
			key: "trim-" + s.Step.Name, name: "trim " + s.Step.Name, in: inUnits, per: s.Copies, place: CuttingTable,
			unit: span(rateSquareUp, 1), doing: fmt.Sprintf("Trim all four sides to %s, the middle kept.", w.sized(s.Step.Size)),
		})
	case patchwork.HalfSquare:
		w.halfSquares(s)
	case patchwork.QuarterSquare:
		w.quarterSquares(s)
	case patchwork.Subcut:
		w.subcut(s)
	}
	for i := range w.stages[from:] {
		w.stages[from+i].step = s.Step.Name
	}
}

// turn lays the pieces out anew: for a block, or for each of its units that is
// recut.
func (w *blockWork) turn(s patchwork.Made) {
	t := stage{
		key: s.Step.Name, name: "turn and lay out", in: inBlocks, per: 1, place: DesignWall,
		unit: span(rateTurn, 1), doing: turnWords(s.Step),
	}
	if s.Step.Name != "turn" {
		t.name += " " + s.Step.Name
	}
	if s.Copies != 1 || w.batch != nil {
		t.in, t.per = inUnits, s.Copies
	}
	w.add(t)
}

// recut is two passes of the ruler: upright cuts, then level ones, the pieces
// left lying.
func (w *blockWork) recut(s patchwork.Made) {
	what := "recut"
	if s.Step.Name != "recut" {
		what += " " + s.Step.Of
	}
	passes := []struct {
		way, from string
		cuts      []measure.Length
		middle    measure.Length
	}{
		{"upright", "left edge", s.Cuts[0], s.Unit.Size.Width / 2},
		{"level", "top edge", s.Cuts[1], s.Unit.Size.Height / 2},
	}
	for _, p := range passes {
		if len(p.cuts) == 0 {
			continue
		}
		n := len(p.cuts)
		w.add(stage{
			key: s.Step.Name + "-" + p.way, name: what + " " + p.way, in: inCuts, per: n * s.Copies, place: CuttingTable,
			unit:  span(rateRulerCut, 1).plus(span(rateRecutSet, 1/float64(n))),
			doing: w.recutWords(p.cuts, p.middle, p.from),
		})
	}
}

// recutWords gives each cut from the middle, as it is laid to the ruler, and from
// the raw edge as a check.
func (w *blockWork) recutWords(cuts []measure.Length, middle measure.Length, edge string) string {
	before, beyond := "left", "right"
	if edge == "top edge" {
		before, beyond = "above", "below"
	}
	var fromMiddle, fromEdge []string
	for _, c := range cuts {
		switch d := c - middle; {
		case d < 0:
			fromMiddle = append(fromMiddle, fmt.Sprintf("%s %s", w.show(-d), before))
		case d > 0:
			fromMiddle = append(fromMiddle, fmt.Sprintf("%s %s", w.show(d), beyond))
		default:
			fromMiddle = append(fromMiddle, "through it")
		}
		fromEdge = append(fromEdge, w.show(c))
	}
	text := "Leave the pieces lying. Cut "
	switch {
	case len(cuts) == 2 && cuts[0]+cuts[1] == 2*middle:
		text += w.show(middle-cuts[0]) + " either side of the middle"
	case len(cuts) == 1 && cuts[0] == middle:
		text += "through the middle"
	default:
		text += "from the middle: " + listed(fromMiddle, "and")
	}
	return fmt.Sprintf("%s; that is %s from the %s.", text, listed(fromEdge, "and"), edge)
}

// turnName is a turn in words, "" for none.
func turnName(degrees int) string {
	switch (degrees%360 + 360) % 360 {
	case 90:
		return "a quarter turn clockwise"
	case 180:
		return "half a turn"
	case 270:
		return "a quarter turn anticlockwise"
	}
	return ""
}

// turnWords says which pieces turn, by row, and which then change places.
func turnWords(s patchwork.Step) string {
	var parts []string
	for r, row := range s.Turns {
		for c, degrees := range row {
			if name := turnName(degrees); name != "" {
				parts = append(parts, fmt.Sprintf("row %d piece %d %s", r+1, c+1, name))
			}
		}
	}
	turned, exchanged := "Turn no piece.", ""
	if parts != nil {
		turned = "Turn in place: " + strings.Join(parts, "; ") + "."
	}
	switch {
	case len(s.Exchange) > 0:
		exchanged = exchangeWords(s.Exchange)
	case parts == nil:
		return "Keep every piece as it lies."
	}
	return turned + exchanged + " The rest stay as they lie."
}

// exchangeWords says which pieces change places, counted row by row.
func exchangeWords(pairs [][2]int) string {
	parts := make([]string, len(pairs))
	for i, pair := range pairs {
		parts[i] = fmt.Sprintf("%d and %d", pair[0], pair[1])
	}
	return " Then exchange pieces, counted row by row from 1: " + strings.Join(parts, ", then ") + "."
}
