package planner

import (
	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// PartKind is what a part of a top is. It may grow.
type PartKind string

// The parts of a top.
const (
	BlockPart       PartKind = "block"
	SashingPart     PartKind = "sashing"
	CornerstonePart PartKind = "cornerstone"
	SidePart        PartKind = "side triangle"
	CornerPart      PartKind = "corner triangle"
	BorderPart      PartKind = "border"
)

// TopPart is one part of a finished top: a block, or a piece of cloth round it.
type TopPart struct {
	Kind PartKind

	// Corners go round the part clockwise as seen, in finished measures from the
	// quilt's top left corner. A block's first one is where its own top left corner
	// lies, so they say how it is turned too. Those that lie on a diagonal of a block
	// on point are rounded down to the tick; parts that meet have the same corners,
	// so they leave no gap.
	Corners []patchwork.Point

	Fabric string // of cloth; "" for a block
	Border int    // which border it is of, from 1 from the inside out; 0: none
	Block  Block  // of a block
}

// Top is all parts of one quilt's top, quilts counted from 1: its blocks in their
// order, then sashing, cornerstones, setting triangles and borders from the inside
// out. A strip that is pieced from several is one part.
func (p Plan) Top(quilt int) []TopPart {
	if len(p.Colourways) == 0 {
		return nil
	}
	t := topParts{frame: frameOf(&p.Job, p.Colourways[0].Finished)}
	t.left, t.above = t.origin()
	t.rings = t.rounds()
	for _, b := range p.Blocks {
		if b.Quilt == quilt {
			t.parts = append(t.parts, TopPart{Kind: BlockPart, Corners: t.corners(b), Border: t.ringOf(b), Block: b})
		}
	}
	if t.onPoint() {
		t.triangles()
	}
	t.sashing()
	t.bordered()
	return t.parts
}

// topParts gathers the parts of a top.
type topParts struct {
	frame
	left, above measure.Length // of what is inside all borders
	rings       []round
	parts       []TopPart
}

// rectangle is the corners of an upright rectangle.
func rectangle(x, y, width, height measure.Length) []patchwork.Point {
	return []patchwork.Point{{X: x, Y: y}, {X: x + width, Y: y}, {X: x + width, Y: y + height}, {X: x, Y: y + height}}
}

// cloth adds a rectangle of cloth, placed from the top left of what is inside all
// borders.
func (t *topParts) cloth(kind PartKind, fabric string, x, y, width, height measure.Length) {
	t.parts = append(t.parts, TopPart{Kind: kind, Fabric: fabric, Corners: rectangle(t.left+x, t.above+y, width, height)})
}

// corners is where a block lies, its own top left corner first.
func (t *topParts) corners(b Block) []patchwork.Point {
	round := t.outline(b)
	turn := b.Turn / 90 % 4
	return append(round[turn:len(round):len(round)], round[:turn]...)
}

// outline is where a block lies, from its place's top left corner: on point from
// the left one, since a diagonal row runs up to the right.
func (t *topParts) outline(b Block) []patchwork.Point {
	width, height := t.block.Width, t.block.Height
	if t.onPoint() {
		first, _ := t.layout.span(b.Row - 1)
		right, below := t.layout.hung(b.Row-1, first+b.Column-1)
		return []patchwork.Point{t.at(right, below+1), t.at(right+1, below), t.at(right+2, below+1), t.at(right+1, below+2)}
	}
	if ring := t.ringOf(b); ring > 0 {
		return t.inRing(b, t.rings[ring-1])
	}
	within := t.ringsWithin(len(t.rings))
	return rectangle(t.left+t.x(b.Column-1-within), t.above+t.y(b.Row-1-within), width, height)
}

// at is a point so many halves of a block's diagonal right of what is inside all
// borders, and below its top.
func (t *topParts) at(right, below int) patchwork.Point {
	return patchwork.Point{X: t.left + t.halfDiagonals(right), Y: t.above + t.halfDiagonals(below)}
}

// ringsWithin is how many of the first n borders are made of blocks.
func (t *topParts) ringsWithin(n int) int {
	count := 0
	for _, r := range t.rings[:n] {
		count += boolean(r.ofBlocks())
	}
	return count
}

// ringOf is the border that a block is of, from 1; 0 inside all of them.
func (t *topParts) ringOf(b Block) int {
	off := 0 // of the ring's own first row and column
	for i := len(t.rings) - 1; i >= 0; i-- {
		r := t.rings[i]
		if !r.ofBlocks() {
			continue
		}
		across, down := t.along(r)
		row, column := b.Row-1-off, b.Column-1-off
		if row == 0 || column == 0 || row == down+1 || column == across+1 {
			return i + 1
		}
		off++
	}
	return 0
}

// inRing is where a block of a border lies.
func (t *topParts) inRing(b Block, r round) []patchwork.Point {
	off := t.ringsWithin(len(t.rings)) - t.ringsWithin(r.nth+1)
	x, y := t.outer(r)
	return rectangle(x+t.block.Width.Times(b.Column-1-off), y+t.block.Height.Times(b.Row-1-off), t.block.Width, t.block.Height)
}

// outer is where a border begins.
func (t *topParts) outer(r round) (x, y measure.Length) {
	all := t.finished()
	return (all.Width - r.outside.Width) / 2, (all.Height - r.outside.Height) / 2
}

// sashing adds the strips between blocks: short pieces between the blocks of a
// row, then between rows pieces with cornerstones, or one strip.
func (t *topParts) sashing() {
	s := t.layout.Sashing
	if s == nil {
		return
	}
	first := boolean(!s.Edge) // the line of sashing before the first block is number 0
	for row := range t.layout.Down {
		for line := first; line < first+t.uprights(); line++ {
			t.cloth(SashingPart, s.Fabric, t.x(line)-s.Width, t.y(row), s.Width, t.block.Height)
		}
	}
	for line := first; line < first+t.levels(); line++ {
		y := t.y(line) - s.Width
		if !t.stones() {
			t.cloth(SashingPart, s.Fabric, 0, y, t.inner().Width, s.Width)
			continue
		}
		for column := range t.layout.Across {
			t.cloth(SashingPart, s.Fabric, t.x(column), y, t.block.Width, s.Width)
		}
		for upright := first; upright < first+t.uprights(); upright++ {
			t.cloth(CornerstonePart, s.Cornerstones, t.x(upright)-s.Width, y, s.Width, s.Width)
		}
	}
}

// triangles adds the setting triangles: the sides from the left along each edge,
// then the corners, top left first, clockwise.
func (t *topParts) triangles() {
	l := t.layout
	right, bottom := 2*l.Across, 2*l.Down
	add := func(kind PartKind, corners ...patchwork.Point) {
		t.parts = append(t.parts, TopPart{Kind: kind, Fabric: l.Triangles, Corners: corners})
	}
	for i := 1; i < l.Across; i++ {
		add(SidePart, t.at(2*i-1, 0), t.at(2*i+1, 0), t.at(2*i, 1))
	}
	for i := 1; i < l.Down; i++ {
		add(SidePart, t.at(right, 2*i-1), t.at(right, 2*i+1), t.at(right-1, 2*i))
	}
	for i := 1; i < l.Across; i++ {
		add(SidePart, t.at(2*i+1, bottom), t.at(2*i-1, bottom), t.at(2*i, bottom-1))
	}
	for i := 1; i < l.Down; i++ {
		add(SidePart, t.at(0, 2*i+1), t.at(0, 2*i-1), t.at(1, 2*i))
	}
	add(CornerPart, t.at(0, 0), t.at(1, 0), t.at(0, 1))
	add(CornerPart, t.at(right, 0), t.at(right, 1), t.at(right-1, 0))
	add(CornerPart, t.at(right, bottom), t.at(right-1, bottom), t.at(right, bottom-1))
	add(CornerPart, t.at(0, bottom), t.at(0, bottom-1), t.at(1, bottom))
}

// bordered adds the borders of cloth: left and right, then top and bottom over
// their ends.
func (t *topParts) bordered() {
	for _, r := range t.rings {
		if r.ofBlocks() {
			continue
		}
		x, y := t.outer(r)
		for _, corners := range [][]patchwork.Point{
			rectangle(x, y+r.Width, r.Width, r.inside.Height),
			rectangle(x+r.outside.Width-r.Width, y+r.Width, r.Width, r.inside.Height),
			rectangle(x, y, r.outside.Width, r.Width),
			rectangle(x, y+r.outside.Height-r.Width, r.outside.Width, r.Width),
		} {
			t.parts = append(t.parts, TopPart{Kind: BorderPart, Fabric: r.Fabric, Border: r.nth + 1, Corners: corners})
		}
	}
}

// Hung is where a block lies as the quilt hangs, both counted from zero: which level
// line, and which place in it. On point lines between the layout's rows are counted
// too, and are a block shorter; else they are the rows.
func (p Plan) Hung(b Block) (line, nth int) {
	l := p.Job.Layout
	if l.Setting != OnPoint {
		return b.Row - 1, b.Column - 1
	}
	first, _ := l.span(b.Row - 1)
	right, below := l.hung(b.Row-1, first+b.Column-1)
	return below, right / 2
}
