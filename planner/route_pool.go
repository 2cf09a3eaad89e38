package planner

import (
	"fmt"

	"quiltrun/planner/patchwork"
	"quiltrun/planner/thread"
)

// poolStep is the stages of one step that is made for the lot as a whole, before
// its blocks are kitted.
type poolStep struct {
	made   patchwork.Made
	stages []stage
	units  int // taken of it over the run
}

// last is the stage from which the step's units are taken.
func (p poolStep) last() stage { return p.stages[len(p.stages)-1] }

// takes is a number of the step's units in counts of its last stage, which for a
// recut are cuts.
func (p poolStep) takes(units int) int { return units * p.last().count / max(1, p.units) }

// poolStages are the stages of strip sets, and of triangles that do not come out
// even with a block. A stage waits for the one before it in its step; the first
// one for what the step is made of.
func (w *blockWork) poolStages() []poolStep {
	var all []poolStep
	for _, s := range w.c.Build.Steps {
		if !s.Pooled || s.Step.Do == patchwork.Cut {
			continue
		}
		lot := *w
		lot.blocks, lot.stages, lot.batch = 1, nil, w.pools[s.Step.Name]
		made := s
		if s.Yield == 1 {
			made.Copies = w.pools.runs(s.Step.Name)
		}
		lot.step(made)
		if len(lot.stages) == 0 {
			continue
		}
		lot.stages[0].after = w.madeFrom(s, lot.stages[0].makes, all)
		w.link(lot.stages)
		all = append(all, poolStep{s, lot.stages, w.pools.units(s.Step.Name)})
	}
	return all
}

// link makes each stage of a pooled step come after the one before it, and its
// sewing after the seam test.
func (w *blockWork) link(stages []stage) {
	for i := range stages {
		s := &stages[i]
		if i > 0 {
			s.after = append(s.after, Ref{Key: stages[i-1].key, Lot: w.lot})
			if s.makes > 0 {
				s.after[0].Makes = s.makes
				s.after[0].Takes = []Take{{Count: stages[i-1].count}}
			}
		}
		if i == 0 && s.stitch != (thread.Stitch{}) {
			s.after = append(s.after, Ref{Key: keySeamTest, Lot: firstQuilt})
		}
	}
}

// madeFrom says what a pooled step takes: of each fabric's cut pieces, and of
// earlier pooled steps.
func (w *blockWork) madeFrom(s patchwork.Made, makes int, earlier []poolStep) []Ref {
	var refs []Ref
	pieces := w.piecesInto(s)
	for _, n := range w.plan.Fabrics {
		cut, all := 0, 0
		for _, p := range pieces[n.Fabric.Name] {
			all += p.Count
			if !readyCut(n.Fabric, p) {
				cut += p.Count
			}
		}
		switch {
		case cut > 0:
			refs = append(refs, Ref{Key: keyCut, Lot: fabricLot(n), Takes: []Take{{Count: cut}}, Makes: makes})
		case all > 0:
			refs = append(refs, Ref{Key: keyPrepare, Lot: fabricLot(n)})
		}
	}
	for _, p := range earlier {
		for _, feed := range p.made.Feeds {
			if feed.Step == s.Step.Name {
				taken := p.takes(feed.PerRun * w.pools.runs(s.Step.Name))
				refs = append(refs, Ref{Key: p.last().key, Lot: w.lot, Takes: []Take{{Count: taken}}, Makes: makes})
			}
		}
	}
	return refs
}

// piecesInto is the cut pieces that a pooled step takes itself, by fabric.
func (w *blockWork) piecesInto(s patchwork.Made) map[string][]PieceCount {
	all := map[string][]PieceCount{}
	for _, b := range w.pools[s.Step.Name] {
		for _, cloth := range s.Cloth() {
			addPieces(all, fabricOf(b.fabrics, cloth.Role), forBlock(cloth, b.runs))
		}
		for _, earlier := range w.c.Build.Steps {
			for _, feed := range earlier.Feeds {
				if earlier.Step.Do != patchwork.Cut || feed.Step != s.Step.Name {
					continue
				}
				for _, cloth := range earlier.Cloth() {
					addPieces(all, fabricOf(b.fabrics, cloth.Role), forBlock(cloth, feed.PerRun*b.runs))
				}
			}
		}
	}
	return all
}

// unitRefs says what each block takes of the steps that were made for the lot. A
// pool is counted for the colourway as a whole, not for each list of fabrics in
// it: what is logged of slices says how many there are, not of which prints, so a
// block counts as ready though its own print's slices may be still to come.
func (w *blockWork) unitRefs(pooled []poolStep) []Ref {
	var refs []Ref
	for _, p := range pooled {
		if p.made.Copies == 0 {
			continue
		}
		ref := Ref{Key: p.last().key, Lot: w.lot}
		for _, b := range w.own {
			ref.Takes = append(ref.Takes, Take{Block: b.ID, Count: p.takes(p.made.Copies)})
		}
		refs = append(refs, ref)
	}
	return refs
}

// pooledNames are the steps made for the lot from which blocks take.
func pooledNames(b *patchwork.Build) []string {
	var names []string
	for _, s := range b.Steps {
		if s.Pooled && s.Copies > 0 && s.Step.Do != patchwork.Cut {
			names = append(names, s.Step.Name)
		}
	}
	return names
}

// flat is the stages of all pooled steps, in order.
func flat(pooled []poolStep) []stage {
	var stages []stage
	for _, p := range pooled {
		stages = append(stages, p.stages...)
	}
	return stages
}

// amounts is how often a step is made and how many of its units are needed: for
// a block, or for the lot.
func (w *blockWork) amounts(s patchwork.Made) (runs, units int) {
	if w.batch != nil {
		return w.pools.runs(s.Step.Name), w.pools.units(s.Step.Name)
	}
	return s.Copies / s.Yield, s.Copies
}

// forTheLot says how many runs a pooled step has, by its fabrics, and what is
// left over; "" where the step is made block by block.
func (w *blockWork) forTheLot(s patchwork.Made, run, unit string) string {
	if w.batch == nil {
		return ""
	}
	runs, units := w.amounts(s)
	text := fmt.Sprintf(" For the whole colourway: %s%s", counted(runs, run), batchWords(w.batch, run))
	if spare := runs*s.Yield - units; spare > 0 {
		text += fmt.Sprintf(", room for %s; %d are needed, %d to spare", counted(runs*s.Yield, unit), units, spare)
	}
	return text + "."
}
