package measure

import "strings"

// unitWords are the ways in which people write a unit. Programs that turn
// quotes round make the inch mark ”, or “ where the text is German.
var unitWords = map[string]Length{
	"in": Inch, "in.": Inch, "inch": Inch, "inches": Inch,
	`"`: Inch, "″": Inch, "”": Inch, "“": Inch,
	"''": Inch, "’’": Inch, "′′": Inch,

	"yd": Yard, "yd.": Yard, "yds": Yard, "yds.": Yard, "yard": Yard, "yards": Yard,

	"mm": Millimetre, "millimetre": Millimetre, "millimetres": Millimetre,
	"millimeter": Millimetre, "millimeters": Millimetre,
	"cm": Centimetre, "centimetre": Centimetre, "centimetres": Centimetre,
	"centimeter": Centimetre, "centimeters": Centimetre,
	"m": Metre, "metre": Metre, "metres": Metre, "meter": Metre, "meters": Metre,
}

// unitOf looks a word up; capitals do not matter.
func unitOf(word string) (Length, bool) {
	unit, ok := unitWords[strings.ToLower(word)]
	return unit, ok
}
