package planner

import "quiltrun/planner/measure"

// Across is the usable width of yardage as it is cut: what a wash leaves of it,
// rounded down.
func (f Fabric) Across() measure.Length { return shrunk(f.Width, f.Shrinkage.Width) }

// Sheet is the size of a sheet as it is cut: what a wash leaves of it, rounded
// down.
func (f Fabric) Sheet() measure.Size { return f.shrunk(f.Size) }

func (f Fabric) shrunk(s measure.Size) measure.Size {
	return measure.Size{Width: shrunk(s.Width, f.Shrinkage.Width), Height: shrunk(s.Height, f.Shrinkage.Length)}
}

// unwashed is the length to buy for a length that is cut, rounded up.
func (f Fabric) unwashed(l measure.Length) measure.Length {
	return l.Scale(whole, int64(whole-f.Shrinkage.Length), measure.Up)
}

// unwashedWidth is the width before a wash of a width that is cut, rounded up.
func (f Fabric) unwashedWidth(w measure.Length) measure.Length {
	return w.Scale(whole, int64(whole-f.Shrinkage.Width), measure.Up)
}

// washed is what a wash leaves of a length, rounded down.
func (f Fabric) washed(l measure.Length) measure.Length { return shrunk(l, f.Shrinkage.Length) }

// whole is all of a length in hundredths of a percent.
const whole = 10_000

func shrunk(l measure.Length, share int) measure.Length {
	return l.Scale(int64(whole-share), whole, measure.Down)
}

// stripLength is the longest strip that a fabric gives once it is squared up:
// across the usable width of yardage, along the longer side of a sheet. One that has
// a direction is not turned: its strips run across it.
func (m *maker) stripLength(f Fabric) measure.Length {
	squared := cutSettings(m.job, f, "").SquareUp
	if f.Form.Sheets() && f.Directional {
		return f.Sheet().Width - squared
	}
	if f.Form.Sheets() {
		return max(f.Sheet().Width, f.Sheet().Height) - squared
	}
	return f.Across() - squared
}
