package patchwork

import "quiltrun/planner/measure"

// LooseCut is a cut of a recut that runs beside an older seam of the unit, nearer
// than the seam's allowances reach. Whichever way those are pressed, the cut parts
// cloth from the stitches that hold it.
type LooseCut struct {
	Upright bool
	At      measure.Length // of the cut, from the raw left or top edge of the unit
	Off     measure.Length // from the nearest such seam, less than a seam allowance
}

// LooseCuts lists the cuts of a Recut that leave an allowance loose, upright ones
// first, rising; it is empty for any other step. Seam is what a seam takes from
// each side.
func (m Made) LooseCuts(seam measure.Length) []LooseCut {
	if m.Step.Do != Recut {
		return nil
	}
	var loose []LooseCut
	for _, along := range []axis{across, down} {
		for _, at := range m.Cuts[along] {
			if off := m.Unit.nearestAlong(along, at); off < seam-same {
				loose = append(loose, LooseCut{Upright: along == across, At: at, Off: off})
			}
		}
	}
	return loose
}

// nearestAlong is how far a line across an axis is from the nearest seam that runs
// along it; very far where none does.
func (u Unit) nearestAlong(along axis, at measure.Length) measure.Length {
	nearest := measure.Longest
	for _, s := range u.Seams {
		if a, b := along.of(s.A), along.of(s.B); a == b {
			nearest = min(nearest, max(a-at, at-a))
		}
	}
	return nearest
}
