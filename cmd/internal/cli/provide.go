package cli

import (
	"context"
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
	"quiltrun/tracker/shelf"
	"quiltrun/tracker/store"
)

// provision is a job that needs cloth: a file, or a booked job with what is done
// of it.
type provision struct {
	plan  planner.Plan
	state tracker.State // of a booked job
	own   func(fabric string) planner.Have
}

// left is what a plan of the job still wants.
func (p provision) left(plan planner.Plan) planner.Wanted {
	if p.state.Booked() {
		return p.state.Wanted(plan, p.own)
	}
	return plan.Wanted()
}

// provide plans files and booked jobs, and reads the shelf. Files alone need no
// store.
func (e *Env) provide(ctx context.Context, names []string) ([]provision, shelf.Shelf, error) {
	states := map[string]tracker.State{}
	var stock shelf.Shelf
	err := e.read(ctx, func(opened *store.Store) (err error) {
		if stock, err = shelfOf(opened); err != nil {
			return err
		}
		for _, name := range names {
			if isFile(name) {
				continue
			}
			if states[name], err = bookedState(opened, name); err != nil {
				return err
			}
		}
		return nil
	})
	if err != nil {
		return nil, stock, err
	}
	jobs := make([]provision, len(names))
	for i, name := range names {
		if jobs[i], err = e.provided(ctx, name, states[name], stock); err != nil {
			return nil, stock, err
		}
	}
	return jobs, stock, nil
}

func (e *Env) provided(ctx context.Context, name string, state tracker.State, stock shelf.Shelf) (provision, error) {
	p := provision{state: state}
	var err error
	if !state.Booked() {
		p.plan, err = e.planOf(ctx, name)
		return p, err
	}
	if p.plan, err = bookedPlan(state); err != nil {
		return p, err
	}
	p.own = func(fabric string) planner.Have {
		var own planner.Have
		for _, i := range stock.Own {
			switch {
			case i.Job != state.Ledger.Job || i.Name != fabric || i.Lies() == 0:
			case i.Form.Counted():
				own.Sheets = append(own.Sheets, planner.HaveSheets{Size: i.Size(), Count: int(i.Lies())})
			default:
				own.Lengths = append(own.Lengths, measure.Length(i.Lies()))
			}
		}
		for _, n := range p.plan.Fabrics {
			if n.Fabric.Name == fabric && !p.cut(fabric) { // which of them are cut is not known
				own = own.And(n.Fabric.OwnPieces())
			}
		}
		return own
	}
	return p, nil
}

// cut reports that some of a fabric is cut.
func (p provision) cut(fabric string) bool {
	return slices.ContainsFunc(p.state.Stock(), func(n tracker.Stock) bool {
		return n.Material == planner.ClothMaterial && n.Name == fabric && len(n.Uses) > 0
	})
}

// bookedAmong is the ids of those that are booked: what is kept for them is theirs.
func bookedAmong(jobs []provision) []string {
	var ids []string
	for _, j := range jobs {
		if j.state.Booked() {
			ids = append(ids, j.state.Ledger.Job)
		}
	}
	return ids
}
