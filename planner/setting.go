package planner

import "quiltrun/planner/measure"

// frame is how one quilt's top is put together: what lies where, how large it is,
// and how many parts of each sort there are. Whatever depends on the setting asks
// it. Its measures are finished ones unless said.
type frame struct {
	layout  *Layout
	borders []Border
	block   measure.Size
}

// frameOf is the frame of a job whose blocks finish so large.
func frameOf(j *Job, block measure.Size) frame {
	return frame{layout: &j.Layout, borders: j.Borders, block: block}
}

func (f frame) onPoint() bool { return f.layout.Setting == OnPoint }

// sash is the width of the sashing, 0 where there is none.
func (f frame) sash() measure.Length {
	if f.layout.Sashing == nil {
		return 0
	}
	return f.layout.Sashing.Width
}

// lead is what lies before the first block of a row or column.
func (f frame) lead() measure.Length {
	if f.edged() {
		return f.sash()
	}
	return 0
}

// edged reports whether sashing goes all round.
func (f frame) edged() bool { return f.layout.Sashing != nil && f.layout.Sashing.Edge }

// stones reports whether the sashing has cornerstones.
func (f frame) stones() bool { return f.layout.Sashing != nil && f.layout.Sashing.Cornerstones != "" }

// uprights is how many lines of sashing stand between, and beside, the columns.
func (f frame) uprights() int { return f.sashLines(f.layout.Across) }

// levels is how many lines of sashing lie between, and beside, the rows.
func (f frame) levels() int { return f.sashLines(f.layout.Down) }

func (f frame) sashLines(blocks int) int {
	switch {
	case f.layout.Sashing == nil:
		return 0
	case f.layout.Sashing.Edge:
		return blocks + 1
	default:
		return blocks - 1
	}
}

// inner is the size inside all borders.
func (f frame) inner() measure.Size {
	l := f.layout
	if f.onPoint() {
		return measure.Size{Width: f.halfDiagonals(2 * l.Across), Height: f.halfDiagonals(2 * l.Down)}
	}
	return measure.Size{
		Width:  f.block.Width.Times(l.Across) + f.sash().Times(f.uprights()),
		Height: f.block.Height.Times(l.Down) + f.sash().Times(f.levels()),
	}
}

// x is where a column begins, counted from zero, from the left of what is inside
// all borders; y the same of a row. Straight settings only.
func (f frame) x(column int) measure.Length {
	return f.lead() + (f.block.Width + f.sash()).Times(column)
}

func (f frame) y(row int) measure.Length {
	return f.lead() + (f.block.Height + f.sash()).Times(row)
}

// round is one border and what it goes round.
type round struct {
	Border
	nth             int // from zero, from the inside out
	inside, outside measure.Size
	touching        bool // of blocks that lie against blocks
}

// ofBlocks reports whether a border is made of blocks.
func (b Border) ofBlocks() bool { return len(b.Blocks) > 0 }

// rounds is the borders from the inside out.
func (f frame) rounds() []round {
	all := make([]round, len(f.borders))
	size := f.inner()
	blocksBefore := !f.onPoint() && f.layout.Sashing == nil
	for i, b := range f.borders {
		all[i] = round{Border: b, nth: i, inside: size, touching: b.ofBlocks() && blocksBefore}
		size = measure.Size{Width: size.Width + 2*f.widthOf(b).Width, Height: size.Height + 2*f.widthOf(b).Height}
		all[i].outside = size
		blocksBefore = b.ofBlocks()
	}
	return all
}

// widthOf is how wide a border is at the sides, and how high at the ends.
func (f frame) widthOf(b Border) measure.Size {
	if b.ofBlocks() {
		return f.block
	}
	return measure.Size{Width: b.Width, Height: b.Width}
}

// finished is the size of the quilt, all borders included.
func (f frame) finished() measure.Size {
	size := f.inner()
	for _, b := range f.borders {
		width := f.widthOf(b)
		size.Width += 2 * width.Width
		size.Height += 2 * width.Height
	}
	return size
}

// origin is where what is inside all borders begins.
func (f frame) origin() (x, y measure.Length) {
	inner, all := f.inner(), f.finished()
	return (all.Width - inner.Width) / 2, (all.Height - inner.Height) / 2
}

// along is how many blocks of a border lie along the inside of it, at the top and
// at the side.
func (f frame) along(r round) (across, down int) {
	return measure.FloorDiv(r.inside.Width, f.block.Width), measure.FloorDiv(r.inside.Height, f.block.Height)
}

// ringBlocks is how many blocks a border of blocks is made of.
func (f frame) ringBlocks(r round) int {
	across, down := f.along(r)
	return 2*(across+down) + 4
}

// count is how many blocks one quilt has.
func (f frame) count() int {
	n := placesOf(*f.layout)
	for _, r := range f.rounds() {
		if r.ofBlocks() {
			n += f.ringBlocks(r)
		}
	}
	return n
}
