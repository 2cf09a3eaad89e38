package tracker

import "quiltrun/planner"

// draft is an entry in the making. Its board goes along with its parts, so that
// each part is judged with those before it done.
type draft struct {
	*board
	catchUp bool
	parts   []draftPart
}

// draftPart is a part of an entry in the making. Caught says that it is logged
// along and was not asked for.
type draftPart struct {
	Part
	row    int
	caught bool
}

// log adds what a share says of one operation. Operations inside a run that the
// lot does not have are passed over, and so are those with nothing left where
// the rest of the lot was asked for.
func (d *draft) log(key string, share lotShare, inRun bool) error {
	row, ok := d.index[rowKey{key, share.lot}]
	if !ok {
		return nil
	}
	if len(share.blocks) > 0 && !d.byBlock(row) {
		if err := d.notByBlock(row, share.blocks); err != nil {
			return err
		}
		share.blocks = nil
	}
	n, err := d.asked(row, share)
	if err != nil {
		return err
	}
	if n == 0 && inRun {
		return nil
	}
	if left := d.left(row); left == 0 || n > left {
		return d.tooMany(row, n)
	}
	if n == 0 {
		return d.nothingForBlock(row, n, share.blocks[0])
	}
	blocks, err := d.place(row, n, share)
	if err != nil {
		return err
	}
	return d.add(row, n, blocks, false)
}

// asked is a share in the row's own counts.
func (d *draft) asked(row int, share lotShare) (int, error) {
	o := d.rows[row]
	switch {
	case share.count.All && len(share.blocks) > 0:
		room := 0
		for _, id := range share.blocks {
			room += d.roomAt(row, id)
		}
		return min(room, d.left(row)), nil
	case share.count.All:
		return d.left(row), nil
	case share.count.Blocks && o.PerBlock > 0:
		return share.count.Number * o.PerBlock, nil
	case share.count.Blocks && o.CountedIn != "block":
		return 0, d.notIn(row, "blocks")
	case !o.countsIn(share.count.Unit):
		return 0, d.notIn(row, share.count.Unit)
	}
	return share.count.Number, nil
}

// countsIn reports whether a word is what an operation counts, for one or for
// several; no word is any operation's.
func (o Operation) countsIn(word string) bool {
	return word == "" || word == string(o.CountedIn) || word == plural(2, o.CountedIn)
}

// roomAt is how many counts can still be named for a block: places that unnamed
// counts hold are free to be taken over.
func (d *draft) roomAt(row int, block string) int {
	return max(0, d.rows[row].PerBlock-d.tallies[row].named[block])
}

// place shares counts out to the blocks that were named, each filled before the
// next.
func (d *draft) place(row, n int, share lotShare) ([]BlockCount, error) {
	var blocks []BlockCount
	rest := n
	for _, id := range share.blocks {
		count := min(rest, d.roomAt(row, id))
		if count == 0 && !share.count.All {
			return nil, d.nothingForBlock(row, n, id)
		}
		if count > 0 {
			blocks = append(blocks, BlockCount{Block: id, Count: count})
			rest -= count
		}
	}
	if len(share.blocks) > 0 && rest > 0 {
		return nil, d.tooManyForBlocks(row, n, share.blocks)
	}
	return blocks, nil
}

// add puts counts on the board, and before them whatever they rest on where the
// entry is to catch up.
func (d *draft) add(row, n int, blocks []BlockCount, caught bool) error {
	before, was := d.at(row), d.tallies[row].copied()
	d.tallies[row].put(n, blocks)
	for lacks := d.lacks(row, before); len(lacks) > 0; lacks = d.lacks(row, before) {
		if !d.catchUp {
			return d.outOfOrder(row, n, blocks, was, lacks[0])
		}
		if err := d.supply(lacks); err != nil {
			return err
		}
	}
	d.write(row, n, blocks, caught)
	return nil
}

// write adds a part, or makes one of two that were logged along for one row.
func (d *draft) write(row, n int, blocks []BlockCount, caught bool) {
	for i := range d.parts {
		p := &d.parts[i]
		if caught && p.caught && p.row == row && (p.Blocks == nil) == (blocks == nil) {
			p.Count += n
			p.Blocks = append(p.Blocks, blocks...)
			return
		}
	}
	o := d.rows[row]
	d.parts = append(d.parts, draftPart{
		Part: Part{Operation: o.Key, Lot: o.Lot, Count: n, Blocks: blocks}, row: row, caught: caught,
	})
}

// timed is the parts with the minutes of the entry shared out to those that
// were asked for: by the table's time for each, or by their counts where the
// table has no time. The shares add up to what was taken.
func (d *draft) timed(took *planner.Minutes) []Part {
	weights, sum := d.weights()
	parts := make([]Part, len(d.parts))
	given, passed := planner.Minutes(0), planner.Minutes(0)
	for i, p := range d.parts {
		parts[i] = p.Part
		if took == nil || p.caught {
			continue
		}
		passed += weights[i]
		share := *took*passed/sum - given
		given += share
		parts[i].Minutes = &share
	}
	return parts
}

// weights is the table's minutes of each part that was asked for.
func (d *draft) weights() (weights []planner.Minutes, sum planner.Minutes) {
	weights = make([]planner.Minutes, len(d.parts))
	for i, p := range d.parts {
		if !p.caught {
			weights[i] = d.rows[p.row].Setup.Mean + planner.Minutes(p.Count)*d.rows[p.row].Unit.Mean
			sum += weights[i]
		}
	}
	if sum > 0 {
		return weights, sum
	}
	for i, p := range d.parts {
		if !p.caught {
			weights[i] = planner.Minutes(p.Count)
			sum += weights[i]
		}
	}
	return weights, sum
}
