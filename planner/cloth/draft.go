package cloth

import (
	"slices"

	"quiltrun/planner/cloth/guillotine"
	"quiltrun/planner/measure"
)

// draft is the wants as pieces in whole cells of a grid. Wants of one size are
// one kind of piece, whichever way round they are written, where they may be
// turned.
type draft struct {
	wants    []Want
	worth    []int // of one piece of each want, where that matters
	settings Settings
	unit     measure.Length // of a cell
	rounded  bool           // some size is not on the grid, and was rounded up
	pieces   []guillotine.Piece
	sizes    []measure.Size // of the pieces, exactly
	kinds    [][]kindOf
}

// kindOf is a want that a kind of piece serves.
type kindOf struct {
	want   int
	turned bool // written the other way round
	left   int
}

const (
	// mostCells is the finest grid that a width is divided into; a piece may be
	// longer than that.
	mostCells = 1 << 18
	longer    = 16
	// finestCell is the cell of a grid that sizes do not fit: a 192nd of an inch,
	// which halves and thirds of a 64th do fit. No ruler shows less.
	finestCell = measure.Inch / 192
)

// newDraft sets up a grid for cloth whose sides are given. Wants of different
// worth are different kinds.
func newDraft(wants []Want, worth []int, s Settings, sides ...measure.Length) *draft {
	d := &draft{wants: wants, worth: worth, settings: s}
	longest := slices.Max(sides)
	for k, w := range wants {
		if w.Count > 0 {
			d.unit = gcd(d.unit, gcd(w.Size.Width, w.Size.Height))
			longest = max(longest, w.Size.Width/longer, w.Size.Height/longer)
			d.kind(k, w)
		}
	}
	d.unit = max(d.unit, 1)
	if longest/d.unit > mostCells {
		d.unit = max(finestCell, longest/mostCells)
	}
	for i, size := range d.sizes {
		d.rounded = d.rounded || size.Width%d.unit != 0 || size.Height%d.unit != 0
		d.pieces[i].W, d.pieces[i].H = measure.CeilDiv(size.Width, d.unit), measure.CeilDiv(size.Height, d.unit)
	}
	return d
}

// kind adds a want to the kind of its size.
func (d *draft) kind(k int, w Want) {
	for i, size := range d.sizes {
		same := size == w.Size
		if d.worth != nil && d.worth[k] != d.worth[d.kinds[i][0].want] {
			continue
		}
		if d.pieces[i].Free == w.fixed() || !same && (w.fixed() || size != w.Size.Turned()) {
			continue
		}
		d.pieces[i].N += w.Count
		d.kinds[i] = append(d.kinds[i], kindOf{k, !same, w.Count})
		return
	}
	d.sizes = append(d.sizes, w.Size)
	d.pieces = append(d.pieces, guillotine.Piece{N: w.Count, Free: !w.fixed()})
	d.kinds = append(d.kinds, []kindOf{{k, false, w.Count}})
}

func (d *draft) style() Style {
	if d.settings.Style == Nested {
		return Nested
	}
	return Simple
}

// cells is how many whole cells go into a length.
func (d *draft) cells(l measure.Length) int { return measure.FloorDiv(l, d.unit) }

func (d *draft) area() measure.Area {
	var area measure.Area
	for i, p := range d.pieces {
		area = area.Add(measure.Mul(d.sizes[i].Width, d.sizes[i].Height).Times(p.N))
	}
	return area
}

// serve is the next want, in the order given, that a piece of a kind is for.
func (d *draft) serve(kind int) (want int, turned bool) {
	list := d.kinds[kind]
	for len(list) > 1 && list[0].left == 0 {
		list = list[1:]
	}
	list[0].left--
	d.kinds[kind] = list
	return list[0].want, list[0].turned
}

// shortBy is how many of each want were not served.
func (d *draft) shortBy() []int {
	short := make([]int, len(d.wants))
	for _, list := range d.kinds {
		for _, k := range list {
			short[k.want] += k.left
		}
	}
	return short
}

// missing are the wants that were not served in full.
func (d *draft) missing() []Want {
	var out []Want
	for k, n := range d.shortBy() {
		if n > 0 {
			w := d.wants[k]
			w.Count = n
			out = append(out, w)
		}
	}
	return out
}

func gcd(a, b measure.Length) measure.Length {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
