package planner

import (
	"fmt"
	"slices"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

// layers plans what lies under, between and round the top, as far as it takes
// cloth.
func (m *maker) layers() {
	m.plan.Materials.Backing = m.backing()
	m.plan.Materials.Batting = m.batting()
	m.plan.Materials.Binding = m.binding()
}

// backing is one quilt's backing, nil where none is asked for.
func (m *maker) backing() *BackingPlan {
	b := m.job.Backing
	if b == nil {
		return nil
	}
	f := m.fabric(b.Fabric)
	if f.Form.Sheets() {
		m.refuse("backing.fabric", fmt.Sprintf("a backing is pieced from yardage, and %s is %s", f.Name, f.Form), "name a fabric of the form yardage")
		return nil
	}
	width := m.stripLength(f)
	if width <= 2*cloth.BackingSeam {
		m.refuse("backing.fabric", fmt.Sprintf("%s, %s across, is too narrow to piece a backing from", f.Name, m.show(width)), "")
		return nil
	}
	size := m.plan.Quilt.Finished
	size.Width = (size.Width + 2*b.Extra).RoundUp(m.rulerLine())
	size.Height = (size.Height + 2*b.Ends).RoundUp(m.rulerLine())
	c := cloth.BackingOf(size, width, m.job.Quantity, cloth.Run(b.Seams), f.Directional)
	return &BackingPlan{
		Fabric: b.Fabric, Size: c.Size, Panels: len(c.Panels), Panel: c.Panels[0], Cut: c.Panels,
		SeamsRun: string(c.Run), SeamsAt: c.Seams, Length: f.unwashed(c.Length), RunLength: f.unwashed(c.RunLength),
		SeamTaken: cloth.BackingSeam, Width: width,
	}
}

// batting is one quilt's batting, nil where none is asked for.
func (m *maker) batting() *BattingPlan {
	b := m.job.Batting
	if b == nil {
		return nil
	}
	size := less(m.plan.Quilt.Finished, -2*b.Extra)
	size = measure.Size{Width: size.Width.RoundUp(m.rulerLine()), Height: size.Height.RoundUp(m.rulerLine())}
	plan := &BattingPlan{Size: size, Quilter: b.Quilter, Roll: b.Roll}
	switch {
	case b.Quilter:
		plan.Choice = "brought by the quilter"
	case b.Roll > 0:
		m.offRoll(plan)
	default:
		m.inPackage(plan)
	}
	return plan
}

// offRoll cuts all quilts' battings off a roll.
func (m *maker) offRoll(plan *BattingPlan) {
	length, beside, ok := cloth.OffRoll(plan.Size, m.job.Quantity, plan.Roll)
	if !ok {
		plan.Choice = fmt.Sprintf("does not fit the roll %s wide either way: join two pieces", m.show(plan.Roll))
		return
	}
	if m.job.Quantity > 1 {
		run := slices.Repeat([]measure.Size{plan.Size}, m.job.Quantity)
		if together, _ := cloth.RollFor(run, plan.Roll); together < length {
			length, beside = together, 0 // some lie along it, some across: what is left is in bits
		}
	}
	plan.Length = length
	plan.Choice = fmt.Sprintf("%s off a roll %s wide", m.show(length), m.show(plan.Roll))
	if m.job.Quantity > 1 {
		plan.Choice += " for " + AllOf(m.job.Quantity)
	}
	plan.Left = m.worthKeeping([]measure.Size{{Width: beside, Height: length}})
}

// worthKeeping are pieces of batting that a mat or a cushion can use: no side under
// 6 in, or 15 cm. Common practice, no source.
func (m *maker) worthKeeping(left []measure.Size) []measure.Size {
	least := 6 * measure.Inch
	if m.job.Units == measure.Centimetres {
		least = 15 * measure.Centimetre
	}
	return slices.DeleteFunc(left, func(s measure.Size) bool { return min(s.Width, s.Height) < least })
}

// inPackage picks the smallest package that holds one quilt's batting, or for a run
// packages that hold several, where those come to less in all.
func (m *maker) inPackage(plan *BattingPlan) {
	packages := m.job.Batting.packages()
	p, ok := cloth.BattingFor(plan.Size, packages)
	if !ok {
		plan.Choice = "wider than any package: buy it off the roll or join two pieces"
		return
	}
	plan.Package, plan.Packages, plan.Left = &p.Size, m.job.Quantity, m.worthKeeping(cloth.Over(p.Size, plan.Size))
	run := slices.Repeat([]measure.Size{plan.Size}, m.job.Quantity)
	together := ""
	if several, n, _, ok := cloth.FewerPackages(run, packages); ok {
		p, plan.Package, plan.Packages, plan.Left = several, &several.Size, n, nil
		together = fmt.Sprintf(": %d for %s quilts together", n, AllOf(m.job.Quantity))
	}
	plan.Choice = fmt.Sprintf("package, %s", p.Size.Show(m.job.Units)) + together
	if p.Name != "" {
		plan.Choice = p.Name + " " + plan.Choice
	}
}

// packages is those to choose from.
func (b Batting) packages() []cloth.Package {
	if b.Packages == nil {
		return cloth.Packages
	}
	own := make([]cloth.Package, len(b.Packages))
	for i, size := range b.Packages {
		own[i].Size = size
	}
	return own
}

// binding is one quilt's binding, nil where none is asked for.
func (m *maker) binding() *BindingPlan {
	b := m.job.Binding
	if b == nil {
		return nil
	}
	f := m.fabric(b.Fabric)
	if b.Bias {
		return m.biasBinding(b, f)
	}
	width, join := m.stripLength(f), b.Strip
	if b.Joints == StraightJoint {
		join = 2 * m.job.Seam
	}
	bound, ok := cloth.BindingOf(m.edge(), b.Allowance, b.Strip, width, join)
	if !ok {
		m.refuse("binding.strip", fmt.Sprintf("binding strips %s wide cannot be cut from %s, %s across", m.show(b.Strip), f.Name, m.show(width)), "")
		return nil
	}
	return &BindingPlan{
		Fabric: b.Fabric, Strips: bound.Strips, Strip: b.Strip, Length: bound.Edge + bound.Allowance,
		FabricLength: f.unwashed(bound.Cloth), Allowance: bound.Allowance, Spare: bound.Spare(), Fewer: bound.Fewer(), Joints: b.Joints,
	}
}

// biasBinding is a binding from squares cut in one continuous spiral.
func (m *maker) biasBinding(b *Binding, f Fabric) *BindingPlan {
	width := m.stripLength(f)
	if f.Form.Sheets() {
		width = min(f.Sheet().Width, f.Sheet().Height) - cutSettings(m.job, f, "").SquareUp
	}
	step := measure.Inch
	if m.job.Units == measure.Centimetres {
		step = measure.Centimetre
	}
	length := m.edge() + b.Allowance
	n, side := cloth.BiasSquares(length, b.Strip, m.job.Seam, width, step)
	if n == 0 {
		m.refuse("binding.strip", fmt.Sprintf("a bias binding %s wide cannot be cut from %s, %s across", m.show(b.Strip), f.Name, m.show(width)), "")
		return nil
	}
	return &BindingPlan{
		Fabric: b.Fabric, Strips: n, Strip: b.Strip, Length: length, Allowance: b.Allowance, Joints: DiagonalJoint, Square: side,
		FabricLength: f.unwashed(side.Times(n)), Spare: cloth.BiasYield(side, b.Strip, m.job.Seam).Times(n) - m.edge(),
	}
}

// bindingPieces are the strips of all quilts' bindings, or the squares.
func (m *maker) bindingPieces(b *BindingPlan) PieceCount {
	size := measure.Size{Width: m.stripLength(m.fabric(b.Fabric)), Height: b.Strip}
	if b.Square > 0 {
		size = measure.Size{Width: b.Square, Height: b.Square}
	}
	return PieceCount{Size: size, Count: b.Strips * m.job.Quantity, For: forBinding}
}

// threads sums up the thread of the route's operations.
func (m *maker) threads() {
	t := &m.plan.Materials.Thread
	for _, o := range m.plan.Operations {
		switch o.Key {
		case keyQuilt:
			t.Quilting += o.ThreadLength
		case keyAttach, keyFinish:
			t.Binding += o.ThreadLength
		default:
			t.Piecing += o.ThreadLength
		}
	}
	t.Total = t.Piecing + t.Quilting + t.Binding
	t.Bobbins = thread.Bobbins(t.Total)
}

// edge is the length round one finished quilt.
func (m *maker) edge() measure.Length {
	s := m.plan.Quilt.Finished
	return 2 * (s.Width + s.Height)
}
