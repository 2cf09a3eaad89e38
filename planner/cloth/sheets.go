package cloth

import "quiltrun/planner/measure"

// SheetCut is pieces cut from sheets of one size.
type SheetCut struct {
	Sheets int
	Bound  int   // no plan can take fewer
	Per    []int // pieces of each size from one sheet, in the order given
}

// FromSheets cuts each size of piece from sheets of its own: whole rows and
// columns of equal pieces, laid whichever way yields more. It returns false
// with the first piece that no sheet holds.
func FromSheets(pieces []Pieces, sheet measure.Size, directional bool) (SheetCut, measure.Size, bool) {
	var plan SheetCut
	var area measure.Area
	for _, p := range pieces {
		per := PerSheet(p.Size, sheet, directional)
		if per == 0 {
			return SheetCut{}, p.Size, false
		}
		plan.Per = append(plan.Per, per)
		plan.Sheets += (p.Count + per - 1) / per
		area = area.Add(measure.Mul(p.Size.Width, p.Size.Height).Times(p.Count))
	}
	one := measure.Mul(sheet.Width, sheet.Height)
	for plan.Bound < plan.Sheets && one.Times(plan.Bound).Cmp(area) < 0 {
		plan.Bound++
	}
	return plan, measure.Size{}, true
}

// PerSheet is how many pieces of one size a sheet yields in rows and columns.
func PerSheet(piece, sheet measure.Size, directional bool) int {
	per := grid(piece, sheet)
	if !directional {
		per = max(per, grid(piece.Turned(), sheet))
	}
	return per
}

func grid(piece, sheet measure.Size) int {
	return measure.FloorDiv(sheet.Width, piece.Width) * measure.FloorDiv(sheet.Height, piece.Height)
}
