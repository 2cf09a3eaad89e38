package draw

import (
	"slices"

	"quiltrun/planner/measure"
	"quiltrun/planner/patchwork"
)

// lattice is where the lines of a block lie in characters, in one direction:
// the lengths at which it has any, and a place for each.
type lattice struct {
	lengths []measure.Length
	places  []int
}

// A block is drawn so many columns wide where nothing narrows it, and no two
// lines come closer than so many columns and rows, so that something shows
// between them. A character is about twice as high as wide.
const (
	usualColumns = 32
	leastColumns = 4
	leastRows    = 2
)

// latticeOf spreads a unit's lines over at most width columns and as many rows
// as fit them; nil where they do not fit.
func latticeOf(u patchwork.Unit, seam measure.Length, width int) (columns, rows *lattice) {
	var xs, ys []measure.Length
	for _, p := range u.Patches {
		for _, corner := range p.Corners {
			xs, ys = append(xs, corner.X), append(ys, corner.Y)
		}
	}
	xs, ys = merged(xs, seam/2), merged(ys, seam/2)
	for least := leastColumns; least >= 2; least-- {
		for target := min(usualColumns, width-1); target > 0; target -= 2 {
			columns = spread(xs, target, least)
			if columns.size() > width {
				continue
			}
			height := (ys[len(ys)-1] - ys[0]).Scale(int64(columns.size()), int64(xs[len(xs)-1]-xs[0]), measure.Nearest)
			return columns, spread(ys, int(height)/2, leastRows)
		}
	}
	return nil, nil
}

// merged is the lengths in order, those within a distance of an earlier one left
// out; the last, which is the edge, stays.
func merged(lengths []measure.Length, within measure.Length) []measure.Length {
	slices.Sort(lengths)
	last := lengths[len(lengths)-1]
	out := lengths[:1:1]
	for _, l := range lengths[1:] {
		if l-out[len(out)-1] > within {
			out = append(out, l)
		}
	}
	if out[len(out)-1] != last {
		out[len(out)-1] = last
	}
	return out
}

// spread gives lengths their places over a target, in proportion, with at least
// so much between two. Equal distances get equal room.
func spread(lengths []measure.Length, target, least int) *lattice {
	l := &lattice{lengths: lengths, places: make([]int, len(lengths))}
	all := lengths[len(lengths)-1] - lengths[0]
	for i := 1; i < len(lengths); i++ {
		share := (lengths[i] - lengths[i-1]).Scale(int64(target), int64(all), measure.Nearest)
		l.places[i] = l.places[i-1] + max(least, int(share))
	}
	return l
}

// size is how many characters the lattice takes.
func (l *lattice) size() int { return l.places[len(l.places)-1] + 1 }

// place is the character of a length: in proportion between lines.
func (l *lattice) place(at measure.Length) int {
	i := l.before(func(i int) bool { return l.lengths[i] <= at })
	part := (at - l.lengths[i]).Scale(int64(l.places[i+1]-l.places[i]), int64(l.lengths[i+1]-l.lengths[i]), measure.Nearest)
	return l.places[i] + int(part)
}

// length is the length at a character.
func (l *lattice) length(place int) measure.Length {
	i := l.before(func(i int) bool { return l.places[i] <= place })
	part := (l.lengths[i+1] - l.lengths[i]).Scale(int64(place-l.places[i]), int64(l.places[i+1]-l.places[i]), measure.Nearest)
	return l.lengths[i] + part
}

// before is the last line but the edge for which something still holds.
func (l *lattice) before(holds func(int) bool) int {
	i := 0
	for i+2 < len(l.lengths) && holds(i+1) {
		i++
	}
	return i
}
