package planner

import "quiltrun/planner/measure"

// UsualWidth is the usable width of yardage where nobody has measured it, as a job
// file in those units would take it.
func UsualWidth(u measure.Unit) measure.Length { return defaultsIn(u).width }

// UsualSize is the size of one sheet of a form where nobody has measured it, false
// for forms that have no usual one.
func UsualSize(f Form, u measure.Unit) (measure.Size, bool) {
	switch f {
	case FatQuarter:
		return defaultsIn(u).fat, true
	case FatEighth:
		return defaultsIn(u).thin, true
	}
	return measure.Size{}, false
}

func defaultsIn(u measure.Unit) defaults {
	if u == measure.Centimetres {
		return metricDefaults
	}
	return inchDefaults
}
