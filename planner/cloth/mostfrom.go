package cloth

import (
	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// MostFrom cuts from one sheet the pieces that are worth most together, each
// want at most its count; worth is for one piece of each want, and nil counts
// their areas. The simple style cuts strips whichever way yields more. What is
// not cut is Missing. That nothing is worth more is not proved.
func MostFrom(wants []Want, worth []int, sheet Sheet, s Settings) (Plan, error) {
	if err := checked(wants); err != nil {
		return Plan{}, err
	}
	stock, err := squared([]Sheet{sheet}, s)
	if err != nil {
		return Plan{}, err
	}
	size := stock[0].Size
	d := newDraft(wants, worth, s, size.Width, size.Height)
	plan := Plan{Style: d.style()}
	root := d.richest(size)
	if root == nil {
		plan.Missing = d.missing()
		return plan, nil
	}
	root = d.assigned(root.onSheet(size))
	plan.Sheets, plan.SheetBound = 1, 1
	plan.work(wants, []*part{root}, s)
	plan.lay(s, Cloth{Name: sheet.Name, Size: sheet.Size}, root)
	plan.Missing = d.missing()
	return plan, nil
}

// richest is the layout worth most that is found, or nil where nothing fits.
func (d *draft) richest(size measure.Size) *part {
	ways := []guillotine.Cut{guillotine.Across, guillotine.Upright}
	if d.style() == Nested {
		ways = []guillotine.Cut{guillotine.None}
	}
	worth := make([]int, len(d.pieces))
	for i, p := range d.pieces {
		worth[i] = p.W * p.H
		if d.worth != nil {
			worth[i] = d.worth[d.kinds[i][0].want]
		}
	}
	var best *guillotine.Node
	most := 0
	for _, first := range ways {
		root, total := guillotine.Richest(d.cells(size.Width), d.cells(size.Height), d.pieces, worth, first, d.settings.effort()/len(ways))
		if total > most {
			best, most = root, total
		}
	}
	if best == nil {
		return nil
	}
	return d.exact(best)
}
