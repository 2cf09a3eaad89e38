package guillotine

import "math"

// The functions here find optima by trying everything, in ways that share
// nothing with the package's own searches.

// corner is a rectangle that holds a set of pieces.
type corner struct{ w, h int }

// every lists the pieces one by one.
func every(pieces []Piece) []Piece {
	var out []Piece
	for _, p := range pieces {
		for range p.N {
			out = append(out, Piece{p.W, p.H, 1, p.Free})
		}
	}
	return out
}

// bruteNested is the least length of a guillotine layout: for every subset of
// the pieces, the least rectangles that hold it.
func bruteNested(w int, pieces []Piece) int {
	all := every(pieces)
	holds := make([]map[corner]bool, 1<<len(all))
	for set := 1; set < len(holds); set++ {
		holds[set] = map[corner]bool{}
		for i, p := range all {
			if set == 1<<i {
				holds[set][corner{p.W, p.H}] = true
				if p.Free {
					holds[set][corner{p.H, p.W}] = true
				}
			}
		}
		for part := (set - 1) & set; part > 0; part = (part - 1) & set {
			for a := range holds[part] {
				for b := range holds[set&^part] {
					holds[set][corner{a.w + b.w, max(a.h, b.h)}] = true
					holds[set][corner{max(a.w, b.w), a.h + b.h}] = true
				}
			}
		}
	}
	best := math.MaxInt
	for c := range holds[len(holds)-1] {
		if c.w <= w {
			best = min(best, c.h)
		}
	}
	return best
}

// bruteSimple is the least length of levels: every piece goes into every level
// there is, or opens one, both ways up where it may.
func bruteSimple(w int, pieces []Piece) int {
	return shelveAll(w, every(pieces), nil, nil)
}

func shelveAll(w int, pieces []Piece, widths, heights []int) int {
	if len(pieces) == 0 {
		length := 0
		for _, h := range heights {
			length += h
		}
		return length
	}
	p := pieces[0]
	ways := []corner{{p.W, p.H}}
	if p.Free {
		ways = append(ways, corner{p.H, p.W})
	}
	best := math.MaxInt
	for _, c := range ways {
		for k := range widths {
			if widths[k]+c.w <= w {
				wasW, wasH := widths[k], heights[k]
				widths[k], heights[k] = wasW+c.w, max(wasH, c.h)
				best = min(best, shelveAll(w, pieces[1:], widths, heights))
				widths[k], heights[k] = wasW, wasH
			}
		}
		if c.w <= w {
			best = min(best, shelveAll(w, pieces[1:], append(widths, c.w), append(heights, c.h)))
		}
	}
	return best
}

// bruteFill is the greatest value of slots in a width.
func bruteFill(w int, slots []slot) int64 {
	if len(slots) == 0 {
		return 0
	}
	best := int64(0)
	for n := 0; n <= slots[0].most && n*slots[0].w <= w; n++ {
		best = max(best, int64(n)*slots[0].value+bruteFill(w-n*slots[0].w, slots[1:]))
	}
	return best
}
