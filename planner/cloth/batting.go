package cloth

import "quiltrun/planner/measure"

// Package is a packaged size of batting.
type Package struct {
	Name string // "" for a package of the maker's own list
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

// BattingFor is the smallest of some packages that holds the size, either way
// round, and false where none does.
func BattingFor(size measure.Size, packages []Package) (Package, bool) {
	var best Package
	found := false
	for _, p := range packages {
		if !holds(p.Size, size) && !holds(p.Size, size.Turned()) {
			continue
		}
		if !found || measure.Mul(p.Size.Width, p.Size.Height).Cmp(measure.Mul(best.Size.Width, best.Size.Height)) < 0 {
			best, found = p, true
		}
	}
	return best, found
}

// Over is what is left of a sheet once a size has been cut from it, the larger
// piece first: laid and cut so that this is as large as it can be.
func Over(sheet, size measure.Size) []measure.Size {
	var best []measure.Size
	for _, s := range []measure.Size{size, size.Turned()} {
		if !holds(sheet, s) {
			continue
		}
		above := measure.Size{Width: sheet.Width, Height: sheet.Height - s.Height}
		aside := measure.Size{Width: sheet.Width - s.Width, Height: sheet.Height}
		for _, two := range [][2]measure.Size{
			{above, {Width: aside.Width, Height: s.Height}},
			{aside, {Width: s.Width, Height: above.Height}},
		} {
			if best == nil || measure.Mul(two[0].Width, two[0].Height).Cmp(measure.Mul(best[0].Width, best[0].Height)) > 0 {
				best = two[:]
			}
		}
	}
	var out []measure.Size
	for _, s := range best {
		if s.Width > 0 && s.Height > 0 {
			out = append(out, s)
		}
	}
	return out
}

// OffRoll is how much so many battings of a size take off a roll of a width,
// whichever way round takes less, and how wide a strip each leaves beside it; false
// where the roll is too narrow both ways.
func OffRoll(size measure.Size, quilts int, roll measure.Length) (length, beside measure.Length, ok bool) {
	for _, s := range []measure.Size{size, size.Turned()} {
		abreast := 0
		if s.Width <= roll {
			abreast = measure.FloorDiv(roll, s.Width)
		}
		if abreast == 0 {
			continue
		}
		takes := s.Height.Times((quilts + abreast - 1) / abreast)
		if !ok || takes < length {
			length, beside, ok = takes, roll-s.Width.Times(min(abreast, quilts)), true
		}
	}
	return length, beside, ok
}

func holds(outer, inner measure.Size) bool {
	return inner.Width <= outer.Width && inner.Height <= outer.Height
}
