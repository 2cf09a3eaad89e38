package cloth

import (
	"slices"

	"quiltrun/planner/measure"
)

// SetsFromYardage is how many whole sets of pieces, such as those of one block,
// a length of cloth gives, and the plan for them. A greater length never gives
// fewer. Pieces too wide for the cloth are a *TooLarge.
func SetsFromYardage(set []Want, width, length measure.Length, s Settings) (int, Plan, error) {
	if _, err := CutYardage(set, width, s); err != nil {
		return 0, Plan{}, err
	}
	most := mostSets(set, measure.Mul(width, length))
	return greatest(most, func(n int) (Plan, bool) {
		plan, err := CutYardage(times(set, n), width, s)
		return plan, err == nil && plan.Length <= length
	})
}

// SetsFromSheets is how many whole sets of pieces the sheets give; all of them
// are counted, and a count of 0 is none. More sheets of one size, where there is
// no other, never give fewer.
func SetsFromSheets(set []Want, sheets []Sheet, s Settings) (int, Plan, error) {
	sheets = slices.DeleteFunc(slices.Clone(sheets), func(s Sheet) bool { return s.Count == 0 })
	if _, err := CutSheets(set, sheets, s); err != nil {
		return 0, Plan{}, err
	}
	var area measure.Area
	for _, sheet := range sheets {
		area = area.Add(measure.Mul(sheet.Size.Width, sheet.Size.Height).Times(sheet.Count))
	}
	supply := sheets
	if len(sheets) == 1 {
		// How many it takes must not depend on how many there are.
		supply = []Sheet{{Name: sheets[0].Name, Size: sheets[0].Size}}
	}
	return greatest(mostSets(set, area), func(n int) (Plan, bool) {
		plan, err := CutSheets(times(set, n), supply, s)
		return plan, err == nil && len(plan.Missing) == 0 && (len(sheets) > 1 || plan.Sheets <= sheets[0].Count)
	})
}

// greatest builds up, bit by bit from the top, a number that does. Of two
// lengths of cloth the greater one does for every number that the other does
// for, so the first bit in which the two answers differ is set in its own.
func greatest(most int, does func(int) (Plan, bool)) (int, Plan, error) {
	n, best := 0, Plan{}
	bit := 1
	for bit <= most/2 {
		bit *= 2
	}
	for ; bit > 0; bit /= 2 {
		if n+bit > most {
			continue
		}
		if plan, ok := does(n + bit); ok {
			n, best = n+bit, plan
		}
	}
	return n, best, nil
}

// mostSets is how many sets have no more area than the cloth, nor more pieces
// than a plan.
func mostSets(set []Want, cloth measure.Area) int {
	var one measure.Area
	pieces := 0
	for _, w := range set {
		one = one.Add(measure.Mul(w.Size.Width, w.Size.Height).Times(w.Count))
		pieces += w.Count
	}
	if pieces == 0 {
		return 0
	}
	low, high := 0, MostPieces/pieces
	for low < high {
		middle := (low + high + 1) / 2
		if one.Times(middle).Cmp(cloth) <= 0 {
			low = middle
		} else {
			high = middle - 1
		}
	}
	return low
}

func times(set []Want, n int) []Want {
	out := make([]Want, len(set))
	for k, w := range set {
		w.Count *= n
		out[k] = w
	}
	return out
}
