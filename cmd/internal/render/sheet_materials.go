package render

import (
	"fmt"
	"math"
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// materials is all that a quilt takes beside its pieces.
func (s *sheet) materials() {
	m := s.plan.Materials
	each := ""
	if s.plan.Job.Quantity > 1 {
		each = ", for each quilt"
	}
	s.heading("Backing, batting, binding and thread" + each)
	s.fact("Backing", factAt, s.backing(m.Backing))
	s.fact("Batting", factAt, s.batting(m.Batting))
	s.fact("Binding", factAt, s.binding(m.Binding))
	s.fact("Thread", factAt, s.thread(m.Thread))
}

// backing is one quilt's backing in words.
func (s *sheet) backing(b *planner.BackingPlan) string {
	if b == nil {
		return "not asked for"
	}
	u := s.plan.Job.Units
	text := fmt.Sprintf("%s, %s raw", b.Fabric, size(b.Size, u))
	if b.Panels > 1 {
		text += fmt.Sprintf(": %d panels of %s, seams %s, %s taken from each side",
			b.Panels, size(b.Panel, u), b.SeamsRun, b.SeamTaken.Show(u))
	} else {
		text += ", in one piece"
	}
	return text + "; " + s.needed(b.Length) + " off the bolt"
}

// batting is one quilt's batting in words.
func (s *sheet) batting(b *planner.BattingPlan) string {
	if b == nil {
		return "not asked for"
	}
	return fmt.Sprintf("%s or more; %s", size(b.Size, s.plan.Job.Units), b.Choice)
}

// binding is one quilt's binding in words: what its strips make, joined, and
// how far that is over the edge that it goes round.
func (s *sheet) binding(b *planner.BindingPlan) string {
	if b == nil {
		return "not asked for"
	}
	u := s.plan.Job.Units
	edge, makes := b.Length-b.Allowance, "make"
	if b.Strips == 1 {
		makes = "makes"
	}
	text := fmt.Sprintf("%s, %s cut %s wide %s %s: %s over the edge of %s (%s asked for)", b.Fabric, counted(b.Strips, "strip"),
		b.Strip.Show(u), makes, (edge + b.Spare).Show(u), b.Spare.Show(u), edge.Show(u), b.Allowance.Show(u))
	if s.sheets(b.Fabric) {
		return text
	}
	return text + "; " + b.FabricLength.Show(u) + " off the bolt"
}

// sheets reports that a fabric comes in sheets, not off a bolt.
func (s *sheet) sheets(fabric string) bool {
	return slices.ContainsFunc(s.plan.Fabrics, func(f planner.FabricNeed) bool {
		return f.Fabric.Name == fabric && f.Fabric.Form.Sheets()
	})
}

// thread is the run's thread in words, by what it sews.
func (s *sheet) thread(t planner.ThreadPlan) string {
	var parts []string
	for _, part := range []struct {
		what   string
		length measure.Length
	}{{"piecing", t.Piecing}, {"quilting", t.Quilting}, {"binding", t.Binding}} {
		if part.length > 0 {
			parts = append(parts, part.what+" "+s.spool(part.length))
		}
	}
	text := fmt.Sprintf("%s in all (%s); wind %s", s.spool(t.Total), enumerate(parts), counted(t.Bobbins, "bobbin"))
	if s.plan.Job.Quantity > 1 {
		text = fmt.Sprintf("for all %d quilts, ", s.plan.Job.Quantity) + text
	}
	return text
}

// spool is a length of thread as it is sold, to the next whole yard or metre:
// thread is bought with some to spare.
func (s *sheet) spool(l measure.Length) string { return spool(l, s.plan.Job.Units) }

func spool(l measure.Length, u measure.Unit) string {
	if u == measure.Centimetres {
		return fmt.Sprintf("%.0f m", math.Ceil(float64(l)/float64(measure.Metre)))
	}
	return fmt.Sprintf("%.0f yd", math.Ceil(float64(l)/float64(measure.Yard)))
}
