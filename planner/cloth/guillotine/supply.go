package guillotine

import (
	"cmp"
	"slices"
)

// Stock is N sheets of one size; an N of 0 means as many as it takes. A sheet
// may be too small for anything, even 0 wide.
type Stock struct {
	W, H, N int
}

func (s Stock) endless() bool { return s.N == 0 }

// supply hands out sheets: those counted first, the largest before the others,
// then as many as it takes of the favourite, or of whatever holds the rest.
type supply struct {
	stock  []Stock
	pieces []Piece
	left   []int
	order  []int
}

// newSupply puts the stock in the order in which it is handed out.
func newSupply(stock []Stock, pieces []Piece, favourite int) *supply {
	s := &supply{stock: stock, pieces: pieces}
	for k, st := range stock {
		s.left = append(s.left, st.N)
		s.order = append(s.order, k)
	}
	rank := func(k int) int {
		switch {
		case !stock[k].endless():
			return 0
		case k == favourite:
			return 1
		default:
			return 2
		}
	}
	slices.SortStableFunc(s.order, func(a, b int) int {
		return cmp.Or(rank(a)-rank(b), stock[b].W*stock[b].H-stock[a].W*stock[a].H)
	})
	return s
}

// next is a sheet that holds some piece that is left, or −1.
func (s *supply) next(rem []int) int {
	for _, k := range s.order {
		if !s.has(k) {
			continue
		}
		for i, n := range rem {
			if n > 0 && s.pieces[i].Fits(s.stock[k].W, s.stock[k].H) {
				s.take(k)
				return k
			}
		}
	}
	return -1
}

func (s *supply) has(k int) bool { return s.stock[k].endless() || s.left[k] > 0 }

func (s *supply) take(k int) {
	if !s.stock[k].endless() {
		s.left[k]--
	}
}

// leastSheets bounds the number of sheets that hold all the pieces, by area,
// the largest sheets first, and by bars in a sheet as wide and as high as any.
func leastSheets(pieces []Piece, stock []Stock, limit int) int {
	widest, highest, area, n := 0, 0, areaOf(pieces), 0
	for _, st := range stock {
		widest, highest = max(widest, st.W), max(highest, st.H)
	}
	bySize := slices.Clone(stock)
	slices.SortStableFunc(bySize, func(a, b Stock) int { return b.W*b.H - a.W*a.H })
	for _, st := range bySize {
		if st.W == 0 || st.H == 0 {
			break
		}
		most := ceilDiv(max(area, 0), st.W*st.H)
		if !st.endless() {
			most = min(most, st.N)
		}
		n, area = n+most, area-most*st.W*st.H
	}
	across := newBars(widest, pieces, func(s side) (int, int) { return s.w, s.h }).need(limit)
	along := newBars(highest, pieces, func(s side) (int, int) { return s.h, s.w }).need(limit)
	return max(n, ceilDiv(across, highest), ceilDiv(along, widest))
}
