package cloth

import "quiltrun/planner/measure"

// Plan says how to cut cloth: where every piece lies, and the ruler cuts in the
// order to make them.
type Plan struct {
	Style  Style
	Cloths []Cloth // one for yardage, else every sheet
	Steps  []Step
	Cuts   int   // ruler cuts in all
	CutsOf []int // the same, shared out among the wants

	Levels []measure.Length // of the bolt: the lengths that cuts across all of it part

	Length     measure.Length // off the bolt, squaring up included; 0 on sheets
	Bound      measure.Length // no plan, in whatever order it is cut, takes less
	StyleBound measure.Length // no plan in this style takes less

	Sheets     int // sheets cut; 0 for yardage
	SheetBound int // no plan takes fewer

	Missing []Want // what found no place, with its count; only on sheets
}

// Cloth is one length or sheet, and what is cut from it. Positions are from its
// bottom left corner.
type Cloth struct {
	Name    string
	Hand    bool // a piece on hand beside the bolt
	Size    measure.Size
	Pieces  []Piece
	Offcuts []Offcut // usable ones, largest first
	Lines   []Line   // the cuts inside it
}

// Line is one cut, from its left or its lower end.
type Line struct {
	Step    int // in which it is made, from 1
	X, Y    measure.Length
	Length  measure.Length
	Upright bool
}

// Piece is a piece in its place.
type Piece struct {
	Want   int // which of the wants
	X, Y   measure.Length
	Size   measure.Size // as it lies
	Turned bool
}

// Offcut is a rectangle left over.
type Offcut struct {
	X, Y measure.Length
	Size measure.Size
}

// Gap is how much more the plan takes than its bound, as a share of the bound;
// 0 where pieces are missing, since the bound is for all of them.
func (p Plan) Gap() float64 {
	switch {
	case len(p.Missing) > 0:
		return 0
	case p.Bound > 0:
		return float64(p.Length-p.Bound) / float64(p.Bound)
	case p.SheetBound > 0:
		return float64(p.Sheets-p.SheetBound) / float64(p.SheetBound)
	default:
		return 0
	}
}

// Best reports whether the plan is proved to be as good as any in its style.
func (p Plan) Best() bool {
	return p.Length == p.StyleBound && p.Sheets <= p.SheetBound && len(p.Missing) == 0
}
