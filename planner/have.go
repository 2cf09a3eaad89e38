package planner

import "quiltrun/planner/measure"

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

// Own is what the job file says is on hand of a fabric.
func (f Fabric) Own() Have {
	switch {
	case f.OnHand == nil:
		return Have{}
	case f.Form.Sheets() && f.OnHand.Sheets > 0:
		return Have{Sheets: []HaveSheets{{f.Size, f.OnHand.Sheets}}}
	case !f.Form.Sheets() && f.OnHand.Length > 0:
		return Have{Lengths: []measure.Length{f.OnHand.Length}}
	}
	return Have{}
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
