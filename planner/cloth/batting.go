package cloth

import "quiltrun/planner/measure"

// Package is a packaged size of batting.
type Package struct {
	Name string
	Size measure.Size
}

func inches(w, h int) measure.Size {
	return measure.Size{Width: measure.Inch.Times(w), Height: measure.Inch.Times(h)}
}

// Packages are the usual packaged sizes, smallest first. Source: Honey Be Good,
// "Common quilt and batting sizes"; the same set at 98905.com housekeeping.
// Makers differ.
var Packages = []Package{
	{"crib", inches(45, 60)},
	{"twin", inches(72, 90)},
	{"full", inches(81, 96)},
	{"queen", inches(90, 108)},
	{"king", inches(120, 120)},
}

// BattingFor is the smallest package that holds the size, either way round,
// and false where none does.
func BattingFor(size measure.Size) (Package, bool) {
	for _, p := range Packages {
		if holds(p.Size, size) || holds(p.Size, size.Turned()) {
			return p, true
		}
	}
	return Package{}, false
}

func holds(outer, inner measure.Size) bool {
	return inner.Width <= outer.Width && inner.Height <= outer.Height
}
