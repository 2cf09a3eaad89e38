package planner

import (
	"slices"

	"quiltrun/planner/measure"
)

// Wanted is what one job still takes: its plan, less what is cut and sewn.
type Wanted struct {
	Job     Job
	Quilts  int // not handed over yet
	Fabrics []WantedFabric

	Batting  *BattingPlan // nil: none is asked for
	Battings int          // quilts that are not layered yet
	Thread   ThreadPlan   // Bobbins is left 0
	Machine  Minutes      // still to be sewn, by the table
}

// WantedFabric is the pieces of one fabric that are still to be cut, the backings
// that are still to be pieced of it, and what the job has of it by itself.
type WantedFabric struct {
	FabricNeed // of it the fabric and the pieces, backing panels among them
	Backing    *BackingPlan
	Backings   int
	Own        Have
	Over       []PieceCount // for blocks, cut beyond what they take
	Begun      []PieceCount // cut from sheets that still count as there
	Half       Amount       // of yardage of which some is cut: what counts as there for the rest, in proportion; else 0
}

// Wanted is what the plan takes where nothing is done yet.
func (p Plan) Wanted() Wanted {
	w := Wanted{
		Job: p.Job, Quilts: p.Job.Quantity, Batting: p.Materials.Batting,
		Battings: p.Job.Quantity, Thread: p.Materials.Thread,
	}
	w.Thread.Bobbins = 0
	for _, n := range p.Fabrics {
		f := WantedFabric{FabricNeed: FabricNeed{Fabric: n.Fabric, Pieces: n.Pieces}, Own: n.Fabric.Own()}
		if b := p.Materials.Backing; b != nil && b.Fabric == n.Fabric.Name {
			f.Backing, f.Backings = b, p.Job.Quantity
		}
		w.Fabrics = append(w.Fabrics, f)
	}
	for _, o := range p.Operations {
		if o.Place == Machine {
			w.Machine += o.Minutes()
		}
	}
	return w
}

// none reports that nothing of the fabric is wanted.
func (f WantedFabric) none() bool { return len(f.Pieces) == 0 }

// without is the pieces less a number that are cut, longest first, of those for
// one purpose. Pieces that are used as they come are told apart.
func without(f Fabric, pieces []PieceCount, purpose string, ready bool, cut int) []PieceCount {
	var left []PieceCount
	for _, p := range pieces {
		if p.For == purpose && readyCut(f, p) == ready {
			gone := min(cut, p.Count)
			cut -= gone
			p.Count -= gone
		}
		if p.Count > 0 {
			left = append(left, p)
		}
	}
	return left
}

// Done takes off what is done in a row of the route. More than its count are
// pieces that are over.
func (w *Wanted) Done(o Operation, done int) {
	over := max(0, done-o.Count)
	done -= over
	if o.Place == Machine && o.Count > 0 {
		w.Machine -= o.Setup.Mean*Minutes(oneIf(done > 0)) + Minutes(done)*o.Unit.Mean
	}
	if o.Count > 0 {
		w.Thread.less(ThreadUse(o.Key), o.ThreadLength.Scale(int64(done), int64(o.Count), measure.Nearest))
	}
	if done < o.Count && o.Lot.Kind == QuiltLot {
		return
	}
	switch o.Key {
	case keyLayer, keySendOut:
		w.Battings = max(0, w.Battings-1)
	case keyHandOver:
		w.Quilts = max(0, w.Quilts-1)
	}
	for i := range w.Fabrics {
		w.Fabrics[i].done(o, done, over)
	}
}

// done takes off what is cut of one fabric.
func (f *WantedFabric) done(o Operation, done, over int) {
	if o.Key == keyBacking && o.Lot.Kind == QuiltLot {
		f.lessBacking()
	}
	if o.Key == keyMakeBind && o.Lot.Kind == QuiltLot {
		f.Pieces = without(f.Fabric, f.Pieces, forBinding, true, o.Count)
	}
	if o.Lot != fabricLot(f.FabricNeed) {
		return
	}
	for _, c := range cuttings {
		if c.key != o.Key {
			continue
		}
		if at := slices.IndexFunc(f.Pieces, func(p PieceCount) bool { return p.For == c.purpose }); at >= 0 && over > 0 && c.purpose == forBlocks {
			f.Over = append(f.Over, PieceCount{Size: f.Pieces[at].Size, Count: over, For: forBlocks})
		}
		f.Pieces = without(f.Fabric, f.Pieces, c.purpose, false, done)
		if c.purpose == forBlocks && done >= o.Count {
			f.SparesCut()
		}
	}
}

// SparesCut takes spare pieces off: they are cut with the last of the blocks', and
// are not cut again where some are lost.
func (f *WantedFabric) SparesCut() {
	f.Pieces = slices.DeleteFunc(slices.Clone(f.Pieces), func(p PieceCount) bool { return p.For == forSpare })
}

// lessBacking takes one quilt's panels off.
func (f *WantedFabric) lessBacking() {
	if f.Backing == nil || f.Backings == 0 {
		return
	}
	f.Backings--
	f.Pieces = slices.Clone(f.Pieces)
	for _, panel := range f.Backing.Cut {
		for i := range f.Pieces {
			if p := &f.Pieces[i]; p.For == forBacking && p.Size == panel && p.Count > 0 {
				p.Count--
				break
			}
		}
	}
	f.Pieces = slices.DeleteFunc(f.Pieces, func(p PieceCount) bool { return p.Count == 0 })
}

// Ready takes off pieces that were used as they came.
func (f *WantedFabric) Ready(used int) {
	f.Pieces = without(f.Fabric, f.Pieces, forBlocks, true, used)
}

// Begin notes which of the cut pieces came from sheets that are begun and still
// count as there: those beyond the share of the sheets that are used up. The last
// that were cut, the smallest, are taken for them.
func (f *WantedFabric) Begin(plan Plan, used, sheets int) {
	at := slices.IndexFunc(plan.Fabrics, func(n FabricNeed) bool { return n.Fabric.Name == f.Fabric.Name })
	if at < 0 || sheets == 0 {
		return
	}
	all, cut := 0, map[string][]PieceCount{}
	for _, p := range plan.Fabrics[at].Pieces {
		if !readyCut(f.Fabric, p) {
			all += p.Count
			addPieces(cut, "", PieceCount{Size: p.Size, Count: p.Count, For: p.For})
		}
	}
	for _, p := range f.Pieces {
		if !readyCut(f.Fabric, p) {
			addPieces(cut, "", PieceCount{Size: p.Size, Count: -p.Count, For: p.For})
		}
	}
	begun := sumPieces(cut[""]) - used*all/sheets
	for _, p := range slices.Backward(cut[""]) {
		if n := min(begun, p.Count); n > 0 {
			begun -= n
			f.Begun = append(f.Begun, PieceCount{Size: p.Size, Count: n, For: p.For})
		}
	}
}

// less takes thread off one use.
func (t *ThreadPlan) less(use string, l measure.Length) {
	t.Total -= l
	switch use {
	case "piecing":
		t.Piecing -= l
	case "quilting":
		t.Quilting -= l
	case "binding":
		t.Binding -= l
	}
}
