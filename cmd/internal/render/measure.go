package render

import (
	"fmt"
	"io"
	"strings"

	"quiltrun/planner"
	"quiltrun/planner/english"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// Measure is what a measured piece says. Event is zero for a job file, of which
// nothing is stored.
type Measure struct {
	Job      planner.Job
	Kept     tracker.Measurement
	First    planner.FirstPiece
	Uneven   *planner.Uneven // nil where it is no blocks of several sizes
	Event    tracker.Event
	Repeated bool
	Readings int            // of the same step, person and machine, with this one
	Drift    *tracker.Drift // nil where none is told
	Revision int            // of the job planned anew; 0 where it was not
	Changes  []string       // what is different then
}

// Measured shows it.
func Measured(w io.Writer, m Measure, look Look) error {
	p := &page{look: look}
	if m.Event.Seq > 0 {
		p.receipt(m.Event, "measured", m.Job.ID, m.Repeated)
	}
	p.fact("Piece", factAt, english.Capital(m.Kept.Name)+ofColourways(m))
	p.fact("By", factAt, byWords(m.Event.By, m.Kept.Machine))
	p.fact("Measured", factAt, sizesWords(m.Kept.Sizes, m.Job.Units))
	p.gap()
	p.ways(m)
	if m.Uneven != nil {
		p.uneven(*m.Uneven, m.Job)
	} else {
		p.wouldBe(m)
		p.gap()
		p.para(0, verdict(m))
		p.remedies(m)
	}
	if m.Drift != nil {
		p.gap()
		p.para(0, driftWords(*m.Drift, m.First.Tolerance))
	}
	if m.Revision > 0 {
		p.replanned(m)
	}
	return p.writeTo(w)
}

// ofColourways says whose piece it is.
func ofColourways(m Measure) string {
	if len(m.Kept.Colourways) == 0 {
		return ""
	}
	return ", of " + enumerate(m.Kept.Colourways)
}

// byWords is who measured, and on which machine it was sewn.
func byWords(by, machine string) string {
	if by != "" && machine != "" {
		return by + ", on the machine " + machine
	}
	return by
}

// sizesWords is what was measured.
func sizesWords(sizes []tracker.MeasuredSize, u measure.Unit) string {
	var parts []string
	for _, s := range sizes {
		text := s.Size.Width.Show(u)
		if s.Size.Height > 0 {
			text = size(s.Size, u)
		}
		if s.Count > 1 {
			text = fmt.Sprintf("%d of %s", s.Count, text)
		}
		if len(s.Blocks) > 0 {
			text += " (" + strings.Join(s.Blocks, ", ") + ")"
		}
		parts = append(parts, together(text))
	}
	return strings.Join(parts, ", ")
}

// signed is a difference: "+1/8 in", "−1/8 in".
func signed(l measure.Length, u measure.Unit) string {
	switch {
	case l == 0:
		return "none"
	case l < 0:
		return strings.Replace("−"+(-l).Show(u), "−≈ ", "≈ −", 1)
	}
	return strings.Replace("+"+l.Show(u), "+≈ ", "≈ +", 1)
}

// signedSize is by how much a size differs from another.
func signedSize(was, is measure.Size, u measure.Unit) string {
	w, h := is.Width-was.Width, is.Height-was.Height
	switch {
	case w == h:
		return signed(w, u) + " each way"
	case h == 0:
		return signed(w, u) + " across"
	case w == 0:
		return signed(h, u) + " down"
	}
	both := strings.TrimSuffix(signed(w, u), " "+u.String()) + " × " + signed(h, u)
	if plain := strings.ReplaceAll(both, "≈ ", ""); plain != both {
		return "≈ " + plain
	}
	return both
}

// seamsWords is over how many seams something is measured: "7", "1 1/2".
func seamsWords(n float64) string { return string(decimal(n, 2)) }

// ways is each way that was measured.
func (p *page) ways(m Measure) {
	u := m.Job.Units
	g := &grid{columns: []column{{title: "Way"}, {title: "Should be"}, {title: "Measured"}, {title: "Off", right: true},
		{title: "Seams", right: true}, {title: "A seam takes", flexible: true}}}
	for _, way := range m.First.Ways {
		name, takes := "across", "no seam is in it"
		if way.Down {
			name = "down"
		}
		if way.Seam > 0 {
			takes = planner.SeamMeasured(way.Seam, u) + ", asked for " + planner.SeamMeasured(m.Job.Seam, u)
		}
		g.add(name, way.Should.Show(u), way.Is.Show(u), signed(way.Off(), u), seamsWords(way.Seams), takes)
	}
	p.records(0, g)
}

// wouldBe is how large block and quilt come out if every seam is sewn so.
func (p *page) wouldBe(m Measure) {
	f, u := m.First, m.Job.Units
	if f.Seam == 0 || f.Seam == m.Job.Seam {
		return
	}
	p.gap()
	if f.Problem != nil {
		p.para(0, "With every seam sewn so the job cannot be made: "+problemWords(f.Problem)+".")
		return
	}
	p.para(0, fmt.Sprintf("With every seam sewn so, %s from each side:", planner.SeamMeasured(f.Seam, u)))
	g := &grid{columns: []column{{title: "What"}, {title: "Seams"}, {title: "As planned"}, {title: "Would be"}, {title: "Off"}}}
	row := func(what string, across, down float64, was, is measure.Size) {
		seams := seamsWords(across)
		if across != down {
			seams += " × " + seamsWords(down)
		}
		g.add(what, seams, size(was, u), size(is, u), signedSize(was, is, u))
	}
	row("block, raw", f.Seams.BlockAcross, f.Seams.BlockDown, f.Planned.Raw, f.Would.Raw)
	row("quilt, flat", f.Seams.QuiltAcross, f.Seams.QuiltDown, f.Planned.Quilt, f.Would.Quilt)
	p.records(0, g)
}

// problemWords is why a job cannot be made, the first reason.
func problemWords(err error) string {
	if problems, ok := err.(planner.Problems); ok && len(problems) > 0 {
		return problems[0].What
	}
	return err.Error()
}

// verdict says whether it will do.
func verdict(m Measure) string {
	f, u := m.First, m.Job.Units
	limit := f.Tolerance.Show(u)
	switch off := f.Off(); {
	case f.Problem != nil:
		return "That is too far off to sew on."
	case f.Ways[0].Off() == 0 && f.Seam == m.Job.Seam:
		return "That is right: sew on."
	case f.Seam == 0 && f.Within():
		return fmt.Sprintf("That is off by no more than %s, which will do.", limit)
	case f.Seam == 0:
		return fmt.Sprintf("That is off by more than %s.", limit)
	case f.Piece.Top && f.Within():
		return fmt.Sprintf("The top is %s, no more than the %s that will do.", signed(off, u), limit)
	case f.Piece.Top:
		return fmt.Sprintf("The top is %s, more than the %s that will do.", signed(off, u), limit)
	case f.Within():
		return fmt.Sprintf("A block comes out %s, no more than the %s that will do: sew on, and mend the seam when it is handy.", signed(off, u), limit)
	default:
		return fmt.Sprintf("A block comes out %s, more than the %s that will do. That limit is common practice; --tolerance sets another.", signed(off, u), limit)
	}
}

// remedies is what to do, in order.
func (p *page) remedies(m Measure) {
	all := m.First.Remedies(m.Job)
	if len(all) == 0 || m.Revision > 0 {
		return
	}
	p.heading("What to do, in this order")
	for i, text := range all {
		p.hang(0, fmt.Sprintf("%2d. ", i+1), text)
	}
	if m.Event.Seq > 0 && m.First.Problem == nil && m.First.Seam > 0 && !m.First.Within() {
		p.hang(0, fmt.Sprintf("%2d. ", len(all)+1), "To plan the rest of the job with this seam, measure again with --replan.")
	}
}

// replanned says what is different now.
func (p *page) replanned(m Measure) {
	p.heading(fmt.Sprintf("Planned anew with this seam, revision %d", m.Revision))
	p.para(0, "What is cut keeps its size; what is finished follows. quiltrun undo takes it back.")
	for _, c := range m.Changes {
		p.hang(2, "- ", c)
	}
}
