package render

import (
	"fmt"
	"math"
	"slices"
	"strconv"

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
	for i, b := range m.Borders {
		name := "Border"
		if len(m.Borders) > 1 {
			name += " " + strconv.Itoa(i+1)
		}
		s.fact(name, factAt, s.border(b))
	}
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
	if b.Panels == 1 {
		text += ", in one piece"
	} else {
		text += fmt.Sprintf(", %s: %s, seams %s, %s taken from each side, %s",
			b.FitWords(u), b.PanelWords(u), b.SeamsRun, b.SeamTaken.Show(u), b.SeamWords(u))
	}
	text += "; " + s.needed(b.Length) + " off the bolt"
	if q := s.plan.Job.Quantity; q > 1 {
		text += fmt.Sprintf(", %s for %s", s.needed(b.RunLength), planner.AllOf(q))
		if b.RunLength < b.Length.Times(q) {
			text += ", cut side by side"
		}
	}
	return text
}

// border is one border in words: its lengths as planned, and how they are cut.
func (s *sheet) border(b planner.BorderCut) string {
	u := s.plan.Job.Units
	text := fmt.Sprintf("%s, cut %s wide, two of %s and two of %s, %s", b.Fabric, b.Cut.Show(u), b.Sides.Show(u), b.Ends.Show(u), b.CutWords())
	if saved := b.SavedWords(u); saved != "" {
		text += "; " + saved
	}
	return text
}

// batting is one quilt's batting in words.
func (s *sheet) batting(b *planner.BattingPlan) string {
	if b == nil {
		return "not asked for"
	}
	text := fmt.Sprintf("%s or more; %s", size(b.Size, s.plan.Job.Units), b.Choice)
	if len(b.Left) > 0 {
		left := make([]string, len(b.Left))
		for i, l := range b.Left {
			left[i] = size(l, s.plan.Job.Units)
		}
		text += ", which leaves " + enumerate(left)
	}
	return text
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
	from := fmt.Sprintf("%s cut %s wide", counted(b.Strips, "strip"), b.Strip.Show(u))
	if b.Square > 0 {
		from = fmt.Sprintf("on the bias, %s wide, from %s %s,", b.Strip.Show(u), counted(b.Strips, "square"), b.Square.Show(u))
	}
	text := fmt.Sprintf("%s, %s %s %s: %s over the edge of %s (%s asked for)", b.Fabric, from,
		makes, (edge + b.Spare).Show(u), b.Spare.Show(u), edge.Show(u), b.Allowance.Show(u))
	switch fewer := b.Strips - 1; {
	case b.Square > 0 || fewer == 0:
	case b.Fewer < 0:
		text += fmt.Sprintf("; %d would be %s short of the edge", fewer, (-b.Fewer).Show(u))
	default:
		text += fmt.Sprintf("; %d would leave %s", fewer, b.Fewer.Show(u))
	}
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
		text = fmt.Sprintf("for %s quilts, ", planner.AllOf(s.plan.Job.Quantity)) + text
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
