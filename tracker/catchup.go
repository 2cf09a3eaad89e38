package tracker

// supply logs what a row is short of, so far as one rule asks for it. Lacks are
// of one row and not empty.
func (d *draft) supply(lacks []lack) error {
	first := lacks[0]
	switch first.rule.sort {
	case eachBlock, firstBlock:
		var short []BlockCount
		for _, l := range lacks {
			if l.rule == first.rule {
				short = append(short, BlockCount{Block: l.block, Count: l.want - l.have})
			}
		}
		return d.finish(first.earlier(), short)
	case quiltBlocks:
		return d.finishOfQuilt(first)
	}
	n := first.want - first.have
	if left := d.left(first.earlier()); n > left {
		return d.beyondPlan(first)
	}
	return d.add(first.earlier(), n, nil, true)
}

// finish logs what blocks are short of in one row: without naming them where
// the counts come to lie there of themselves.
func (d *draft) finish(row int, short []BlockCount) error {
	n := 0
	for _, b := range short {
		n += b.Count
	}
	if d.fallsTo(row, n, short) {
		short = nil
	}
	return d.add(row, n, short, true)
}

// fallsTo reports whether n unnamed counts would make all the blocks that are
// short.
func (d *draft) fallsTo(row, n int, short []BlockCount) bool {
	was := d.tallies[row]
	defer func() { d.tallies[row] = was }()
	d.tallies[row] = was.copied()
	d.tallies[row].put(n, nil)
	wanted := make(map[string]bool, len(short))
	for _, b := range short {
		wanted[b.Block] = true
	}
	ids := d.blocksOf(row)
	for i, have := range d.at(row) {
		if wanted[ids[i]] && have < d.rows[row].PerBlock {
			return false
		}
	}
	return true
}

// finishOfQuilt logs as many of a quilt's blocks as are short, in the order in
// which they are laid out.
func (d *draft) finishOfQuilt(l lack) error {
	rowOf := map[string]int{} // by colourway
	for _, row := range l.rule.earlier {
		rowOf[d.rows[row].Lot.Name] = row
	}
	short := map[int][]BlockCount{}
	wanted := l.want - l.have
	for _, id := range d.order {
		b := d.live[id]
		row, ok := rowOf[b.Colourway]
		if !ok || l.rule.quilt != 0 && b.Quilt != l.rule.quilt || wanted == 0 {
			continue
		}
		if missing := d.rows[row].PerBlock - d.doneAt(row, id); missing > 0 {
			short[row] = append(short[row], BlockCount{Block: id, Count: missing})
			wanted--
		}
	}
	for _, row := range l.rule.earlier {
		if len(short[row]) == 0 {
			continue
		}
		if err := d.finish(row, short[row]); err != nil {
			return err
		}
	}
	return nil
}
