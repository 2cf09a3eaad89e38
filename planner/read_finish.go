package planner

import (
	"fmt"
	"strings"

	"quiltrun/planner/measure"
)

// readFinishing reads what goes round, under and over the blocks.
func (r *jobReader) readFinishing(s section) {
	if n := s.get("borders"); n != nil && (n.kind != list || len(n.items) > 0) {
		for i, item := range r.items(n, `"borders"`, "borders") {
			r.job.Borders = append(r.job.Borders, r.border(item, i))
		}
	}
	if n := s.get("binding"); n != nil {
		r.job.Binding = r.binding(n)
	}
	if n := s.get("quilting"); n != nil {
		r.job.Quilting = r.quilting(n)
	}
	// How much larger backing and batting are goes by who quilts.
	if n := s.get("backing"); n != nil {
		r.job.Backing = r.backing(n)
	}
	if n := s.get("batting"); n != nil {
		r.job.Batting = r.batting(n)
	}
}

// sentOut reports that somebody else quilts.
func (r *jobReader) sentOut() bool { return r.job.Quilting != nil && r.job.Quilting.SentOut }

// backing reads the back. Its extra may differ between sides and ends.
func (r *jobReader) backing(n *fileNode) *Backing {
	s := r.section(n, "the backing", "fabric", "extra", "seams")
	b := &Backing{Fabric: r.fabricAt(s.need("fabric")), Extra: r.defaults().home}
	if r.sentOut() {
		b.Extra = r.defaults().frame
	}
	b.Ends = b.Extra
	if extra := s.get("extra"); extra != nil {
		b.Extra, b.Ends = r.margins(extra)
	}
	if seams := s.get("seams"); seams != nil {
		word, _ := r.choose(seams, grainWords)
		b.Seams = Grain(word)
	}
	return b
}

// margins reads one measure for all four sides, or "4 x 5": left and right, then
// top and bottom.
func (r *jobReader) margins(n *fileNode) (sides, ends measure.Length) {
	if n.kind == scalar && strings.ContainsAny(n.text, "x×") {
		size, err := measure.ParseSize(n.text, r.job.Units)
		r.noMeasure(n, err)
		return size.Width, size.Height
	}
	extra := r.lengthOrZero(n)
	return extra, extra
}

// batting reads the layer between, and what it is cut from.
func (r *jobReader) batting(n *fileNode) *Batting {
	s := r.section(n, "the batting", "extra", "packages", "roll", "by")
	b := &Batting{Extra: r.defaults().loft}
	if extra := s.get("extra"); extra != nil {
		b.Extra = r.lengthOrZero(extra)
	}
	if packages := s.get("packages"); packages != nil {
		for _, item := range r.items(packages, `"packages"`, "sizes") {
			if text, ok := r.scalarText(item, "a size"); ok {
				size, err := measure.ParseSize(text, r.job.Units)
				r.noMeasure(item, err)
				b.Packages = append(b.Packages, size)
			}
		}
	}
	if roll := s.get("roll"); roll != nil {
		b.Roll = r.length(roll)
		if s.get("packages") != nil {
			r.fault(roll, `the batting has both "packages" and "roll"`, "keep the one that you buy")
		}
	}
	if by := s.get("by"); by != nil {
		word, ok := r.choose(by, battingWords)
		b.Quilter = word == "quilter"
		if ok && b.Quilter && !r.sentOut() {
			r.fault(by, "the quilter can bring the batting only where the quilting is sent out", "write by: sent out at quilting, or by: self here")
		}
	}
	return b
}

// border reads one border, the i-th from the inside, from zero.
func (r *jobReader) border(n *fileNode, i int) Border {
	s := r.section(n, fmt.Sprintf("border %d", i+1), "width", "cut", "fabric", "grain", "blocks")
	blocks := s.get("blocks")
	if blocks == nil {
		b := Border{Width: r.seamed(s), Fabric: r.fabricAt(s.need("fabric"))}
		if grain := s.get("grain"); grain != nil {
			word, _ := r.choose(grain, grainWords)
			b.Grain = Grain(word)
		}
		return b
	}
	for _, key := range []string{"width", "cut", "fabric", "grain"} {
		if n := s.get(key); n != nil {
			r.fault(n, fmt.Sprintf("%s is made of blocks and has no %s of its own", s.what, said(key)), "take it out, or give the cloth a border of its own")
		}
	}
	return r.blockBorder(blocks)
}

// binding reads the edge. Its strip is given as it is cut, like everything that is
// cut straight from cloth.
func (r *jobReader) binding(n *fileNode) *Binding {
	s := r.section(n, "the binding", "fabric", "strip", "finish", "joins", "allowance", "grain")
	b := &Binding{
		Fabric: r.fabricAt(s.need("fabric")), Strip: r.defaults().strip, Finish: ByMachine,
		Joints: DiagonalJoint, Allowance: r.defaults().tail,
	}
	if strip := s.get("strip"); strip != nil {
		b.Strip = r.rawLength(strip)
	}
	if finish := s.get("finish"); finish != nil {
		word, _ := r.choose(finish, finishWords)
		b.Finish = Finish(word)
	}
	if joins := s.get("joins"); joins != nil {
		word, _ := r.choose(joins, jointWords)
		b.Joints = Joint(word)
	}
	if allowance := s.get("allowance"); allowance != nil {
		b.Allowance = r.lengthOrZero(allowance)
	}
	if grain := s.get("grain"); grain != nil {
		word, _ := r.choose(grain, biasWords)
		b.Bias = word == "bias"
	}
	return b
}

// quilting reads who quilts, and how closely. Quilting sent out needs the days
// that it is away; at home they have no meaning.
func (r *jobReader) quilting(n *fileNode) *Quilting {
	s := r.section(n, "the quilting", "by", "density", "lead-days")
	q := &Quilting{Density: Medium}
	if density := s.get("density"); density != nil {
		word, _ := r.choose(density, densityWords)
		q.Density = Density(word)
	}
	by, ok := "self", true
	if n := s.get("by"); n != nil {
		by, ok = r.choose(n, quilterWords)
	}
	q.SentOut = by == "sent out"
	switch days := s.get("lead-days"); {
	case days == nil && q.SentOut:
		s.need("lead-days")
	case days != nil && ok && !q.SentOut:
		r.fault(days, `"lead-days" is for quilting that is sent out`, "write by: sent out, or take the days out")
	case days != nil:
		q.LeadDays = r.count(days, 0)
	}
	return q
}
