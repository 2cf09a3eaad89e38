package cloth

import (
	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// CutYardage cuts pieces from cloth of a usable width, using as little length
// as it finds. The plan is never longer than strips of each size of its own,
// and depends on nothing but what it is given. Pieces too wide for the cloth are
// a *TooLarge.
func CutYardage(wants []Want, width measure.Length, s Settings) (Plan, error) {
	if err := checked(wants); err != nil {
		return Plan{}, err
	}
	width -= s.SquareUp
	for _, w := range wants {
		if w.Size.Width > width && (w.Directional || w.Size.Height > width) {
			return Plan{}, &TooLarge{w, measure.Size{Width: width + s.SquareUp}}
		}
	}
	d := newDraft(wants, nil, s, width)
	plan := Plan{Style: d.style()}
	if len(d.pieces) == 0 {
		return plan, nil
	}
	strip := d.strip(d.cells(width))
	root := d.exact(strip.Root).onBolt(width)
	plan.Length = root.size.Height + s.SquareUp
	plan.Bound, plan.StyleBound = d.bounds(strip, width, root.size.Height)
	plan.lay(d, Cloth{Size: measure.Size{Width: width + s.SquareUp, Height: plan.Length}}, root)
	plan.work(d, []*part{root})
	return plan, nil
}

// work lists the ruler work and adds it up.
func (p *Plan) work(d *draft, cloths []*part) {
	p.Steps = d.steps(cloths)
	for _, s := range p.Steps {
		p.Cuts += s.Cuts
	}
}

func (d *draft) strip(w int) guillotine.Strip {
	if d.style() == Nested {
		return guillotine.Nested(w, d.pieces, d.settings.effort())
	}
	return guillotine.Simple(w, d.pieces, d.settings.effort())
}

// bounds are those of the strip where the grid is exact, else the area's.
func (d *draft) bounds(strip guillotine.Strip, width, length measure.Length) (any, style measure.Length) {
	if d.rounded {
		any = bound(d.area(), width, length)
		return any + d.settings.SquareUp, any + d.settings.SquareUp
	}
	return d.unit.Times(strip.Bound) + d.settings.SquareUp, d.unit.Times(strip.Style) + d.settings.SquareUp
}
