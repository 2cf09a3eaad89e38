package shelf

import (
	"strings"
	"time"

	"quiltrun/planner"
	"quiltrun/planner/measure"
	"quiltrun/tracker"
)

// Item is one thing that lies, or lay, on the shelf, and where all of it went:
// Put + Found = Used + Kept + Free + Scrapped + TakenOff, and none but Found is
// below 0. Amounts are ticks, or counts where the form is counted.
type Item struct {
	ID string
	tracker.Shelf
	Job   string // whose leftover it is, or whose own stock; "" for what the maker put there
	Own   bool   // a job file says that the job has it: it is not on the shelf
	Since time.Time

	Put      planner.Amount
	Found    planner.Amount // by counting anew; below 0 where less was there
	Used     planner.Amount // by jobs
	Kept     planner.Amount // for jobs that still need it
	Free     planner.Amount
	Scrapped planner.Amount
	TakenOff planner.Amount
	For      []Claim // whom it is kept for, in the order of booking
	By       []Claim // who has used of it, in the order of use
}

// Claim is what one job takes of an item.
type Claim struct {
	Job    string
	For    string         // "backing", what a thread sews, or ""
	Amount planner.Amount // of the item
}

// Lies is how much lies there, kept or free.
func (i Item) Lies() planner.Amount {
	return i.Put + i.Found - i.Used - i.Scrapped - i.TakenOff
}

// Size is the size of one sheet, piece or package.
func (i Item) Size() measure.Size { return measure.Size{Width: i.Width, Height: i.Height} }

// units is the unit that the item was measured in.
func (i Item) units() measure.Unit {
	if i.Metric {
		return measure.Centimetres
	}
	return measure.Inches
}

// lot is what has one colour for certain: a dye lot, or where none is known the
// item alone.
func (i Item) lot() string {
	if i.DyeLot == "" {
		return "item " + i.ID
	}
	return "lot " + strings.ToLower(i.DyeLot)
}

// serves reports whether an item can serve a need, and how much of it one unit
// of the need takes: a tick, a sheet, or for a quilt a length off a roll.
func (i Item) serves(job string, n planner.StockNeed) (per planner.Amount, ok bool) {
	switch {
	case i.Own && i.Job != job, i.Material != n.Material:
		return 0, false
	case i.Material == planner.ThreadMaterial:
		return 1, true
	case i.Material == planner.BattingMaterial:
		return i.servesQuilt(n)
	case !strings.EqualFold(i.Name, n.Name):
		return 0, false
	case i.Form == planner.Pieces && n.Form.Counted():
		return 1, holds(i.Size(), n, !n.Directional)
	case i.Form != n.Form:
		return 0, false
	case !n.Form.Counted():
		return 1, i.Width >= n.Width
	}
	return 1, holds(i.Size(), n, !n.Directional)
}

// servesQuilt is how much batting one quilt takes of an item.
func (i Item) servesQuilt(n planner.StockNeed) (planner.Amount, bool) {
	if i.Form != planner.Roll {
		return 1, holds(i.Size(), n, true)
	}
	long, short := max(n.Width, n.Height), min(n.Width, n.Height)
	switch {
	case i.Width >= long:
		return planner.Amount(short), true
	case i.Width >= short:
		return planner.Amount(long), true
	}
	return 0, false
}

func holds(s measure.Size, n planner.StockNeed, turned bool) bool {
	return s.Width >= n.Width && s.Height >= n.Height || turned && s.Height >= n.Width && s.Width >= n.Height
}
