package cloth

import "quiltrun/planner/measure"

// battingCuts is how batting is cut: with shears, in any order of straight cuts.
var battingCuts = Settings{Style: Nested, Effort: 10}

// battingWants is battings as pieces to cut; batting has no direction.
func battingWants(sizes []measure.Size) []Want {
	var wants []Want
	for _, s := range sizes {
		if n := len(wants); n > 0 && wants[n-1].Size == s {
			wants[n-1].Count++
			continue
		}
		wants = append(wants, Want{Name: "batting", Size: s, Count: 1})
	}
	return wants
}

// PackagesFor is packages of one size that hold all battings together, several in
// one where they fit: those of the least area in all, of equal ones the fewest. It is
// false where no size holds every one of them.
func PackagesFor(sizes []measure.Size, packages []Package) (best Package, count int, plan Plan, ok bool) {
	for _, p := range packages {
		cut, err := CutSheets(battingWants(sizes), []Sheet{{Name: p.Name, Size: p.Size}}, battingCuts)
		if err != nil || len(cut.Missing) > 0 {
			continue
		}
		now, least := areaOf(p, cut.Sheets), areaOf(best, count)
		if less := now.Cmp(least); !ok || less < 0 || less == 0 && cut.Sheets < count {
			best, count, plan, ok = p, cut.Sheets, cut, true
		}
	}
	return best, count, plan, ok
}

func areaOf(p Package, n int) measure.Area {
	return measure.Mul(p.Size.Width, p.Size.Height).Times(n)
}

// FewerPackages is packages of one size for all battings together, where they come
// to less than the smallest package for each; else false.
func FewerPackages(sizes []measure.Size, packages []Package) (Package, int, Plan, bool) {
	var each measure.Area
	for _, s := range sizes {
		p, ok := BattingFor(s, packages)
		if !ok {
			return Package{}, 0, Plan{}, false
		}
		each = each.Add(areaOf(p, 1))
	}
	p, n, plan, ok := PackagesFor(sizes, packages)
	return p, n, plan, ok && n < len(sizes) && areaOf(p, n).Cmp(each) < 0
}

// RollFor is how much several battings take off a roll together, each the way round
// that takes less, and false where the roll is too narrow for one of them both ways.
// It is never more than each size off the roll by itself.
func RollFor(sizes []measure.Size, roll measure.Length) (measure.Length, bool) {
	var apart measure.Length
	wants := battingWants(sizes)
	for _, w := range wants {
		length, _, ok := OffRoll(w.Size, w.Count, roll)
		if !ok {
			return 0, false
		}
		apart += length
	}
	if plan, err := CutYardage(wants, roll, battingCuts); err == nil {
		apart = min(apart, plan.Length)
	}
	return apart, true
}
