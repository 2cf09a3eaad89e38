package shelf

import (
	"slices"

	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// Free is what is free of one fabric and form for some jobs: what nobody has kept,
// and what is kept for them. Lengths are told one by one, as they lie; rectangles of
// other sizes are among the sheets.
func (s Shelf) Free(fabric planner.Fabric, jobs []string) planner.Have {
	var have planner.Have
	for _, i := range s.Items {
		n := planner.StockNeed{Material: planner.ClothMaterial, Name: fabric.Name, Form: fabric.Form, Width: fabric.Width, Directional: fabric.Directional}
		if fabric.Form.Sheets() {
			n.Width, n.Height = fabric.Size.Width, fabric.Size.Height
		}
		piece := i.pieceOf(n)
		if _, ok := i.serves("", n); !ok && !piece {
			continue
		}
		amount := i.free(jobs)
		switch {
		case amount == 0:
		case fabric.Form.Sheets() || piece:
			have.Sheets = append(have.Sheets, planner.HaveSheets{Size: i.Size(), Count: int(amount)})
		default:
			have.Lengths = append(have.Lengths, measure.Length(amount))
		}
	}
	return have
}

// free is what of an item is free, or kept for some jobs.
func (i Item) free(jobs []string) planner.Amount {
	amount := i.Free
	for _, c := range i.For {
		if slices.Contains(jobs, c.Job) {
			amount += c.Amount
		}
	}
	return amount
}

// FreeBatting is the batting that is free, or kept for some jobs.
func (s Shelf) FreeBatting(jobs []string) []planner.HaveBatting {
	var have []planner.HaveBatting
	for _, i := range s.Items {
		amount := i.free(jobs)
		switch {
		case i.Material != planner.BattingMaterial || amount == 0:
		case i.Form == planner.Roll:
			have = append(have, planner.HaveBatting{Size: measure.Size{Width: i.Width, Height: measure.Length(amount)}})
		default:
			have = append(have, planner.HaveBatting{Size: i.Size(), Count: int(amount)})
		}
	}
	return have
}

// FreeThread is the thread that is free, or kept for some jobs, of every colour.
func (s Shelf) FreeThread(jobs []string) measure.Length {
	var sum measure.Length
	for _, i := range s.Items {
		if i.Material == planner.ThreadMaterial {
			sum += measure.Length(i.free(jobs))
		}
	}
	return sum
}
