package planner

import (
	"fmt"

	"quiltrun/planner/cloth"
	"quiltrun/planner/measure"
	"quiltrun/planner/thread"
)

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
	width := f.Width
	c := cloth.BackingOf(m.plan.Quilt.Finished, b.Extra, width)
	return &BackingPlan{
		Fabric: b.Fabric, Size: c.Size, Panels: c.Panels, Panel: c.Panel,
		SeamsRun: string(c.Run), Length: c.Length, SeamTaken: cloth.BackingSeam,
	}
}

func (m *maker) batting() *BattingPlan {
	b := m.job.Batting
	if b == nil {
		return nil
	}
	size := less(m.plan.Quilt.Finished, -2*b.Extra)
	choice := "wider than any usual package: buy it off the roll or join two pieces"
	if p, ok := cloth.BattingFor(size); ok {
		choice = fmt.Sprintf("%s package, %s", p.Name, p.Size.Show(m.job.Units))
	}
	return &BattingPlan{Size: size, Choice: choice}
}

// boundStrips is a fabric's binding.
type boundStrips struct {
	fabric string
	cloth.Binding
}

func (m *maker) bindingStrips() *boundStrips {
	b := m.job.Binding
	if b == nil {
		return nil
	}
	f := m.fabric(b.Fabric)
	width := stripLength(f)
	size := m.plan.Quilt.Finished
	bound, ok := cloth.BindingOf(2*(size.Width+size.Height), b.Allowance, b.Strip, width)
	if !ok {
		m.refuse("binding.strip", fmt.Sprintf("binding strips %s wide cannot be cut from %s, %s across", m.show(b.Strip), f.Name, m.show(width)), "")
		return nil
	}
	return &boundStrips{b.Fabric, bound}
}

// materials fills in what the quilt needs beside its pieces.
func (m *maker) materials() {
	m.plan.Materials.Backing = m.backing()
	m.plan.Materials.Batting = m.batting()
	if b := m.bindingStrips(); b != nil {
		m.plan.Materials.Binding = &BindingPlan{
			Fabric: b.fabric, Strips: b.Strips, Strip: b.Strip, Length: b.Edge + b.Allowance,
			FabricLength: b.Cloth, Allowance: b.Allowance, Spare: b.Spare(),
		}
	}
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
