package tracker

import "quiltrun/planner"

// Wanted is what a booked job still takes, of the plan of its ledger: cut pieces,
// pieced backings and sewn seams are taken off. The plan may be another one of
// the same job: what was done beyond it is over. Lost pieces are made up from spare
// ones first. What its file says is on hand is
// there less what was cut of it, as own says by fabric.
func (s State) Wanted(plan planner.Plan, own func(fabric string) planner.Have) planner.Wanted {
	cut := s.foldStock()
	w, spares := plan.Wanted(), cut.spares()
	for _, o := range plan.Operations {
		if row, ok := s.Row(o.Key, Lot(o.Lot)); ok {
			w.Done(o, row.Done+row.Spare+spares[rowKey{o.Key, Lot(o.Lot)}])
		}
	}
	for i := range w.Fabrics {
		f := &w.Fabrics[i]
		f.Own = own(f.Fabric.Name)
		if cut.sparesCut(f.Fabric.Name) {
			f.SparesCut()
		}
		f.Half = half(s.Stock(), f.Fabric.Name)
		for _, n := range s.Stock() {
			if n.Name != f.Fabric.Name || n.For != "" || !n.Form.Sheets() {
				continue
			}
			f.Ready(int(n.Whole - n.Left))
			f.Begin(plan, int(n.Whole-n.Left), int(n.Whole))
		}
	}
	return w
}

// half is what is left to use of a yardage of which some is cut, 0 of one that is
// whole.
func half(stock []Stock, fabric string) planner.Amount {
	var used, left planner.Amount
	for _, n := range stock {
		if n.Material == planner.ClothMaterial && n.Name == fabric && !n.Form.Counted() {
			used, left = used+n.Used(), left+n.Left
		}
	}
	if used == 0 {
		return 0
	}
	return left
}
