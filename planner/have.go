package planner

import (
	"slices"

	"quiltrun/planner/measure"
)

// Have is what there is of one fabric: lengths off the bolt, each by itself, or
// sheets. The zero Have is nothing.
type Have struct {
	Lengths []measure.Length
	Sheets  []HaveSheets
}

// HaveSheets is sheets of one size.
type HaveSheets struct {
	Size  measure.Size
	Count int
}

// Own is what the job file says is on hand of a fabric: its lengths or sheets, then
// pieces of other sizes.
func (f Fabric) Own() Have {
	var h Have
	switch {
	case f.OnHand == nil:
		return h
	case f.Form.Sheets() && f.OnHand.Sheets > 0:
		h.Sheets = append(h.Sheets, HaveSheets{f.Size, f.OnHand.Sheets})
	case !f.Form.Sheets() && f.OnHand.Length > 0:
		h.Lengths = append(h.Lengths, f.OnHand.Length)
	}
	return h.And(f.OwnPieces())
}

// OwnPieces is the pieces of other sizes that the job file says are on hand.
func (f Fabric) OwnPieces() Have {
	var h Have
	if f.OnHand != nil {
		for _, size := range f.OnHand.Pieces {
			h.Sheets = append(h.Sheets, HaveSheets{size, 1})
		}
	}
	return h
}

// And is both together.
func (h Have) And(other Have) Have {
	return Have{
		Lengths: append(append([]measure.Length(nil), h.Lengths...), other.Lengths...),
		Sheets:  append(append([]HaveSheets(nil), h.Sheets...), other.Sheets...),
	}
}

// Length is all lengths laid end to end, Count all sheets.
func (h Have) Length() measure.Length {
	var sum measure.Length
	for _, l := range h.Lengths {
		sum += l
	}
	return sum
}

// Count is all sheets, whatever their size.
func (h Have) Count() int {
	n := 0
	for _, s := range h.Sheets {
		n += s.Count
	}
	return n
}

// without is what is there less a length, which is taken off the longest first.
func (h Have) without(l measure.Length) Have {
	out := Have{Lengths: slices.Clone(h.Lengths), Sheets: h.Sheets}
	for l > 0 && len(out.Lengths) > 0 {
		at := 0
		for i := range out.Lengths {
			if out.Lengths[i] > out.Lengths[at] {
				at = i
			}
		}
		gone := min(l, out.Lengths[at])
		if l -= gone; gone == out.Lengths[at] {
			out.Lengths = slices.Delete(out.Lengths, at, at+1)
		} else {
			out.Lengths[at] -= gone
		}
	}
	return out
}

// lessSheets is what is there less the sheets that cuts came from.
func (h Have) lessSheets(f Fabric, cuts []ShopCut) Have {
	out := Have{Lengths: h.Lengths, Sheets: slices.Clone(h.Sheets)}
	for _, c := range cuts {
		at := slices.IndexFunc(out.Sheets, func(s HaveSheets) bool { return f.shrunk(s.Size) == c.Sheets.Size && s.Count > 0 })
		if !c.Bought && at >= 0 {
			out.Sheets[at].Count--
		}
	}
	return out
}

// whole is what is there without pieces of other sizes than the fabric comes in.
func (f Fabric) whole(h Have) Have {
	out := Have{Lengths: h.Lengths}
	for _, s := range h.Sheets {
		if f.Form.Sheets() && measure.Mul(s.Size.Width, s.Size.Height).Cmp(measure.Mul(f.Size.Width, f.Size.Height)) >= 0 {
			out.Sheets = append(out.Sheets, s)
		}
	}
	return out
}
