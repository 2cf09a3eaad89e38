package patchwork

import (
	"slices"

	"quiltrun/planner/measure"
)

// together is how close seams come to count as meeting: 1/64 in.
const together = measure.Inch / 64

// place is a spot on a join where seams of one side, or of both, come together.
type place struct {
	from, to measure.Length // first and last seam
	leans    []Signed
	first    bool // seams of the first side are there
	second   bool
}

// meet finds the match points of a join from the crossings of its two sides,
// in order along it: one for each place where seams of both sides come
// together. Pairs that miss each other by less than a seam allowance, neither
// having a partner, are listed as near.
func meet(a, b []crossing, seam measure.Length) []Match {
	var room gathering
	return room.meet(a, b, seam)
}

// gathering is room for the places of a join, to be used again for the next one.
type gathering struct {
	places []place
	leans  []Signed
}

// meet is as meet; its matches hold until the next join is met.
func (g *gathering) meet(a, b []crossing, seam measure.Length) []Match {
	if len(a) == 0 || len(b) == 0 {
		return nil
	}
	places := g.gather(a, b)
	var matches []Match
	if n := shared(places); n > 0 {
		matches = make([]Match, 0, n)
	}
	for i, p := range places {
		if p.first && p.second {
			matches = append(matches, Match{At: p.from - seam, Leans: p.leans})
			continue
		}
		for _, q := range places[i+1:] {
			if q.from-p.to >= seam {
				break
			}
			if q.first != q.second && q.first != p.first {
				matches = append(matches, Match{At: p.to - seam, Near: true, Leans: append(p.leans[:len(p.leans):len(p.leans)], q.leans...)})
			}
		}
	}
	return matches
}

// shared counts the places where seams of both sides come together.
func shared(places []place) int {
	n := 0
	for _, p := range places {
		if p.first && p.second {
			n++
		}
	}
	return n
}

// gather walks both sides at once and puts seams into one place as long as
// each comes together with the one before it.
func (g *gathering) gather(a, b []crossing) []place {
	most := len(a) + len(b)
	g.places, g.leans = slices.Grow(g.places[:0], most), slices.Grow(g.leans[:0], most)
	places, leans := g.places, g.leans
	for len(a) > 0 || len(b) > 0 {
		first := len(b) == 0 || len(a) > 0 && a[0].at <= b[0].at
		var next crossing
		if first {
			next, a = a[0], a[1:]
		} else {
			next, b = b[0], b[1:]
		}
		n := len(places)
		if n == 0 || next.at-places[n-1].to > together {
			places = append(places, place{from: next.at})
			leans = leans[len(leans):]
			n++
		}
		p := &places[n-1]
		leans = append(leans, next.Signed)
		p.to, p.leans = next.at, leans[:len(leans):len(leans)]
		p.first, p.second = p.first || first, p.second || !first
	}
	return places
}
