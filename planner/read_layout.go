package planner

// readLayout reads the top. Whether the blocks fill it is checked when both are
// known.
func (r *jobReader) readLayout(n *fileNode) {
	s := r.section(n, "the layout", "across", "down", "setting", "order", "turn", "sashing", "triangles")
	l := &r.job.Layout
	if n := s.need("across"); n != nil {
		l.Across = r.count(n, 1)
	}
	if n := s.need("down"); n != nil {
		l.Down = r.count(n, 1)
	}
	l.Setting = r.setting(s.get("setting"))
	l.Order = DealDiagonal
	if n := s.get("order"); n != nil {
		l.Order = r.order(n)
	}
	if n := s.get("turn"); n != nil {
		l.Turn = r.turns(n)
	}
	if n := s.get("sashing"); n != nil {
		l.Sashing = r.sashing(n)
	}
	r.readTriangles(s)
}

// readTriangles reads the fabric of the setting triangles: needed on point, where
// they fill the edge, and without meaning elsewhere.
func (r *jobReader) readTriangles(s section) {
	l := &r.job.Layout
	n := s.get("triangles")
	switch {
	case l.Setting == OnPoint && n == nil:
		s.need("triangles")
	case l.Setting == OnPoint:
		l.Triangles = r.fabricAt(n)
	case n != nil && l.Setting == Straight:
		r.fault(n, `"triangles" is for blocks set on point`, "write setting: on point, or take it out")
	}
	if l.Setting == OnPoint && l.Sashing != nil {
		r.fault(s.get("sashing"), "sashing on point is not planned: its strips run out into the setting triangles and are cut off at a slant, for which there is no published measure to hold the plan against",
			"take the sashing out, or set the blocks straight")
	}
}

// setting reads how the blocks lie; "" where that is not known, and then places are
// not counted.
func (r *jobReader) setting(n *fileNode) Setting {
	if n == nil {
		return Straight
	}
	word, ok := r.choose(n, settingWords)
	if !ok {
		return ""
	}
	return Setting(word)
}

// order reads a word, a word with fill, or a map of rows.
func (r *jobReader) order(n *fileNode) Order {
	switch n.kind {
	case list:
		r.readMap(n)
		return Mapped
	case fields:
		return r.fillOrder(n)
	}
	word, ok := r.choose(n, dealWords)
	if !ok {
		return ""
	}
	return Order(word)
}

// fillOrder reads {diagonal: fill} or {rows: fill}.
func (r *jobReader) fillOrder(n *fileNode) Order {
	fills := map[string]Order{string(DealDiagonal): FillDiagonal, string(DealRows): FillRows}
	s := r.section(n, `"order"`, string(DealDiagonal), string(DealRows))
	switch len(s.order) {
	case 0:
		if len(n.pairs) == 0 {
			r.fault(n, `"order" holds nothing`, n.hint())
		}
	case 1:
		if _, ok := r.choose(s.get(s.order[0]), fillWords); ok {
			return fills[s.order[0]]
		}
	default:
		r.fault(n, `"order" cannot be both diagonal and rows`, "keep one")
	}
	return ""
}

// sashing reads the strips between blocks. They lie only between, unless the file
// wants them at the edge too.
func (r *jobReader) sashing(n *fileNode) *Sashing {
	s := r.section(n, "the sashing", "width", "cut", "fabric", "cornerstones", "edge")
	return &Sashing{
		Width:        r.seamed(s),
		Fabric:       r.fabricAt(s.need("fabric")),
		Cornerstones: r.fabricAt(s.get("cornerstones")),
		Edge:         r.yes(s.get("edge")),
	}
}
