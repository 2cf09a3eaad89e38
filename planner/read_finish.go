package planner

import "fmt"

// readFinishing reads what goes round, under and over the blocks.
func (r *jobReader) readFinishing(s section) {
	if n := s.get("borders"); n != nil && (n.kind != list || len(n.items) > 0) {
		for i, item := range r.items(n, `"borders"`, "borders") {
			r.job.Borders = append(r.job.Borders, r.border(item, i))
		}
	}
	if n := s.get("backing"); n != nil {
		b := r.section(n, "the backing", "fabric", "extra")
		r.job.Backing = &Backing{Fabric: r.fabricAt(b.need("fabric")), Extra: r.defaults().extra}
		if extra := b.get("extra"); extra != nil {
			r.job.Backing.Extra = r.lengthOrZero(extra)
		}
	}
	if n := s.get("batting"); n != nil {
		b := r.section(n, "the batting", "extra")
		r.job.Batting = &Batting{Extra: r.defaults().extra}
		if extra := b.get("extra"); extra != nil {
			r.job.Batting.Extra = r.lengthOrZero(extra)
		}
	}
	if n := s.get("binding"); n != nil {
		r.job.Binding = r.binding(n)
	}
	if n := s.get("quilting"); n != nil {
		r.job.Quilting = r.quilting(n)
	}
}

// border reads one border, the i-th from the inside, from zero.
func (r *jobReader) border(n *fileNode, i int) Border {
	s := r.section(n, fmt.Sprintf("border %d", i+1), "width", "cut", "fabric", "blocks")
	blocks := s.get("blocks")
	if blocks == nil {
		return Border{Width: r.seamed(s), Fabric: r.fabricAt(s.need("fabric"))}
	}
	for _, key := range []string{"width", "cut", "fabric"} {
		if n := s.get(key); n != nil {
			r.fault(n, fmt.Sprintf("%s is made of blocks and has no %s of its own", s.what, said(key)), "take it out, or give the cloth a border of its own")
		}
	}
	return r.blockBorder(blocks)
}

// binding reads the edge. Its strip is given as it is cut, like everything that is
// cut straight from cloth.
func (r *jobReader) binding(n *fileNode) *Binding {
	s := r.section(n, "the binding", "fabric", "strip", "finish")
	b := &Binding{Fabric: r.fabricAt(s.need("fabric")), Strip: r.defaults().strip, Finish: ByMachine}
	if strip := s.get("strip"); strip != nil {
		b.Strip = r.rawLength(strip)
	}
	if finish := s.get("finish"); finish != nil {
		word, _ := r.choose(finish, finishWords)
		b.Finish = Finish(word)
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
