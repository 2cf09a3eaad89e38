package measure

// Unit is what a bare number means in a job, and what its sheet shows.
type Unit uint8

// The units of a job.
const (
	Inches Unit = iota
	Centimetres
)

// String returns the abbreviation, "in" or "cm".
func (u Unit) String() string {
	if u == Centimetres {
		return "cm"
	}
	return "in"
}

// ShopStep returns the step in which shops sell yardage: 1/8 yd or 10 cm
// (common practice).
func (u Unit) ShopStep() Length {
	if u == Centimetres {
		return 10 * Centimetre
	}
	return Yard / 8
}

func (u Unit) length() Length {
	if u == Centimetres {
		return Centimetre
	}
	return Inch
}
