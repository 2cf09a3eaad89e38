package tracker

import (
	"quiltrun/planner"
	"quiltrun/planner/measure"
)

// ShelfDeed is what was done with something on the shelf.
type ShelfDeed string

// The deeds. They may grow; a deed never changes its meaning.
const (
	PutOn       ShelfDeed = "put"     // something new lies there: all but Item is set
	CountedAnew ShelfDeed = "recount" // Amount of Item lies there, whatever was reckoned before
	Scrapped    ShelfDeed = "scrap"   // Amount of Item is spoilt
	TakenOff    ShelfDeed = "take"    // Amount of Item was taken for something else
)

// Shelf is what an event says of the shelf. Items are known by the number of
// their putting, from 1, never given twice; leftovers of a job by its id, a dot
// and a number.
type Shelf struct {
	Do       ShelfDeed        `json:"do"`
	Item     string           `json:"item,omitempty"`
	Amount   planner.Amount   `json:"amount"` // ticks, or a count where the form is counted
	Material planner.Material `json:"material,omitempty"`
	Name     string           `json:"name,omitempty"`
	Form     planner.Form     `json:"form,omitempty"`
	Width    measure.Length   `json:"width,omitempty"`   // usable width, or of one sheet
	Height   measure.Length   `json:"height,omitempty"`  // of one sheet
	Assumed  bool             `json:"assumed,omitempty"` // the width or size is the program's, not measured
	DyeLot   string           `json:"dye_lot,omitempty"`
	Place    string           `json:"place,omitempty"`  // where it lies
	Metric   bool             `json:"metric,omitempty"` // it was measured in metres and centimetres
}
