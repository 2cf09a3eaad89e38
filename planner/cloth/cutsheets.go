package cloth

import (
	"errors"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// CutSheets cuts pieces from sheets, as few as it finds. Sheets that are counted
// are used first, and of the endless ones no more than the rest needs; a plan on
// one size of endless sheets never takes more than sheets for each size of
// piece alone. What finds no place is Missing. Pieces too large for every sheet
// are a *TooLarge.
func CutSheets(wants []Want, sheets []Sheet, s Settings) (Plan, error) {
	if err := checked(wants); err != nil {
		return Plan{}, err
	}
	stock, err := squared(sheets, s)
	if err != nil {
		return Plan{}, err
	}
	for _, w := range wants {
		if !heldBy(stock, w) {
			return Plan{}, &TooLarge{w, largest(sheets)}
		}
	}
	d := newDraft(wants, nil, s, sidesOf(stock)...)
	plan := Plan{Style: d.style()}
	if len(d.pieces) == 0 {
		return plan, nil
	}
	cut := guillotine.OnSheets(d.pieces, d.stock(stock), plan.Style == Nested, s.effort())
	plan.Sheets, plan.SheetBound = len(cut.Cut), cut.Bound
	if d.rounded {
		plan.SheetBound = min(plan.Sheets, d.sheetsByArea(stock))
	}
	var roots []*part
	for _, c := range cut.Cut {
		root := d.assigned(d.exact(c.Root).onSheet(stock[c.Stock].Size))
		root.hand = stock[c.Stock].Count > 0
		roots = append(roots, root)
	}
	plan.work(wants, roots, s)
	for k, c := range cut.Cut {
		plan.lay(s, Cloth{Name: sheets[c.Stock].Name, Size: sheets[c.Stock].Size, Hand: sheets[c.Stock].Count > 0}, roots[k])
	}
	plan.Missing = d.missing()
	return plan, nil
}

// squared are the sheets once squared up on two sides.
func squared(sheets []Sheet, s Settings) ([]Sheet, error) {
	var out []Sheet
	for _, sheet := range sheets {
		sheet.Size.Width -= s.SquareUp
		sheet.Size.Height -= s.SquareUp
		if sheet.Size.Width <= 0 || sheet.Size.Height <= 0 || sheet.Count < 0 {
			return nil, errors.New("a sheet of cloth has no size left after squaring up, or a count below 0; give its width, its height and how many there are")
		}
		out = append(out, sheet)
	}
	if len(out) == 0 {
		return nil, errors.New("there is no cloth to cut from; give at least one sheet")
	}
	return out, nil
}

func heldBy(sheets []Sheet, w Want) bool {
	for _, sheet := range sheets {
		if w.Count == 0 || holds(sheet.Size, w.Size) || !w.Directional && holds(sheet.Size, w.Size.Turned()) {
			return true
		}
	}
	return false
}

func largest(sheets []Sheet) measure.Size {
	best := sheets[0].Size
	for _, s := range sheets {
		if measure.Mul(s.Size.Width, s.Size.Height).Cmp(measure.Mul(best.Width, best.Height)) > 0 {
			best = s.Size
		}
	}
	return best
}

func sidesOf(sheets []Sheet) []measure.Length {
	var out []measure.Length
	for _, s := range sheets {
		out = append(out, s.Size.Width, s.Size.Height)
	}
	return out
}

// stock are the sheets in whole cells.
func (d *draft) stock(sheets []Sheet) []guillotine.Stock {
	var out []guillotine.Stock
	for _, s := range sheets {
		out = append(out, guillotine.Stock{W: d.cells(s.Size.Width), H: d.cells(s.Size.Height), N: s.Count})
	}
	return out
}

// sheetsByArea is how many of the largest sheets have the area of the pieces.
func (d *draft) sheetsByArea(sheets []Sheet) int {
	size := largest(sheets)
	one, n := measure.Mul(size.Width, size.Height), 0
	for area := d.area(); one.Times(n).Cmp(area) < 0; {
		n++
	}
	return n
}
