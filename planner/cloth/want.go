package cloth

import (
	"fmt"

	"quiltrun/planner/measure"
)

// Want is pieces of one raw size for one purpose.
type Want struct {
	Name        string // what they are for
	Size        measure.Size
	Count       int
	Directional bool // not to be turned, and cut one layer at a time
	Long        bool // its height runs along the selvage, and it is cut before all others
}

// fixed reports that a piece lies one way only.
func (w Want) fixed() bool { return w.Directional || w.Long }

// Sheet is cloth that comes in pieces of a size: fat quarters, pre-cut squares,
// what is on hand. A Count of 0 is as many as it takes.
type Sheet struct {
	Name  string
	Size  measure.Size
	Count int
}

// LengthOnHand is the name of a length of cloth that is cut by itself, beside what is
// bought.
const LengthOnHand = "length on hand"

// Style says in what order cloth may be cut.
type Style string

const (
	// Simple cuts strips across the cloth, pieces off the strips, and trims what
	// is not as high as its strip. It is the style where none is named.
	Simple Style = "simple"
	// Nested cuts in any order. It takes less cloth and more ruler work.
	Nested Style = "nested"
)

// Settings are the maker's ways of cutting. The zero value is: simple, four
// layers, nothing lost to squaring up, every offcut listed, the full search.
type Settings struct {
	Style    Style
	Layers   int            // most layers cut at once; 0 is DefaultLayers
	SquareUp measure.Length // what squaring up takes off one edge of each length and width
	Usable   measure.Length // the least side of an offcut worth listing
	Effort   int            // share of the search in hundredths, 1 to 100; 0 is all
}

// DefaultLayers is how many layers of cloth a rotary cutter goes through with
// one push. Common practice, no source.
const DefaultLayers = 4

// MostPieces is how many pieces one plan holds at most.
const MostPieces = 100_000

func (s Settings) layers() int {
	if s.Layers > 0 {
		return s.Layers
	}
	return DefaultLayers
}

func (s Settings) effort() int {
	if s.Effort > 0 {
		return min(s.Effort, 100)
	}
	return 100
}

// TooLarge is the error of a piece that no cloth given can hold.
type TooLarge struct {
	Want  Want
	Cloth measure.Size // the only one there was; its Height is 0 for yardage
}

func (e *TooLarge) Error() string {
	size := func(s measure.Size) string { return s.Width.String() + " × " + s.Height.String() }
	if e.Cloth.Height == 0 {
		return fmt.Sprintf("a piece of %s does not fit cloth %s wide; cut it lengthwise, or join it from shorter pieces", size(e.Want.Size), e.Cloth.Width)
	}
	return fmt.Sprintf("a piece of %s cannot be cut from cloth of %s; a larger piece of cloth is needed", size(e.Want.Size), size(e.Cloth))
}

// checked refuses what cannot be planned.
func checked(wants []Want) error {
	total := 0
	for _, w := range wants {
		if w.Size.Width <= 0 || w.Size.Height <= 0 {
			return fmt.Errorf("pieces %q have no size; give a width and a height above 0", w.Name)
		}
		if w.Count < 0 {
			return fmt.Errorf("pieces %q are wanted %d times; give a count of 0 or more", w.Name, w.Count)
		}
		if total += w.Count; total > MostPieces {
			return fmt.Errorf("more than %d pieces are wanted of one fabric; plan them in parts", MostPieces)
		}
	}
	return nil
}
