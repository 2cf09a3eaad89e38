package planner

import "fmt"

// role reads the fabrics of a role: one name, a list to deal from, or names with
// counts. An unknown number of blocks is 0, and then the counts are not summed.
func (r *jobReader) role(n *fileNode, role string, blocks int) RoleFabrics {
	f := RoleFabrics{Role: role}
	switch n.kind {
	case list:
		f.Fabrics = r.dealtFabrics(n)
	case fields:
		f.Counted = true
		f.Fabrics = r.countedFabrics(n, role, blocks)
	default:
		if text, ok := r.scalarText(n, "a fabric"); ok {
			f.Fabrics = []Share{{Fabric: r.use(n, text)}}
		}
	}
	return f
}

// strips reads the fabrics of a rail's strips from left to right: a role for each
// strip, with the one fabric that every block has there.
func (r *jobReader) strips(n *fileNode) []RoleFabrics {
	if n.kind == fields {
		r.fault(n, said(n.label)+" is a list of fabrics from left to right, not counts", n.hint())
		return nil
	}
	if n.kind == list && len(n.items) == 1 || n.kind == scalar {
		r.fault(n, "a rail needs two strips or more", n.hint())
		return nil
	}
	fabrics := r.dealtFabrics(n)
	roles := make([]RoleFabrics, len(fabrics))
	for i, role := range stripRoles(len(fabrics)) {
		roles[i] = RoleFabrics{Role: role, Fabrics: fabrics[i : i+1]}
	}
	return roles
}

// dealtFabrics reads [Kelp, Cormorant]. A fabric may stand twice, to come twice in
// each round.
func (r *jobReader) dealtFabrics(n *fileNode) []Share {
	var shares []Share
	for _, item := range r.items(n, said(n.label), "fabrics") {
		if text, ok := r.scalarText(item, "a fabric"); ok {
			shares = append(shares, Share{Fabric: r.use(item, text)})
		}
	}
	return shares
}

// countedFabrics reads {Kelp: 5, Cormorant: 3}; the counts must add up to the
// colourway's blocks.
func (r *jobReader) countedFabrics(n *fileNode, role string, blocks int) []Share {
	var shares []Share
	sum, good := 0, true
	for _, pair := range r.named(n, "a fabric", "5") {
		r.use(&fileNode{at: pair.at, path: pair.value.path}, pair.key)
		count := r.count(pair.value, 1)
		shares = append(shares, Share{Fabric: pair.key, Blocks: count})
		sum, good = sum+count, good && count > 0
	}
	if good && sum > 0 && blocks > 0 && sum != blocks && len(shares) == len(n.pairs) {
		r.fault(n, fmt.Sprintf("the fabrics of %s are for %s, but the colourway has %d", said(role), counted(sum, "block"), blocks),
			"make the counts add up, or write a list to deal from")
	}
	return shares
}

// use notes that a place names a fabric, so that it can be looked up when all
// fabrics are known.
func (r *jobReader) use(n *fileNode, fabric string) string {
	r.uses = append(r.uses, fabricUse{fabric, n})
	return fabric
}

// fabricAt reads a fabric's name; "" for nil.
func (r *jobReader) fabricAt(n *fileNode) string {
	if n == nil {
		return ""
	}
	text, ok := r.scalarText(n, "a fabric")
	if !ok {
		return ""
	}
	return r.use(n, text)
}
